export { GOOD_HAND, type HandAccuracy } from "./accuracy.ts";
export { withLineMoved } from "./arc-circles.ts";
export type { Shavings } from "./bench.ts";
export { COMMON_SHAVINGS } from "./bench.ts";
export type { KeepSquare } from "./edges-to-keep.ts";
export { type Measured, measuredShelf, type StartedStick, standingAfter } from "./from-where-it-stands.ts";
export { mirrorShelf } from "./handedness.ts";
export type { ReasonedMark } from "./marks.ts";
export { COMMON_WORKING, type Working } from "./minutes.ts";
export { type Normalised, normalise } from "./normalise.ts";
export type { Preference } from "./order-weights.ts";
export { planSection, planSteps } from "./plan-section.ts";
export type { CutSwap, MissSide, PlanProgress, PlanRequest } from "./request.ts";
export type { Way } from "./way.ts";
export {
  type BenchUnit,
  type CutFacts,
  cutSentence,
  cutTitle,
  doneSentence,
  leanWords,
  sayLength,
  stickWords,
} from "./words.ts";
