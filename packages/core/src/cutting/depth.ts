/** How far the boundary of some wood lies from a ring: the depth of an overcut, the height of what is left. */
import {
  lerpPoint,
  nearestOnRing,
  type Point,
  type Region,
  type Ring,
  regionAreaMm2,
} from "../curve/index.ts";
import { OVERCUT_MM, SLIVER_MM2 } from "../measure/index.ts";

export interface Depth {
  readonly depthMm: number;
  /** Where it is greatest; null where there is no wood to speak of. */
  readonly at: Point | null;
}

/** What a depth may be told too small by, mm: far less than what anyone decides on. */
const DEPTH_SLACK_MM = OVERCUT_MM / 4;

/** Stretches that the longest boundary is looked at in, so that a scribble of a file cannot hold the proof up. */
const MOST_STRETCHES = 20_000;

/**
 * The greatest distance, mm, of the region's boundary from a ring, and where. Slivers are left out.
 *
 * Corners do not tell it: a slab taken right across a face, or wood left in a groove up to its arrises, has every
 * corner on the ring. Along an edge the distance changes no faster than the place, so that no place between two can lie
 * deeper than half the sum of both distances and their spacing; an edge is halved until that is no more than
 * what is known, or less than `carelessMm`, below which nobody asks. Accuracy: a quarter of `OVERCUT_MM`; less where
 * the boundary is longer than `MOST_STRETCHES` times that.
 */
export function deepestFrom(ring: Ring, region: Region, carelessMm: number): Depth {
  let depthMm = 0;
  let at: Point | null = null;
  const note = (p: Point): number => {
    const d = nearestOnRing(ring, p).distanceMm;
    if (d > depthMm || at === null) {
      depthMm = d;
      at = p;
    }
    return d;
  };
  const outlines = region.filter((outline) => Math.abs(regionAreaMm2([outline])) >= SLIVER_MM2);
  const corners = outlines.map(({ xs, ys }) => Array.from(xs, (x, i): Point => ({ x, y: ys[i] })));
  const depths = corners.map((points) => points.map(note));
  const shortest = perimeterMm(outlines) / MOST_STRETCHES;
  corners.forEach((points, k) => {
    points.forEach((from, i) => {
      const next = (i + 1) % points.length;
      halve(from, depths[k][i], points[next], depths[k][next]);
    });
  });
  return { depthMm, at };

  function halve(from: Point, fromMm: number, to: Point, toMm: number): void {
    const apart = Math.hypot(to.x - from.x, to.y - from.y);
    const couldBe = (fromMm + toMm + apart) / 2;
    if (couldBe <= Math.max(carelessMm, depthMm + DEPTH_SLACK_MM) || apart <= shortest) return;
    const middle = lerpPoint(from, to, 0.5);
    const middleMm = note(middle);
    halve(from, fromMm, middle, middleMm);
    halve(middle, middleMm, to, toMm);
  }
}

/** Length of all outlines of a region, holes included, mm. */
export function perimeterMm(region: Region): number {
  let sum = 0;
  for (const { xs, ys } of region) {
    for (let i = 0, j = xs.length - 1; i < xs.length; j = i++)
      sum += Math.hypot(xs[i] - xs[j], ys[i] - ys[j]);
  }
  return sum;
}
