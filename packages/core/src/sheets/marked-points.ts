/** Which points of a long run a maker marks: where it turns sharply, then the middles of the longest stretches between. */
import type { MitrePoint } from "../making/index.ts";

const MOST_POINTS = 14;
/** A run that turns by more than this at a point has a corner there, radians. */
const SHARP_RAD = 0.26;

export function markedPoints(points: readonly MitrePoint[]): readonly MitrePoint[] {
  if (points.length <= MOST_POINTS) return points;
  const last = points.length - 1;
  const sharp = points.flatMap((_, index) => (turnAt(points, index) > SHARP_RAD ? [index] : []));
  const marked = [...new Set([0, ...evenly(sharp, MOST_POINTS - 2), last])].sort((a, b) => a - b);
  const along = runLengths(points);
  while (marked.length < MOST_POINTS) {
    const middle = middleOfLongest(marked, along);
    if (middle === null) break;
    marked.push(middle);
    marked.sort((a, b) => a - b);
  }
  return marked.flatMap((index) => points[index] ?? []);
}

function turnAt(points: readonly MitrePoint[], index: number): number {
  const [before, at, after] = [points[index - 1], points[index], points[index + 1]];
  if (before === undefined || at === undefined || after === undefined) return 0;
  const into = directionRad(before, at);
  const out = directionRad(at, after);
  const turn = Math.abs(out - into);
  return Math.min(turn, 2 * Math.PI - turn);
}

function directionRad(from: MitrePoint, to: MitrePoint): number {
  return Math.atan2(to.fromFirstWallMm - from.fromFirstWallMm, to.alongFirstMm - from.alongFirstMm);
}

function evenly(indices: readonly number[], most: number): readonly number[] {
  if (indices.length <= most) return indices;
  return Array.from({ length: most }, (_, place) =>
    Math.round((place * (indices.length - 1)) / (most - 1)),
  ).flatMap((place) => indices[place] ?? []);
}

/** How far along the run each point lies, mm. */
function runLengths(points: readonly MitrePoint[]): readonly number[] {
  let run = 0;
  return points.map((at, index) => {
    const before = points[index - 1];
    if (before !== undefined) {
      run += Math.hypot(
        at.alongFirstMm - before.alongFirstMm,
        at.fromFirstWallMm - before.fromFirstWallMm,
        at.heightMm - before.heightMm,
      );
    }
    return run;
  });
}

/** The point nearest to the middle of the longest stretch that has one; null where none has. */
function middleOfLongest(marked: readonly number[], along: readonly number[]): number | null {
  let best: { readonly index: number; readonly longMm: number } | null = null;
  for (const [place, from] of marked.entries()) {
    const to = marked[place + 1];
    if (to === undefined || to - from < 2) continue;
    const start = along[from] ?? 0;
    const longMm = (along[to] ?? 0) - start;
    if (best !== null && longMm <= best.longMm) continue;
    let index = from + 1;
    while (index < to - 1 && (along[index] ?? 0) < start + longMm / 2) index++;
    best = { index, longMm };
  }
  return best?.index ?? null;
}
