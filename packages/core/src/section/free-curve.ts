/**
 * A free curve as drawing programs hold it: the fewest cubic Béziers found through a run of points. Fitted by least
 * squares with given end directions, parameters improved by Newton's steps, parted in the middle where one will not do
 * (after P. J. Schneider, An Algorithm for Automatically Fitting Digitized Curves, Graphics Gems, 1990).
 */
import type { Point } from "../curve/index.ts";
import { SAME_POINT_MM } from "../measure/index.ts";

export interface Cubic {
  readonly from: Point;
  readonly handleFrom: Point;
  readonly handleTo: Point;
  readonly to: Point;
}

/** Newton's steps for the parameters; each one gains about a digit, and a run that needs more is parted instead. */
const MOST_IMPROVEMENTS = 60;
/** A run is never parted into more pieces than it has lines, so this is only a guard. */
const MOST_DEPTH = 24;

/**
 * Cubics that join end to end and pass every point of the run within `tolMm`, mm. Two points give the straight cubic.
 * Directions at the ends and at partings are those of the circle through the three nearest points.
 */
export function cubicsThrough(points: readonly Point[], tolMm: number): readonly Cubic[] {
  const run = points.filter((place, index) => index === 0 || apart(place, points[index - 1] as Point) > 0);
  if (run.length < 2) return [];
  return fitted(run, {
    tolMm,
    depth: 0,
    leaving: tangentAt(run, 0),
    arriving: tangentAt(run, run.length - 1),
  });
}

interface Fitting {
  readonly tolMm: number;
  readonly depth: number;
  /** Unit directions of travel at both ends. */
  readonly leaving: Point;
  readonly arriving: Point;
}

function fitted(run: readonly Point[], fitting: Fitting): readonly Cubic[] {
  const { tolMm, depth, leaving, arriving } = fitting;
  const last = run.length - 1;
  if (last === 1) return [straight(run[0] as Point, run[1] as Point)];
  let parameters = affineParameters(run);
  let cubic = leastSquares(run, parameters, leaving, arriving);
  for (let step = 0; step < MOST_IMPROVEMENTS && worstMm(run, parameters, cubic) > tolMm; step++) {
    const before = cubic;
    parameters = parameters.map((t, index) => nearer(before, run[index] as Point, t));
    cubic = leastSquares(run, parameters, leaving, arriving);
  }
  if (worstMm(run, parameters, cubic) <= tolMm || depth >= MOST_DEPTH) return [cubic];
  const at = middleOf(run);
  const through = tangentAt(run, at);
  return [
    ...fitted(run.slice(0, at + 1), { tolMm, depth: depth + 1, leaving, arriving: through }),
    ...fitted(run.slice(at), { tolMm, depth: depth + 1, leaving: through, arriving }),
  ];
}

function straight(from: Point, to: Point): Cubic {
  const along = (share: number): Point => ({
    x: from.x + (to.x - from.x) * share,
    y: from.y + (to.y - from.y) * share,
  });
  return { from, handleFrom: along(1 / 3), handleTo: along(2 / 3), to };
}

/**
 * Share of the run's affine length at each point, 0 to 1: length times the cube root of the curvature, which on an
 * ellipse goes evenly with its own angle, so that a squeezed circle is fitted as well as a round one. A little plain
 * length beside it tells straight stretches apart.
 */
function affineParameters(run: readonly Point[]): readonly number[] {
  const last = run.length - 1;
  const bends = run.map((_, index) => bendAt(run, Math.min(last - 1, Math.max(1, index))));
  const most = Math.max(...bends);
  let sum = 0;
  const sums = run.map((place, index) => {
    if (index === 0) return 0;
    const lengthMm = apart(place, run[index - 1] as Point);
    const bend = ((bends[index - 1] ?? 0) + (bends[index] ?? 0)) / 2;
    sum += lengthMm * (bend + STRAIGHT_SHARE * most + (most === 0 ? 1 : 0));
    return sum;
  });
  return sums.map((one) => one / sum);
}

/** Plain length counts by so much beside the affine. */
const STRAIGHT_SHARE = 0.01;

/** Cube root of the curvature at an inner point. */
function bendAt(run: readonly Point[], index: number): number {
  const [a, b, c] = [run[index - 1], run[index], run[index + 1]] as [Point, Point, Point];
  const cross = (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x);
  return Math.cbrt((2 * Math.abs(cross)) / (apart(a, b) * apart(b, c) * apart(a, c) || 1));
}

/** Share of the run's length at each point, 0 to 1. */
function chordParameters(run: readonly Point[]): readonly number[] {
  let length = 0;
  const lengths = run.map((place, index) => {
    if (index > 0) length += apart(place, run[index - 1] as Point);
    return length;
  });
  return lengths.map((one) => one / length);
}

/** The two handle lengths that bring the cubic nearest to the points, its ends and end directions given. */
function leastSquares(
  run: readonly Point[],
  parameters: readonly number[],
  leaving: Point,
  arriving: Point,
): Cubic {
  const from = run[0] as Point;
  const to = run[run.length - 1] as Point;
  let [aa, ab, bb, ra, rb] = [0, 0, 0, 0, 0];
  for (const [index, t] of parameters.entries()) {
    const place = run[index] as Point;
    const s = 1 - t;
    const first = 3 * s * s * t;
    const second = 3 * s * t * t;
    const nearFrom = s * s * s + first;
    const nearTo = second + t * t * t;
    const rest = {
      x: place.x - nearFrom * from.x - nearTo * to.x,
      y: place.y - nearFrom * from.y - nearTo * to.y,
    };
    const a = { x: first * leaving.x, y: first * leaving.y };
    const b = { x: -second * arriving.x, y: -second * arriving.y };
    aa += dot(a, a);
    ab += dot(a, b);
    bb += dot(b, b);
    ra += dot(a, rest);
    rb += dot(b, rest);
  }
  const determinant = aa * bb - ab * ab;
  const chord = apart(from, to);
  const [alpha, beta] =
    determinant > SAME_POINT_MM * aa * bb
      ? [(ra * bb - rb * ab) / determinant, (aa * rb - ab * ra) / determinant]
      : [0, 0];
  // Handles that point backwards, or that cannot be told, fall back on a third of the chord.
  const useful = (lengthMm: number): number => (lengthMm > SAME_POINT_MM * chord ? lengthMm : chord / 3);
  return {
    from,
    handleFrom: { x: from.x + leaving.x * useful(alpha), y: from.y + leaving.y * useful(alpha) },
    handleTo: { x: to.x - arriving.x * useful(beta), y: to.y - arriving.y * useful(beta) },
    to,
  };
}

function pointOf({ from, handleFrom, handleTo, to }: Cubic, t: number): Point {
  const s = 1 - t;
  const [a, b, c, d] = [s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t];
  return {
    x: a * from.x + b * handleFrom.x + c * handleTo.x + d * to.x,
    y: a * from.y + b * handleFrom.y + c * handleTo.y + d * to.y,
  };
}

/** One step of Newton towards the parameter whose point lies nearest. */
function nearer(cubic: Cubic, place: Point, t: number): number {
  const { from, handleFrom, handleTo, to } = cubic;
  const s = 1 - t;
  const at = pointOf(cubic, t);
  const away = { x: at.x - place.x, y: at.y - place.y };
  const slope = (axis: "x" | "y"): number =>
    3 *
    (s * s * (handleFrom[axis] - from[axis]) +
      2 * s * t * (handleTo[axis] - handleFrom[axis]) +
      t * t * (to[axis] - handleTo[axis]));
  const bend = (axis: "x" | "y"): number =>
    6 *
    (s * (handleTo[axis] - 2 * handleFrom[axis] + from[axis]) +
      t * (to[axis] - 2 * handleTo[axis] + handleFrom[axis]));
  const first = { x: slope("x"), y: slope("y") };
  const second = { x: bend("x"), y: bend("y") };
  const denominator = dot(first, first) + dot(away, second);
  if (denominator === 0) return t;
  return Math.min(1, Math.max(0, t - dot(away, first) / denominator));
}

/** How far the points of the run stand from those of the cubic at their parameters, mm. */
function worstMm(run: readonly Point[], parameters: readonly number[], cubic: Cubic): number {
  return parameters.reduce(
    (worst, t, index) => Math.max(worst, apart(pointOf(cubic, t), run[index] as Point)),
    0,
  );
}

/** The point in the middle of the run's length: an inner one. */
function middleOf(run: readonly Point[]): number {
  const middle = chordParameters(run).findIndex((share) => share >= 0.5);
  return Math.min(run.length - 2, Math.max(1, middle));
}

/** Direction of travel at a point: that of the circle through it and its two nearest, at the ends the first or last three. */
function tangentAt(run: readonly Point[], index: number): Point {
  const middle = Math.min(run.length - 2, Math.max(1, index));
  const [a, b, c] = [run[middle - 1], run[middle], run[middle + 1]];
  if (a === undefined || b === undefined || c === undefined) {
    return unit({
      x: (run[1] as Point).x - (run[0] as Point).x,
      y: (run[1] as Point).y - (run[0] as Point).y,
    });
  }
  const into = unit({ x: b.x - a.x, y: b.y - a.y });
  const out = unit({ x: c.x - b.x, y: c.y - b.y });
  const before = apart(a, b);
  const after = apart(b, c);
  // The circle's direction turns evenly with its length: at the middle point by the share of the nearer chord.
  const turn = Math.atan2(into.x * out.y - into.y * out.x, dot(into, out));
  const perMm = (2 * turn) / (before + after);
  const atMiddle = Math.atan2(into.y, into.x) + (perMm * before) / 2;
  const along = index < middle ? -before : index > middle ? after : 0;
  const direction = atMiddle + perMm * along;
  return { x: Math.cos(direction), y: Math.sin(direction) };
}

function unit({ x, y }: Point): Point {
  const length = Math.hypot(x, y);
  return { x: x / length, y: y / length };
}

function dot(a: Point, b: Point): number {
  return a.x * b.x + a.y * b.y;
}

function apart(a: Point, b: Point): number {
  return Math.hypot(a.x - b.x, a.y - b.y);
}
