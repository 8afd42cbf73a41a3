/**
 * New wall beside a sole's end, by rays along the plane's side: it stands where a ray just outside still runs in wood
 * after the cut and a ray just inside ran in wood before it.
 */
import type { FlatRegion } from "./flat.ts";
import type { BulgedVertex, PoseXyt, Xy } from "./plan-json.ts";
import { axisOf, inPlace, rightOf } from "./strips.ts";

/** How far beside the side the rays run, mm: one alone can graze an edge that runs along it. */
const BESIDE_MM: readonly number[] = [0.002, 0.005, 0.012];

export interface WallBand {
  readonly leastMm: number;
  readonly mostMm: number;
}

/** Least and most that the rays find at the left and right end, the tallest over the given poses. */
export function newWalls(
  before: FlatRegion,
  after: FlatRegion,
  sole: readonly BulgedVertex[],
  poses: readonly PoseXyt[],
): readonly [WallBand, WallBand] {
  const first = sole[0];
  const last = sole[sole.length - 1];
  return [
    tallest(before, after, [first[0], first[1]], -1, poses),
    tallest(before, after, [last[0], last[1]], 1, poses),
  ];
}

function tallest(
  before: FlatRegion,
  after: FlatRegion,
  end: Xy,
  side: -1 | 1,
  poses: readonly PoseXyt[],
): WallBand {
  let leastMm = 0;
  let mostMm = 0;
  for (const pose of poses) {
    const heights = BESIDE_MM.map((mm) => {
      const outside = stretches(after, alongside(pose, end, side * mm), axisOf(pose[2]));
      const inside = stretches(before, alongside(pose, end, -side * mm), axisOf(pose[2]));
      return shared(outside, inside);
    });
    leastMm = Math.max(leastMm, Math.min(...heights));
    mostMm = Math.max(mostMm, Math.max(...heights));
  }
  return { leastMm, mostMm };
}

/** A place beside the sole's end in this pose, to the right positive. */
export function alongside(pose: PoseXyt, end: Xy, asideMm: number): Xy {
  const [x, y] = inPlace(pose, end);
  const [vx, vy] = rightOf(pose[2]);
  return [x + vx * asideMm, y + vy * asideMm];
}

/** Stretches of the ray from a place in a direction that run in wood, as distances from the place. */
export function stretches(
  wood: FlatRegion,
  [ox, oy]: Xy,
  [ux, uy]: Xy,
): readonly (readonly [number, number])[] {
  const stops: number[] = [];
  for (const outline of wood)
    for (let i = 0; i < outline.length; i++) {
      const [ax, ay] = outline[i];
      const [bx, by] = outline[(i + 1) % outline.length];
      const a = (ax - ox) * uy - (ay - oy) * ux;
      const b = (bx - ox) * uy - (by - oy) * ux;
      if (a >= 0 === b >= 0) continue;
      const t = a / (a - b);
      const along = (ax + t * (bx - ax) - ox) * ux + (ay + t * (by - ay) - oy) * uy;
      if (along > 0) stops.push(along);
    }
  stops.sort((a, b) => a - b);
  // An odd number of stops ahead: the place itself lies in wood.
  if (stops.length % 2 === 1) stops.unshift(0);
  const found: (readonly [number, number])[] = [];
  for (let i = 0; i + 1 < stops.length; i += 2) found.push([stops[i], stops[i + 1]]);
  return found;
}

function shared(
  one: readonly (readonly [number, number])[],
  other: readonly (readonly [number, number])[],
): number {
  let total = 0;
  for (const [a, b] of one) for (const [c, d] of other) total += Math.max(0, Math.min(b, d) - Math.max(a, c));
  return total;
}
