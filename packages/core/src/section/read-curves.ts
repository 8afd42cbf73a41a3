/** Curves as drawing programs know them: lines, circles and ellipses, Béziers, splines; mapped and turned round. */
import type { Point } from "../curve/index.ts";
import { type Affine, mapPoint, mapVector } from "./read-affine.ts";
import type { NurbsCurve } from "./read-nurbs.ts";

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

/** The point of a cubic Bézier at t, 0 to 1. */
export function cubicPoint(curve: DrawnCubic, t: number): Point {
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
