/** Where mouldings meet: mitres, frames, cornices, scribes, slopes, hips. Plain data that a drawing can stand on. */
export { SHORT_AT_THE_SAW_MM } from "./cautions.ts";
export {
  type Corner,
  type CornerKind,
  type CornerTriangle,
  cornerFromAngle,
  cornerFromTriangle,
  LEAST_CORNER_DEG,
  MOST_CORNER_DEG,
} from "./corner.ts";
export { cornice } from "./cornice.ts";
export { corniceScribes, type ScribedEnds } from "./cornice-scribes.ts";
export type * from "./cornice-types.ts";
export { type FaceProfile, faceProfile, risingFace } from "./face-profile.ts";
export { type Frame, type FrameQuestion, frame, type Rail, type RailEnd } from "./frame.ts";
export type { FrameShape, StatedSize } from "./frame-types.ts";
export {
  type Hip,
  type HipQuestion,
  type HipSide,
  hip,
  hipFromJack,
  hipSideFromJack,
  type JackQuestion,
} from "./hip.ts";
export {
  type Hopper,
  type HopperQuestion,
  type HopperSide,
  hopper,
  type Polygon,
  polygonMitre,
} from "./hopper.ts";
export { type BothPieces, flatSettings, type Mitre, type MitreQuestion, mitre } from "./mitre.ts";
export {
  type MitreOpening,
  type MitreSeasons,
  type MitreSeasonsQuestion,
  mitreOpening,
  mitreSeasons,
  type TimberForGap,
} from "./mitre-seasons.ts";
export type { LostArc, Placing, WallEdge } from "./placed-section.ts";
export {
  askRakePoint,
  type Rake,
  type RakedMember,
  type RakeQuestion,
  rake,
  riseOf,
  STEEPEST_RAKE_DEG,
} from "./rake.ts";
export { type RakeMember, type RakePoint, type Rise, rakePoint } from "./rake-point.ts";
export { cornerPlane, type SawCut, type SawSettings, type StickEdge } from "./saw-cut.ts";
export { type Scribe, type ScribeQuestion, scribe } from "./scribe.ts";
export { type ShootingBoard, shootingBoard } from "./shooting-board.ts";
export {
  type SideMoulding,
  type SideMouldingQuestion,
  type SlidingScrew,
  sideMoulding,
} from "./side-moulding.ts";
export { type Spring, springFrom, springFromLegs } from "./spring.ts";
export type * from "./types.ts";
export {
  type MitrePoint,
  type UnlikeMitre,
  type UnlikeMoulding,
  type UnlikeQuestion,
  unlikeMitre,
} from "./unlike.ts";
