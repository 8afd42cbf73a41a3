/** Which drawn curves are circular arcs, and those as pieces of at most a half circle. */
import type { Point } from "../curve/index.ts";
import {
  ARC_HANDLE_RATIO,
  DRAWING_NOISE_MM,
  FLAT_SAGITTA_MM,
  FLATTEN_MM,
  SAME_POINT_MM,
} from "../measure/index.ts";
import { cubicPoint, type DrawnCubic, type DrawnCurve, type DrawnEllipse } from "./read-curves.ts";
import { FARTHEST_DRAWN_MM } from "./read-limits.ts";

/** A piece in millimetres, y up. `bulge` 0 is a line; `free` numbers the free curve it is part of, 0 if none. */
export interface SettledPiece {
  readonly from: Point;
  readonly to: Point;
  readonly bulge: number;
  readonly free: number;
}

export interface Circular {
  readonly from: Point;
  readonly to: Point;
  readonly centre: Point;
  readonly radiusMm: number;
  /** Signed, anticlockwise positive. */
  readonly sweepRad: number;
}

/** The arc that a curve is, exactly or as programs save arcs; null for lines and free curves. */
export function circularOf(curve: DrawnCurve): Circular | null {
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

/** Two arcs of one circle, end to end, as one; null if they are not, or pass a half circle. */
export function joinedArcs(a: Circular, b: Circular): Circular | null {
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

export function arcPieces(arc: Circular): SettledPiece[] {
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
