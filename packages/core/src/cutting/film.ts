/** Leftover wood that hangs together by nothing but the rounding of poses. */
import type { FlatRing } from "../curve/index.ts";
import { POSE_ROUNDING } from "../measure/index.ts";

/**
 * A ring taken apart wherever two of its vertices lie in one place: each part by itself, in the order in which they close.
 * Poses and the planned section are rounded apart, so along a finished arc or wall a film far thinner than any shaving
 * is left between the two, and it would make one piece of a splinter at its one end and the wood at its other.
 */
export function apartAtFilms(ring: FlatRing): FlatRing[] {
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
  if (parts.length === 0) return [ring];
  parts.push(open);
  return parts.filter((part) => part.length > 2).map((part) => ringThrough(ring, part));
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
