import { addPoints, cross, distanceMm, dot, scalePoint, subtractPoints } from "./point.ts";
import type { Circle, Point } from "./types.ts";

/** Where two whole carriers (the lines and circles that pieces lie on) meet. */
export interface Meets {
  readonly points: readonly Point[];
  /** They touch, or pass within the tolerance of touching: one point, half way between them. */
  readonly isTangent: boolean;
}

const NONE: Meets = { points: [], isTangent: false };

/** One carrier within the tolerance: it touches itself everywhere, so no point is singled out. */
const SAME: Meets = { points: [], isTangent: true };

/**
 * The meeting point of two lines, each through two points; none if parallel to rounding, and none but tangent if
 * `c` and `d` lie within `tolMm` of the first.
 */
export function lineMeetsLine(a: Point, b: Point, c: Point, d: Point, tolMm: number): Meets {
  const along = subtractPoints(b, a);
  const slackMm2 = tolMm * distanceMm(a, b);
  const isNear = (p: Point) => Math.abs(cross(along, subtractPoints(p, a))) <= slackMm2;
  if (isNear(c) && isNear(d)) return SAME;
  const other = subtractPoints(d, c);
  const turn = cross(along, other);
  if (turn === 0) return NONE;
  const t = cross(subtractPoints(c, a), other) / turn;
  return { points: [addPoints(a, scalePoint(along, t))], isTangent: false };
}

/**
 * Where the line through `a` and `b` meets a circle, in the order of travel. Tangent if the line's greatest depth
 * in the circle, or its distance from it, is `tolMm` or less.
 */
export function lineMeetsCircle(a: Point, b: Point, circle: Circle, tolMm: number): Meets {
  const lengthOfLine = distanceMm(a, b);
  if (lengthOfLine === 0) return NONE;
  const along = scalePoint(subtractPoints(b, a), 1 / lengthOfLine);
  const toCentre = subtractPoints(circle.centre, a);
  const foot = addPoints(a, scalePoint(along, dot(toCentre, along)));
  // Positive with the centre on the left of the line.
  const awayMm = cross(along, toCentre);
  const depthMm = circle.radiusMm - Math.abs(awayMm);
  if (depthMm < -tolMm) return NONE;
  if (depthMm <= tolMm) {
    const left = { x: -along.y, y: along.x };
    const touch = addPoints(foot, scalePoint(left, (-depthMm / 2) * Math.sign(awayMm || 1)));
    return { points: [touch], isTangent: true };
  }
  const halfChordMm = Math.sqrt(depthMm * (circle.radiusMm + Math.abs(awayMm)));
  const step = scalePoint(along, halfChordMm);
  return { points: [subtractPoints(foot, step), addPoints(foot, step)], isTangent: false };
}

/**
 * Where two circles meet: first the point on the right of the way from the first centre to the second. Tangent,
 * from outside or inside, if they overlap or miss one another by `tolMm` or less along their common diameter.
 * Circles about one centre meet nowhere; none but tangent if they are one circle within the tolerance.
 */
export function circleMeetsCircle(first: Circle, second: Circle, tolMm: number): Meets {
  const apartMm = distanceMm(first.centre, second.centre);
  const r1 = first.radiusMm;
  const r2 = second.radiusMm;
  if (apartMm + Math.abs(r1 - r2) <= tolMm) return SAME;
  if (apartMm === 0) return NONE;
  const towards = scalePoint(subtractPoints(second.centre, first.centre), 1 / apartMm);
  const outsideGapMm = apartMm - r1 - r2;
  const insideGapMm = Math.abs(r1 - r2) - apartMm;
  if (outsideGapMm > tolMm || insideGapMm > tolMm) return NONE;
  if (outsideGapMm >= -tolMm) return touching(first.centre, towards, r1 + outsideGapMm / 2);
  if (insideGapMm >= -tolMm) {
    // Inside, the smaller one touches on the side that lies away from the larger one's centre.
    return r1 >= r2
      ? touching(first.centre, towards, r1 - insideGapMm / 2)
      : touching(first.centre, towards, -(r1 + insideGapMm / 2));
  }
  // (r1² − r2²) as a product, and the half chord by Heron's: neither subtracts near-equal squares.
  const awayMm = (apartMm + ((r1 - r2) * (r1 + r2)) / apartMm) / 2;
  const squared = (r1 + r2 + apartMm) * -outsideGapMm * (apartMm + r1 - r2) * (apartMm - r1 + r2);
  const halfChordMm = Math.sqrt(Math.max(0, squared)) / (2 * apartMm);
  const foot = addPoints(first.centre, scalePoint(towards, awayMm));
  const left = scalePoint({ x: -towards.y, y: towards.x }, halfChordMm);
  return { points: [subtractPoints(foot, left), addPoints(foot, left)], isTangent: false };
}

function touching(centre: Point, towards: Point, awayMm: number): Meets {
  return { points: [addPoints(centre, scalePoint(towards, awayMm))], isTangent: true };
}
