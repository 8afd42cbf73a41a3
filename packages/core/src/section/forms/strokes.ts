/** How a form is drawn: a run of pieces from (0, 0), walked from gauge edge to far edge with the wood on the right. */
import {
  type Arc,
  arc,
  arcsThrough,
  distanceMm,
  type Line,
  line,
  type Piece,
  type Point,
  point,
} from "../../curve/index.ts";
import { asinRad } from "../../measure/index.ts";

/** What an arc leaves standing, walked with the wood on the right: round turns clockwise, hollow anticlockwise. */
export type Bend = "round" | "hollow";

export const START: Point = point(0, 0);

export function lineTo(from: Point, x: number, y: number): Line {
  return line(from, point(x, y));
}

/** The arc between two points that turns by the given sweep; `sweepRad` over 0 to π. */
export function arcBySweep(from: Point, to: Point, sweepRad: number, bend: Bend): Arc {
  const bulge = Math.min(1, Math.tan(sweepRad / 4));
  return arc(from, to, bend === "round" ? -bulge : bulge);
}

/** Sweep of the shorter arc of a radius between two points, radians; the radius is at least half their distance. */
export function sweepForRadiusRad(from: Point, to: Point, radiusMm: number): number {
  return 2 * asinRad(Math.min(1, distanceMm(from, to) / 2 / radiusMm));
}

/** Arcs of a radius that start level (along +x) and turn by `sweepRad`, up to a full circle. */
export function arcsFromLevel(radiusMm: number, sweepRad: number, bend: Bend): readonly Piece[] {
  const side = bend === "round" ? -1 : 1;
  const circle = { centre: point(0, side * radiusMm), radiusMm };
  return arcsThrough(circle, -side * (Math.PI / 2), side * sweepRad);
}
