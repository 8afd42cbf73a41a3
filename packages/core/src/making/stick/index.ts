/** From a section to the stick that it is made from. */
export { type BestCant, bestCant, type CantCandidate, type CantReason, type CurveLean } from "./best-cant.ts";
export {
  type BuiltUp,
  type BuiltUpLimits,
  type BuiltUpPart,
  type BuiltUpQuestion,
  type BuiltUpWay,
  builtUp,
  COMMON_BUILT_UP,
  type PlannedPart,
  planParts,
} from "./built-up.ts";
export {
  type BoardSizes,
  COMMON_BOARD,
  COMMON_HOLDING,
  COMMON_STICK_ALLOWANCES,
  COMMON_WIDE_BOARD,
  type HoldingLimits,
  type WideBoardAllowances,
} from "./defaults.ts";
export type { GluingStep } from "./gluing.ts";
export {
  type BlankTurn,
  type Drift,
  type Flank,
  type GrainAdvice,
  type GrainSeen,
  grainAdvice,
  type StickGrain,
} from "./grain.ts";
export type { Holding, HoldingRule, Shortcoming, WideBoard } from "./holding.ts";
export { type SpringBevel, type SpringBevels, springBevels } from "./spring-bevels.ts";
export { STICK_CONVENTION, type StickAnswer, type StickQuestion, stickFor } from "./stick.ts";
export { type BoardFence, type BoardFiller, type StickingBoard, stickingBoard } from "./sticking-board.ts";
export { turnSection } from "./turn-section.ts";
export type * from "./types.ts";
