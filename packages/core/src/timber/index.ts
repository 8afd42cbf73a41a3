/** Timbers, their moisture and their movement. */
export { dustCautionsOf } from "./dust.ts";
export { findTimber } from "./find-timber.ts";
export { equilibriumMoisture, type Moisture, type Temperature } from "./moisture.ts";
export {
  COEFFICIENTS_FROM_PERCENT,
  COEFFICIENTS_TO_PERCENT,
  coefficientFromShrinkage,
  coefficientsOf,
  type Formula,
  type Movement,
  type MovementQuestion,
  movement,
  SATURATION_PERCENT,
  type SizeChange,
  shrinkageOf,
  strainByCoefficient,
  strainByShrinkage,
} from "./movement.ts";
export { type OwnTimber, ownTimber } from "./own-timber.ts";
export { TIMBERS } from "./timbers.ts";
export type {
  Hardness,
  MovementCoefficients,
  Sawn,
  Shrinkage,
  Source,
  Standing,
  Timber,
} from "./types.ts";
