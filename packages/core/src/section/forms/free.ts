/** Free forms: an arc by its end, an arc by its sweep, the arc that runs on, a free curve. */
import { distanceMm, line, type Piece, type Point, point } from "../../curve/index.ts";
import { FLATTEN_MM, normaliseRad, SAME_POINT_MM, toRad } from "../../measure/index.ts";
import type { ArcSpec, BezierSpec, FreeCurveSpec, RunningArcSpec, SweptArcSpec } from "../part-spec.ts";
import { arcBySweep, arcsFromLevel, lineTo, START, sweepForRadiusRad } from "./strokes.ts";

export function freeArc(spec: ArcSpec): readonly Piece[] {
  const end = point(spec.acrossMm, spec.riseMm);
  return [arcBySweep(START, end, sweepForRadiusRad(START, end, spec.radiusMm), spec.bend)];
}

export function sweptArc(spec: SweptArcSpec): readonly Piece[] {
  return arcsFromLevel(spec.radiusMm, toRad(spec.sweepDeg), spec.bend);
}

/**
 * The arc (or flat) that leaves in direction `startRad` and ends at the given point; null if that takes more than a
 * half circle. The sweep is twice the angle from the direction to the chord (tangent and chord, Euclid III.32).
 */
export function runningArc(spec: RunningArcSpec, startRad: number): readonly Piece[] | null {
  const end = point(spec.acrossMm, spec.riseMm);
  const sweepRad = 2 * normaliseRad(Math.atan2(end.y, end.x) - startRad);
  if (Math.abs(sweepRad) > Math.PI) return null;
  // Flatter than the noise of its own ends: a line, so that no arc of an endless radius is handed on.
  const sagittaMm = (distanceMm(START, end) / 2) * Math.tan(Math.abs(sweepRad) / 4);
  if (sagittaMm <= SAME_POINT_MM) return [lineTo(START, end.x, end.y)];
  return [arcBySweep(START, end, Math.abs(sweepRad), sweepRad < 0 ? "round" : "hollow")];
}

/** A cap, not a precision: 4,096 lines hold a curve of 300 mm that turns as sharply as a bead of 1 mm. */
const MOST_LINES_PER_BEZIER = 4096;

/** The curve as short lines, chord error `FLATTEN_MM` or less. */
export function freeCurve(spec: FreeCurveSpec): readonly Piece[] {
  const pieces: Piece[] = [];
  let at = START;
  for (const bezier of spec.beziers) {
    for (const next of flattenBezier(at, bezier)) {
      if (distanceMm(at, next) <= SAME_POINT_MM) continue;
      pieces.push(line(at, next));
      at = next;
    }
  }
  return pieces;
}

/**
 * Points of a cubic Bézier at equal steps of its parameter, the start left out. A step h of the parameter has a chord
 * error of at most h²/8 · max |B″|, and |B″| is at most 6 times the larger second difference of the control points
 * (Filip, Magedson, Markot, CAGD 3, 1986; from memory).
 */
function flattenBezier(from: Point, bezier: BezierSpec): readonly Point[] {
  const [x1, y1] = bezier.control1;
  const [x2, y2] = bezier.control2;
  const [x3, y3] = bezier.to;
  const bend = Math.max(
    Math.hypot(from.x - 2 * x1 + x2, from.y - 2 * y1 + y2),
    Math.hypot(x1 - 2 * x2 + x3, y1 - 2 * y2 + y3),
  );
  const wanted = Math.ceil(Math.sqrt((6 * bend) / (8 * FLATTEN_MM)));
  const count = Math.min(MOST_LINES_PER_BEZIER, Math.max(1, wanted));
  return Array.from({ length: count }, (_, index) => {
    if (index + 1 === count) return point(x3, y3);
    const t = (index + 1) / count;
    const s = 1 - t;
    const [a, b, c, d] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
    return point(a * from.x + b * x1 + c * x2 + d * x3, a * from.y + b * y1 + c * y2 + d * y3);
  });
}
