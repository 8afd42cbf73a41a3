/**
 * Drawn curves, mapped to millimetres, settled into what a section holds: lines, circular arcs of at most a half
 * circle, and free curves as runs of short lines.
 */
import type { Point } from "../curve/index.ts";
import { FLATTEN_MM } from "../measure/index.ts";
import { arcPieces, type Circular, circularOf, joinedArcs, type SettledPiece } from "./read-arcs.ts";
import { cubicPoint, type DrawnCurve } from "./read-curves.ts";
import { FARTHEST_DRAWN_MM, isNear, MOST_POINTS } from "./read-limits.ts";
import { nurbsPoints } from "./read-nurbs.ts";
import { type Reading, refuse } from "./read-troubles.ts";

/**
 * Settles a run of curves in millimetres, y up. Curves of no length vanish. Free curves are numbered from
 * `firstFree`. Refuses numbers no drawing can hold and more points than allowed; gives [] then.
 */
export function settle(
  reading: Reading,
  where: string,
  curves: readonly DrawnCurve[],
  firstFree: number,
): SettledPiece[] {
  const settled: SettledPiece[] = [];
  let free = firstFree;
  // Quarters of one circle that a program saved as Béziers are one arc again, as long as it stays a half circle.
  let lastBezierArc: Circular | null = null;
  for (const curve of curves) {
    if (!withinReach(curve)) {
      refuse(reading, "drawing-number-absurd", where, { farthestMm: FARTHEST_DRAWN_MM });
      return [];
    }
    const circular: Circular | null = circularOf(curve);
    let pieces: SettledPiece[];
    if (circular !== null && curve.kind === "cubic" && lastBezierArc !== null) {
      const joined: Circular | null = joinedArcs(lastBezierArc, circular);
      if (joined !== null) {
        settled.pop();
        settled.push(...arcPieces(joined));
        lastBezierArc = joined;
        continue;
      }
    }
    if (circular !== null) {
      pieces = arcPieces(circular);
      lastBezierArc = curve.kind === "cubic" && pieces.length === 1 ? circular : null;
    } else {
      lastBezierArc = null;
      if (stepsOf(curve) > reading.pointsLeft) {
        refuse(reading, "drawing-too-many-points", where, { most: MOST_POINTS });
        return [];
      }
      const points = pointsOf(curve, reading.pointsLeft);
      const number = curve.kind === "line" ? 0 : free++;
      pieces = [];
      for (let i = 1; i < points.length; i++) {
        const from = points[i - 1]!;
        const to = points[i]!;
        if (from.x !== to.x || from.y !== to.y) pieces.push({ from, to, bulge: 0, free: number });
      }
    }
    reading.pointsLeft -= pieces.length;
    if (reading.pointsLeft < 0) {
      refuse(reading, "drawing-too-many-points", where, { most: MOST_POINTS });
      return [];
    }
    // The crown of an arc of absurd radius may lie far beyond its ends.
    if (!pieces.every((piece) => isNear(piece.to))) {
      refuse(reading, "drawing-number-absurd", where, { farthestMm: FARTHEST_DRAWN_MM });
      return [];
    }
    for (const piece of pieces) settled.push(piece);
  }
  return settled;
}

/** How many chords keep within `FLATTEN_MM` of a curve, taken at even steps of its parameter. */
function stepsOf(curve: DrawnCurve): number {
  switch (curve.kind) {
    case "line":
      return 1;
    case "ellipse": {
      // A chord over the step h of t errs by at most max|P''| h² / 8, and |P''| is at most the longer half axis.
      const { u, v } = curve;
      const longMm = (Math.hypot(u.x + v.y, u.y - v.x) + Math.hypot(u.x - v.y, u.y + v.x)) / 2;
      // Quarters, so that the crown of a half or whole ellipse is one of the points.
      return (
        4 * Math.max(1, Math.ceil((Math.abs(curve.sweepRad) * Math.sqrt(longMm / (8 * FLATTEN_MM))) / 4))
      );
    }
    case "cubic": {
      // |B''| is at most 6 times the larger second difference of the control points.
      const { from, handleFrom, handleTo, to } = curve;
      const first = Math.hypot(
        from.x - 2 * handleFrom.x + handleTo.x,
        from.y - 2 * handleFrom.y + handleTo.y,
      );
      const second = Math.hypot(handleFrom.x - 2 * handleTo.x + to.x, handleFrom.y - 2 * handleTo.y + to.y);
      return Math.max(1, Math.ceil(Math.sqrt((6 * Math.max(first, second)) / (8 * FLATTEN_MM))));
    }
    case "nurbs":
      return curve.curve.points.length;
  }
}

/** Points along a curve, both ends included; the chords stay within `FLATTEN_MM` of it. */
function pointsOf(curve: DrawnCurve, mostPoints: number): Point[] {
  switch (curve.kind) {
    case "line":
      return [curve.from, curve.to];
    case "ellipse":
      return sampled(curve, (t) => {
        const angle = curve.startRad + t * curve.sweepRad;
        const cos = Math.cos(angle);
        const sin = Math.sin(angle);
        const { centre, u, v } = curve;
        return { x: centre.x + u.x * cos + v.x * sin, y: centre.y + u.y * cos + v.y * sin };
      });
    case "cubic":
      return sampled(curve, (t) => cubicPoint(curve, t));
    case "nurbs":
      return nurbsPoints(curve.curve, curve.from, curve.to, { chordTolMm: FLATTEN_MM, mostPoints });
  }
}

function sampled(curve: DrawnCurve, at: (t: number) => Point): Point[] {
  const count = stepsOf(curve);
  const points: Point[] = [curve.from];
  for (let i = 1; i < count; i++) points.push(at(i / count));
  points.push(curve.to);
  return points;
}

function withinReach(curve: DrawnCurve): boolean {
  if (!isNear(curve.from) || !isNear(curve.to)) return false;
  switch (curve.kind) {
    case "line":
      return true;
    case "ellipse":
      // A nearly straight arc has its centre far off: only the angles and axes must be numbers.
      return (
        Number.isFinite(curve.sweepRad + curve.startRad) &&
        Number.isFinite(curve.centre.x + curve.centre.y + curve.u.x + curve.u.y + curve.v.x + curve.v.y)
      );
    case "cubic":
      return isNear(curve.handleFrom) && isNear(curve.handleTo);
    case "nurbs":
      return curve.curve.points.every(isNear);
  }
}
