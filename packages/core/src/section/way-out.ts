/**
 * Undercut places: where no straight way leads out. A plane comes from a side that the face opens to and leans at most
 * `MOST_LEAN_DEG`; a place that no such direction reaches in the finished section cannot be planed by anything.
 */
import { flattenPiece, lengthMm, type Point, type Ring, tangentRad } from "../curve/index.ts";
import { DRAWING_NOISE_MM, normaliseRad, SAME_POINT_DEG, toRad } from "../measure/index.ts";
import type { Section } from "./types.ts";
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

/** More than this many places are thinned out: a section of thousands of short lines is looked at here and there. */
const MOST_PLACES = 400;

const FULL_TURN_RAD = 2 * Math.PI;

/** Every stretch of the worked faces that has no straight way out, in the ring's order. */
export function undercutPlaces(section: Section): readonly UndercutPlace[] {
  const edges = edgesOf(section.outline);
  const places: UndercutPlace[] = [];
  for (const face of workedFaces(section).faces) {
    const open = openDirections(face, section.stick);
    const own = edges.flatMap((edge, index) => (isOf(face, edge, section) ? [index] : []));
    places.push(...stretches(own, edges, open));
  }
  return places;
}

function edgesOf(outline: Ring): readonly Edge[] {
  return outline.pieces.flatMap((piece, index) => {
    const points = flattenPiece(piece, DRAWING_NOISE_MM);
    return points.slice(1).map((to, k) => ({ from: points[k] as Point, to, piece: index }));
  });
}

function isOf(face: WorkedFace, edge: Edge, section: Section): boolean {
  const total = section.outline.pieces.length;
  return (edge.piece - face.first + total) % total < face.count;
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

function stretches(
  own: readonly number[],
  edges: readonly Edge[],
  open: readonly Span[],
): readonly UndercutPlace[] {
  const every = Math.max(1, Math.ceil(own.length / MOST_PLACES));
  const found: UndercutPlace[] = [];
  let current: { points: Point[]; lengthMm: number } | null = null;
  for (const [k, index] of own.entries()) {
    if (k % every !== 0) continue;
    const edge = edges[index] as Edge;
    const at = { x: (edge.from.x + edge.to.x) / 2, y: (edge.from.y + edge.to.y) / 2 };
    if (hasWayOut(at, index, edges, open)) {
      current = close(current, found);
      continue;
    }
    current ??= { points: [], lengthMm: 0 };
    current.points.push(at);
    for (const one of own.slice(k, k + every)) current.lengthMm += edgeLengthMm(edges[one] as Edge);
  }
  close(current, found);
  return found;
}

function close(current: { points: Point[]; lengthMm: number } | null, found: UndercutPlace[]): null {
  if (current !== null) {
    const at = current.points[Math.floor(current.points.length / 2)] as Point;
    found.push({ at, lengthMm: current.lengthMm });
  }
  return null;
}

function edgeLengthMm(edge: Edge): number {
  return lengthMm({ kind: "line", from: edge.from, to: edge.to });
}

/** Does any open direction leave `at` (the middle of edge `own`) without meeting another edge? */
function hasWayOut(at: Point, own: number, edges: readonly Edge[], open: readonly Span[]): boolean {
  const blocked = edges.map((edge, index) => (index === own ? woodSide(edge) : seenFrom(at, edge)));
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
