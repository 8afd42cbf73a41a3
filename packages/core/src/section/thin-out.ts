/** Thins a fine run of points to those that matter. */
import { line, nearestOnPiece, type Point } from "../curve/index.ts";

/**
 * Indices of the points kept, first and last among them: no point left out is further than `tolMm` from the straight
 * line between its kept neighbours (Douglas and Peucker, 1973). Nothing is moved, so what lay on an arc still does.
 */
export function keptPoints(points: readonly Point[], tolMm: number): readonly number[] {
  const kept = new Uint8Array(points.length);
  kept[0] = 1;
  kept[points.length - 1] = 1;
  // A stack instead of recursion: a spiral of many thousand points would go as deep as it is long.
  const open: [number, number][] = [[0, points.length - 1]];
  for (let span = open.pop(); span !== undefined; span = open.pop()) {
    const [first, last] = span;
    const far = furthest(points, first, last);
    if (far.distanceMm <= tolMm) continue;
    kept[far.index] = 1;
    open.push([first, far.index], [far.index, last]);
  }
  return points.flatMap((_, index) => (kept[index] === 1 ? [index] : []));
}

function furthest(
  points: readonly Point[],
  first: number,
  last: number,
): { readonly index: number; readonly distanceMm: number } {
  const chord = line(points[first] as Point, points[last] as Point);
  let best = { index: first, distanceMm: 0 };
  for (let index = first + 1; index < last; index++) {
    const { distanceMm } = nearestOnPiece(chord, points[index] as Point);
    if (distanceMm > best.distanceMm) best = { index, distanceMm };
  }
  return best;
}
