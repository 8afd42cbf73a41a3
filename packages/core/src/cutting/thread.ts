/** Wood that hangs by a thread: a neck so thin that it breaks as the plane leaves, though the figures still join it. */
import type { FlatRing, Region } from "../curve/index.ts";
import { THREAD_MM } from "../measure/index.ts";

/** Edges nearer along the outline than this many to a vertex are its own neighbours. */
const NEIGHBOURS = 2;

/** Area of the largest piece of the wood that hangs by a neck thinner than `THREAD_MM`, mm²; 0 where none does. */
export function hangingByThreadMm2(wood: Region): number {
  let most = 0;
  for (const ring of wood) most = Math.max(most, largestHanging(ring));
  return most;
}

function largestHanging({ xs, ys }: FlatRing): number {
  const count = xs.length;
  // Twice the area swept from the first vertex: the area between two vertices is then a difference.
  const swept = new Float64Array(count + 1);
  for (let i = 0; i < count; i++) {
    const j = i + 1 === count ? 0 : i + 1;
    swept[i + 1] = swept[i] + xs[i] * ys[j] - xs[j] * ys[i];
  }
  const whole = swept[count];
  const near = edgesByPlace(xs);
  let most = 0;
  for (let i = 0; i < count; i++) {
    const px = xs[i];
    const py = ys[i];
    const place = near.placeOf(px);
    for (let at = near.starts[place]; at < near.starts[place + 1]; at++) {
      const j = near.edges[at];
      const k = j + 1 === count ? 0 : j + 1;
      // Most edges lie well to one side.
      if (
        (xs[j] > px + THREAD_MM && xs[k] > px + THREAD_MM) ||
        (xs[j] < px - THREAD_MM && xs[k] < px - THREAD_MM)
      )
        continue;
      if (
        (ys[j] > py + THREAD_MM && ys[k] > py + THREAD_MM) ||
        (ys[j] < py - THREAD_MM && ys[k] < py - THREAD_MM)
      )
        continue;
      const steps = (j - i + count) % count;
      if (steps < NEIGHBOURS || steps > count - 1 - NEIGHBOURS) continue;
      if (distanceToEdge(px, py, xs[j], ys[j], xs[k], ys[k]) > THREAD_MM) continue;
      const along = j >= i ? swept[j] - swept[i] : swept[count] - swept[i] + swept[j];
      const part = (along + xs[j] * py - px * ys[j]) / 2;
      // Across a gap of air one of the two comes out negative.
      most = Math.max(most, Math.min(part, whole / 2 - part));
    }
  }
  return most;
}

interface EdgesByPlace {
  /** The place across, from 0, that an x falls into. */
  placeOf(x: number): number;
  /** The edges of place p are `edges[starts[p]]` up to, not with, `edges[starts[p + 1]]`. */
  readonly starts: Int32Array;
  readonly edges: Int32Array;
}

/** How much further than a thread an edge is entered, so that rounding leaves none out. */
const ENTERED_BESIDE_MM = 2 * THREAD_MM;

/** A ring's edges by where across they lie, each in every place it comes within a thread of: as many places as edges. */
function edgesByPlace(xs: Float64Array): EdgesByPlace {
  const count = xs.length;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const x of xs) {
    if (x < low) low = x;
    if (x > high) high = x;
  }
  const perMm = count / Math.max(high - low, ENTERED_BESIDE_MM);
  const placeOf = (x: number): number => Math.max(0, Math.min(count - 1, Math.floor((x - low) * perMm)));
  const from = new Int32Array(count);
  const to = new Int32Array(count);
  const starts = new Int32Array(count + 1);
  for (let j = 0; j < count; j++) {
    const end = xs[j + 1 === count ? 0 : j + 1];
    from[j] = placeOf(Math.min(xs[j], end) - ENTERED_BESIDE_MM);
    to[j] = placeOf(Math.max(xs[j], end) + ENTERED_BESIDE_MM);
    for (let place = from[j]; place <= to[j]; place++) starts[place + 1]++;
  }
  for (let place = 0; place < count; place++) starts[place + 1] += starts[place];
  const edges = new Int32Array(starts[count]);
  const filled = starts.slice(0, count);
  for (let j = 0; j < count; j++) {
    for (let place = from[j]; place <= to[j]; place++) edges[filled[place]++] = j;
  }
  return { placeOf, starts, edges };
}

function distanceToEdge(px: number, py: number, ax: number, ay: number, bx: number, by: number): number {
  const dx = bx - ax;
  const dy = by - ay;
  const squared = dx * dx + dy * dy;
  const t = squared > 0 ? Math.max(0, Math.min(1, ((px - ax) * dx + (py - ay) * dy) / squared)) : 0;
  return Math.hypot(ax + dx * t - px, ay + dy * t - py);
}
