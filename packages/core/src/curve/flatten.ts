import { bug, NEAR_END_STEP_RATIO, RADIUS_GRID_MM } from "../measure/index.ts";
import { circleOf, riseMm, sweepRad } from "./piece.ts";
import type { Arc, FlatRing, Piece, Point, Ring } from "./types.ts";

/**
 * The vertices of a piece, both its ends included (the stored points themselves), mm.
 *
 * Inner vertices of an arc lie on its circle at whole multiples, from +x, of a step that depends on the radius and
 * the tolerance only, so that two arcs of one circle share them to rounding and a boolean between them leaves no
 * slivers. The step divides a quarter turn, so that the circle's four extremes are vertices and mirror images
 * have mirrored vertices. One nearer an end than a small part of a step is left out. Every chord lies within
 * `chordTolMm` of the arc, as long as the radius is over that. Throws a bug for a tolerance that is not positive.
 */
export function flattenPiece(piece: Piece, chordTolMm: number): Point[] {
  const vertices: Point[] = [];
  addVertices(piece, chordTolMm, vertices);
  vertices.push(piece.to);
  return vertices;
}

/** A ring flattened as by `flattenPiece`; each edge carries its piece's source, 0 if none. */
export function flatRingOf(ring: Ring, chordTolMm: number): FlatRing {
  const vertices: Point[] = [];
  const sources: number[] = [];
  for (const piece of ring.pieces) {
    addVertices(piece, chordTolMm, vertices);
    while (sources.length < vertices.length) sources.push(piece.source ?? 0);
  }
  const xs = new Float64Array(vertices.length);
  const ys = new Float64Array(vertices.length);
  for (const [index, vertex] of vertices.entries()) {
    xs[index] = vertex.x;
    ys[index] = vertex.y;
  }
  return { xs, ys, sources: Int32Array.from(sources) };
}

/** Adds all vertices of a piece but its last. */
function addVertices(piece: Piece, chordTolMm: number, vertices: Point[]): void {
  if (!(chordTolMm > 0)) bug("chordTolMm is not positive", { chordTolMm: String(chordTolMm) });
  vertices.push(piece.from);
  // A short arc that hardly rises would otherwise get a vertex just because a multiple falls into it.
  if (piece.kind === "arc" && riseMm(piece) > chordTolMm * NEAR_END_STEP_RATIO) {
    addInnerVertices(piece, chordTolMm, vertices);
  }
}

function addInnerVertices(piece: Arc, chordTolMm: number, vertices: Point[]): void {
  const { centre, radiusMm } = circleOf(piece);
  const count = stepsPerTurn(radiusMm, chordTolMm);
  const stepRad = (2 * Math.PI) / count;
  const startSteps = Math.atan2(piece.from.y - centre.y, piece.from.x - centre.x) / stepRad;
  const endSteps = startSteps + sweepRad(piece) / stepRad;
  const unit = unitCircle(count);
  if (endSteps > startSteps) {
    const last = Math.floor(endSteps - NEAR_END_STEP_RATIO);
    for (let k = Math.ceil(startSteps + NEAR_END_STEP_RATIO); k <= last; k++)
      vertices.push(vertexAt(unit, k));
  } else {
    const last = Math.ceil(endSteps + NEAR_END_STEP_RATIO);
    for (let k = Math.floor(startSteps - NEAR_END_STEP_RATIO); k >= last; k--)
      vertices.push(vertexAt(unit, k));
  }

  function vertexAt(turn: Float64Array, k: number): Point {
    const index = ((k % count) + count) % count;
    return {
      x: centre.x + radiusMm * (turn[2 * index] as number),
      y: centre.y + radiusMm * (turn[2 * index + 1] as number),
    };
  }
}

/** Number of steps of a full turn, a multiple of four, whose chords lie within the tolerance of the circle. */
export function stepsPerTurn(radiusMm: number, chordTolMm: number): number {
  const rounded = Math.max(RADIUS_GRID_MM, Math.round(radiusMm / RADIUS_GRID_MM) * RADIUS_GRID_MM);
  // A chord over the angle 2a leaves its arc by r (1 − cos a) = 2 r sin²(a/2).
  const sine = Math.sqrt(Math.min(1, chordTolMm / (2 * rounded)));
  return 4 * Math.max(1, Math.ceil(Math.PI / (8 * Math.asin(sine))));
}

/** Cosines and sines by number of steps: the few radii of a shelf come back a million times in a plan. */
const unitCircles = new Map<number, Float64Array>();

/** More than a shelf has radii at the two tolerances in use; past it the store is emptied, which costs time only. */
const UNIT_CIRCLES_KEPT = 64;

/** Cosine and sine of every step of a turn; exactly alike in all eight eighths, so mirror images stay mirrored. */
function unitCircle(count: number): Float64Array {
  const known = unitCircles.get(count);
  if (known !== undefined) return known;
  const turn = new Float64Array(2 * count);
  const quarter = count / 4;
  for (let k = 0; k <= quarter; k++) {
    const eighth = Math.min(k, quarter - k);
    const angleRad = (2 * Math.PI * eighth) / count;
    const isFirstEighth = eighth === k;
    const cos = isFirstEighth ? Math.cos(angleRad) : Math.sin(angleRad);
    const sin = isFirstEighth ? Math.sin(angleRad) : Math.cos(angleRad);
    set(k, cos, sin);
    set(2 * quarter - k, -cos, sin);
    set(2 * quarter + k, -cos, -sin);
    set(4 * quarter - k, cos, -sin);
  }
  if (unitCircles.size >= UNIT_CIRCLES_KEPT) unitCircles.clear();
  unitCircles.set(count, turn);
  return turn;

  function set(k: number, cos: number, sin: number): void {
    const index = k % count;
    turn[2 * index] = cos + 0;
    turn[2 * index + 1] = sin + 0;
  }
}
