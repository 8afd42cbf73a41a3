/** The finished face held against the drawing: how proud and how far under, and what stands that no list tells. */
import {
  difference,
  distanceMm,
  type FlatRing,
  insideRing,
  lengthMm,
  lerpPoint,
  nearestOnPiece,
  nearestOnRing,
  type Piece,
  type Point,
  type Region,
  type Ring,
  regionAreaMm2,
  regionOf,
  splitPiece,
  splitRegion,
} from "../curve/index.ts";
import {
  DRAWING_NOISE_MM,
  FIN_MM,
  FLATTEN_MM,
  OVERCUT_MM,
  SAME_POINT_MM,
  THREAD_MM,
} from "../measure/index.ts";
import { type Depth, deepestFrom, perimeterMm } from "./depth.ts";
import { apartAtFilms } from "./film.ts";
import { COMMON_LIMITS } from "./limits.ts";
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

export interface FinishedFace {
  /** The section as drawn, which heights and depths are told from. */
  readonly drawn: Ring;
  /** The section that the cuts aim at. */
  readonly planned: Ring;
  /** The wood that is left. */
  readonly left: Region;
  readonly toleranceMm: number;
  readonly uncut: readonly PlanUncut[];
}

/**
 * Goes once round the wood that is left. What comes away with the shaving is told on the planned section: where that lies
 * a hair off the drawing, a film of wood over the drawing would join a fin to the wood beside it.
 */
export function faceFigures({ drawn, planned, left, toleranceMm, uncut }: FinishedFace): FaceFigures {
  let proudMm = 0;
  let underMm = 0;
  let unlisted: Depth = { depthMm: 0, at: null };
  const told = new Set<PlanUncut>();
  const listed = uncut.map((place) => listedStretch(drawn, place));
  const solid = withoutFins(planned, regionOf(planned, FLATTEN_MM), withoutFallen(left));
  for (const p of boundaryPlaces(solid)) {
    const near = nearestOnRing(drawn, p);
    const off = near.distanceMm;
    if (off <= 2 * FLATTEN_MM) continue;
    if (insideRing(drawn, p) === "in") {
      underMm = Math.max(underMm, off);
      continue;
    }
    const covering = listed.filter((one) => covers(one, p));
    // Whoever lists a place may have found it a hair higher.
    if (off > toleranceMm - OVERCUT_MM) for (const { place } of covering) told.add(place);
    if (off > toleranceMm + OVERCUT_MM) {
      if (covering.length === 0 && off > unlisted.depthMm) unlisted = { depthMm: off, at: p };
    } else if (!listed.some((one) => isNearest(one, p, off))) proudMm = Math.max(proudMm, off);
  }
  const notStanding = uncut.filter(
    (place) => place.left > toleranceMm + OVERCUT_MM && !told.has(place) && !isBuried(place, drawn, solid),
  );
  return { proudMm, underMm, unlisted, notStanding };
}

/** The wood without what a cut has parted off: pieces no larger than a shaving hang by nothing and are swept away. */
export function withoutFallen(wood: Region, shavingMm2: number = COMMON_LIMITS.shavingMm2): Region {
  if (wood.length < 2) return wood;
  const [stick, ...others] = splitRegion(wood);
  return [...(stick ?? []), ...others.filter((part) => regionAreaMm2(part) > shavingMm2).flat()];
}

/**
 * The wood without what comes away with the shaving: fins, leftovers over the section thinner, on the whole, than
 * `FIN_MM`, such as two cuts leave that meet on a line drawn a hair apart; and splinters that hang by a thread.
 */
export function withoutFins(section: Ring, sectionRegion: Region, wood: Region): Region {
  const fins = difference(wood, sectionRegion)
    .flatMap(apartAtFilms)
    .filter((ring) => comesAway(section, ring));
  return fins.length > 0 ? difference(wood, fins) : wood;
}

/**
 * Whether a ring of leftover wood comes away with the shaving: a fin, whose area spread over its height is thinner than a fin
 * may be, or a splinter no larger than a shaving that stands on less than a thread of the section. A splinter that two
 * cuts leave on an arris meets the section in one point, and rounding alone would say whether it is part of the wood.
 */
export function comesAway(
  section: Ring,
  ring: FlatRing,
  shavingMm2: number = COMMON_LIMITS.shavingMm2,
): boolean {
  const areaMm2 = Math.abs(regionAreaMm2([ring]));
  const { depthMm } = deepestFrom(section, [ring], OVERCUT_MM);
  return areaMm2 < FIN_MM * depthMm || (areaMm2 <= shavingMm2 && standsOnMm(section, ring) < THREAD_MM);
}

/** The length of the section that a ring of leftover wood stands on, mm: its edges that lie along the section. */
function standsOnMm(section: Ring, { xs, ys }: FlatRing): number {
  let sum = 0;
  for (let i = 0, j = xs.length - 1; i < xs.length; j = i++) {
    const a = { x: xs[j], y: ys[j] };
    const b = { x: xs[i], y: ys[i] };
    const isAlong = [a, lerpPoint(a, b, 0.5), b].every(
      (p) => nearestOnRing(section, p).distanceMm <= OVERCUT_MM,
    );
    if (isAlong) sum += distanceMm(a, b);
  }
  return sum;
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

/** How far a place lies from the boundary of some wood, mm. */
export function offBoundaryMm(region: Region, p: Point): number {
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

/** A listed place as the stretch of the drawing between its two ends, the shorter way round. */
interface ListedStretch {
  readonly place: PlanUncut;
  readonly pieces: readonly Piece[];
}

function listedStretch(ring: Ring, place: PlanUncut): ListedStretch {
  const a = nearestOnRing(ring, { x: place.from[0], y: place.from[1] });
  const b = nearestOnRing(ring, { x: place.to[0], y: place.to[1] });
  const ways = [wayRound(ring, a, b), wayRound(ring, b, a)];
  const [one, other] = ways.map((pieces) => pieces.reduce((sum, piece) => sum + lengthMm(piece), 0));
  return { place, pieces: (one ?? 0) <= (other ?? 0) ? (ways[0] ?? []) : (ways[1] ?? []) };
}

/** The pieces of a ring, anticlockwise, from one place on it to another; the first and last in part, or not at all. */
function wayRound(
  ring: Ring,
  from: { readonly piece: number; readonly t: number },
  to: { readonly piece: number; readonly t: number },
): readonly Piece[] {
  const count = ring.pieces.length;
  if (from.piece === to.piece && from.t <= to.t)
    return partOf(ring.pieces[from.piece] as Piece, from.t, to.t);
  const way = [...partOf(ring.pieces[from.piece] as Piece, from.t, 1)];
  for (let i = (from.piece + 1) % count; i !== to.piece; i = (i + 1) % count)
    way.push(ring.pieces[i] as Piece);
  return [...way, ...partOf(ring.pieces[to.piece] as Piece, 0, to.t)];
}

/** A stretch of a piece, or nothing where it begins at the piece's very end or ends at its very start. */
function partOf(piece: Piece, from: number, to: number): readonly Piece[] {
  const least = SAME_POINT_MM / Math.max(lengthMm(piece), SAME_POINT_MM);
  if (to - from <= least) return [];
  const ahead = from > least ? splitPiece(piece, from)[1] : piece;
  const share = from > least ? (to - from) / (1 - from) : to;
  return [share < 1 - least ? splitPiece(ahead, share)[0] : ahead];
}

/** Whether a listed place tells of the wood at `p`: it stands no further off the listed stretch than is listed. */
function covers({ place, pieces }: ListedStretch, p: Point): boolean {
  const slack = place.left + LISTED_REACH_MM;
  return pieces.some((piece) => nearestOnPiece(piece, p).distanceMm <= slack);
}

/** By how much a listed stretch may be further off than the nearest of the drawing and still be the nearest, mm. */
const AS_NEAR_MM = 2 * OVERCUT_MM;

/** Whether nothing of the drawing lies nearer to a place than a listed stretch: what stands there belongs to it. */
function isNearest({ pieces }: ListedStretch, p: Point, nearestMm: number): boolean {
  return pieces.some((piece) => nearestOnPiece(piece, p).distanceMm <= nearestMm + AS_NEAR_MM);
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
