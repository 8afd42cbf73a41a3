/**
 * Lines and arcs for a face measured point by point. The fewest that pass every point within what the measuring may
 * err are found first (`fitArcs`, which breaks at measured points); then each is laid by least squares through its own
 * points, and neighbours meet where they cross, so that no single point's error decides a radius or an arris.
 */
import {
  arc,
  type Chain,
  chain,
  circleOf,
  distanceMm,
  fitCircle,
  line,
  nearestOnPiece,
  type Piece,
  type Point,
} from "../curve/index.ts";
import { normaliseRad, SAME_POINT_MM, toDeg, toRad } from "../measure/index.ts";
import { fitArcs } from "./fit-arcs.ts";

export interface FaceFit {
  readonly chain: Chain;
  /** Greatest distance of a measured point from the face, mm: at most what was allowed. */
  readonly offMm: number;
}

/** A line or circle that a piece lies on. */
type Carrier =
  | { readonly kind: "line"; readonly through: Point; readonly directionRad: number }
  | { readonly kind: "circle"; readonly centre: Point; readonly radiusMm: number; readonly turns: 1 | -1 };

/**
 * The face through points in their order, each within `withinMm` of it. Neighbours that are one point, or fewer than two
 * points: a bug of the caller's.
 */
export function fitFace(points: readonly Point[], withinMm: number): FaceFit {
  const plain = fitArcs(points, { tolMm: withinMm });
  const pieces = plain.chain.pieces;
  const carriers = pieces.map((piece, i) =>
    carrierOf(piece, points.slice(plain.breaks[i], (plain.breaks[i + 1] as number) + 1), withinMm),
  );
  const joins = plain.breaks.map((at, i) =>
    joinOf(carriers[i - 1], carriers[i], points[at] as Point, withinMm),
  );
  const laid = carriers.map((carrier, i) => pieceOn(carrier, joins[i] as Point, joins[i + 1] as Point));
  if (laid.every((piece): piece is Piece => piece !== null)) {
    const offMm = greatestOffMm(points, laid);
    if (offMm <= withinMm) return { chain: chain(laid), offMm };
  }
  return { chain: plain.chain, offMm: greatestOffMm(points, pieces) };
}

/** Points at a piece's ends are its neighbours' as well: with fewer than these it is left as it was found. */
const LEAST_FITTED = 4;

function carrierOf(piece: Piece, own: readonly Point[], withinMm: number): Carrier {
  const straight = own.length > 2 ? lineThrough(own) : lineOf(piece);
  // What may be flat as well as it may be a huge round was flat.
  const isFlat = own.every((p) => distanceMm(p, footOn(straight, p)) <= withinMm);
  if (piece.kind === "line" || (isFlat && isShallow(piece, withinMm)))
    return squared(straight, own, withinMm);
  const turns = piece.bulge > 0 ? 1 : -1;
  const fit = own.length >= LEAST_FITTED ? fitCircle(own) : null;
  const { centre, radiusMm } = fit?.ok ? fit.value : circleOf(piece);
  return { kind: "circle", centre, radiusMm, turns };
}

/** Whether an arc rises over its chord by no more than the measuring may err either way. */
function isShallow(piece: Piece, withinMm: number): boolean {
  const bulge = piece.kind === "arc" ? piece.bulge : 0;
  return (Math.abs(bulge) * distanceMm(piece.from, piece.to)) / 2 <= 2 * withinMm;
}

function lineOf({ from, to }: Piece): Extract<Carrier, { kind: "line" }> {
  return { kind: "line", through: from, directionRad: Math.atan2(to.y - from.y, to.x - from.x) };
}

/** The line of least squared distances, running the way the points do. */
function lineThrough(own: readonly Point[]): Extract<Carrier, { kind: "line" }> {
  const x = own.reduce((sum, p) => sum + p.x, 0) / own.length;
  const y = own.reduce((sum, p) => sum + p.y, 0) / own.length;
  const sums = own.reduce(
    ({ xx, yy, xy }, p) => ({
      xx: xx + (p.x - x) ** 2,
      yy: yy + (p.y - y) ** 2,
      xy: xy + (p.x - x) * (p.y - y),
    }),
    { xx: 0, yy: 0, xy: 0 },
  );
  const axisRad = Math.atan2(2 * sums.xy, sums.xx - sums.yy) / 2;
  const [first, last] = [own[0] as Point, own[own.length - 1] as Point];
  const runs = (last.x - first.x) * Math.cos(axisRad) + (last.y - first.y) * Math.sin(axisRad);
  return { kind: "line", through: { x, y }, directionRad: runs < 0 ? axisRad + Math.PI : axisRad };
}

/** Flats and walls that come out this near to level or upright were level or upright. */
const SQUARE_WITHIN_DEG = 2;

function squared(
  carrier: Extract<Carrier, { kind: "line" }>,
  own: readonly Point[],
  withinMm: number,
): Carrier {
  const square = (Math.round(carrier.directionRad / (Math.PI / 2)) * Math.PI) / 2;
  if (Math.abs(toDeg(normaliseRad(carrier.directionRad - square))) > SQUARE_WITHIN_DEG) return carrier;
  const laid = { ...carrier, directionRad: square };
  return own.every((p) => distanceMm(p, footOn(laid, p)) <= withinMm) ? laid : carrier;
}

function footOn(carrier: Carrier, p: Point): Point {
  if (carrier.kind === "circle") {
    const { centre, radiusMm } = carrier;
    const away = distanceMm(p, centre);
    if (away <= SAME_POINT_MM) return { x: centre.x + radiusMm, y: centre.y };
    const share = radiusMm / away;
    return { x: centre.x + (p.x - centre.x) * share, y: centre.y + (p.y - centre.y) * share };
  }
  const [ux, uy] = [Math.cos(carrier.directionRad), Math.sin(carrier.directionRad)];
  const along = (p.x - carrier.through.x) * ux + (p.y - carrier.through.y) * uy;
  return { x: carrier.through.x + along * ux, y: carrier.through.y + along * uy };
}

/** How far from the measured point, in what the measuring may err, neighbours may cross and still meet there. */
const MEETS_WITHIN = 6;

/** Where two neighbours meet near a measured point: where they cross, or, running on smoothly, half way between them. */
function joinOf(
  before: Carrier | undefined,
  after: Carrier | undefined,
  near: Point,
  withinMm: number,
): Point {
  if (!before || !after) return footOn((before ?? after) as Carrier, near);
  let best: Point | null = null;
  for (const p of crossingsOf(before, after)) {
    if (distanceMm(p, near) > MEETS_WITHIN * withinMm) continue;
    if (best === null || distanceMm(p, near) < distanceMm(best, near)) best = p;
  }
  if (best) return best;
  const [a, b] = [footOn(before, near), footOn(after, near)];
  return { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
}

function crossingsOf(a: Carrier, b: Carrier): readonly Point[] {
  if (a.kind === "line" && b.kind === "line") return lineCrossing(a, b);
  if (a.kind === "circle" && b.kind === "circle") return circleCrossings(a, b);
  const [straight, round] = a.kind === "line" ? [a, b] : [b, a];
  return straight.kind === "line" && round.kind === "circle" ? lineOnCircle(straight, round) : [];
}

type LineCarrier = Extract<Carrier, { kind: "line" }>;
type CircleCarrier = Extract<Carrier, { kind: "circle" }>;

/** Lines nearer to parallel than this cross nowhere that the points could tell. */
const LEAST_CROSSING_RAD = toRad(3);

function lineCrossing(a: LineCarrier, b: LineCarrier): readonly Point[] {
  const turn = Math.sin(b.directionRad - a.directionRad);
  if (Math.abs(turn) < Math.sin(LEAST_CROSSING_RAD)) return [];
  const [dx, dy] = [b.through.x - a.through.x, b.through.y - a.through.y];
  const along = (dx * Math.sin(b.directionRad) - dy * Math.cos(b.directionRad)) / turn;
  return [
    {
      x: a.through.x + along * Math.cos(a.directionRad),
      y: a.through.y + along * Math.sin(a.directionRad),
    },
  ];
}

function lineOnCircle(straight: LineCarrier, round: CircleCarrier): readonly Point[] {
  const foot = footOn(straight, round.centre);
  const half = round.radiusMm ** 2 - distanceMm(foot, round.centre) ** 2;
  if (half < 0) return [];
  const along = Math.sqrt(half);
  const [ux, uy] = [Math.cos(straight.directionRad), Math.sin(straight.directionRad)];
  return [1, -1].map((side) => ({ x: foot.x + side * along * ux, y: foot.y + side * along * uy }));
}

function circleCrossings(a: CircleCarrier, b: CircleCarrier): readonly Point[] {
  const apart = distanceMm(a.centre, b.centre);
  if (apart <= SAME_POINT_MM) return [];
  const along = (apart * apart + a.radiusMm ** 2 - b.radiusMm ** 2) / (2 * apart);
  const half = a.radiusMm ** 2 - along * along;
  if (half < 0) return [];
  const [ux, uy] = [(b.centre.x - a.centre.x) / apart, (b.centre.y - a.centre.y) / apart];
  const aside = Math.sqrt(half);
  return [1, -1].map((side) => ({
    x: a.centre.x + along * ux - side * aside * uy,
    y: a.centre.y + along * uy + side * aside * ux,
  }));
}

/** The carrier's piece between two places on it, or null where it would be none, run backwards or past a half circle. */
function pieceOn(carrier: Carrier, from: Point, to: Point): Piece | null {
  if (distanceMm(from, to) <= SAME_POINT_MM) return null;
  if (carrier.kind === "line") {
    const runs = Math.cos(Math.atan2(to.y - from.y, to.x - from.x) - carrier.directionRad);
    return runs > 0 ? line(from, to) : null;
  }
  const { centre, turns } = carrier;
  const startRad = Math.atan2(from.y - centre.y, from.x - centre.x);
  const sweep = turns * (Math.atan2(to.y - centre.y, to.x - centre.x) - startRad);
  const turned = ((sweep % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
  if (turned > Math.PI) return null;
  return arc(from, to, turns * Math.tan(turned / 4));
}

function greatestOffMm(points: readonly Point[], pieces: readonly Piece[]): number {
  return points.reduce((most, p) => {
    const off = pieces.reduce(
      (least, piece) => Math.min(least, nearestOnPiece(piece, p).distanceMm),
      Infinity,
    );
    return Math.max(most, off);
  }, 0);
}
