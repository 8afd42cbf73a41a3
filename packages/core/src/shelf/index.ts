/** The planes on the maker's shelf: read and written, their soles, what they can stand beside, their irons. */
export { assumedOf } from "./assumed-of.ts";
export { describePlane, describeShelf, type PlaneDescription, type ShelfWriting } from "./describe.ts";
export {
  type FilePlane,
  type FileUnit,
  PLANE_KINDS,
  type ShelfFile,
  shelfFileSchema,
} from "./file-schema.ts";
export {
  type Bed,
  type CurvedIron,
  clearanceDeg,
  curvedIron,
  cuttingPitchDeg,
  GROUND_BEVEL_DEG,
  ironEdge,
  ironToSole,
  NAMED_PITCHES_DEG,
  pitchAlongPlaneDeg,
  pitchSquareToEdgeDeg,
  soleToIron,
  squareBed,
  stretchRatio,
} from "./iron.ts";
export {
  DEFAULT_WALL_LIMITS,
  type ShareOfWidth,
  shareMm,
  type WallAllowance,
  type WallLimits,
  wallAllowanceMm,
} from "./limits.ts";
export { nearestWord } from "./nearest-word.ts";
export { readShelf, type ShelfReading } from "./read-shelf.ts";
export { SHAVING_MM, strokesToDepth } from "./shaving.ts";
export { planeEntry, type ShelfEntry, shelfFile } from "./shelf-entry.ts";
export { SHELF_FORMAT, SHELF_VERSION } from "./shelf-format.ts";
export type { ShelfOutcome, ShelfTrouble, ShelfTroubleCode } from "./shelf-trouble.ts";
export {
  LARGEST_PAIR_NUMBER,
  nearestPairNumber,
  pairSizeMm,
  type RadiusReading,
  READING_MM,
  radiusFromSole,
} from "./sizing.ts";
export { soleAngleDeg, soleDepthMm, soleOf, solesOf, widthForArcMm } from "./sole.ts";
export type * from "./types.ts";
