/**
 * A ring made short for a boolean whose other side lies in a narrow strip: stretches of it that lie wholly to one side
 * of the strip are passed over by a chord, and put back into the answer.
 *
 * That is sound where the ring goes beyond each side of the strip once at most. All of such a stretch, and so its chord,
 * lies beyond the side (a half-plane is convex), with nothing else but the two edges that lead there; these meet the
 * chord at its ends only, since the ring does not cross itself. Edges that reach into the strip stay whole, so crossings
 * come out where they would have come out.
 */
import type { FlatRing, Region } from "./types.ts";

export interface Skipped {
  /** Vertices of the whole ring at the ends of the chord; those between them, in the ring's order, are passed over. */
  readonly first: number;
  readonly last: number;
}

export interface NarrowedRing {
  readonly ring: FlatRing;
  readonly skipped: readonly Skipped[];
}

/** How far beside the strip a stretch must lie, mm: far beyond what a boolean rounds. */
const BESIDE_STRIP_MM = 0.1;
/** Fewer vertices are not worth passing over: short rings are cut as quickly whole. */
const LEAST_SKIPPED = 16;

/** The ring without what lies beside the other region; null where nothing is to be gained or it would not be sound. */
export function narrowedTo(ring: FlatRing, other: Region): NarrowedRing | null {
  const { xs } = ring;
  const count = xs.length;
  if (count <= LEAST_SKIPPED) return null;
  const [low, high] = spanWithin(other, ring);
  const sideOf = (i: number): number =>
    (xs[i] as number) < low - BESIDE_STRIP_MM ? -1 : (xs[i] as number) > high + BESIDE_STRIP_MM ? 1 : 0;
  let start = 0;
  while (start < count && sideOf(start) === sideOf((start + count - 1) % count)) start++;
  if (start === count) return null;
  const skipped: Skipped[] = [];
  const hasBeen = { left: false, right: false };
  for (let i = 0; i < count; ) {
    const from = i;
    const side = sideOf((start + from) % count);
    while (i < count && sideOf((start + i) % count) === side) i++;
    if (side === 0) continue;
    const name = side < 0 ? "left" : "right";
    if (hasBeen[name]) return null;
    hasBeen[name] = true;
    if (i - from - 2 >= LEAST_SKIPPED)
      skipped.push({ first: (start + from) % count, last: (start + i - 1) % count });
  }
  if (skipped.length === 0 || skipped.some((one) => holdsLowest(ring, one))) return null;
  return { ring: without(ring, skipped), skipped };
}

/** Whether the ring's lowest place would be passed over: the answer's outline begins there, and is to begin there still. */
function holdsLowest({ ys }: FlatRing, { first, last }: Skipped): boolean {
  const count = ys.length;
  let lowest = Number.POSITIVE_INFINITY;
  for (const y of ys) if (y < lowest) lowest = y;
  for (let i = (first + 1) % count; i !== last; i = (i + 1) % count) if (ys[i] === lowest) return true;
  return false;
}

/** How far across a region reaches at the heights of a ring, mm. */
function spanWithin(region: Region, { ys }: FlatRing): readonly [number, number] {
  let bottom = Number.POSITIVE_INFINITY;
  let top = Number.NEGATIVE_INFINITY;
  for (const y of ys) {
    if (y < bottom) bottom = y;
    if (y > top) top = y;
  }
  bottom -= BESIDE_STRIP_MM;
  top += BESIDE_STRIP_MM;
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  for (const outline of region) {
    const count = outline.xs.length;
    for (let i = 0, j = count - 1; i < count; j = i++) {
      const ax = outline.xs[j] as number;
      const ay = outline.ys[j] as number;
      const bx = outline.xs[i] as number;
      const by = outline.ys[i] as number;
      if ((ay < bottom && by < bottom) || (ay > top && by > top)) continue;
      for (const x of [xAt(ax, ay, bx, by, bottom, top), xAt(bx, by, ax, ay, bottom, top)]) {
        if (x < low) low = x;
        if (x > high) high = x;
      }
    }
  }
  return [low, high];
}

/** Where across an edge's first end lies once the edge is cut off at two levels that it is not wholly beyond. */
function xAt(ax: number, ay: number, bx: number, by: number, bottom: number, top: number): number {
  if (ay >= bottom && ay <= top) return ax;
  const level = ay < bottom ? bottom : top;
  return ax + ((level - ay) / (by - ay)) * (bx - ax);
}

function without({ xs, ys, sources }: FlatRing, skipped: readonly Skipped[]): FlatRing {
  const count = xs.length;
  const isGone = new Uint8Array(count);
  let gone = 0;
  for (const { first, last } of skipped) {
    for (let i = (first + 1) % count; i !== last; i = (i + 1) % count) {
      isGone[i] = 1;
      gone++;
    }
  }
  const kept = count - gone;
  const short = {
    xs: new Float64Array(kept),
    ys: new Float64Array(kept),
    sources: new Int32Array(kept),
  };
  let at = 0;
  for (let i = 0; i < count; i++) {
    if (isGone[i]) continue;
    short.xs[at] = xs[i] as number;
    short.ys[at] = ys[i] as number;
    short.sources[at] = sources[i] as number;
    at++;
  }
  return short;
}
