/**
 * Curves as drawing programs know them, mapped into millimetres and then settled into what a section holds:
 * lines, circular arcs of at most a half circle, and free curves as runs of short lines.
 */
import type { Point } from "../curve/index.ts";
import {
  ARC_HANDLE_RATIO,
  DRAWING_NOISE_MM,
  FLAT_SAGITTA_MM,
  FLATTEN_MM,
  SAME_POINT_MM,
} from "../measure/index.ts";
import { type Affine, mapPoint, mapVector } from "./read-affine.ts";
import { FARTHEST_DRAWN_MM, MOST_POINTS } from "./read-limits.ts";
import { type NurbsCurve, nurbsPoints } from "./read-nurbs.ts";
import { type Reading, refuse } from "./read-troubles.ts";

export interface DrawnLine {
  readonly kind: "line";
  readonly from: Point;
  readonly to: Point;
}

/**
 * centre + u cos t + v sin t, for t from `startRad` over `sweepRad` (signed). Circles and ellipses alike, and any
 * affine map of them; the ends are kept as drawn, so that neighbours meet exactly.
 */
export interface DrawnEllipse {
  readonly kind: "ellipse";
  readonly from: Point;
  readonly to: Point;
  readonly centre: Point;
  readonly u: Point;
  readonly v: Point;
  readonly startRad: number;
  readonly sweepRad: number;
}

export interface DrawnCubic {
  readonly kind: "cubic";
  readonly from: Point;
  readonly handleFrom: Point;
  readonly handleTo: Point;
  readonly to: Point;
}

export interface DrawnNurbs {
  readonly kind: "nurbs";
  readonly from: Point;
  readonly to: Point;
  readonly curve: NurbsCurve;
}

export type DrawnCurve = DrawnLine | DrawnEllipse | DrawnCubic | DrawnNurbs;

/** A piece in millimetres, y up. `bulge` 0 is a line; `free` numbers the free curve it is part of, 0 if none. */
export interface SettledPiece {
  readonly from: Point;
  readonly to: Point;
  readonly bulge: number;
  readonly free: number;
}

export function drawnCircle(centre: Point, radius: number): DrawnEllipse {
  const start = { x: centre.x + radius, y: centre.y };
  return {
    kind: "ellipse",
    from: start,
    to: start,
    centre,
    u: { x: radius, y: 0 },
    v: { x: 0, y: radius },
    startRad: 0,
    sweepRad: 2 * Math.PI,
  };
}

/** The circular piece between two points with bulge = tan(sweep / 4), of any sweep up to a full circle. */
export function drawnBulge(from: Point, to: Point, bulge: number): DrawnCurve {
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  if (bulge === 0 || chord === 0) return { kind: "line", from, to };
  const sweepRad = 4 * Math.atan(bulge);
  // Height of the centre above the chord's middle, to the left of travel: c/2 · cot(sweep/2) = c/2 · (1 - b²)/(2b).
  const rise = (1 - bulge * bulge) / (4 * bulge);
  const centre = {
    x: (from.x + to.x) / 2 - rise * (to.y - from.y),
    y: (from.y + to.y) / 2 + rise * (to.x - from.x),
  };
  const radius = Math.hypot(from.x - centre.x, from.y - centre.y);
  return {
    kind: "ellipse",
    from,
    to,
    centre,
    u: { x: radius, y: 0 },
    v: { x: 0, y: radius },
    startRad: Math.atan2(from.y - centre.y, from.x - centre.x),
    sweepRad,
  };
}

export function mapCurve(map: Affine, curve: DrawnCurve): DrawnCurve {
  const from = mapPoint(map, curve.from);
  const to = mapPoint(map, curve.to);
  switch (curve.kind) {
    case "line":
      return { kind: "line", from, to };
    case "ellipse":
      return {
        ...curve,
        from,
        to,
        centre: mapPoint(map, curve.centre),
        u: mapVector(map, curve.u),
        v: mapVector(map, curve.v),
      };
    case "cubic":
      return {
        kind: "cubic",
        from,
        to,
        handleFrom: mapPoint(map, curve.handleFrom),
        handleTo: mapPoint(map, curve.handleTo),
      };
    case "nurbs":
      return {
        kind: "nurbs",
        from,
        to,
        curve: { ...curve.curve, points: curve.curve.points.map((p) => mapPoint(map, p)) },
      };
  }
}

export function reverseCurve(curve: DrawnCurve): DrawnCurve {
  const { from: to, to: from } = curve;
  switch (curve.kind) {
    case "line":
      return { kind: "line", from, to };
    case "ellipse":
      return { ...curve, from, to, startRad: curve.startRad + curve.sweepRad, sweepRad: -curve.sweepRad };
    case "cubic":
      return { kind: "cubic", from, to, handleFrom: curve.handleTo, handleTo: curve.handleFrom };
    case "nurbs": {
      const { degree, points, weights, knots } = curve.curve;
      const last = knots[knots.length - 1]!;
      const first = knots[0]!;
      return {
        kind: "nurbs",
        from,
        to,
        curve: {
          degree,
          points: [...points].reverse(),
          weights: [...weights].reverse(),
          knots: [...knots].reverse().map((knot) => first + last - knot),
        },
      };
    }
  }
}

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
      const points = pointsOf(curve);
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

interface Circular {
  readonly from: Point;
  readonly to: Point;
  readonly centre: Point;
  readonly radiusMm: number;
  /** Signed, anticlockwise positive. */
  readonly sweepRad: number;
}

function circularOf(curve: DrawnCurve): Circular | null {
  if (curve.kind === "ellipse") return circularEllipse(curve);
  if (curve.kind === "cubic") return circularCubic(curve);
  return null;
}

/** The ellipse as a circle, if its two half axes differ by no more than what flattening may err. */
function circularEllipse(curve: DrawnEllipse): Circular | null {
  const { u, v } = curve;
  // Half axes are the singular values of [u v].
  const sum = Math.hypot(u.x + v.y, u.y - v.x);
  const difference = Math.hypot(u.x - v.y, u.y + v.x);
  const unequalMm = Math.min(sum, difference);
  const radiusMm = Math.max(sum, difference) / 2;
  if (unequalMm > FLATTEN_MM || radiusMm === 0) return null;
  const turns = u.x * v.y - u.y * v.x < 0 ? -1 : 1;
  return { from: curve.from, to: curve.to, centre: curve.centre, radiusMm, sweepRad: turns * curve.sweepRad };
}

/**
 * The arc that a cubic Bézier stands for, or null if it is a free curve.
 *
 * Taken as an arc: a curve that stays within `FLATTEN_MM` of the arc through its ends, or whose handles are those
 * by which programs save an arc, (4/3) tan(sweep / 4) radii long, and which therefore stays within `DRAWING_NOISE_MM`
 * (0.027 % of the radius for a quarter circle). Source of the handle length: elementary; the Bézier meets the arc
 * at its middle.
 */
function circularCubic(curve: DrawnCubic): Circular | null {
  const { from, to, handleFrom, handleTo } = curve;
  const chordMm = Math.hypot(to.x - from.x, to.y - from.y);
  const out = { x: handleFrom.x - from.x, y: handleFrom.y - from.y };
  const back = { x: to.x - handleTo.x, y: to.y - handleTo.y };
  const outMm = Math.hypot(out.x, out.y);
  const backMm = Math.hypot(back.x, back.y);
  if (chordMm <= SAME_POINT_MM || outMm === 0 || backMm === 0) return null;
  const turnRad = Math.atan2(out.x * back.y - out.y * back.x, out.x * back.x + out.y * back.y);
  // Less than a third of a turn for one Bézier: beyond, none stays within the noise of its arc at bench sizes.
  if (Math.abs(turnRad) > (2 * Math.PI) / 3) return null;
  const radiusMm = chordMm / (2 * Math.sin(Math.abs(turnRad) / 2));
  const sagittaMm = (chordMm / 2) * Math.tan(Math.abs(turnRad) / 4);
  if (sagittaMm <= FLAT_SAGITTA_MM || radiusMm > FARTHEST_DRAWN_MM) return null;
  const side = turnRad < 0 ? -1 : 1;
  const riseMm = side * radiusMm * Math.cos(turnRad / 2);
  const centre = {
    x: (from.x + to.x) / 2 - (riseMm * (to.y - from.y)) / chordMm,
    y: (from.y + to.y) / 2 + (riseMm * (to.x - from.x)) / chordMm,
  };
  // The tangent at the start must be square to the radius there; at the end it then is by symmetry of the turn.
  const leanMm = Math.abs(out.x * (from.x - centre.x) + out.y * (from.y - centre.y)) / radiusMm;
  const handleMm = (4 / 3) * Math.tan(Math.abs(turnRad) / 4) * radiusMm;
  const slackMm = ARC_HANDLE_RATIO * handleMm + FLATTEN_MM;
  const handlesOfArc =
    leanMm <= FLATTEN_MM && Math.abs(outMm - handleMm) <= slackMm && Math.abs(backMm - handleMm) <= slackMm;
  const allowedMm = handlesOfArc ? DRAWING_NOISE_MM : FLATTEN_MM;
  for (let i = 1; i < CUBIC_PROBES; i++) {
    const p = cubicPoint(curve, i / CUBIC_PROBES);
    if (Math.abs(Math.hypot(p.x - centre.x, p.y - centre.y) - radiusMm) > allowedMm) return null;
  }
  return { from, to, centre, radiusMm, sweepRad: turnRad };
}

/** The squared distance from a centre is of degree six in t; this many probes see each of its swings. */
const CUBIC_PROBES = 32;

function joinedArcs(a: Circular, b: Circular): Circular | null {
  const sweepRad = a.sweepRad + b.sweepRad;
  const same =
    Math.abs(a.radiusMm - b.radiusMm) <= FLATTEN_MM &&
    Math.hypot(a.centre.x - b.centre.x, a.centre.y - b.centre.y) <= FLATTEN_MM &&
    a.to.x === b.from.x &&
    a.to.y === b.from.y &&
    a.sweepRad * b.sweepRad > 0;
  const pastHalfMm = (Math.abs(sweepRad) - Math.PI) * a.radiusMm;
  return same && pastHalfMm <= FLATTEN_MM ? { ...a, to: b.to, sweepRad } : null;
}

function arcPieces(arc: Circular): SettledPiece[] {
  const { from, to, centre, radiusMm, sweepRad } = arc;
  const turns = Math.sign(sweepRad);
  const pastHalfMm = (Math.abs(sweepRad) - Math.PI) * radiusMm;
  if (pastHalfMm <= FLATTEN_MM) {
    const sweep = Math.min(Math.abs(sweepRad), Math.PI);
    const bulge = turns * Math.min(1, Math.tan(sweep / 4));
    const chordMm = Math.hypot(to.x - from.x, to.y - from.y);
    if (chordMm === 0) return [];
    const flat = (chordMm / 2) * Math.abs(bulge) <= FLAT_SAGITTA_MM;
    return [{ from, to, bulge: flat ? 0 : bulge, free: 0 }];
  }
  const sweep = Math.min(Math.abs(sweepRad), 2 * Math.PI);
  const startRad = Math.atan2(from.y - centre.y, from.x - centre.x);
  const middleRad = startRad + (turns * sweep) / 2;
  const middle = {
    x: centre.x + radiusMm * Math.cos(middleRad),
    y: centre.y + radiusMm * Math.sin(middleRad),
  };
  const bulge = turns * Math.min(1, Math.tan(sweep / 8));
  return [
    { from, to: middle, bulge, free: 0 },
    { from: middle, to, bulge, free: 0 },
  ];
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
function pointsOf(curve: DrawnCurve): Point[] {
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
      return nurbsPoints(curve.curve, curve.from, curve.to, FLATTEN_MM);
  }
}

function sampled(curve: DrawnCurve, at: (t: number) => Point): Point[] {
  const count = stepsOf(curve);
  const points: Point[] = [curve.from];
  for (let i = 1; i < count; i++) points.push(at(i / count));
  points.push(curve.to);
  return points;
}

function cubicPoint(curve: DrawnCubic, t: number): Point {
  const s = 1 - t;
  const a = s * s * s;
  const b = 3 * s * s * t;
  const c = 3 * s * t * t;
  const d = t * t * t;
  return {
    x: a * curve.from.x + b * curve.handleFrom.x + c * curve.handleTo.x + d * curve.to.x,
    y: a * curve.from.y + b * curve.handleFrom.y + c * curve.handleTo.y + d * curve.to.y,
  };
}

function isNear(p: Point): boolean {
  return Math.abs(p.x) <= FARTHEST_DRAWN_MM && Math.abs(p.y) <= FARTHEST_DRAWN_MM;
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
