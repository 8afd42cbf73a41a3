/** From a section to the stick that it is made from. */
export { type BestCant, bestCant, type CantCandidate, type CantReason, type CurveLean } from "./best-cant.ts";
export {
  type BuiltUp,
  type BuiltUpPart,
  type BuiltUpQuestion,
  type BuiltUpWay,
  builtUp,
  type PlannedPart,
  planParts,
} from "./built-up.ts";
export {
  type BoardSizes,
  type BuiltUpLimits,
  CANT_WORTH_DEG,
  COMMON_BOARD,
  COMMON_BUILT_UP,
  COMMON_HOLDING,
  COMMON_STICK_ALLOWANCES,
  COMMON_WIDE_BOARD,
  type HoldingLimits,
  type JointLimits,
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
export {
  type SpringBevel,
  type SpringBevels,
  springBevels,
  springToldBy,
  type ToldSpring,
} from "./spring-bevels.ts";
export { type SawnSide, STICK_CONVENTION, type StickAnswer, type StickQuestion, stickFor } from "./stick.ts";
export { type BoardFence, type BoardFiller, type StickingBoard, stickingBoard } from "./sticking-board.ts";
export { turnSection } from "./turn-section.ts";
export type * from "./types.ts";
