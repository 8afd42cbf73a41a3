/** A run of lines and arcs made again after some of its arcs have been given another circle: where they then meet. */
import {
  type Arc,
  arc,
  type Circle,
  circleOf,
  distanceMm,
  type Line,
  line,
  nearestOnPiece,
  type Piece,
  type Point,
  point,
  pointAt,
  sagittaMm,
  tangentRad,
} from "../curve/index.ts";
import { SAME_POINT_MM, toDeg } from "../measure/index.ts";
import { tidy } from "./draft-cut.ts";

/** A join that breaks by no more than this goes on smoothly once its arcs are on radii of the shelf, degrees. */
const SMOOTH_WITHIN_DEG = 2;
/** A join never moves further than this along what it lies on, mm. */
const MOST_SLIDE_MM = 1;

export function isConvex(piece: Arc): boolean {
  return piece.bulge > 0;
}

/** Whether an arc goes on into the next one bent the other way without an arris: the join of an ogee. */
export function isOgeeJoin(before: Piece, after: Piece): boolean {
  if (before.kind === "line" || after.kind === "line" || isConvex(before) === isConvex(after)) return false;
  const breakDeg = toDeg(tangentRad(after, 0) - tangentRad(before, 1));
  return Math.abs(((breakDeg + 540) % 360) - 180) <= SMOOTH_WITHIN_DEG;
}

/**
 * The pieces of a ring with other circles for some of its arcs; lines stay on their own lines, and where two neighbours
 * now meet is worked out anew. Null where two of them no longer meet nearby. Joins lie on the grid of the plan file.
 */
export function onCircles(pieces: readonly Piece[], circles: ReadonlyMap<number, Circle>): Piece[] | null {
  const count = pieces.length;
  const starts: Point[] = [];
  for (let i = 0; i < count; i++) {
    const before = (i + count - 1) % count;
    const start = meeting(pieces, circles, before, i);
    if (!start) return null;
    starts.push(start);
  }
  const made: Piece[] = [];
  for (let i = 0; i < count; i++) {
    const one = pieces[i] as Piece;
    const [from, to] = [starts[i] as Point, starts[(i + 1) % count] as Point];
    const isWhere = from === one.from && to === one.to;
    if (isWhere && !circles.has(i)) {
      made.push(one);
      continue;
    }
    if (one.kind === "line") {
      const goesOn =
        (to.x - from.x) * (one.to.x - one.from.x) + (to.y - from.y) * (one.to.y - one.from.y) > 0;
      if (!goesOn) return null;
      made.push(line(from, to));
      continue;
    }
    const again = arcOn(one, from, to, circles.get(i)?.radiusMm ?? circleOf(one).radiusMm);
    if (!again) return null;
    made.push(again);
  }
  return made;
}

/** The arc between two places on a circle of this radius, bent as the one it stands for. */
function arcOn(like: Arc, from: Point, to: Point, radiusMm: number): Arc | null {
  const chordMm = distanceMm(from, to);
  if (chordMm < SAME_POINT_MM || chordMm > 2 * radiusMm) return null;
  const along = (to.x - from.x) * (like.to.x - like.from.x) + (to.y - from.y) * (like.to.y - like.from.y);
  if (along <= 0) return null;
  return arc(from, to, (Math.sign(like.bulge) * 2 * sagittaMm(chordMm, radiusMm)) / chordMm);
}

function meeting(
  pieces: readonly Piece[],
  circles: ReadonlyMap<number, Circle>,
  before: number,
  after: number,
): Point | null {
  const [a, b] = [pieces[before] as Piece, pieces[after] as Piece];
  const old = b.from;
  if (!circles.has(before) && !circles.has(after)) return old;
  const first = carrierOf(a, circles.get(before));
  const second = carrierOf(b, circles.get(after));
  if (isOn(first, old) && isOn(second, old)) return old;
  const places = meetings(first, second);
  // An ogee whose circles overlap has its join on the hollow's side: there the round's circle leaves the wood.
  const wanted = isOgeeJoin(a, b) ? pointAt(isConvex(a as Arc) ? a : b, 0.5) : old;
  const nearest = places.reduce<Point | null>(
    (best, p) => (best === null || distanceMm(p, wanted) < distanceMm(best, wanted) ? p : best),
    null,
  );
  if (!nearest || distanceMm(nearest, old) > MOST_SLIDE_MM) return null;
  return point(tidy(nearest.x), tidy(nearest.y));
}

type Carrier =
  | { readonly kind: "line"; readonly from: Point; readonly to: Point }
  | { readonly kind: "circle"; readonly circle: Circle };

function carrierOf(piece: Piece, circle: Circle | undefined): Carrier {
  if (piece.kind === "line") return { kind: "line", from: piece.from, to: piece.to };
  return { kind: "circle", circle: circle ?? circleOf(piece) };
}

function isOn(carrier: Carrier, p: Point): boolean {
  if (carrier.kind === "line")
    return nearestOnPiece(line(carrier.from, carrier.to), p).distanceMm <= SAME_POINT_MM;
  return Math.abs(distanceMm(carrier.circle.centre, p) - carrier.circle.radiusMm) <= SAME_POINT_MM;
}

function meetings(a: Carrier, b: Carrier): Point[] {
  if (a.kind === "line") return b.kind === "line" ? [] : lineAndCircle(a, b.circle);
  return b.kind === "line" ? lineAndCircle(b, a.circle) : twoCircles(a.circle, b.circle);
}

function lineAndCircle({ from, to }: { from: Point; to: Point }, { centre, radiusMm }: Circle): Point[] {
  const length = distanceMm(from, to);
  const along = { x: (to.x - from.x) / length, y: (to.y - from.y) / length };
  const middle = (centre.x - from.x) * along.x + (centre.y - from.y) * along.y;
  const foot = { x: from.x + along.x * middle, y: from.y + along.y * middle };
  const off = distanceMm(foot, centre);
  if (off > radiusMm) return [];
  const half = Math.sqrt(radiusMm * radiusMm - off * off);
  return [half, -half].map((d) => ({ x: foot.x + along.x * d, y: foot.y + along.y * d }));
}

function twoCircles(a: Circle, b: Circle): Point[] {
  const apart = distanceMm(a.centre, b.centre);
  if (apart === 0 || apart > a.radiusMm + b.radiusMm || apart < Math.abs(a.radiusMm - b.radiusMm)) return [];
  const along = { x: (b.centre.x - a.centre.x) / apart, y: (b.centre.y - a.centre.y) / apart };
  const middle = (apart * apart + a.radiusMm ** 2 - b.radiusMm ** 2) / (2 * apart);
  const half = Math.sqrt(Math.max(0, a.radiusMm ** 2 - middle * middle));
  const foot = { x: a.centre.x + along.x * middle, y: a.centre.y + along.y * middle };
  return [half, -half].map((d) => ({ x: foot.x - along.y * d, y: foot.y + along.x * d }));
}

/** How far the circle of an arc's own ends and another radius has its centre moved so that it lies further out of the wood. */
export function circleThroughEnds(piece: Arc, radiusMm: number, outMm: number): Circle | null {
  const chordMm = distanceMm(piece.from, piece.to);
  if (chordMm > 2 * radiusMm) return null;
  const bulge = (Math.sign(piece.bulge) * 2 * sagittaMm(chordMm, radiusMm)) / chordMm;
  const { centre } = circleOf(arc(piece.from, piece.to, bulge));
  const out = outOf(piece);
  return { centre: { x: centre.x + out.x * outMm, y: centre.y + out.y * outMm }, radiusMm };
}

/** The unit vector out of the wood in the middle of an arc, square to its chord. */
export function outOf(piece: Arc): Point {
  const chordMm = distanceMm(piece.from, piece.to);
  return { x: (piece.to.y - piece.from.y) / chordMm, y: -(piece.to.x - piece.from.x) / chordMm };
}

/**
 * The pieces with a straight one moved square to itself, out of the wood (into it: negative), its neighbours made longer or
 * shorter to meet it. Null where one of them no longer does.
 */
export function withLineMoved(pieces: readonly Piece[], index: number, outMm: number): Piece[] | null {
  const own = pieces[index];
  if (own?.kind !== "line") return null;
  const count = pieces.length;
  const lengthMm = distanceMm(own.from, own.to);
  const out = { x: (own.to.y - own.from.y) / lengthMm, y: -(own.to.x - own.from.x) / lengthMm };
  const moved = line(
    point(own.from.x + out.x * outMm, own.from.y + out.y * outMm),
    point(own.to.x + out.x * outMm, own.to.y + out.y * outMm),
  );
  const [beforeAt, afterAt] = [(index + count - 1) % count, (index + 1) % count];
  const [before, after] = [pieces[beforeAt] as Piece, pieces[afterAt] as Piece];
  const from = nearestMeeting(before, moved, own.from);
  const to = nearestMeeting(after, moved, own.to);
  if (!from || !to) return null;
  const first = endedAt(before, before.from, from);
  const last = endedAt(after, to, after.to);
  if (!first || !last) return null;
  return pieces.map((piece, i) =>
    i === index ? line(from, to) : i === beforeAt ? first : i === afterAt ? last : piece,
  );
}

function endedAt(like: Piece, from: Point, to: Point): Piece | null {
  if (like.kind === "arc") return arcOn(like, from, to, circleOf(like).radiusMm);
  const goesOn =
    (to.x - from.x) * (like.to.x - like.from.x) + (to.y - from.y) * (like.to.y - like.from.y) > SAME_POINT_MM;
  return goesOn ? line(from, to) : null;
}

/** Where a moved line meets its neighbour, both taken as long as need be, nearest to where they met before. */
function nearestMeeting(neighbour: Piece, moved: Line, old: Point): Point | null {
  const carrier = carrierOf(neighbour, undefined);
  const places = carrier.kind === "line" ? twoLines(carrier, moved) : lineAndCircle(moved, carrier.circle);
  const nearest = places.reduce<Point | null>(
    (best, p) => (best === null || distanceMm(p, old) < distanceMm(best, old) ? p : best),
    null,
  );
  return nearest && point(tidy(nearest.x), tidy(nearest.y));
}

function twoLines(a: { from: Point; to: Point }, b: { from: Point; to: Point }): Point[] {
  const [ax, ay] = [a.to.x - a.from.x, a.to.y - a.from.y];
  const [bx, by] = [b.to.x - b.from.x, b.to.y - b.from.y];
  const turn = ax * by - ay * bx;
  if (Math.abs(turn) <= SAME_POINT_MM) return [];
  const t = ((b.from.x - a.from.x) * by - (b.from.y - a.from.y) * bx) / turn;
  return [{ x: a.from.x + ax * t, y: a.from.y + ay * t }];
}
