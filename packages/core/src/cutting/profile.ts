/**
 * The wood seen from a plane: the section turned so that the plane stands upright, and the height at which the
 * plane, let down at some place across, is first stopped.
 *
 * For a turned outline T and a sole b that height is h(s) = max over x of T(s + x) - b(x). It is evaluated exactly
 * for the given outline: the largest value lies at an end of the sole, at a vertex of the outline under the sole,
 * at a vertex of the sole, or where an arc of a convex sole touches an edge of the outline.
 */
import type { FlatRing, Point, Region } from "../curve/index.ts";
import { countWork, SAME_POINT_MM } from "../measure/index.ts";
import { type SoleShape, soleHeightMm, touchOf } from "./sole-shape.ts";

/**
 * Edges of a region that face up when the plane stands upright, in the plane's turned frame, as x0 <= x1, in rising
 * order of x0.
 */
export interface Profile {
  readonly tiltDeg: number;
  readonly count: number;
  readonly x0: readonly number[];
  readonly y0: readonly number[];
  readonly x1: readonly number[];
  readonly y1: readonly number[];
  /** Index of the source edge's curve id, as in the region. */
  readonly source: readonly number[];
  /** The furthest right that edge i or any before it reaches: with `x0` in rising order, where a look-up may begin. */
  readonly reachX: readonly number[];
  readonly minX: number;
  readonly maxX: number;
}

/** Where the plane is stopped: height of its origin, and where across (turned frame) it touches. */
export interface Rest {
  readonly heightMm: number;
  readonly touchXMm: number;
  readonly source: number;
}

export interface Turn {
  readonly cos: number;
  readonly sin: number;
}

/** The turn that stands a plane of this tilt upright: p' = R(-tilt) p. Quarter turns are exact. */
export function turnOf(tiltDeg: number): Turn {
  const quarter = (((tiltDeg / 90) % 4) + 4) % 4;
  if (Number.isInteger(quarter)) {
    const table: readonly Turn[] = [
      { cos: 1, sin: 0 },
      { cos: 0, sin: 1 },
      { cos: -1, sin: 0 },
      { cos: 0, sin: -1 },
    ];
    return table[quarter] as Turn;
  }
  const angleRad = (tiltDeg * Math.PI) / 180;
  return { cos: Math.cos(angleRad), sin: Math.sin(angleRad) };
}

/** From the stick's frame into the plane's upright frame. */
export function turned(turn: Turn, p: Point): Point {
  return { x: p.x * turn.cos + p.y * turn.sin, y: -p.x * turn.sin + p.y * turn.cos };
}

/** Back from the plane's upright frame into the stick's. */
export function turnedBack(turn: Turn, p: Point): Point {
  return { x: p.x * turn.cos - p.y * turn.sin, y: p.x * turn.sin + p.y * turn.cos };
}

/** What a profile counts for, each vertex turned for it, a plane let down, and each edge under it (`countWork`). */
const WORK_OF_PROFILE = 10;
const WORK_OF_TURNED = 1;
const WORK_OF_DROP = 3;
const WORK_UNDER_SOLE = 1;

/** The upward edges of a region seen by a plane of this tilt. */
export function profileOf(region: Region, tiltDeg: number): Profile {
  const turn = turnOf(tiltDeg);
  let total = 0;
  for (const ring of region) total += ring.xs.length;
  countWork(WORK_OF_PROFILE + WORK_OF_TURNED * total);
  // Plain lists: so short-lived and so many, typed ones take longer to make than to read.
  const x0: number[] = [];
  const y0: number[] = [];
  const x1: number[] = [];
  const y1: number[] = [];
  const source: number[] = [];
  let minX = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  for (const ring of region) addEdges(ring);
  const count = x0.length;
  sortByStart();
  const reachX: number[] = [];
  let furthest = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    if (x1[i] > furthest) furthest = x1[i];
    reachX.push(furthest);
  }
  return { tiltDeg, count, x0, y0, x1, y1, source, reachX, minX, maxX };

  // Walked anticlockwise the upward edges come from right to left, so turning them round leaves few out of place.
  function sortByStart(): void {
    for (const values of [x0, y0, x1, y1, source]) values.reverse();
    for (let i = 1; i < count; i++) {
      const a = x0[i];
      if (x0[i - 1] <= a) continue;
      const b = y0[i];
      const c = x1[i];
      const d = y1[i];
      const e = source[i];
      let j = i - 1;
      for (; j >= 0 && x0[j] > a; j--) {
        x0[j + 1] = x0[j];
        y0[j + 1] = y0[j];
        x1[j + 1] = x1[j];
        y1[j + 1] = y1[j];
        source[j + 1] = source[j];
      }
      x0[j + 1] = a;
      y0[j + 1] = b;
      x1[j + 1] = c;
      y1[j + 1] = d;
      source[j + 1] = e;
    }
  }

  function addEdges(ring: FlatRing): void {
    const n = ring.xs.length;
    for (let i = 0; i < n; i++) {
      const j = i + 1 === n ? 0 : i + 1;
      const ax = ring.xs[i] * turn.cos + ring.ys[i] * turn.sin;
      const bx = ring.xs[j] * turn.cos + ring.ys[j] * turn.sin;
      if (ax < minX) minX = ax;
      if (ax > maxX) maxX = ax;
      // Anticlockwise, so the wood lies to the left: an edge that runs leftwards has its wood below.
      if (bx > ax) continue;
      x0.push(bx);
      y0.push(-ring.xs[j] * turn.sin + ring.ys[j] * turn.cos);
      x1.push(ax);
      y1.push(-ring.xs[i] * turn.sin + ring.ys[i] * turn.cos);
      source.push(ring.sources[i]);
    }
  }
}

/** What may be left out of account, or held off, when a plane is let down. */
export interface DropOptions {
  /** The sole taken narrower by this on either side. */
  readonly narrowMm?: number;
  /** Only the sole between these places across counts (the sole's own frame); its ends unless given. */
  readonly fromMm?: number;
  readonly toMm?: number;
  /** A caller that only asks whether the plane stops above this height is answered as soon as it does, mm. */
  readonly enoughAboveMm?: number;
  /** Extra room to leave above an edge, by its source; 0 where none. */
  readonly clearance?: (source: number) => number;
}

/** An edge under a sole has two ends; on either the plane may be stopped. */
const ENDS = 2;

/**
 * Where the plane, its origin at `shiftMm` across (turned frame), is stopped. Gives null when nothing stands below it.
 */
export function restOn(
  profile: Profile,
  sole: SoleShape,
  shiftMm: number,
  options: DropOptions = {},
): Rest | null {
  const narrowMm = options.narrowMm ?? 0;
  // A narrowed body clears what stands just where it ends, and goes into a groove no wider than itself.
  const inMm = narrowMm > 0 ? narrowMm + SAME_POINT_MM : 0;
  const left = shiftMm + (options.fromMm ?? sole.leftMm + inMm);
  const right = shiftMm + (options.toMm ?? sole.rightMm - inMm);
  const { x0, y0, x1, y1, source, count } = profile;
  const { corners, bellies } = sole;
  const clearance = options.clearance;
  const enough = options.enoughAboveMm ?? Number.POSITIVE_INFINITY;
  const first = firstReaching(profile, left);
  let height = Number.NEGATIVE_INFINITY;
  let touch = 0;
  let touched = 0;
  let i = first;
  for (; i < count && height <= enough; i++) {
    const ax = x0[i];
    if (ax > right) break;
    const bx = x1[i];
    if (bx < left) continue;
    const room = clearance ? clearance(source[i]) : 0;
    const rise = bx - ax;
    const slope = rise > 0 ? (y1[i] - y0[i]) / rise : 0;
    const base = rise > 0 ? y0[i] : Math.max(y0[i], y1[i]);
    const from = Math.max(ax, left);
    const to = Math.min(bx, right);
    // Where it may be stopped: at either end of what lies under the sole, at the sole's corners, where its arcs touch.
    const stops = rise > 0 ? ENDS + corners.length + bellies.length : 1;
    for (let k = 0; k < stops; k++) {
      let x = k === 0 ? from : to;
      if (k >= ENDS) {
        const belly = k < ENDS + corners.length ? null : bellies[k - ENDS - corners.length];
        const stop = belly ? touchOf(belly, slope) : corners[k - ENDS];
        if (stop <= from - shiftMm || stop >= to - shiftMm) continue;
        if (belly && (stop <= belly.fromX || stop >= belly.toX)) continue;
        x = stop + shiftMm;
      }
      const h = base + (x - ax) * slope + room - soleHeightMm(sole, x - shiftMm);
      if (h > height) {
        height = h;
        touch = x;
        touched = source[i];
      }
    }
  }
  countWork(WORK_OF_DROP + WORK_UNDER_SOLE * (i - first));
  return Number.isFinite(height) ? { heightMm: height, touchXMm: touch, source: touched } : null;
}

/** Height of the highest wood between two places across (turned frame), mm; minus infinity where none stands there. */
export function topBetween(profile: Profile, fromMm: number, toMm: number): number {
  const { x0, y0, x1, y1, count } = profile;
  let top = Number.NEGATIVE_INFINITY;
  const first = firstReaching(profile, fromMm);
  let i = first;
  for (; i < count && x0[i] <= toMm; i++) {
    if (x1[i] < fromMm) continue;
    const rise = x1[i] - x0[i];
    const at = (x: number) =>
      rise > 0 ? y0[i] + ((y1[i] - y0[i]) * (x - x0[i])) / rise : Math.max(y0[i], y1[i]);
    top = Math.max(top, at(Math.max(x0[i], fromMm)), at(Math.min(x1[i], toMm)));
  }
  countWork(WORK_UNDER_SOLE * (i - first));
  return top;
}

/** The first edge from which on some edge reaches as far right as x. */
function firstReaching(profile: Profile, x: number): number {
  let low = 0;
  let high = profile.count;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (profile.reachX[middle] < x) low = middle + 1;
    else high = middle;
  }
  return low;
}
