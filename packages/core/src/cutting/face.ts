/** The finished face held against the drawing: how proud and how far under, and what stands that no list tells. */
import {
  insideRing,
  lengthMm,
  nearestOnRing,
  type Piece,
  type Point,
  type Region,
  type Ring,
  regionOf,
} from "../curve/index.ts";
import { DRAWING_NOISE_MM, FLATTEN_MM, OVERCUT_MM } from "../measure/index.ts";
import { type Depth, perimeterMm } from "./depth.ts";
import type { PlanUncut } from "./types.ts";
import { isInWood } from "./wall.ts";

export interface FaceFigures {
  /** Greatest height over and depth under the drawing, mm; places listed as uncut are left out of the height. */
  readonly proudMm: number;
  readonly underMm: number;
  /** The highest wood over the tolerance that no listed place tells. */
  readonly unlisted: Depth;
  /** Listed places where no wood stands over the tolerance. */
  readonly notStanding: readonly PlanUncut[];
}

/** Spacing of the places looked at along straight faces, mm; between two a smooth face changes by far less. */
const STEP_MM = 0.1;

/** Places on the longest boundary, so that a scribble of a file cannot hold the proof up. */
const MOST_PLACES = 20_000;

/** How far beyond its two ends, along the drawing, and its height a listed place is taken to reach, mm: the planner steps along faces. */
const LISTED_REACH_MM = 0.3;

/** Goes once round the wood that is left. `drawn` is the section as drawn. */
export function faceFigures(
  drawn: Ring,
  left: Region,
  toleranceMm: number,
  uncut: readonly PlanUncut[],
): FaceFigures {
  let proudMm = 0;
  let underMm = 0;
  let unlisted: Depth = { depthMm: 0, at: null };
  const told = new Set<PlanUncut>();
  const starts = startsMm(drawn);
  const allMm = starts[starts.length - 1] ?? 0;
  const listed = uncut.map((place) => listedStretch(drawn, starts, place));
  for (const p of boundaryPlaces(left)) {
    const near = nearestOnRing(drawn, p);
    const off = near.distanceMm;
    if (off <= 2 * FLATTEN_MM) continue;
    if (insideRing(drawn, p) === "in") {
      underMm = Math.max(underMm, off);
      continue;
    }
    const alongMm = (starts[near.piece] ?? 0) + near.t * lengthMm(drawn.pieces[near.piece] as Piece);
    const covering = listed.filter((one) => covers(one, alongMm, off, allMm));
    if (off > toleranceMm + OVERCUT_MM) {
      for (const { place } of covering) told.add(place);
      if (covering.length === 0 && off > unlisted.depthMm) unlisted = { depthMm: off, at: p };
    } else if (covering.length === 0) proudMm = Math.max(proudMm, off);
  }
  const notStanding = uncut.filter(
    (place) => place.left > toleranceMm + OVERCUT_MM && !told.has(place) && !isBuried(place, drawn, left),
  );
  return { proudMm, underMm, unlisted, notStanding };
}

/**
 * Whether the drawn face lies inside the wood somewhere along a listed place: in a deep quirk that is still filled the
 * wood's own surface may be far away from its floor.
 */
function isBuried(place: PlanUncut, drawn: Ring, left: Region): boolean {
  const [ax, ay] = place.from;
  const [bx, by] = place.to;
  for (const p of boundaryPlaces(regionOf(drawn, OVERCUT_MM))) {
    const isAlong =
      p.x >= Math.min(ax, bx) - OVERCUT_MM &&
      p.x <= Math.max(ax, bx) + OVERCUT_MM &&
      p.y >= Math.min(ay, by) - OVERCUT_MM &&
      p.y <= Math.max(ay, by) + OVERCUT_MM;
    if (isAlong && isInWood(left, p) && offBoundaryMm(left, p) > 2 * OVERCUT_MM) return true;
  }
  return false;
}

function offBoundaryMm(region: Region, p: Point): number {
  let least = Number.POSITIVE_INFINITY;
  for (const { xs, ys } of region) {
    for (let i = 0, j = xs.length - 1; i < xs.length; j = i++) {
      const dx = xs[i] - xs[j];
      const dy = ys[i] - ys[j];
      const along = ((p.x - xs[j]) * dx + (p.y - ys[j]) * dy) / (dx * dx + dy * dy);
      const t = along > 0 ? Math.min(1, along) : 0;
      least = Math.min(least, Math.hypot(xs[j] + dx * t - p.x, ys[j] + dy * t - p.y));
    }
  }
  return least;
}

/** A listed place as a stretch of the drawing, mm along it; `toMm` may run on past the drawing's own start. */
interface ListedStretch {
  readonly place: PlanUncut;
  readonly fromMm: number;
  readonly toMm: number;
}

/** How far along a ring, mm from its start, the place of it nearest to a point lies. */
function alongRingMm(ring: Ring, starts: readonly number[], p: Point): number {
  const { piece, t } = nearestOnRing(ring, p);
  return (starts[piece] ?? 0) + t * lengthMm(ring.pieces[piece] as Piece);
}

/** Where each piece of a ring starts along it, and at the end its whole length, mm. */
function startsMm(ring: Ring): readonly number[] {
  const starts = [0];
  for (const piece of ring.pieces) starts.push((starts[starts.length - 1] ?? 0) + lengthMm(piece));
  return starts;
}

/** The stretch of the drawing between a place's two ends, the shorter way round. */
function listedStretch(ring: Ring, starts: readonly number[], place: PlanUncut): ListedStretch {
  const all = starts[starts.length - 1] ?? 0;
  const a = alongRingMm(ring, starts, { x: place.from[0], y: place.from[1] });
  const b = alongRingMm(ring, starts, { x: place.to[0], y: place.to[1] });
  const [low, high] = a < b ? [a, b] : [b, a];
  return high - low <= all / 2
    ? { place, fromMm: low, toMm: high }
    : { place, fromMm: high, toMm: low + all };
}

/** Whether a listed place tells of wood that stands `offMm` off the drawing, `alongMm` along it. */
function covers(stretch: ListedStretch, alongMm: number, offMm: number, allMm: number): boolean {
  const slack = stretch.place.left + LISTED_REACH_MM;
  if (offMm > slack) return false;
  return [alongMm, alongMm + allMm].some((at) => at >= stretch.fromMm - slack && at <= stretch.toMm + slack);
}

function* boundaryPlaces(region: Region): Generator<Point> {
  const step = Math.max(STEP_MM, perimeterMm(region) / MOST_PLACES);
  for (const { xs, ys } of region) {
    for (let i = 0, j = xs.length - 1; i < xs.length; j = i++) {
      const dx = xs[i] - xs[j];
      const dy = ys[i] - ys[j];
      const count = Math.max(1, Math.ceil((Math.hypot(dx, dy) - DRAWING_NOISE_MM) / step));
      for (let k = 0; k < count; k++) yield { x: xs[j] + (dx * k) / count, y: ys[j] + (dy * k) / count };
    }
  }
}
