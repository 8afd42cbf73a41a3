/**
 * What every answer of this folder carries: its conventions, what was assumed, the cautions, and the small drawing.
 *
 * A wall is seen from the room (or a case from before it): along runs to the right, projection out of the wall
 * towards the eye, height up. Corners and saw angles are degrees.
 */
import type { Point } from "../../curve/index.ts";
import type { Trouble, TroubleCode } from "../../measure/index.ts";

export type FitTrouble = Trouble<TroubleCode>;

/** What a line of a drawing stands for; the sheet chooses its weight and kind. */
export type LineKind =
  | "stick"
  | "wall"
  | "ceiling"
  | "cut"
  | "fence"
  | "table"
  | "blade"
  | "hidden"
  | "centre";

export interface DrawnShape {
  readonly kind: LineKind;
  readonly name: string;
  /** `closed`: the last point runs back to the first. */
  readonly run: "open" | "closed";
  /** Points in mm, y up. */
  readonly points: readonly Point[];
}

/** An arc that names an angle; `fromDeg` anticlockwise from +x. */
export interface DrawnAngle {
  readonly name: string;
  readonly at: Point;
  readonly radiusMm: number;
  readonly fromDeg: number;
  readonly sweepDeg: number;
  /** The angle as it is to be written. */
  readonly valueDeg: number;
}

export interface DrawnPlace {
  readonly name: string;
  readonly at: Point;
}

/** One view at full size, mm. */
export interface DrawnView {
  readonly title: string;
  readonly shapes: readonly DrawnShape[];
  readonly angles: readonly DrawnAngle[];
  readonly places: readonly DrawnPlace[];
}

export interface FitDrawing {
  readonly views: readonly DrawnView[];
}

/** What the saw's two angles mean, in every answer that has them. */
export const SAW_CONVENTION = {
  mitreDeg: "swing of the saw from a square cut",
  bevelDeg: "lean of the blade from upright",
  turnHandleTo: "the operator's end of the blade; its far end stands to the other side",
  laidFlat: "the stick's flat back on the table, face up",
  heldAtSpring: "upside down: the wall's side against the fence, the ceiling's side on the table",
} as const;

export type SawConvention = typeof SAW_CONVENTION;
