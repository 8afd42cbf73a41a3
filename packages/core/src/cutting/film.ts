/** Leftover wood that hangs together by nothing but the rounding of poses. */
import { distanceMm, type FlatRing, type Point } from "../curve/index.ts";
import { POSE_ROUNDING } from "../measure/index.ts";

/**
 * A ring taken apart wherever it touches itself: each part by itself, in the order in which they close.
 * Poses and the planned section are rounded apart, so along a finished arc or wall a film far thinner than any shaving
 * is left between the two, and it would make one piece of a splinter at its one end and the wood at its other.
 */
export function apartAtFilms(whole: FlatRing): FlatRing[] {
  const ring = brokenAtVertices(whole);
  const places = placesOf(ring);
  const parts: number[][] = [];
  const open: number[] = [];
  const openAt = new Map<number, number>();
  places.forEach((place, i) => {
    const start = openAt.get(place);
    if (start !== undefined) {
      // Closed: what was travelled since the place was passed before. The place itself stays open, with its new edge.
      const part = open.splice(start);
      for (const k of part) openAt.delete(places[k]);
      parts.push(part);
    }
    openAt.set(place, open.length);
    open.push(i);
  });
  if (parts.length === 0) return [whole];
  parts.push(open);
  return parts.filter((part) => part.length > 2).map((part) => ringThrough(ring, part));
}

/** The same ring with a vertex more wherever another vertex lies on the inside of an edge: a film may end there. */
function brokenAtVertices(ring: FlatRing): FlatRing {
  const { xs, ys, sources } = ring;
  const count = xs.length;
  const byX = Array.from(xs, (_, i) => i).sort((i, k) => xs[i] - xs[k]);
  const broken: { readonly x: number; readonly y: number; readonly source: number }[] = [];
  let isBroken = false;
  for (let i = 0; i < count; i++) {
    const a = { x: xs[i], y: ys[i] };
    const b = { x: xs[(i + 1) % count], y: ys[(i + 1) % count] };
    broken.push({ ...a, source: sources[i] });
    for (const { x, y } of verticesOn(ring, byX, a, b)) {
      broken.push({ x, y, source: sources[i] });
      isBroken = true;
    }
  }
  if (!isBroken) return ring;
  return {
    xs: Float64Array.from(broken, ({ x }) => x),
    ys: Float64Array.from(broken, ({ y }) => y),
    sources: Int32Array.from(broken, ({ source }) => source),
  };
}

/** The vertices that lie on an edge away from its ends, from its start to its end. */
function verticesOn({ xs, ys }: FlatRing, byX: readonly number[], a: Point, b: Point): readonly Point[] {
  const lengthMm = distanceMm(a, b);
  if (lengthMm <= 2 * POSE_ROUNDING) return [];
  const [ux, uy] = [(b.x - a.x) / lengthMm, (b.y - a.y) / lengthMm];
  const mostX = Math.max(a.x, b.x) + POSE_ROUNDING;
  const on: { readonly p: Point; readonly alongMm: number }[] = [];
  for (let rank = firstFrom(xs, byX, Math.min(a.x, b.x) - POSE_ROUNDING); rank < byX.length; rank++) {
    const p = { x: xs[byX[rank]], y: ys[byX[rank]] };
    if (p.x > mostX) break;
    const alongMm = (p.x - a.x) * ux + (p.y - a.y) * uy;
    const asideMm = Math.abs((p.y - a.y) * ux - (p.x - a.x) * uy);
    const isInside = alongMm > POSE_ROUNDING && alongMm < lengthMm - POSE_ROUNDING;
    if (isInside && asideMm <= POSE_ROUNDING) on.push({ p, alongMm });
  }
  return on.sort((p, q) => p.alongMm - q.alongMm).map(({ p }) => p);
}

/** The first rank, vertices sorted from left to right, that lies no further left than this. */
function firstFrom(xs: Float64Array, byX: readonly number[], leastX: number): number {
  let [low, high] = [0, byX.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (xs[byX[middle]] < leastX) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** For each vertex the number of its place: vertices nearer to one another than poses are rounded are in one. */
function placesOf({ xs, ys }: FlatRing): readonly number[] {
  const places = Array.from(xs, (_, i) => i);
  const byX = [...places].sort((i, k) => xs[i] - xs[k] || ys[i] - ys[k]);
  byX.forEach((i, rank) => {
    for (let before = rank - 1; before >= 0; before--) {
      const k = byX[before];
      if (xs[i] - xs[k] > POSE_ROUNDING) return;
      if (Math.abs(ys[i] - ys[k]) > POSE_ROUNDING) continue;
      places[i] = places[k];
      return;
    }
  });
  return places;
}

function ringThrough({ xs, ys, sources }: FlatRing, vertices: readonly number[]): FlatRing {
  return {
    xs: Float64Array.from(vertices, (i) => xs[i]),
    ys: Float64Array.from(vertices, (i) => ys[i]),
    sources: Int32Array.from(vertices, (i) => sources[i]),
  };
}
