import { bug, SAME_POINT_MM } from "../measure/index.ts";
import { arcsBetween, circleOf, lengthMm, line, straightIfFlat } from "./piece.ts";
import { finite, samePoint } from "./point.ts";
import type { Arc, Chain, Piece, Point, Vertex } from "./types.ts";

/**
 * An open run of pieces. Each must start within `SAME_POINT_MM` of where the one before ends, else a bug; it is
 * then moved to start in that very point. Pieces shorter than that are left out.
 */
export function chain(pieces: readonly Piece[]): Chain {
  return { pieces: joined(pieces) };
}

/** The pieces of a chain, made to share their joints. */
export function joined(pieces: readonly Piece[]): Piece[] {
  const run: Piece[] = [];
  let last: Point | undefined;
  for (const [index, piece] of pieces.entries()) {
    if (last !== undefined && !samePoint(last, piece.from)) {
      bug("a piece does not start where the one before ends", {
        index,
        endX: last.x,
        endY: last.y,
        startX: piece.from.x,
        startY: piece.from.y,
      });
    }
    if (lengthMm(piece) <= SAME_POINT_MM) {
      last ??= piece.from;
      continue;
    }
    run.push(last === undefined || last === piece.from ? piece : { ...piece, from: last });
    last = piece.to;
  }
  return run;
}

/** The chain through vertices as they stand in files; the last one's bulge means nothing. Fewer than two: a bug. */
export function chainFromVertices(vertices: readonly Vertex[]): Chain {
  if (vertices.length < 2) bug("a chain needs two vertices", { count: vertices.length });
  const pieces: Piece[] = [];
  for (let i = 0; i + 1 < vertices.length; i++) {
    pieces.push(...piecesBetween(vertices[i] as Vertex, vertices[i + 1] as Vertex));
  }
  return chain(pieces);
}

/** The piece from one vertex to the next: a line where it hardly rises, two arcs past a half circle. */
export function piecesBetween(start: Vertex, end: Vertex): Piece[] {
  const from = vertexPoint(start);
  const to = vertexPoint(end);
  const bulge = finite("bulge", start[2] ?? 0);
  if (bulge === 0 || samePoint(from, to)) return [line(from, to)];
  const whole: Arc = { kind: "arc", from, to, bulge };
  if (Math.abs(bulge) <= 1) return [straightIfFlat(whole)];
  const circle = circleOf(whole);
  const startRad = Math.atan2(from.y - circle.centre.y, from.x - circle.centre.x);
  return arcsBetween(circle, from, to, startRad, 4 * Math.atan(bulge));
}

function vertexPoint(vertex: Vertex): Point {
  return { x: finite("x", vertex[0]), y: finite("y", vertex[1]) };
}

/**
 * Vertices as they stand in files. A run that ends where it starts gives no vertex for its last point, as rings do;
 * an open one gives its end as a last vertex without bulge. Sources are not kept.
 */
export function verticesOf(run: Chain): Vertex[] {
  const vertices: Vertex[] = [];
  for (const piece of run.pieces) {
    const { x, y } = piece.from;
    vertices.push(piece.kind === "arc" ? [x, y, piece.bulge] : [x, y]);
  }
  const first = run.pieces[0];
  const last = run.pieces[run.pieces.length - 1];
  if (first !== undefined && last !== undefined && !samePoint(first.from, last.to)) {
    vertices.push([last.to.x, last.to.y]);
  }
  return vertices;
}
