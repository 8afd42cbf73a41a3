/**
 * Joins that are smooth but for the noise of a drawing program are made smooth: the least moves (in the sense of
 * least squares) of the vertices and crowns that meet every such join at once.
 */
import { DRAWING_NOISE_MM, exceedsMm, SAME_POINT_MM } from "../measure/index.ts";
import type { OutlineVertex, Settling, Side } from "./read-noise.ts";
import { solveSymmetric } from "./read-solve.ts";

/** Joins solved for together; an outline with more of them is left as drawn. */
const MOST_JOINS = 200;

/** Newton's method on angles this small doubles its digits each time; more rounds would change nothing. */
const ROUNDS = 5;

/** A joint whose angle is to vanish, by the number of the vertex, or a line that is to stay level or upright. */
type Wish =
  | { readonly kind: "smooth"; readonly at: number }
  | { readonly kind: "level" | "upright"; readonly at: number };

/**
 * Taken as meant to be tangent: a join with an arc whose crown would move by no more than the noise to make it so.
 * Lines that are level or upright stay so, and vertices on the stick's sides stay on them. Where the least moves
 * come out larger than the noise the worst join is left as drawn. Free curves are not touched.
 */
export function settleTangency(vertices: readonly OutlineVertex[], sides: readonly Side[]): Settling {
  const unchanged = { vertices, places: 0, farthestMm: 0 };
  let joins = vertices.map((_, at) => at).filter((at) => missMm(vertices, at) <= DRAWING_NOISE_MM);
  if (joins.length > MOST_JOINS) return unchanged;
  const held = heldCoordinates(vertices, sides);
  while (joins.some((at) => exceedsMm(missMm(vertices, at), SAME_POINT_MM))) {
    const settled = leastMoves(vertices, joins, held);
    const worst = worstMove(vertices, settled);
    if (worst.movedMm <= DRAWING_NOISE_MM) {
      const places = joins.filter((at) => exceedsMm(missMm(vertices, at), SAME_POINT_MM)).length;
      return worst.movedMm > SAME_POINT_MM
        ? { vertices: settled, places, farthestMm: worst.movedMm }
        : unchanged;
    }
    const nearest = nearestJoin(joins, worst.at, vertices.length);
    joins = joins.filter((at) => at !== nearest);
  }
  return unchanged;
}

/** How far a crown beside the join must move to make it smooth, mm; infinite where no arc is, or a free curve. */
function missMm(vertices: readonly OutlineVertex[], at: number): number {
  const before = (at + vertices.length - 1) % vertices.length;
  if (vertices[before]!.free !== 0 || vertices[at]!.free !== 0) return Infinity;
  const angleRad = Math.abs(turnRad(vertices, at));
  const crowns = [before, at]
    .filter((piece) => vertices[piece]!.bulge !== 0)
    // The crown rises by a quarter of the chord for each radian that the end turns, a little more for deep arcs.
    .map((piece) => (angleRad * chordMm(vertices, piece) * (1 + vertices[piece]!.bulge ** 2)) / 4);
  return Math.min(Infinity, ...crowns);
}

/** The turn from the piece before a vertex to the one after it, radians, -π to π. */
function turnRad(vertices: readonly OutlineVertex[], at: number): number {
  const before = (at + vertices.length - 1) % vertices.length;
  const incoming = chordRad(vertices, before) + 2 * Math.atan(vertices[before]!.bulge);
  const outgoing = chordRad(vertices, at) - 2 * Math.atan(vertices[at]!.bulge);
  const turn = outgoing - incoming;
  return turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
}

function chordRad(vertices: readonly OutlineVertex[], piece: number): number {
  const from = vertices[piece]!;
  const to = vertices[(piece + 1) % vertices.length]!;
  return Math.atan2(to.y - from.y, to.x - from.x);
}

function chordMm(vertices: readonly OutlineVertex[], piece: number): number {
  const from = vertices[piece]!;
  const to = vertices[(piece + 1) % vertices.length]!;
  return Math.hypot(to.x - from.x, to.y - from.y);
}

/** Coordinates that may not move: 2 i for x of vertex i, 2 i + 1 for its y. */
function heldCoordinates(vertices: readonly OutlineVertex[], sides: readonly Side[]): ReadonlySet<number> {
  const held = new Set<number>();
  vertices.forEach((vertex, i) => {
    const before = vertices[(i + vertices.length - 1) % vertices.length]!;
    const isFree = vertex.free !== 0 || before.free !== 0;
    for (const side of sides) {
      if (!isOnSide(vertex, side)) continue;
      if (side.from.x !== side.to.x) held.add(2 * i + 1);
      if (side.from.y !== side.to.y) held.add(2 * i);
    }
    if (isFree) held.add(2 * i).add(2 * i + 1);
  });
  return held;
}

function isOnSide(vertex: OutlineVertex, { from, to }: Side): boolean {
  const lengthMm = Math.hypot(to.x - from.x, to.y - from.y);
  const across = (to.x - from.x) * (vertex.y - from.y) - (to.y - from.y) * (vertex.x - from.x);
  return Math.abs(across) <= SAME_POINT_MM * lengthMm;
}

/** Each wish linearised: its miss in mm and by how much each variable changes it. */
interface Row {
  readonly missMm: number;
  readonly slopes: ReadonlyMap<number, number>;
}

/**
 * Variables: 2 i and 2 i + 1 the coordinates of vertex i, 2 n + i the crown of piece i in mm. Each round takes the
 * smallest change that meets the linearised wishes, Jᵀ (J Jᵀ)⁻¹ (-miss).
 */
function leastMoves(
  drawn: readonly OutlineVertex[],
  joins: readonly number[],
  held: ReadonlySet<number>,
): readonly OutlineVertex[] {
  const wishes: Wish[] = [
    ...joins.map((at): Wish => ({ kind: "smooth", at })),
    ...straightLines(drawn, held),
  ];
  let vertices = drawn;
  for (let round = 0; round < ROUNDS; round++) {
    const rows = wishes.map((wish) => rowOf(vertices, wish, held));
    const products = rows.map((row) => rows.map((other) => dotOf(row.slopes, other.slopes)));
    const weights = solveSymmetric(
      products,
      rows.map(({ missMm: miss }) => -miss),
    );
    const changes = new Map<number, number>();
    rows.forEach(({ slopes }, i) => {
      for (const [variable, slope] of slopes) {
        changes.set(variable, (changes.get(variable) ?? 0) + slope * weights[i]!);
      }
    });
    vertices = moved(vertices, changes);
  }
  return vertices;
}

/** Level and upright lines at whose ends something may move. */
function straightLines(vertices: readonly OutlineVertex[], held: ReadonlySet<number>): Wish[] {
  const wishes: Wish[] = [];
  vertices.forEach((from, at) => {
    const next = (at + 1) % vertices.length;
    const to = vertices[next]!;
    if (from.bulge !== 0 || from.free !== 0) return;
    if (from.y === to.y && !(held.has(2 * at + 1) && held.has(2 * next + 1)))
      wishes.push({ kind: "level", at });
    if (from.x === to.x && !(held.has(2 * at) && held.has(2 * next))) wishes.push({ kind: "upright", at });
  });
  return wishes;
}

function rowOf(vertices: readonly OutlineVertex[], wish: Wish, held: ReadonlySet<number>): Row {
  const count = vertices.length;
  const slopes = new Map<number, number>();
  const add = (variable: number, slope: number): void => {
    if (!held.has(variable)) slopes.set(variable, (slopes.get(variable) ?? 0) + slope);
  };
  const { at } = wish;
  const next = (at + 1) % count;
  if (wish.kind !== "smooth") {
    const axis = wish.kind === "level" ? 1 : 0;
    add(2 * at + axis, -1);
    add(2 * next + axis, 1);
    const [from, to] = [vertices[at]!, vertices[next]!];
    return { missMm: axis === 1 ? to.y - from.y : to.x - from.x, slopes };
  }
  const before = (at + count - 1) % count;
  // Angles are weighed by the shorter chord, so that the rows are all of the size of millimetres.
  const weightMm = Math.min(chordMm(vertices, before), chordMm(vertices, at));
  const chord = (piece: number, sign: 1 | -1): void => {
    const end = (piece + 1) % count;
    const dx = vertices[end]!.x - vertices[piece]!.x;
    const dy = vertices[end]!.y - vertices[piece]!.y;
    const squared = dx * dx + dy * dy;
    const turnX = (sign * weightMm * -dy) / squared;
    const turnY = (sign * weightMm * dx) / squared;
    add(2 * end, turnX);
    add(2 * end + 1, turnY);
    add(2 * piece, -turnX);
    add(2 * piece + 1, -turnY);
    // Half the sweep is 2 atan(bulge), and the crown is bulge times half the chord; both ends turn against it.
    const { bulge } = vertices[piece]!;
    if (bulge !== 0) add(2 * count + piece, (-weightMm * 2) / (1 + bulge * bulge) / (Math.sqrt(squared) / 2));
  };
  chord(at, 1);
  chord(before, -1);
  return { missMm: turnRad(vertices, at) * weightMm, slopes };
}

function dotOf(a: ReadonlyMap<number, number>, b: ReadonlyMap<number, number>): number {
  let sum = 0;
  for (const [variable, slope] of a) sum += slope * (b.get(variable) ?? 0);
  return sum;
}

function moved(
  vertices: readonly OutlineVertex[],
  changes: ReadonlyMap<number, number>,
): readonly OutlineVertex[] {
  const count = vertices.length;
  return vertices.map((vertex, i) => {
    const crownMm = changes.get(2 * count + i) ?? 0;
    return {
      x: vertex.x + (changes.get(2 * i) ?? 0),
      y: vertex.y + (changes.get(2 * i + 1) ?? 0),
      bulge: crownMm === 0 ? vertex.bulge : atMostHalf(vertex.bulge + crownMm / (chordMm(vertices, i) / 2)),
      free: vertex.free,
    };
  });
}

/** A piece turns by a half circle at most. */
function atMostHalf(bulge: number): number {
  return Math.max(-1, Math.min(1, bulge));
}

/** The farthest move of a vertex or crown, and the vertex at which it is. */
function worstMove(
  drawn: readonly OutlineVertex[],
  settled: readonly OutlineVertex[],
): { movedMm: number; at: number } {
  let worst = { movedMm: 0, at: 0 };
  settled.forEach((vertex, at) => {
    const before = drawn[at]!;
    const placeMm = Math.hypot(vertex.x - before.x, vertex.y - before.y);
    const crownMm = (Math.abs(vertex.bulge - before.bulge) * chordMm(drawn, at)) / 2;
    // A bulge that came to nothing or changed sides is no noise.
    const isOther =
      Math.sign(vertex.bulge) !== Math.sign(before.bulge) || !Number.isFinite(placeMm + crownMm);
    const movedMm = isOther ? Infinity : Math.max(placeMm, crownMm);
    if (movedMm > worst.movedMm) worst = { movedMm, at };
  });
  return worst;
}

function nearestJoin(joins: readonly number[], at: number, count: number): number {
  const away = (join: number): number => Math.min(Math.abs(join - at), count - Math.abs(join - at));
  return joins.reduce((best, join) => (away(join) < away(best) ? join : best));
}
