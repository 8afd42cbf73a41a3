/** What is allowed and what can be held unless the maker says otherwise. All of it common practice, no source. */
import type { StickAllowances } from "./types.ts";

export const COMMON_STICK_ALLOWANCES: StickAllowances = {
  sawnWidthMm: 6,
  sawnThicknessMm: 4,
  planingMm: 50,
  endChecksMm: 25,
  bevelPlaningMm: 1,
};

export interface HoldingLimits {
  readonly leastWidthMm: number;
  readonly leastThicknessMm: number;
  /** Wood of the back that bears on the bench while the face is moulded. */
  readonly narrowestBedMm: number;
  /** A stick higher than so many times its bed rocks under a plane. */
  readonly mostHeightPerBedRatio: number;
}

export const COMMON_HOLDING: HoldingLimits = {
  leastWidthMm: 12,
  leastThicknessMm: 6,
  narrowestBedMm: 10,
  mostHeightPerBedRatio: 2.5,
};

export interface WideBoardAllowances {
  /** Of the board, below the mouldings, that the bench holds. */
  readonly holdMm: number;
  /** What sawing a moulding off takes, and planing its back and the board's new edge after it. */
  readonly sawAndPlaneMm: number;
}

export const COMMON_WIDE_BOARD: WideBoardAllowances = { holdMm: 80, sawAndPlaneMm: 5 };

export interface BoardSizes {
  /** Fence and stops stay below whatever a plane's sole comes down to by this. */
  readonly clearMm: number;
  /** A fence or a stop lower than this holds nothing. */
  readonly leastFenceMm: number;
  readonly fenceWidthMm: number;
  readonly fenceThickestMm: number;
  readonly stopLengthMm: number;
  /** Of the board beyond the stop and before the stick. */
  readonly endMm: number;
  readonly thicknessMm: number;
}

export const COMMON_BOARD: BoardSizes = {
  clearMm: 1,
  leastFenceMm: 2,
  fenceWidthMm: 30,
  fenceThickestMm: 20,
  stopLengthMm: 20,
  endMm: 50,
  thicknessMm: 25,
};

/** A cant that brings the planes less than this nearer to upright, on average, is not worth a sawcut, degrees. */
export const CANT_WORTH_DEG = 8;

/** How far a plane may lean from upright in the hand. */
export const MOST_CANT_DEG = 60;

export const LONGEST_STICK_MM = 100_000;
export const MOST_ALLOWANCE_MM = 1000;

export interface JointLimits {
  /** Wood thinner than this at a joint's end is a feather that breaks, degrees. */
  readonly leastEdgeDeg: number;
  /** Narrowest face that is glued, mm. */
  readonly leastJointMm: number;
}

export interface BuiltUpLimits extends JointLimits {
  /** No part is narrower or thinner. */
  readonly leastPartMm: number;
  /** Faces at least this wide are glued; narrower ones are pinned as well. */
  readonly leastGluedMm: number;
}

/** Common practice, no source. */
export const COMMON_BUILT_UP: BuiltUpLimits = {
  leastEdgeDeg: 30,
  leastJointMm: 5,
  leastPartMm: 6,
  leastGluedMm: 10,
};
