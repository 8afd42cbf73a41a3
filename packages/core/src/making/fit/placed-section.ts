/** A section in its place on the wall: from the stick's frame to projection and height, and linear maps of it. */
import {
  type Arc,
  arc,
  circleOf,
  extentsOf,
  flattenPiece,
  line,
  moveRing,
  type Piece,
  type Point,
  point,
  ring,
  ringFromVertices,
  samePoint,
} from "../../curve/index.ts";
import { FLATTEN_MM, RATIO_OVERSHOOT, toRad } from "../../measure/index.ts";
import type { FreeSpan, NamedSpan, Section } from "../../section/index.ts";

/** Which of the stick's edges lies at the wall; the other one is the ceiling's. */
export type WallEdge = "gauge edge" | "far edge";

export interface Placing {
  /** 0: the back stands flat against the wall. */
  readonly springFromWallDeg: number;
  readonly wallEdge: WallEdge;
}

/** x' = a x + b y, y' = c x + d y. */
export interface LinearMap {
  readonly a: number;
  readonly b: number;
  readonly c: number;
  readonly d: number;
}

/**
 * From the stick's frame (x from the gauge edge, y up from the back) to the wall's (x the projection, y the height),
 * but for a shift. With the gauge edge at the wall the stick is seen from its other end, so this one is a mirror image.
 */
export function placingMap({ springFromWallDeg, wallEdge }: Placing): LinearMap {
  const sine = Math.sin(toRad(springFromWallDeg));
  const cosine = Math.cos(toRad(springFromWallDeg));
  return wallEdge === "gauge edge"
    ? { a: sine, b: cosine, c: cosine, d: -sine }
    : { a: -sine, b: cosine, c: -cosine, d: -sine };
}

export function compose(second: LinearMap, first: LinearMap): LinearMap {
  return {
    a: second.a * first.a + second.b * first.c,
    b: second.a * first.b + second.b * first.d,
    c: second.c * first.a + second.d * first.c,
    d: second.c * first.b + second.d * first.d,
  };
}

export function inverse({ a, b, c, d }: LinearMap): LinearMap {
  const size = a * d - b * c;
  return { a: d / size, b: -b / size, c: -c / size, d: a / size };
}

export function applied({ a, b, c, d }: LinearMap, { x, y }: Point): Point {
  return point(a * x + b * y, c * x + d * y);
}

/** The least and the most of both coordinates. */
export function boundsOf(points: readonly Point[]): { readonly least: Point; readonly most: Point } {
  const least = { x: Number.POSITIVE_INFINITY, y: Number.POSITIVE_INFINITY };
  const most = { x: Number.NEGATIVE_INFINITY, y: Number.NEGATIVE_INFINITY };
  for (const { x, y } of points) {
    least.x = Math.min(least.x, x);
    least.y = Math.min(least.y, y);
    most.x = Math.max(most.x, x);
    most.y = Math.max(most.y, y);
  }
  return { least, most };
}

/** A circle of the section that a map has drawn out into part of an ellipse, with its half axes, mm. */
export interface LostArc {
  readonly radiusMm: number;
  readonly longMm: number;
  readonly shortMm: number;
}

export interface MappedSection {
  readonly section: Section;
  readonly lostArcs: readonly LostArc[];
}

/**
 * A section drawn through a linear map that does not mirror, then set with its lower left corner at (0, 0) and a stick
 * of its own size round it. Lines stay lines; arcs stay arcs where the map only turns, and else come back as runs of
 * short lines (chord error `FLATTEN_MM` or less) that `freeSpans` names, as a free curve of a drawing does. Names of
 * parts go along.
 */
export function mapSection(section: Section, map: LinearMap, name: string): MappedSection {
  const { long, short } = stretches(map);
  const isTurn = Math.abs(long - short) <= RATIO_OVERSHOOT * long;
  const pieces: Piece[] = [];
  const starts: number[] = [];
  const bent: FreeSpan[] = [];
  const lostArcs: LostArc[] = [];
  for (const piece of section.outline.pieces) {
    starts.push(pieces.length);
    if (piece.kind === "line" || isTurn) {
      pieces.push(mapWhole(piece, map));
      continue;
    }
    // The image of a chord's error is at most as many times larger as the map stretches.
    const vertices = flattenPiece(piece, FLATTEN_MM / Math.max(1, long)).map((vertex) =>
      applied(map, vertex),
    );
    const run = linesThrough(vertices);
    bent.push({ first: pieces.length, count: run.length });
    pieces.push(...run);
    const { radiusMm } = circleOf(piece);
    lostArcs.push({ radiusMm, longMm: radiusMm * long, shortMm: radiusMm * short });
  }
  starts.push(pieces.length);
  const mapped = ring(joinEnds(pieces));
  const { minX, minY, maxX, maxY } = extentsOf(mapped);
  const outline = moveRing(mapped, -minX, -minY);
  const respan = <Span extends FreeSpan | NamedSpan>(span: Span): Span => respanned(span, starts);
  return {
    section: {
      name,
      stick: ringFromVertices([
        [0, 0],
        [maxX - minX, 0],
        [maxX - minX, maxY - minY],
        [0, maxY - minY],
      ]),
      outline,
      freeSpans: [...section.freeSpans.map(respan), ...bent].sort((a, b) => a.first - b.first),
      named: section.named.map(respan),
    },
    lostArcs,
  };
}

/** How much a map stretches along its long axis and its short one (its singular values). */
export function stretches({ a, b, c, d }: LinearMap): { readonly long: number; readonly short: number } {
  const sum = Math.hypot(a + d, b - c);
  const difference = Math.hypot(a - d, b + c);
  return { long: (sum + difference) / 2, short: Math.abs(sum - difference) / 2 };
}

function mapWhole(piece: Piece, map: LinearMap): Piece {
  const from = applied(map, piece.from);
  const to = applied(map, piece.to);
  return piece.kind === "line"
    ? line(from, to, piece.source)
    : arc(from, to, (piece as Arc).bulge, piece.source);
}

function linesThrough(vertices: readonly Point[]): Piece[] {
  const run: Piece[] = [];
  let from = vertices[0] as Point;
  for (const [index, to] of vertices.entries()) {
    // A vertex on top of the last one makes no line; the run's own end is kept whatever it costs.
    if (index === 0 || (samePoint(from, to) && index < vertices.length - 1)) continue;
    run.push(line(from, to));
    from = to;
  }
  return run;
}

/** Makes each joint one point: two maps of one point differ by nothing, but a ring wants the very same. */
function joinEnds(pieces: readonly Piece[]): Piece[] {
  return pieces.map((piece, index) => ({
    ...piece,
    from: (pieces[(index + pieces.length - 1) % pieces.length] as Piece).to,
  }));
}

/** A span of the old ring's pieces as a span of the new one's, round its end if it passed it. */
function respanned<Span extends FreeSpan | NamedSpan>(span: Span, starts: readonly number[]): Span {
  const total = starts.length - 1;
  const all = starts[total] as number;
  const first = starts[span.first] as number;
  const end = span.first + span.count;
  const last = end <= total ? (starts[end] as number) : all + (starts[end - total] as number);
  return { ...span, first, count: last - first };
}
