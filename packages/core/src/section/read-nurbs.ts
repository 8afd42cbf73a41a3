/** Rational B-splines of any degree, as a DXF SPLINE gives them. */
import type { Point } from "../curve/index.ts";

export interface NurbsCurve {
  readonly degree: number;
  readonly points: readonly Point[];
  readonly weights: readonly number[];
  /** As many as points + degree + 1, never falling. */
  readonly knots: readonly number[];
}

/** Halvings of one span of a spline, at most: 4096 chords, after which the chord is taken as it is. */
const MOST_HALVINGS = 12;

/**
 * The point of the curve at u, by de Boor's recursion on (w x, w y, w).
 *
 * Domain: u between knots[degree] and knots[points]; outside it is held to that range. Weights are positive.
 * Source: de Boor, "A Practical Guide to Splines", chapter X; the rational form is the projected curve.
 */
export function nurbsPoint(curve: NurbsCurve, u: number): Point {
  const { degree, points, weights, knots } = curve;
  const count = points.length;
  const at = Math.min(Math.max(u, knots[degree]!), knots[count]!);
  let low = degree;
  let high = count - 1;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (knots[middle]! <= at) low = middle;
    else high = middle - 1;
  }
  const span = low;
  const xs: number[] = [];
  const ys: number[] = [];
  const ws: number[] = [];
  for (let j = 0; j <= degree; j++) {
    const i = span - degree + j;
    const weight = weights[i]!;
    xs.push(points[i]!.x * weight);
    ys.push(points[i]!.y * weight);
    ws.push(weight);
  }
  for (let level = 1; level <= degree; level++) {
    for (let j = degree; j >= level; j--) {
      const i = span - degree + j;
      const lower = knots[i]!;
      const width = knots[i + degree - level + 1]! - lower;
      const t = width > 0 ? (at - lower) / width : 0;
      xs[j] = (1 - t) * xs[j - 1]! + t * xs[j]!;
      ys[j] = (1 - t) * ys[j - 1]! + t * ys[j]!;
      ws[j] = (1 - t) * ws[j - 1]! + t * ws[j]!;
    }
  }
  return { x: xs[degree]! / ws[degree]!, y: ys[degree]! / ws[degree]! };
}

/**
 * Points along the curve whose chords stay within `chordTolMm` of it, the given ends first and last. Stops short soon
 * after `mostPoints`: the caller must look whether there are more.
 *
 * Each span between knots is halved until its quarter points lie on the chord within a quarter of the tolerance;
 * within one span a spline is a single rational polynomial, so nothing hides between the probes at bench sizes.
 */
export function nurbsPoints(
  curve: NurbsCurve,
  from: Point,
  to: Point,
  limits: { readonly chordTolMm: number; readonly mostPoints: number },
): Point[] {
  const { chordTolMm, mostPoints } = limits;
  const { degree, knots, points } = curve;
  const found: Point[] = [from];
  const first = knots[degree]!;
  const last = knots[points.length]!;
  let lower = first;
  let a = from;
  for (let i = degree + 1; i <= points.length; i++) {
    const upper = knots[i]!;
    if (upper <= lower) continue;
    if (found.length > mostPoints) break;
    const b = upper >= last ? to : nurbsPoint(curve, upper);
    // Two halves at least, so that an S whose middle happens to lie on its chord is not missed.
    const middle = (lower + upper) / 2;
    const m = nurbsPoint(curve, middle);
    halve(curve, lower, a, middle, m, chordTolMm / 4, MOST_HALVINGS, found);
    halve(curve, middle, m, upper, b, chordTolMm / 4, MOST_HALVINGS, found);
    lower = upper;
    a = b;
  }
  return found;
}

function halve(
  curve: NurbsCurve,
  lower: number,
  a: Point,
  upper: number,
  b: Point,
  tolMm: number,
  halvingsLeft: number,
  found: Point[],
): void {
  const step = (upper - lower) / 4;
  const probes = [1, 2, 3].map((k) => nurbsPoint(curve, lower + k * step));
  if (halvingsLeft === 0 || probes.every((p) => fromChordMm(p, a, b) <= tolMm)) {
    found.push(b);
    return;
  }
  const middle = (lower + upper) / 2;
  const m = probes[1]!;
  halve(curve, lower, a, middle, m, tolMm, halvingsLeft - 1, found);
  halve(curve, middle, m, upper, b, tolMm, halvingsLeft - 1, found);
}

function fromChordMm(p: Point, a: Point, b: Point): number {
  const lengthMm = Math.hypot(b.x - a.x, b.y - a.y);
  if (lengthMm === 0) return Math.hypot(p.x - a.x, p.y - a.y);
  return Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / lengthMm;
}
