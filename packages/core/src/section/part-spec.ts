/**
 * The parts that a maker composes a section from, as plain data: they stand in the job file as they are.
 *
 * Directions are those of the section seen on its end, the stick lying on its back: `across` runs along the face
 * from the gauge edge to the far edge, `rise` is up, away from the back (negative: down, into the wood).
 * Lengths are mm, angles degrees, anticlockwise positive. README.md of this folder draws each part.
 */

/** What every part may carry beside its own sizes. */
export interface PartCommon {
  /** What the maker calls it; its kind if absent. */
  readonly name?: string | undefined;
  /** Turns the whole part about its start, so that it runs on from the part before without an arris. */
  readonly smooth?: boolean | undefined;
  /** Turns the whole part about its start, degrees anticlockwise. Not together with `smooth`. */
  readonly leanDeg?: number | undefined;
}

/** A flat. `"rest"`: as wide as it must be for the chain to end on the far edge (one such fillet in a chain). */
export interface FilletSpec extends PartCommon {
  readonly kind: "fillet";
  readonly widthMm: number | "rest";
}

/** An upright wall, up or down. */
export interface StepSpec extends PartCommon {
  readonly kind: "step";
  readonly riseMm: number;
}

/** A sloping flat. */
export interface BevelSpec extends PartCommon {
  readonly kind: "bevel";
  readonly acrossMm: number;
  readonly riseMm: number;
}

/** A corner taken off at 45°, falling unless `riseMm` says otherwise. */
export interface ChamferSpec extends PartCommon {
  readonly kind: "chamfer";
  readonly acrossMm: number;
  readonly riseMm?: number | undefined;
}

/**
 * A narrow square groove. `walls`: `"both"` (the default) goes down, across and up again; `"first"` goes down and
 * across and stays at the bottom, so that a bead may rise from it; `"last"` begins at the bottom.
 */
export interface QuirkSpec extends PartCommon {
  readonly kind: "quirk";
  readonly widthMm: number;
  readonly depthMm: number;
  readonly walls?: "both" | "first" | "last" | undefined;
}

/** A narrow groove with a point at the bottom, as a snipe bill leaves it; `upright` names the side that stands square. */
export interface VeeQuirkSpec extends PartCommon {
  readonly kind: "vee quirk";
  readonly widthMm: number;
  readonly depthMm: number;
  readonly upright?: "first" | "last" | "neither" | undefined;
}

/** A half-round standing on the level of its start: the small one, the one that stands proud, the large one. */
export interface HalfRoundSpec extends PartCommon {
  readonly kind: "bead" | "astragal" | "torus";
  readonly widthMm: number;
}

/** The segment that one hollow makes held upright: 60° unless `sweepDeg` says otherwise; then radius = width. */
export interface LowBeadSpec extends PartCommon {
  readonly kind: "low bead";
  readonly widthMm: number;
  readonly sweepDeg?: number | undefined;
}

/** Beads side by side, each as a low bead; `gapMm` of flat between neighbours (none unless given). */
export interface ReedsSpec extends PartCommon {
  readonly kind: "reeds";
  readonly count: number;
  readonly widthMm: number;
  readonly sweepDeg?: number | undefined;
  readonly gapMm?: number | undefined;
}

/** Coves side by side, sunk below the level of their start; sizes as for reeds. */
export interface FlutesSpec extends PartCommon {
  readonly kind: "flutes";
  readonly count: number;
  readonly widthMm: number;
  readonly sweepDeg?: number | undefined;
  readonly gapMm?: number | undefined;
}

/**
 * Reeds or flutes that keep to a width, what is left of it shared evenly at both ends; `filletMm` of flat between
 * neighbours (none unless given). With `radiusMm` alone as many as there is room for; with `count` alone the widest
 * that leave each end at least `leastEndMm` (none unless given), of a sole on the shelf where one is known.
 */
export interface BandSpec extends PartCommon {
  readonly kind: "band";
  readonly of: "reeds" | "flutes";
  /** Of the whole band, from end to end. */
  readonly widthMm: number;
  readonly count?: number | undefined;
  readonly radiusMm?: number | undefined;
  /** 60° unless given. */
  readonly sweepDeg?: number | undefined;
  readonly filletMm?: number | undefined;
  readonly leastEndMm?: number | undefined;
}

/**
 * A convex (ovolo) or hollow (cavetto, cove) quarter, or less than a quarter where the two sizes differ:
 * `"tangent"` (Hatfield, the default) runs square to the shorter side at one end; `"longer side"` (Nicholson) takes
 * the longer size as radius; a number is the radius itself, mm. Equal sizes give the plain quadrant either way.
 */
export interface QuarterSpec extends PartCommon {
  readonly kind: "ovolo" | "cavetto";
  readonly acrossMm: number;
  readonly riseMm: number;
  readonly construction?: "tangent" | "longer side" | undefined;
  /** A radius of the maker's own instead of a construction, mm. */
  readonly radiusMm?: number | undefined;
}

/**
 * A deep cove of two quadrants (Nicholson): the small one a third of the width, the large one two thirds; their
 * difference is how much further out the large one's lip stands. `small` says which comes first, from the gauge edge.
 */
export interface ScotiaSpec extends PartCommon {
  readonly kind: "scotia";
  readonly acrossMm: number;
  readonly small?: "first" | "last" | undefined;
  /** Radius of the small quadrant if it is not a third of the width, mm; at most half the width. */
  readonly smallRadiusMm?: number | undefined;
}

/**
 * A hollow and a round in one S. Recta: the hollow stands at the proud end (the higher one, seen with the back on
 * the wall); reversa: the round does. `"flat"` (the default): two arcs of 60° on the halved joining line; `"thick"`:
 * the ends run exactly along the rise (recta) or across (reversa): two quadrants where the sizes are equal.
 */
export interface CymaSpec extends PartCommon {
  readonly kind: "cyma recta" | "cyma reversa";
  readonly acrossMm: number;
  readonly riseMm: number;
  readonly construction?: "flat" | "thick" | undefined;
  /** Share of the joining line that the hollow takes; a half unless given. */
  readonly hollowRatio?: number | undefined;
}

/** Any arc of at most a half circle, by its end and radius; `bend` says what shape is left: a round or a hollow one. */
export interface ArcSpec extends PartCommon {
  readonly kind: "arc";
  readonly acrossMm: number;
  readonly riseMm: number;
  readonly radiusMm: number;
  readonly bend: "round" | "hollow";
}

/** An arc by radius and sweep, starting level unless `smooth` or `leanDeg` turns it. At most 360°. */
export interface SweptArcSpec extends PartCommon {
  readonly kind: "swept arc";
  readonly radiusMm: number;
  readonly sweepDeg: number;
  readonly bend: "round" | "hollow";
}

/** The one arc that runs on from the part before and ends at the given point; its radius follows. */
export interface RunningArcSpec {
  readonly kind: "running arc";
  readonly name?: string | undefined;
  readonly acrossMm: number;
  readonly riseMm: number;
}

/** A free curve: cubic Béziers, every point counted from the part's start, [across, rise] in mm. */
export interface FreeCurveSpec extends PartCommon {
  readonly kind: "free curve";
  readonly beziers: readonly BezierSpec[];
}

export interface BezierSpec {
  readonly control1: readonly [number, number];
  readonly control2: readonly [number, number];
  readonly to: readonly [number, number];
}

export type PartSpec =
  | FilletSpec
  | StepSpec
  | BevelSpec
  | ChamferSpec
  | QuirkSpec
  | VeeQuirkSpec
  | HalfRoundSpec
  | LowBeadSpec
  | ReedsSpec
  | FlutesSpec
  | BandSpec
  | QuarterSpec
  | ScotiaSpec
  | CymaSpec
  | ArcSpec
  | SweptArcSpec
  | RunningArcSpec
  | FreeCurveSpec;

export type PartKind = PartSpec["kind"];

/** What is taken off a corner between the back and an edge. */
export type BackSpec = BackRebateSpec | BackBevelSpec;

/** A glass rebate: `widthMm` across from the edge, `depthMm` up from the back. */
export interface BackRebateSpec {
  readonly kind: "rebate";
  readonly name?: string | undefined;
  readonly edge: "gauge" | "far";
  readonly widthMm: number;
  readonly depthMm: number;
}

/** A bevel from the back to the edge: `fromBackDeg` from the back's plane, rising `riseMm` up the edge. */
export interface BackBevelSpec {
  readonly kind: "bevel";
  readonly name?: string | undefined;
  readonly edge: "gauge" | "far";
  readonly riseMm: number;
  readonly fromBackDeg: number;
}

export interface StickSpec {
  readonly widthMm: number;
  readonly thicknessMm: number;
}

/** A whole section as a maker composes it. */
export interface SectionSpec {
  readonly name: string;
  readonly stick: StickSpec;
  /** Height of the chain's start on the gauge edge, from the back, mm; the stick's thickness unless given. */
  readonly startHeightMm?: number | undefined;
  readonly parts: readonly PartSpec[];
  readonly back?: readonly BackSpec[] | undefined;
}
