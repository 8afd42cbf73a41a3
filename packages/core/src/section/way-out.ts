/**
 * Undercut places: where no straight way leads out. A plane comes from a side that the face opens to and leans at most
 * `MOST_LEAN_DEG`; a place that no such direction reaches in the finished section cannot be planed by anything.
 */
import {
  distanceMm,
  flattenPiece,
  lerpPoint,
  type Piece,
  type Point,
  type Ring,
  tangentRad,
} from "../curve/index.ts";
import { DRAWING_NOISE_MM, normaliseRad, SAME_POINT_DEG, toRad } from "../measure/index.ts";
import { keptPoints } from "./thin-out.ts";
import type { FreeSpan, Section } from "./types.ts";
import { type WorkedFace, workedFaces } from "./worked.ts";

/** A stretch of a worked face without a way out: its middle and its length along the outline. */
export interface UndercutPlace {
  readonly at: Point;
  readonly lengthMm: number;
}

interface Edge {
  readonly from: Point;
  readonly to: Point;
  readonly piece: number;
}

/** An angle range, anticlockwise from `startRad`, `widthRad` wide (0 to 2π). */
interface Span {
  readonly startRad: number;
  readonly widthRad: number;
}

/** How far a plane may lean in the hand, to either side of the way the stick is turned, degrees (common practice, no source). */
export const MOST_LEAN_DEG = 60;

/** Places are looked at this far apart, mm: what is smaller than a plane's nose is nothing to warn of. */
const PLACES_APART_MM = 0.5;

/** A large face is looked at in no more places than this. */
const MOST_PLACES = 400;

const FULL_TURN_RAD = 2 * Math.PI;

/** A place looked at: a point of an edge, and the length of the outline that it stands for. */
interface Place {
  readonly at: Point;
  readonly edge: number;
  readonly lengthMm: number;
}

/** Every stretch of the worked faces that has no straight way out, in the ring's order. */
export function undercutPlaces(section: Section): readonly UndercutPlace[] {
  const edges = edgesOf(section);
  return workedFaces(section).faces.flatMap((face) => {
    const open = openDirections(face, section.stick);
    return stretches(placesOf(face, section, edges), (place) => hasWayOut(place, edges, open));
  });
}

/** Places along a face, about evenly apart; in the ring's order, also where the face passes the ring's start. */
function placesOf(face: WorkedFace, section: Section, edges: readonly Edge[]): readonly Place[] {
  const total = section.outline.pieces.length;
  const rank = (edge: Edge) => (edge.piece - face.first + total) % total;
  const own = edges
    .flatMap((edge, index) => (rank(edge) < face.count ? [{ edge, index }] : []))
    .sort((a, b) => rank(a.edge) - rank(b.edge) || a.index - b.index);
  const faceMm = own.reduce((sum, { edge }) => sum + edgeLengthMm(edge), 0);
  const apartMm = Math.max(PLACES_APART_MM, faceMm / MOST_PLACES);
  let sinceMm = 0;
  return own.flatMap(({ edge, index }): readonly Place[] => {
    const lengthMm = edgeLengthMm(edge);
    // Edges shorter than the distance between places share one: only every so many of them is looked at.
    sinceMm += lengthMm;
    if (sinceMm < apartMm) return [];
    const count = Math.max(1, Math.floor(lengthMm / apartMm));
    const standsForMm = count === 1 ? sinceMm : lengthMm / count;
    sinceMm = 0;
    return Array.from({ length: count }, (_, k) => ({
      at: lerpPoint(edge.from, edge.to, (k + 0.5) / count),
      edge: index,
      lengthMm: standsForMm,
    }));
  });
}

/**
 * The outline as straight edges. A free curve's hundreds of short lines are thinned to what matters here, or a long
 * ogee would cost more than all else together.
 */
function edgesOf(section: Section): readonly Edge[] {
  const { pieces } = section.outline;
  const freeFrom = new Map(section.freeSpans.map((span) => [span.first, span]));
  const inFree = new Set(
    section.freeSpans.flatMap((span) =>
      Array.from({ length: span.count }, (_, k) => (span.first + k) % pieces.length),
    ),
  );
  return pieces.flatMap((piece, index) => {
    const span = freeFrom.get(index);
    if (span !== undefined) return edgesAlong(thinned(section, span), index);
    return inFree.has(index) ? [] : edgesAlong(flattenPiece(piece, DRAWING_NOISE_MM), index);
  });
}

function thinned(section: Section, span: FreeSpan): readonly Point[] {
  const { pieces } = section.outline;
  const run = Array.from({ length: span.count }, (_, k) => pieces[(span.first + k) % pieces.length] as Piece);
  const points = [(run[0] as Piece).from, ...run.map((piece) => piece.to)];
  return keptPoints(points, DRAWING_NOISE_MM).map((index) => points[index] as Point);
}

function edgesAlong(points: readonly Point[], piece: number): readonly Edge[] {
  return points.slice(1).map((to, k) => ({ from: points[k] as Point, to, piece }));
}

/** From each side of the stick that the face opens to, its outward direction and the lean to either side. */
function openDirections(face: WorkedFace, stick: Ring): readonly Span[] {
  const sides = stick.pieces.length;
  const steps = (face.toSide - face.fromSide + sides) % sides;
  return Array.from({ length: steps + 1 }, (_, step) => {
    const side = stick.pieces[(face.fromSide + step) % sides];
    const outwardRad = side === undefined ? 0 : tangentRad(side, 0.5) - Math.PI / 2;
    return { startRad: outwardRad - toRad(MOST_LEAN_DEG), widthRad: 2 * toRad(MOST_LEAN_DEG) };
  });
}

function stretches(places: readonly Place[], isOpen: (place: Place) => boolean): readonly UndercutPlace[] {
  const found: UndercutPlace[] = [];
  let current: Place[] = [];
  const close = () => {
    const middle = current[Math.floor(current.length / 2)];
    if (middle !== undefined) {
      found.push({ at: middle.at, lengthMm: current.reduce((sum, place) => sum + place.lengthMm, 0) });
    }
    current = [];
  };
  for (const place of places) {
    if (isOpen(place)) close();
    else current.push(place);
  }
  close();
  return found;
}

function edgeLengthMm(edge: Edge): number {
  return distanceMm(edge.from, edge.to);
}

/** Does any open direction leave the place without meeting another edge? */
function hasWayOut(place: Place, edges: readonly Edge[], open: readonly Span[]): boolean {
  const blocked = edges.map((edge, index) =>
    index === place.edge ? woodSide(edge) : seenFrom(place.at, edge),
  );
  return open.some((span) => isLeftOpen(span, blocked));
}

/** The edge under the place itself hides all directions on the wood's side (left of an anticlockwise ring). */
function woodSide(edge: Edge): Span {
  return { startRad: Math.atan2(edge.to.y - edge.from.y, edge.to.x - edge.from.x), widthRad: Math.PI };
}

/** The angle that an edge hides, seen from a point that is not on it. */
function seenFrom(at: Point, edge: Edge): Span {
  const fromRad = Math.atan2(edge.from.y - at.y, edge.from.x - at.x);
  const turnRad = normaliseRad(Math.atan2(edge.to.y - at.y, edge.to.x - at.x) - fromRad);
  return turnRad >= 0
    ? { startRad: fromRad, widthRad: turnRad }
    : { startRad: fromRad + turnRad, widthRad: -turnRad };
}

/** Is some direction of `span` in none of the blocked ones? A gap narrower than `SAME_POINT_DEG` is none. */
function isLeftOpen(span: Span, blocked: readonly Span[]): boolean {
  const covers: [number, number][] = [];
  for (const one of blocked) {
    // Counted from the span's start, a block may begin before it and reach into it from below.
    const start = (((one.startRad - span.startRad) % FULL_TURN_RAD) + FULL_TURN_RAD) % FULL_TURN_RAD;
    covers.push([start, start + one.widthRad], [start - FULL_TURN_RAD, start - FULL_TURN_RAD + one.widthRad]);
  }
  covers.sort((a, b) => a[0] - b[0]);
  const slackRad = toRad(SAME_POINT_DEG);
  let reached = 0;
  for (const [start, end] of covers) {
    if (start > reached + slackRad) break;
    reached = Math.max(reached, end);
  }
  return reached < span.widthRad - slackRad;
}
