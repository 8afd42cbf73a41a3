import { bug, SAME_POINT_MM } from "../measure/index.ts";
import { BoxTree } from "./box-tree.ts";
import { chain } from "./chain.ts";
import { extentsOf } from "./extents.ts";
import { intersect } from "./intersect.ts";
import {
  arcsBetween,
  circleOf,
  endDirection,
  lengthMm,
  line,
  nearestOnPiece,
  pointAt,
  splitPieceAt,
  tangentRad,
  wrapRad,
} from "./piece.ts";
import { finite, samePoint } from "./point.ts";
import { areaMm2, closedRun } from "./ring.ts";
import type { Chain, Circle, Piece, Point, Ring } from "./types.ts";

/**
 * The curve parallel to a chain at `distanceMm`, positive to the left of its travel, negative to the right.
 *
 * Lines stay lines and arcs arcs about the same centre; round an outward corner goes an arc about the corner; what
 * lies nearer to any part of the chain than the distance is cut away. What is left may fall into several runs
 * (a chain that curls up); the longest is given, and a chain without pieces if nothing is left. Pieces keep their
 * sources, corner arcs have none. Distance 0 gives the chain. Ends are not rounded off.
 * Accuracy: the result is off the distance by rounding only; runs shorter than `SAME_POINT_MM` are left out.
 * Not covered: a chain that crosses itself (what lies near a crossing is cut away as any other).
 */
export function offsetChain(source: Chain, distanceMm: number): Chain {
  if (finite("distanceMm", distanceMm) === 0) return source;
  const runs = parallelRuns(source.pieces, distanceMm, "open");
  const lengthOf = (run: readonly Piece[]) => run.reduce((sum, piece) => sum + lengthMm(piece), 0);
  const longest = runs.reduce<Piece[]>((best, run) => (lengthOf(run) > lengthOf(best) ? run : best), []);
  return chain(longest);
}

/**
 * The rings parallel to a ring at `distanceMm`, positive to the left of its travel: into an anticlockwise one.
 * Inwards it may fall into several or vanish; outwards a bay that closes leaves a hole, given clockwise. As `offsetChain`.
 */
export function offsetRing(source: Ring, distanceMm: number): Ring[] {
  if (finite("distanceMm", distanceMm) === 0) return [source];
  return parallelRuns(source.pieces, distanceMm, "closed")
    .filter((run) => run.length > 1 && samePoint((run[0] as Piece).from, (run.at(-1) as Piece).to))
    .map((run) => closedRun(run))
    .sort((a, b) => areaMm2(b) - areaMm2(a));
}

/** A piece of the untrimmed parallel curve. A link only bridges to the next piece and is never part of the answer. */
interface RawPiece {
  readonly piece: Piece;
  readonly isLink: boolean;
}

function parallelRuns(pieces: readonly Piece[], offsetMm: number, ends: "open" | "closed"): Piece[][] {
  const raw = rawParallel(pieces, offsetMm, ends);
  const parts = cutAtCrossings(raw);
  const far = new FarFrom(pieces, Math.abs(offsetMm));
  return strung(parts.filter((part) => far.holds(pointAt(part, 1 / 2))));
}

function rawParallel(pieces: readonly Piece[], offsetMm: number, ends: "open" | "closed"): RawPiece[] {
  const raw: RawPiece[] = [];
  const moved = pieces.map((piece) => movedPiece(piece, offsetMm));
  for (const [index, piece] of pieces.entries()) {
    raw.push(moved[index] as RawPiece);
    const isLast = index + 1 === pieces.length;
    if (isLast && ends === "open") break;
    const following = isLast ? 0 : index + 1;
    raw.push(
      ...cornerPieces(
        piece,
        pieces[following] as Piece,
        moved[index] as RawPiece,
        moved[following] as RawPiece,
        offsetMm,
      ),
    );
  }
  return raw.filter(({ piece }) => lengthMm(piece) > 0);
}

/** One piece moved sideways; an arc that would shrink past its centre becomes a link. */
function movedPiece(piece: Piece, offsetMm: number): RawPiece {
  const from = asidePoint(piece, 0, offsetMm);
  const to = asidePoint(piece, 1, offsetMm);
  if (piece.kind === "line") return { piece: { ...piece, from, to }, isLink: false };
  const radiusMm = circleOf(piece).radiusMm - offsetMm * Math.sign(piece.bulge);
  if (radiusMm <= SAME_POINT_MM) return { piece: line(from, to), isLink: true };
  return { piece: { ...piece, from, to }, isLink: false };
}

/** The point to the left of an end of a piece, square to its direction there. */
function asidePoint(piece: Piece, t: 0 | 1, offsetMm: number): Point {
  const p = t === 0 ? piece.from : piece.to;
  const along = endDirection(piece, t);
  return { x: p.x - along.y * offsetMm + 0, y: p.y + along.x * offsetMm + 0 };
}

function cornerPieces(
  before: Piece,
  after: Piece,
  movedBefore: RawPiece,
  movedAfter: RawPiece,
  offsetMm: number,
): RawPiece[] {
  const from = movedBefore.piece.to;
  const to = movedAfter.piece.from;
  if (samePoint(from, to, 0)) return [];
  const turnRad = wrapRad(tangentRad(after, 0) - tangentRad(before, 1));
  // Turning away from the side of the parallel leaves a gap, of the radius of the distance about the corner.
  const isOutward = turnRad * offsetMm < 0;
  if (!isOutward || samePoint(from, to)) return [{ piece: line(from, to), isLink: !samePoint(from, to) }];
  const corner: Circle = { centre: before.to, radiusMm: Math.abs(offsetMm) };
  const startRad = Math.atan2(from.y - corner.centre.y, from.x - corner.centre.x);
  return arcsBetween(corner, from, to, startRad, turnRad).map((piece) => ({ piece, isLink: false }));
}

/** All pieces but the links, cut wherever the untrimmed curve crosses or touches itself; parts share the cut points. */
function cutAtCrossings(raw: readonly RawPiece[]): Piece[] {
  const cuts: Cut[][] = raw.map(() => []);
  const boxes = boxesOf(raw.map(({ piece }) => piece));
  const tree = new BoxTree(boxes);
  for (const [i, { piece }] of raw.entries()) {
    tree.visit(boxes, 4 * i, SAME_POINT_MM, (j) => {
      if (j > i) addCuts(piece, (raw[j] as RawPiece).piece, cuts[i] as Cut[], cuts[j] as Cut[]);
      return undefined;
    });
  }
  return raw.flatMap(({ piece, isLink }, index) => (isLink ? [] : cutUp(piece, cuts[index] as Cut[])));
}

interface Cut {
  readonly t: number;
  readonly point: Point;
}

function boxesOf(pieces: readonly Piece[]): Float64Array {
  const boxes = new Float64Array(4 * pieces.length);
  for (const [index, piece] of pieces.entries()) {
    const { minX, minY, maxX, maxY } = extentsOf(piece);
    boxes.set([minX, minY, maxX, maxY], 4 * index);
  }
  return boxes;
}

function addCuts(a: Piece, b: Piece, cutsA: Cut[], cutsB: Cut[]): void {
  const crossing = intersect(a, b, SAME_POINT_MM);
  if (crossing.kind === "points") {
    for (const { point, tA, tB } of crossing.hits) {
      cutsA.push({ t: tA, point });
      cutsB.push({ t: tB, point });
    }
  }
  if (crossing.kind === "overlap") {
    for (const point of [crossing.from, crossing.to]) {
      cutsA.push({ t: nearestOnPiece(a, point).t, point });
      cutsB.push({ t: nearestOnPiece(b, point).t, point });
    }
  }
}

function cutUp(piece: Piece, cuts: Cut[]): Piece[] {
  cuts.sort((a, b) => a.t - b.t);
  const parts: Piece[] = [];
  let rest = piece;
  let restStart = 0;
  for (const { t, point } of cuts) {
    if (samePoint(point, rest.from) || samePoint(point, rest.to)) continue;
    const [part, remainder] = splitPieceAt(rest, (t - restStart) / (1 - restStart), point);
    parts.push(part);
    rest = remainder;
    restStart = t;
  }
  parts.push(rest);
  return parts;
}

/** Tells whether points are at least a distance from a chain, rounding allowed. */
class FarFrom {
  private readonly pieces: readonly Piece[];
  private readonly leastMm: number;
  private readonly tree: BoxTree;
  private readonly box = new Float64Array(4);

  constructor(pieces: readonly Piece[], leastMm: number) {
    this.pieces = pieces;
    this.leastMm = leastMm - SAME_POINT_MM;
    this.tree = new BoxTree(boxesOf(pieces));
  }

  holds(p: Point): boolean {
    this.box.set([p.x, p.y, p.x, p.y]);
    let isFar = true;
    this.tree.visit(this.box, 0, this.leastMm, (index) => {
      if (nearestOnPiece(this.pieces[index] as Piece, p).distanceMm >= this.leastMm) return undefined;
      isFar = false;
      return "enough";
    });
    return isFar;
  }
}

/** Parts strung together end to start. Parts follow the chain's order, so the next one is nearly always at hand. */
function strung(parts: readonly Piece[]): Piece[][] {
  const isUsed = parts.map(() => false);
  const runs: Piece[][] = [];
  for (const [index, part] of parts.entries()) {
    if (isUsed[index]) continue;
    isUsed[index] = true;
    const run = [part];
    for (;;) {
      const last = run[run.length - 1] as Piece;
      if (run.length > 1 && samePoint(last.to, (run[0] as Piece).from)) break;
      const next = parts.findIndex((other, at) => !isUsed[at] && samePoint(last.to, other.from));
      if (next < 0) break;
      isUsed[next] = true;
      run.push(parts[next] as Piece);
    }
    const before = runs.findIndex((other) =>
      samePoint((run[run.length - 1] as Piece).to, (other[0] as Piece).from),
    );
    // A run that was begun in its middle gets its earlier part set before it.
    if (before >= 0 && !isClosed(run)) runs[before] = [...run, ...(runs[before] as Piece[])];
    else runs.push(run);
  }
  return runs;
}

function isClosed(run: readonly Piece[]): boolean {
  const first = run[0] ?? bug("a run has no pieces");
  return samePoint(first.from, (run[run.length - 1] as Piece).to);
}
