/**
 * What other programs leave beside what was meant: ends a hair apart, vertices a hair off the stick's sides. All of
 * it lies within `DRAWING_NOISE_MM`; whoever calls says so in a warning.
 */
import { arc, extentsOf, type Point } from "../curve/index.ts";
import { DRAWING_NOISE_MM, exceedsMm, SAME_POINT_MM } from "../measure/index.ts";
import type { SettledPiece } from "./read-arcs.ts";

/** A vertex of a closed outline with what leads to the next one: a line, an arc, or a chord of a free curve. */
export interface OutlineVertex {
  readonly x: number;
  readonly y: number;
  readonly bulge: number;
  /** Number of the free curve that the piece to the next vertex belongs to, 0 if none. */
  readonly free: number;
}

export interface Settling {
  readonly vertices: readonly OutlineVertex[];
  /** How many places were taken as meant, and the farthest any of them moved, mm; steps of the grid do not count. */
  readonly places: number;
  readonly farthestMm: number;
}

/** The grid of `SAME_POINT_MM`, without a negative zero. */
export function snapMm(valueMm: number): number {
  return Math.round(valueMm / SAME_POINT_MM) / Math.round(1 / SAME_POINT_MM) + 0;
}

/** The vertices of a closed run; each piece runs on to where the next one starts, over gaps that are noise. */
export function verticesOfPieces(pieces: readonly SettledPiece[], move: Point): Settling {
  let places = 0;
  let farthestMm = 0;
  const vertices = pieces.map((piece, i) => {
    const before = pieces[(i + pieces.length - 1) % pieces.length]!;
    const gapMm = Math.hypot(piece.from.x - before.to.x, piece.from.y - before.to.y);
    if (exceedsMm(gapMm, SAME_POINT_MM)) {
      places++;
      farthestMm = Math.max(farthestMm, gapMm);
    }
    const { bulge, free } = piece;
    return { x: snapMm(piece.from.x + move.x), y: snapMm(piece.from.y + move.y), bulge, free };
  });
  return { vertices, places, farthestMm };
}

/**
 * Joins vertices that lie within the noise of the one kept before them. Chords of a free curve may be shorter than
 * that and stay, as long as they have a length.
 */
export function joinNearEnds(drawn: Settling): Settling {
  const { vertices } = drawn;
  const kept: OutlineVertex[] = [];
  let { places, farthestMm } = drawn;
  const near = (a: OutlineVertex, b: OutlineVertex): boolean => {
    const apartMm = Math.hypot(a.x - b.x, a.y - b.y);
    if (apartMm === 0) return true;
    if (apartMm > DRAWING_NOISE_MM || (a.free !== 0 && apartMm > SAME_POINT_MM)) return false;
    if (exceedsMm(apartMm, SAME_POINT_MM)) {
      places++;
      farthestMm = Math.max(farthestMm, apartMm);
    }
    return true;
  };
  for (const vertex of vertices) {
    const last = kept[kept.length - 1];
    if (last !== undefined && near(last, vertex)) {
      // The piece between them goes; what leads on from the second now leads on from the first.
      kept[kept.length - 1] = { ...vertex, x: last.x, y: last.y };
    } else {
      kept.push(vertex);
    }
  }
  while (kept.length > 1 && near(kept[kept.length - 1]!, kept[0]!)) kept.pop();
  return { vertices: kept, places, farthestMm };
}

/** A straight side of the stick. */
export interface Side {
  readonly from: Point;
  readonly to: Point;
}

/**
 * Moves vertices that lie within the noise of a side onto it, those near a corner of the stick into the corner. A free
 * curve that nears a side meets it where it ends and not before: its inner vertices stay.
 */
export function settleOnSides(vertices: readonly OutlineVertex[], sides: readonly Side[]): Settling {
  let places = 0;
  let farthestMm = 0;
  const settled = vertices.map((vertex, i) => {
    const before = vertices[(i + vertices.length - 1) % vertices.length]!;
    const isInner = vertex.free !== 0 && before.free === vertex.free;
    const place = isInner ? null : nearestOfSides(vertex, sides);
    if (place === null) return vertex;
    const x = snapMm(place.x);
    const y = snapMm(place.y);
    const movedMm = Math.hypot(x - vertex.x, y - vertex.y);
    if (exceedsMm(movedMm, SAME_POINT_MM)) {
      places++;
      farthestMm = Math.max(farthestMm, movedMm);
    }
    return { ...vertex, x, y };
  });
  return { vertices: settled, places, farthestMm };
}

function nearestOfSides(p: Point, sides: readonly Side[]): Point | null {
  for (const { from } of sides) {
    if (Math.hypot(p.x - from.x, p.y - from.y) <= DRAWING_NOISE_MM) return from;
  }
  for (const { from, to } of sides) {
    const dx = to.x - from.x;
    const dy = to.y - from.y;
    const squared = dx * dx + dy * dy;
    const t = ((p.x - from.x) * dx + (p.y - from.y) * dy) / squared;
    if (t < 0 || t > 1) continue;
    const foot = { x: dx === 0 ? from.x : from.x + t * dx, y: dy === 0 ? from.y : from.y + t * dy };
    if (Math.hypot(p.x - foot.x, p.y - foot.y) <= DRAWING_NOISE_MM) return foot;
  }
  return null;
}

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/**
 * Arcs whose crown stands within the noise of a side of a square-cornered stick touch it: their bulge is changed by
 * so little. (Their ends are settled before.) Sticks of another shape, `box` null, are left alone.
 */
export function settleCrowns(vertices: readonly OutlineVertex[], box: Box | null): Settling {
  let places = 0;
  let farthestMm = 0;
  if (box === null) return { vertices, places, farthestMm };
  const settled = vertices.map((vertex, i) => {
    const to = vertices[(i + 1) % vertices.length]!;
    if (vertex.bulge === 0 || vertex.free !== 0) return vertex;
    for (const key of ["minX", "minY", "maxX", "maxY"] as const) {
      const crown = (bulge: number): number => extentsOf(arc(pointOf(vertex), pointOf(to), bulge))[key];
      const ends = key.endsWith("X") ? [vertex.x, to.x] : [vertex.y, to.y];
      const offMm = crown(vertex.bulge) - box[key];
      const atAnEnd = ends.some((end) => Math.abs(end - crown(vertex.bulge)) <= SAME_POINT_MM);
      if (atAnEnd || !exceedsMm(Math.abs(offMm), SAME_POINT_MM) || Math.abs(offMm) > DRAWING_NOISE_MM)
        continue;
      const bulge = bulgeReaching(crown, vertex.bulge, box[key]);
      if (bulge === null) continue;
      places++;
      farthestMm = Math.max(farthestMm, Math.abs(offMm));
      return { ...vertex, bulge };
    }
    return vertex;
  });
  return { vertices: settled, places, farthestMm };
}

function pointOf(vertex: OutlineVertex): Point {
  return { x: vertex.x, y: vertex.y };
}

/** Halvings of an interval of bulges: more than a double can tell apart. */
const BISECTIONS = 60;

function bulgeReaching(crown: (bulge: number) => number, bulge: number, target: number): number | null {
  let near = bulge / 2;
  let far = Math.sign(bulge) * Math.min(1, Math.abs(bulge) * 1.5);
  const nearOff = crown(near) - target;
  const farOff = crown(far) - target;
  if (nearOff * farOff > 0) return null;
  for (let i = 0; i < BISECTIONS; i++) {
    const middle = (near + far) / 2;
    if ((crown(middle) - target) * nearOff > 0) near = middle;
    else far = middle;
  }
  return (near + far) / 2;
}

/**
 * Leaves out vertices at which one line only goes on as another (to the grid), as cutting and joining shapes leaves
 * them, and puts the rest on the grid.
 */
export function withoutStraightJoints(vertices: readonly OutlineVertex[]): readonly OutlineVertex[] {
  const kept: OutlineVertex[] = [];
  const isLine = (vertex: OutlineVertex): boolean => vertex.bulge === 0 && vertex.free === 0;
  vertices.forEach((vertex, i) => {
    const before = kept[kept.length - 1] ?? vertices[vertices.length - 1]!;
    const incoming = vertices[(i + vertices.length - 1) % vertices.length]!;
    const to = vertices[(i + 1) % vertices.length]!;
    const goesOn = isLine(incoming) && isLine(vertex) && isBetween(vertex, before, to);
    if (!goesOn) kept.push({ ...vertex, x: snapMm(vertex.x), y: snapMm(vertex.y) });
  });
  return kept;
}

function isBetween(p: Point, from: Point, to: Point): boolean {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const lengthMm = Math.hypot(dx, dy);
  const along = (p.x - from.x) * dx + (p.y - from.y) * dy;
  const acrossMm = Math.abs((p.y - from.y) * dx - (p.x - from.x) * dy) / lengthMm;
  return along > 0 && along < lengthMm * lengthMm && acrossMm <= SAME_POINT_MM;
}
