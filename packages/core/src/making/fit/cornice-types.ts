/** A run of moulding round a room or a case: what is asked and what comes back. */
import type { Corner } from "./corner.ts";
import type { SawCut } from "./saw-cut.ts";
import type { Spring } from "./spring.ts";
import type { FitDrawing, FitTrouble, SawConvention } from "./types.ts";

/** `"scribe left"`: the piece on the left of the corner is scribed onto the other; `"scribe right"`: the right one. */
export type CornerJoint = "mitre" | "scribe left" | "scribe right";

export interface RunCorner {
  readonly corner: Corner;
  /** Left out: outside corners are mitred, inside ones scribed (the later piece onto the earlier). */
  readonly joint?: CornerJoint | undefined;
}

/** How an open run ends: a square cut, a square cut against another wall, or a return back to its own wall. */
export type RunEnd = "square" | "against a wall" | "return";

export interface CorniceQuestion {
  readonly spring: Spring;
  /** Of the moulding on the wall, mm. */
  readonly projectionMm: number;
  readonly heightMm: number;
  /** Lengths at the walls, in order from left to right as one faces them, mm. */
  readonly wallsMm: readonly number[];
  /** Between each wall and the next; as many as walls for a closed run (the last one joins the last wall to the first). */
  readonly corners: readonly RunCorner[];
  /** For an open run; square if left out. */
  readonly start?: RunEnd | undefined;
  readonly end?: RunEnd | undefined;
  /** Can the section be scribed at all (`Scribe.isPossible`)? Yes if left out. */
  readonly scribing?: "possible" | "impossible" | undefined;
}

export type EndJoint = "mitre" | "scribed" | "butt" | "square" | "against a wall" | "return mitre";

export interface PieceEnd {
  readonly joint: EndJoint;
  readonly corner: Corner | null;
  /** How far the front runs past the back, mm; negative: the back is longer. */
  readonly frontPastBackMm: number;
  /** A scribed end is sawn so first and then cut to the outline of the scribe. */
  readonly laidFlat: SawCut;
  readonly heldAtSpring: SawCut;
}

export interface CornicePiece {
  readonly number: number;
  readonly kind: "wall" | "return";
  /** Which wall, from 1. */
  readonly wall: number;
  readonly left: PieceEnd;
  readonly right: PieceEnd;
  /** Along the wall and along the front, mm. */
  readonly backMm: number;
  readonly frontMm: number;
  /** Long point to long point, and short to short. */
  readonly longMm: number;
  readonly shortMm: number;
  /** The harder end first: it can be tried and cut again while there is length to spare. */
  readonly cutFirst: "left" | "right";
  readonly why: FitTrouble;
}

export interface Cornice {
  readonly pieces: readonly CornicePiece[];
  /** Numbers of the pieces in the order they are fitted: what is scribed goes up after what it is scribed onto. */
  readonly fittingOrder: readonly number[];
  readonly run: "open" | "closed";
  /** By how much a closed run misses its own start, mm: what the measured lengths and corners disagree by. */
  readonly closingGapMm: number | null;
  readonly convention: SawConvention & {
    readonly order: "walls from left to right as one faces them; left and right of a piece likewise";
    readonly lengths: "back along the wall, front at the full projection";
  };
  readonly assumed: readonly FitTrouble[];
  readonly cautions: readonly FitTrouble[];
  readonly drawing: FitDrawing;
}
