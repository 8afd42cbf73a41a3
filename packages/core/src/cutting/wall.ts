/**
 * The wall beside a sole: new wood standing along the plane's side after the cut, where there was wood inside before.
 *
 * It is measured on the line of the plane's side from the end of the sole up: a height counts where, just inside
 * that line, wood stood before the cut, and, just outside it, wood stands after it.
 */
import type { FlatRing, Point, Region } from "../curve/index.ts";
import { BESIDE_MM, countWork } from "../measure/index.ts";
import { turnedBack, turnOf } from "./profile.ts";
import { placed } from "./sweep.ts";
import type { Pose } from "./types.ts";

export interface SoleEnds {
  readonly left: Point;
  readonly right: Point;
}

/** Heights of new wall at the left and right end of the sole in one pose, mm. */
export function wallsBeside(
  before: Region,
  after: Region,
  ends: SoleEnds,
  pose: Pose,
): readonly [number, number] {
  return [
    wallAt(before, after, placed(pose, ends.left), pose, -1),
    wallAt(before, after, placed(pose, ends.right), pose, 1),
  ];
}

/** Stretches of wood standing just beside a plane's side line, on its side `side`, as heights above the end of the sole, mm. */
export function standingBeside(region: Region, end: Point, pose: Pose, side: -1 | 1): readonly Span[] {
  const turn = turnOf(pose[2]);
  const across = turnedBack(turn, { x: side * BESIDE_MM, y: 0 });
  const up = turnedBack(turn, { x: 0, y: 1 });
  return spansAlong(region, { x: end.x + across.x, y: end.y + across.y }, up);
}

function wallAt(before: Region, after: Region, end: Point, pose: Pose, side: -1 | 1): number {
  const outside = standingBeside(after, end, pose, side);
  if (outside.length === 0) return 0;
  const inside = standingBeside(before, end, pose, side === 1 ? -1 : 1);
  return overlap(outside, inside);
}

/** From, to: distances along a line at which it runs inside the wood. */
export type Span = readonly [number, number];

/** As a power of two, how many vertices looked at count for one unit of work (`countWork`). */
const VERTICES_OF_A_UNIT_LOG2 = 3;

/** Stretches of the half line from `start` along the unit vector `up` that lie inside the region, in order. */
export function spansAlong(region: Region, start: Point, up: Point): readonly Span[] {
  const stops: number[] = [];
  for (const ring of region) {
    countWork(1 + (ring.xs.length >> VERTICES_OF_A_UNIT_LOG2));
    crossings(ring, start, up, stops);
  }
  inRisingOrder(stops);
  // The region is bounded, so the line's far end is outside: pair the crossings from there.
  const spans: Span[] = [];
  for (let i = stops.length - 1; i > 0; i -= 2) {
    const to = stops[i];
    const from = Math.max(0, stops[i - 1]);
    if (to > 0) spans.push([from, to]);
  }
  return spans.reverse();
}

/** Sorts a handful of numbers where they are: a line meets few edges. */
function inRisingOrder(stops: number[]): void {
  for (let i = 1; i < stops.length; i++) {
    const stop = stops[i];
    let k = i - 1;
    for (; k >= 0 && stops[k] > stop; k--) stops[k + 1] = stops[k];
    stops[k + 1] = stop;
  }
}

/** Whether a place lies in the wood; on its boundary either may be said. */
export function isInWood(region: Region, p: Point): boolean {
  const stops: number[] = [];
  for (const ring of region) crossings(ring, p, { x: 0, y: 1 }, stops);
  return stops.filter((stop) => stop > 0).length % 2 === 1;
}

function crossings(ring: FlatRing, start: Point, up: Point, stops: number[]): void {
  const { xs, ys } = ring;
  const n = xs.length;
  let j = n - 1;
  // Signed distance from the line, points on it counted to the left, so that a vertex is crossed once.
  let dj = (xs[j] - start.x) * up.y - (ys[j] - start.y) * up.x;
  for (let i = 0; i < n; i++) {
    const di = (xs[i] - start.x) * up.y - (ys[i] - start.y) * up.x;
    if (di > 0 !== dj > 0) {
      const t = dj / (dj - di);
      const x = xs[j] + (xs[i] - xs[j]) * t;
      const y = ys[j] + (ys[i] - ys[j]) * t;
      stops.push((x - start.x) * up.x + (y - start.y) * up.y);
    }
    j = i;
    dj = di;
  }
}

function overlap(a: readonly Span[], b: readonly Span[]): number {
  let total = 0;
  for (const [from, to] of a)
    for (const [low, high] of b) total += Math.max(0, Math.min(to, high) - Math.max(from, low));
  return total;
}
