/**
 * Where wood is left on the wanted section once all cuts are made: stretches of its lines and arcs, and how far the wood
 * stands off each.
 */
import {
  difference,
  distanceMm,
  type FlatRing,
  lerpPoint,
  line,
  nearestOnPiece,
  nearestOnRing,
  type Piece,
  type Point,
  pointAt,
  type Region,
  type Ring,
  regionAreaMm2,
  splitPiece,
} from "../curve/index.ts";
import { apartAtFilms, comesAway, deepestFrom, spansAlong, withoutFallen } from "../cutting/index.ts";
import { OVERCUT_MM, SAME_POINT_MM, SLIVER_MM2 } from "../measure/index.ts";
import { along, type Bench } from "./bench.ts";
import { outwardAt, type WorkedPiece } from "./worked-piece.ts";

/** A stretch of a piece, as shares of its length, and how far the wood stands off it there. */
export interface LeftStretch {
  readonly piece: WorkedPiece;
  readonly from: number;
  readonly to: number;
  readonly leftMm: number;
}

/**
 * Every stretch on which more than the tolerance is left, in the order of the outline. What counts is how far the wood stands
 * off the drawing, where that is given: the section that is aimed at lies a little off it itself.
 *
 * Each piece of leftover wood is told on the stretches of the section that it touches. It stands off a stretch by its
 * height square to it, and by the distance of every place of its outline that has no other stretch nearer to it; wood
 * that touches none (a thread between two cuts) is told at the piece nearest to it.
 */
export function leftStretches(bench: Bench, wood: Region, drawn: Ring = bench.planned): LeftStretch[] {
  const over = difference(withoutFallen(wood, bench.limits.shavingMm2), bench.plannedRegion);
  const heavy = over
    .flatMap(apartAtFilms)
    .filter(
      (ring) =>
        regionAreaMm2([ring]) > SLIVER_MM2 &&
        deepestFrom(drawn, [ring], OVERCUT_MM).depthMm > bench.toleranceMm &&
        !comesAway(bench.planned, ring, bench.limits.shavingMm2),
    );
  const stretches = heavy.flatMap((ring) => stretchesUnder(bench, drawn, ring));
  return stretches.sort((a, b) => a.piece.index - b.piece.index || a.from - b.from);
}

function stretchesUnder(bench: Bench, drawn: Ring, ring: FlatRing): LeftStretch[] {
  const offMm = (p: Point): number => nearestOnRing(drawn, p).distanceMm;
  const tooHigh = (p: Point): boolean => offMm(p) > bench.toleranceMm - OVERCUT_MM;
  const touched = bench.worked.flatMap((piece) => touchedSpans(ring, piece));
  // What only just laps over onto a neighbour is told where it stands, not where it ends.
  const long = touched.filter((span) => (span.to - span.from) * span.piece.lengthMm >= LEAST_TOLD_MM);
  for (const spans of [long, touched]) {
    const told = heightsOff(ring, spans, tooHigh, offMm);
    for (const leastMm of [bench.toleranceMm, bench.toleranceMm / 2]) {
      const tall = told.filter((stretch) => stretch.leftMm > leastMm);
      if (tall.length > 0) return tall;
    }
  }
  return nearestStretch(bench, ring);
}

/** Shorter stretches are a lap over from the next one, mm. */
const LEAST_TOLD_MM = 0.3;

type Span = Omit<LeftStretch, "leftMm">;

/** Where a ring of leftover wood lies along a piece: its boundary edges that run on the piece itself, joined up. */
function touchedSpans(ring: FlatRing, piece: WorkedPiece): Span[] {
  const spans: [number, number][] = [];
  for (const [a, b] of edgesBrokenAt(ring, [piece.piece.from, piece.piece.to])) {
    const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
    const near = [a, middle, b].map((p) => nearestOnPiece(piece.piece, p));
    if (near.some((one) => one.distanceMm > TOUCHES_MM)) continue;
    const ts = near.map((one) => one.t);
    if ((Math.max(...ts) - Math.min(...ts)) * piece.lengthMm < TOUCHES_MM) continue;
    spans.push([Math.min(...ts), Math.max(...ts)]);
  }
  spans.sort((a, b) => a[0] - b[0]);
  const joined: [number, number][] = [];
  const gap = (2 * TOUCHES_MM) / piece.lengthMm;
  for (const span of spans) {
    const last = joined[joined.length - 1];
    if (last && span[0] <= last[1] + gap) last[1] = Math.max(last[1], span[1]);
    else joined.push([span[0], span[1]]);
  }
  return joined.map(([from, to]) => ({ piece, from, to }));
}

/** The edges of a ring, each broken where one of the places lies on it: pieces in one straight line share an edge. */
function edgesBrokenAt(ring: FlatRing, places: readonly Point[]): readonly (readonly [Point, Point])[] {
  const n = ring.xs.length;
  return Array.from({ length: n }, (_, i) => i).flatMap((i) => {
    const a = { x: ring.xs[i], y: ring.ys[i] };
    const b = { x: ring.xs[(i + 1) % n], y: ring.ys[(i + 1) % n] };
    const edge: Piece = line(a, b);
    const breaks = places
      .map((place) => nearestOnPiece(edge, place))
      .filter((near) => near.distanceMm <= TOUCHES_MM && near.t > 0 && near.t < 1)
      .map((near) => near.t)
      .sort((p, q) => p - q)
      .map((t) => pointAt(edge, t));
    const stops = [a, ...breaks, b];
    return stops.slice(1).map((stop, k) => [stops[k], stop] as const);
  });
}

/** An edge of leftover wood this near a piece lies on it, mm: above what flattening an arc leaves between the two. */
const TOUCHES_MM = 0.01;

/**
 * How far a ring of leftover wood stands off each of the stretches that it touches. Only wood counts that stands too high
 * over the drawing: in an inner corner a film of wood on one side reaches far out square to the other. Where the section
 * aimed at lies off the drawing, a place stands as far off as it does off the further of the two.
 */
function heightsOff(
  ring: FlatRing,
  spans: readonly Span[],
  tooHigh: (p: Point) => boolean,
  offMm: (p: Point) => number,
): LeftStretch[] {
  const pieces = spans.map(onlySpan);
  const left = spans.map((span, i) => squareHeightMm(ring, span, pieces[i], tooHigh));
  for (const place of boundaryOf(ring)) {
    const apartMm = pieces.map((piece) => nearestOnPiece(piece, place).distanceMm);
    const leastMm = Math.min(...apartMm);
    // A place as near to two stretches counts for both: whichever hand, the same is told.
    const higher = apartMm.flatMap((mm, i) =>
      mm <= leastMm + SAME_POINT_MM && Math.max(mm, offMm(place)) > left[i] ? [i] : [],
    );
    if (higher.length === 0 || !tooHigh(place)) continue;
    for (const i of higher) left[i] = Math.max(apartMm[i], offMm(place));
  }
  return spans.map((span, i) => ({ ...span, leftMm: left[i] }));
}

function onlySpan({ piece, from, to }: Span): Piece {
  const stretch = from > 0 ? splitPiece(piece.piece, from)[1] : piece.piece;
  const share = from < 1 ? (to - from) / (1 - from) : 1;
  return share > 0 && share < 1 ? splitPiece(stretch, share)[0] : stretch;
}

/** Places along a stretch at which the wood over it is measured, and on the way up through it. */
const HEIGHT_PLACES = 16;
const UP_PLACES = 8;

/**
 * Greatest height of the wood over a stretch, square to it. Square to a cove the far side of the wood may lie on the cove
 * again: it stands no further off than it lies from the nearest place of the stretch.
 */
function squareHeightMm(
  ring: FlatRing,
  { piece, from, to }: Span,
  stretch: Piece,
  tooHigh: (p: Point) => boolean,
): number {
  let height = 0;
  const inner = Array.from({ length: HEIGHT_PLACES }, (_, i) => (i + 0.5) / HEIGHT_PLACES);
  // Just inside the ends too: at an end itself the wood may stand to one side only.
  const endShare = Math.min(0.5, TOUCHES_MM / ((to - from) * piece.lengthMm));
  for (const share of [endShare, ...inner, 1 - endShare]) {
    const t = from + (to - from) * share;
    const out = outwardAt(piece.piece, t);
    // Begun a hair off the section: the wood's own edge lies on it.
    const start = along(pointAt(piece.piece, t), out, TOUCHES_MM);
    const first = spansAlong([ring], start, out)[0];
    if (!first || first[0] > TOUCHES_MM) continue;
    const highMm = nearestOnPiece(stretch, along(start, out, first[1])).distanceMm;
    if (highMm <= height) continue;
    const up = Array.from({ length: UP_PLACES }, (_, i) =>
      along(start, out, (first[1] * (i + 1)) / UP_PLACES),
    );
    if (up.some(tooHigh)) height = highMm;
  }
  return height;
}

/**
 * Places along an edge of leftover wood, at most this far apart, mm: what stands highest off the section may lie anywhere
 * on a long straight edge, over the corner between two stretches.
 */
const BOUNDARY_STEP_MM = 0.25;

/** The fewest places that an edge is looked at in: its corner and three more. */
const LEAST_PLACES = 4;

/** Corners of a ring and places between them. */
function* boundaryOf(ring: FlatRing): Generator<Point> {
  const n = ring.xs.length;
  for (let i = 0; i < n; i++) {
    const a = { x: ring.xs[i], y: ring.ys[i] };
    const b = { x: ring.xs[(i + 1) % n], y: ring.ys[(i + 1) % n] };
    const count = Math.max(LEAST_PLACES, Math.ceil(distanceMm(a, b) / BOUNDARY_STEP_MM));
    for (let k = 0; k < count; k++) yield lerpPoint(a, b, k / count);
  }
}

/** For wood that touches no piece: a short stretch of the piece nearest to it. */
function nearestStretch(bench: Bench, ring: FlatRing): LeftStretch[] {
  const { at, depthMm } = deepestFrom(bench.planned, [ring], OVERCUT_MM);
  const place = at ?? { x: ring.xs[0], y: ring.ys[0] };
  let best: { piece: WorkedPiece; t: number; mm: number } | undefined;
  for (const piece of bench.worked) {
    const near = nearestOnPiece(piece.piece, place);
    if (!best || near.distanceMm < best.mm - SAME_POINT_MM) best = { piece, t: near.t, mm: near.distanceMm };
  }
  if (!best) return [];
  const { piece, t } = best;
  return [{ piece, from: Math.max(0, t - NEAR_SPAN), to: Math.min(1, t + NEAR_SPAN), leftMm: depthMm }];
}

/** How much of its piece, to either side, such wood is said to take up, as a share of the piece's length. */
const NEAR_SPAN = 0.1;
