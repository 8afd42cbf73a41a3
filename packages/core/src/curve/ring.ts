import { bug, countWork, SAME_POINT_MM } from "../measure/index.ts";
import { joined, piecesBetween } from "./chain.ts";
import { orientation } from "./orientation.ts";
import { nearestOnPiece, reversePiece } from "./piece.ts";
import { addPoints, point, samePoint, scalePoint, turnPoint } from "./point.ts";
import { circularSegmentMm2 } from "./segment.ts";
import type { Arc, Piece, Point, Ring, Vertex } from "./types.ts";

/**
 * A closed run of pieces, turned anticlockwise around its inside if it was given clockwise. Each piece must start
 * within `SAME_POINT_MM` of where the one before ends, the first where the last ends, else a bug; joints are then
 * made the very same point. Throws a bug if nothing is enclosed. That the run does not cross itself is not
 * checked here: see `selfCrossings`.
 */
export function ring(pieces: readonly Piece[]): Ring {
  const closed = closedRun(pieces);
  const area = areaMm2(closed);
  if (area === 0) bug("a ring encloses nothing", { pieces: pieces.length });
  return area > 0 ? closed : reverseRing(closed);
}

/** As `ring`, keeping the direction it is given in: what holes are made of. */
export function closedRun(pieces: readonly Piece[]): Ring {
  const run = joined(pieces);
  const first = run[0];
  const last = run[run.length - 1];
  if (first === undefined || last === undefined || run.length < 2) {
    return bug("a ring needs at least two pieces", { pieces: run.length });
  }
  if (last.to !== first.from) {
    if (!samePoint(last.to, first.from)) {
      bug("a ring does not end where it starts", {
        endX: last.to.x,
        endY: last.to.y,
        startX: first.from.x,
        startY: first.from.y,
      });
    }
    run[run.length - 1] = { ...last, to: first.from };
  }
  return { pieces: run };
}

/** The ring through vertices as they stand in files. A first vertex repeated at the end is taken once. */
export function ringFromVertices(vertices: readonly Vertex[]): Ring {
  const pieces: Piece[] = [];
  for (const [index, vertex] of vertices.entries()) {
    pieces.push(...piecesBetween(vertex, vertices[(index + 1) % vertices.length] as Vertex));
  }
  return ring(pieces);
}

/** Area enclosed, mm², exact for arcs; positive anticlockwise. Open runs are closed by a straight line. */
export function areaMm2(shape: Ring): number {
  const first = shape.pieces[0];
  if (first === undefined) return 0;
  // From a local origin, so that a section far away keeps its digits.
  const { x: originX, y: originY } = first.from;
  let doubled = 0;
  let swells = 0;
  for (const piece of shape.pieces) {
    const { from, to } = piece;
    doubled += (from.x - originX) * (to.y - originY) - (to.x - originX) * (from.y - originY);
    if (piece.kind === "arc") swells += circularSegmentMm2(piece);
  }
  return doubled / 2 + swells + 0;
}

/** The same ring travelled the other way, from the same point. */
export function reverseRing(shape: Ring): Ring {
  return { pieces: shape.pieces.map((piece) => reversePiece(piece)).reverse() };
}

/** The mirror image in the upright line x = `axisXMm`, still anticlockwise. */
export function mirrorRing(shape: Ring, axisXMm: number): Ring {
  return reverseRing(mapped(shape, (p) => point(2 * axisXMm - p.x, p.y), "mirrored"));
}

export function moveRing(shape: Ring, dxMm: number, dyMm: number): Ring {
  return mapped(shape, (p) => point(p.x + dxMm, p.y + dyMm), "kept");
}

export interface RingTransform {
  /** Turn about the origin, radians anticlockwise; default 0. */
  readonly turnRad?: number;
  /** Factor about the origin, positive; default 1. */
  readonly scale?: number;
  /** Move, mm; default 0. */
  readonly dx?: number;
  readonly dy?: number;
  /** Left and right changed about x = 0; default no. */
  readonly mirror?: boolean;
}

/** A ring mirrored, scaled, turned and moved, in this order; still anticlockwise. */
export function transformRing(shape: Ring, transform: RingTransform): Ring {
  const { turnRad = 0, scale = 1, dx = 0, dy = 0, mirror = false } = transform;
  if (!(scale > 0)) bug("a scale is not positive", { scale });
  const move = point(dx, dy);
  const place = (p: Point): Point => {
    const sided = mirror ? point(-p.x, p.y) : p;
    const turned = turnRad === 0 ? scalePoint(sided, scale) : turnPoint(scalePoint(sided, scale), turnRad);
    return addPoints(turned, move);
  };
  const placed = mapped(shape, place, mirror ? "mirrored" : "kept");
  return mirror ? reverseRing(placed) : placed;
}

/** Maps every joint once, so that neighbours go on sharing it. */
function mapped(shape: Ring, place: (p: Point) => Point, hand: "kept" | "mirrored"): Ring {
  const starts = shape.pieces.map((piece) => place(piece.from));
  const pieces = shape.pieces.map((piece, index): Piece => {
    const from = starts[index] as Point;
    const to = starts[(index + 1) % starts.length] as Point;
    if (piece.kind === "line") return { ...piece, from, to };
    return { ...piece, from, to, bulge: hand === "mirrored" ? -piece.bulge : piece.bulge };
  });
  return { pieces };
}

export interface NearestOnRing {
  /** Index of the piece. */
  readonly piece: number;
  readonly t: number;
  readonly point: Point;
  readonly distanceMm: number;
}

/** The point of a ring nearest to `p`; of several as near, that of the first piece. */
export function nearestOnRing(shape: Ring, p: Point): NearestOnRing {
  countWork(shape.pieces.length);
  let best: NearestOnRing | undefined;
  for (const [index, piece] of shape.pieces.entries()) {
    const near = nearestOnPiece(piece, p);
    if (best === undefined || near.distanceMm < best.distanceMm) best = { piece: index, ...near };
  }
  return best ?? bug("a ring has no pieces");
}

/** Whether `p` lies inside a ring, outside, or within `SAME_POINT_MM` of it. Holds for rings of either direction. */
export function insideRing(shape: Ring, p: Point): "in" | "on" | "out" {
  if (nearestOnRing(shape, p).distanceMm <= SAME_POINT_MM) return "on";
  return windingNumber(shape, p) === 0 ? "out" : "in";
}

/**
 * How often a ring goes anticlockwise round a point off it: that of the polygon of its chords, and one more or
 * less for each arc whose segment, between arc and chord, holds the point. A point on a chord is taken as if a
 * little to the right and, much less, up, in both.
 */
function windingNumber(shape: Ring, p: Point): number {
  let count = 0;
  for (const piece of shape.pieces) {
    const { from, to } = piece;
    const side = sideOfChord(from, to, p);
    if (from.y <= p.y && p.y < to.y && side > 0) count += 1;
    if (to.y <= p.y && p.y < from.y && side < 0) count -= 1;
    if (piece.kind === "arc" && side * piece.bulge < 0 && withinCircle(piece, p))
      count += Math.sign(piece.bulge);
  }
  return count;
}

/** 1 left of the chord, -1 right of it; a point exactly on it as if a little to the right and, much less, up. */
function sideOfChord(from: Point, to: Point, p: Point): 1 | -1 {
  const side = orientation(from, to, p);
  if (side !== 0) return side;
  if (from.y !== to.y) return to.y > from.y ? -1 : 1;
  return to.x > from.x ? 1 : -1;
}

/** Inside the circle of an arc, in the frame of its chord (origin its middle, half its length 1), safe for flat arcs. */
function withinCircle(piece: Arc, p: Point): boolean {
  const { from, to, bulge } = piece;
  const dx = (to.x - from.x) / 2;
  const dy = (to.y - from.y) / 2;
  const halfSquared = dx * dx + dy * dy;
  const px = p.x - (from.x + dx);
  const py = p.y - (from.y + dy);
  const along = (px * dx + py * dy) / halfSquared;
  const left = (py * dx - px * dy) / halfSquared;
  const power = bulge * (along * along + left * left - 1) - (1 - bulge) * (1 + bulge) * left;
  return bulge > 0 ? power < 0 : power > 0;
}
