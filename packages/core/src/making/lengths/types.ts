/** What is asked and answered when pieces are marked along real sticks. Lengths are mm along the stick. */
import type { Trouble, TroubleCode } from "../../measure/index.ts";

export type LengthsTrouble = Trouble<TroubleCode>;

/** One piece, measured along its longest edge: mitre point to mitre point on the outside of a frame. */
export interface WantedPiece {
  readonly lengthMm: number;
  /** What the maker calls it; its run's name and its number in the run if absent. */
  readonly name?: string;
}

/** Pieces in order from left to right, as they follow each other round a frame or along a wall. */
export interface PieceRun {
  readonly name: string;
  readonly pieces: readonly WantedPiece[];
  /** `closed`: the last piece meets the first. `open`: it does not. `loose`: no piece meets another. */
  readonly ends: "closed" | "open" | "loose";
}

/** A knot, a split, a spoilt place: no wood of a piece may lie in it. Measured from the stick's left end. */
export interface BadPlace {
  readonly fromMm: number;
  readonly toMm: number;
  readonly why?: string;
}

/** A stick at hand, or `count` alike. */
export interface StickAtHand {
  readonly lengthMm: number;
  readonly name?: string;
  readonly count?: number;
  readonly badPlaces?: readonly BadPlace[];
}

export interface LengthsAllowances {
  /** What the saw turns to dust, along the stick. */
  readonly kerfMm: number;
  /** Left on each end of each piece for sawing and trimming its mitre. */
  readonly trimMm: number;
  /** Lost at each end of each stick, where the planes come on and run off. */
  readonly planingMm: number;
}

export interface LengthsQuestion {
  readonly runs: readonly PieceRun[];
  readonly sticks: readonly StickAtHand[];
  readonly allowances?: Partial<LengthsAllowances>;
  readonly search?: Partial<LengthsSearch>;
}

/** How long to look before the best found is given as such. Steps, not seconds, so that every run gives the same. */
export interface LengthsSearch {
  readonly packingSteps: number;
  readonly neighbourSteps: number;
}

export interface Stretch {
  readonly fromMm: number;
  readonly toMm: number;
}

export interface MarkedPiece {
  readonly run: string;
  /** Place in its run, from 1. */
  readonly number: number;
  readonly name: string;
  /** The piece itself, along its longest edge. */
  readonly fromMm: number;
  readonly toMm: number;
  /** With what is left on it for trimming: where it is sawn off. */
  readonly roughFromMm: number;
  readonly roughToMm: number;
  /** It lies right after the piece that it meets at its left end, in the same sound stretch. */
  readonly follows: "its neighbour" | "another piece" | "none";
}

export interface MarkedStick {
  readonly name: string;
  /** Place in the list of sticks as given, alike ones counted out, from 0. */
  readonly index: number;
  readonly lengthMm: number;
  readonly pieces: readonly MarkedPiece[];
  /** What each saw cut takes, from left to right. */
  readonly kerfs: readonly Stretch[];
  /** Both ends lost to planing. */
  readonly ends: readonly Stretch[];
  readonly badPlaces: readonly BadPlace[];
  /** Sound wood left over. */
  readonly offcuts: readonly Stretch[];
}

export type Standing = "proven" | "best found";

export interface SharedOut {
  readonly sticks: readonly MarkedStick[];
  /** Sticks that stay whole, by name. */
  readonly spare: readonly string[];
  /** Sticks used; `proven`: fewer cannot do; otherwise at least `atLeast` are needed. */
  readonly sticksUsed: { readonly count: number; readonly atLeast: number; readonly standing: Standing };
  /** Meeting ends: how many there are, how many lie side by side in one stick, and how many could at most. */
  readonly neighbours: {
    readonly meetings: number;
    readonly together: number;
    readonly atMost: number;
    readonly standing: Standing;
  };
  readonly usedMm: number;
  readonly wastedMm: number;
  readonly allowances: LengthsAllowances;
  readonly convention: typeof LENGTHS_CONVENTION;
  readonly assumed: readonly LengthsTrouble[];
  readonly cautions: readonly LengthsTrouble[];
}

export const LENGTHS_CONVENTION = {
  measuredFrom: "the left end of the stick, seen with the gauge edge towards you",
  lengthOf: "the longest edge of a piece; its mitres are sawn after it is parted off square",
  neighbours: "the right end of a piece and the left end of the next one round",
  fewest: "first the fewest sticks, then most neighbours together, then the least length of sticks",
} as const;
