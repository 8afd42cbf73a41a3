/** The planes on the maker's shelf, as the shelf file holds them with every default filled in. Millimetres and degrees. */
import type { Chain } from "../curve/index.ts";

export type Hand = "left" | "right";
export type WallSide = "left" | "right" | "both" | "none";

interface PlaneBase {
  /** Unique on the shelf; made from kind and size where the file gives none. */
  readonly id: string;
  /** What the maker calls it, e.g. `3/8 in hollow`. */
  readonly name: string;
  /** What the maker wants to remember about it; nothing is reckoned from it. */
  readonly note?: string;
}

/** The body above a small plane's sole, wider than the sole itself. */
export interface Shoulder {
  readonly widthMm: number;
  /** Height above the sole's lowest point at which the wider body begins. */
  readonly heightMm: number;
}

/** Measured radius and measured width are kept apart; the arc follows from both: half angle = asin(width / 2 radius). */
export interface CurvedPlane extends PlaneBase {
  readonly kind: "hollow" | "round";
  readonly radiusMm: number;
  readonly widthMm: number;
  readonly pitchDeg?: number;
  readonly skewDeg?: number;
  readonly shoulder?: Shoulder;
  /** Standing wall its iron's corner clears by itself; the common default when absent. */
  readonly wallMm?: number;
}

export interface SnipeBill extends PlaneBase {
  readonly kind: "snipe bill";
  /** The side on which the upright wall stands when looking along the stroke. */
  readonly hand: Hand;
  readonly widthMm: number;
  readonly noseMm: number;
  /** Slope of the beak's free flank, degrees from level. */
  readonly slopeDeg: number;
  /** How deep a new wall the beak reaches. */
  readonly reachMm: number;
}

export interface FlatPlane extends PlaneBase {
  readonly kind: "rebate" | "smoother";
  readonly widthMm: number;
}

export interface MovingFillister extends PlaneBase {
  readonly kind: "moving fillister";
  readonly widthMm: number;
  readonly fenceMm: number;
  readonly depthMm: number;
}

export interface Plough extends PlaneBase {
  readonly kind: "plough";
  readonly widthsMm: readonly number[];
  readonly fenceMm: number;
  readonly depthMm: number;
}

export interface SidePlane extends PlaneBase {
  readonly kind: "side round" | "side snipe" | "side rebate";
  /** The side on which the wall stands that it pares, when looking along the stroke. */
  readonly hand: Hand;
  /** Width of its foot. */
  readonly widthMm: number;
  /** Only of a side round: radius of the flank it reaches up, as wide as its foot if absent. */
  readonly radiusMm?: number;
}

export interface BeadPlane extends PlaneBase {
  readonly kind: "bead";
  /** Width of the bead itself; its radius is half of it. */
  readonly widthMm: number;
  /** Width of the quirk that is sunk beside it. */
  readonly quirkMm: number;
  /** The side on which the quirk stands when looking along the stroke; the right (fence to the left) if absent. */
  readonly hand?: Hand;
}

/** Any other sole: a chain in the plane's own frame (see `Sole`). */
export interface ShapedPlane extends PlaneBase {
  readonly kind: "shaped";
  readonly sole: Chain;
  readonly cutsWall: WallSide;
}

export type Plane =
  | CurvedPlane
  | SnipeBill
  | FlatPlane
  | MovingFillister
  | Plough
  | SidePlane
  | BeadPlane
  | ShapedPlane;

export type PlaneKind = Plane["kind"];

export interface Shelf {
  readonly planes: readonly Plane[];
  /** What the reader filled in for the maker, in sentences for the bench; the plan repeats them. */
  readonly assumed: readonly string[];
}

/**
 * One sole of a plane (a plough has one for each iron), in the plane's frame: origin on the plane's axis at the
 * sole, +y into the body, left to right. The axis of a hollow, round, rebate, smoother, bead is its middle and the
 * origin lies ON the sole there; a snipe bill's is its upright side (x = 0 is the wall it cuts, the beak to the
 * right of it for the left hand, to the left for the right hand), its nose at y = 0.
 */
export interface Sole {
  readonly chain: Chain;
  /** Extent of the chain across, mm: `rightMm - leftMm` is the width. */
  readonly leftMm: number;
  readonly rightMm: number;
  readonly widthMm: number;
  /** The sides on which the plane cuts a clean wall of its own. */
  readonly cutsWall: { readonly left: boolean; readonly right: boolean };
  /** Set for a hollow and a round, whose sole is one arc about the axis: its radius, and +1 for a round, -1 for a hollow. */
  readonly arc?: { readonly radiusMm: number; readonly sign: 1 | -1 };
  readonly shoulder?: Shoulder;
}
