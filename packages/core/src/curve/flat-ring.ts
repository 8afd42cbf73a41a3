import { bug } from "../measure/index.ts";
import type { Extents } from "./extents.ts";
import type { FlatRing, Point, Region } from "./types.ts";

/** Signed area of one polygon, mm²: holes are negative. */
export function flatRingAreaMm2(ring: FlatRing): number {
  const { xs, ys } = ring;
  const count = xs.length;
  if (count === 0) return 0;
  const originX = xs[0] as number;
  const originY = ys[0] as number;
  let doubled = 0;
  let beforeX = (xs[count - 1] as number) - originX;
  let beforeY = (ys[count - 1] as number) - originY;
  for (let i = 0; i < count; i++) {
    const x = (xs[i] as number) - originX;
    const y = (ys[i] as number) - originY;
    doubled += beforeX * y - x * beforeY;
    beforeX = x;
    beforeY = y;
  }
  return doubled / 2;
}

/** The least upright box around a region, mm. Throws a bug if it is empty. */
export function regionExtents(region: Region): Extents {
  let minX = Number.POSITIVE_INFINITY;
  let minY = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  let maxY = Number.NEGATIVE_INFINITY;
  for (const { xs, ys } of region) {
    for (let i = 0; i < xs.length; i++) {
      const x = xs[i] as number;
      const y = ys[i] as number;
      if (x < minX) minX = x;
      if (x > maxX) maxX = x;
      if (y < minY) minY = y;
      if (y > maxY) maxY = y;
    }
  }
  if (minX > maxX) bug("an empty region has no extents");
  return { minX, minY, maxX, maxY };
}

/** Are the boxes around two regions apart? Neither may be empty. */
export function areApart(a: Region, b: Region): boolean {
  const boxA = regionExtents(a);
  const boxB = regionExtents(b);
  return boxA.maxX < boxB.minX || boxB.maxX < boxA.minX || boxA.maxY < boxB.minY || boxB.maxY < boxA.minY;
}

/** Of two rings that do not cross: does the first go round the second? They may touch. */
export function surrounds(outer: FlatRing, ring: FlatRing): boolean {
  if (Math.abs(flatRingAreaMm2(outer)) <= Math.abs(flatRingAreaMm2(ring)) || areApart([outer], [ring]))
    return false;
  const { x, y } = pointInside(ring);
  return isInPolygon(outer, x, y);
}

/**
 * A point well inside a ring, where no ring that touches it can pass: on the level line in the middle of the widest
 * band without a vertex, half way across the widest part of the ring there.
 */
function pointInside({ xs, ys }: FlatRing): Point {
  const levels = ys.slice().sort();
  let y = levels[0] as number;
  let widest = 0;
  for (let i = 1; i < levels.length; i++) {
    const band = (levels[i] as number) - (levels[i - 1] as number);
    if (band <= widest) continue;
    widest = band;
    y = ((levels[i] as number) + (levels[i - 1] as number)) / 2;
  }
  const sides: number[] = [];
  for (let i = 0, j = xs.length - 1; i < xs.length; j = i++) {
    if ((ys[i] as number) > y !== (ys[j] as number) > y) sides.push(crossingX(xs, ys, i, j, y));
  }
  sides.sort((a, b) => a - b);
  let x = sides[0] as number;
  let width = 0;
  for (let i = 1; i < sides.length; i += 2) {
    const span = (sides[i] as number) - (sides[i - 1] as number);
    if (span <= width) continue;
    width = span;
    x = ((sides[i] as number) + (sides[i - 1] as number)) / 2;
  }
  return { x, y };
}

/** Where the edge between two vertices passes a level. */
function crossingX(xs: Float64Array, ys: Float64Array, i: number, j: number, y: number): number {
  const share = (y - (ys[i] as number)) / ((ys[j] as number) - (ys[i] as number));
  return (xs[i] as number) + share * ((xs[j] as number) - (xs[i] as number));
}

/** The same polygon travelled the other way; every edge keeps its source. */
export function reversedFlatRing({ xs, ys, sources }: FlatRing): FlatRing {
  const count = sources.length;
  // Edge i of the reversed ring runs from old vertex count − 1 − i to the one before, along old edge count − 2 − i.
  const reversedSources = sources.map((_, i) => sources[(2 * count - 2 - i) % count] as number);
  return { xs: xs.slice().reverse(), ys: ys.slice().reverse(), sources: reversedSources };
}

function isInPolygon(outer: FlatRing, x: number, y: number): boolean {
  const { xs, ys } = outer;
  let isInside = false;
  for (let i = 0, j = xs.length - 1; i < xs.length; j = i++) {
    const yi = ys[i] as number;
    const yj = ys[j] as number;
    if (yi > y === yj > y) continue;
    if (x < crossingX(xs, ys, i, j, y)) isInside = !isInside;
  }
  return isInside;
}
