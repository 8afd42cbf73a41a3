/**
 * A stroke drawn by hand on the board, read as flats and curves: laid between two joins of the chain, with radii of the
 * shelf where they come near enough, or kept as one free curve.
 */
import { circleOf, type Piece, type Point } from "mouldwright/curve";
import {
  arcsApartMm,
  type BezierSpec,
  cubicsThrough,
  fitFace,
  type PartSpec,
  snapArc,
} from "mouldwright/section";
import type { PlacedPart } from "../chain/laid-chain.ts";
import { plainParts, tidyMm } from "../chain/refit-part.ts";
import type { ShelfRadius } from "../pull/soles.ts";

/** The joins of the chain that a stroke goes between: parts `first` up to, not with, `end` make way for it. */
export interface StrokePlace {
  readonly first: number;
  readonly end: number;
  readonly from: Point;
  readonly to: Point;
}

export interface ReadStroke {
  readonly place: StrokePlace;
  readonly pieces: readonly Piece[];
  readonly parts: readonly PartSpec[];
  /** Planes of the shelf that its curves have the radius of, each once. */
  readonly planes: readonly string[];
  readonly curveCount: number;
}

/** Fewer points than this are a slip of the finger. */
const LEAST_POINTS = 4;
/** So many points say all that a hand has drawn; more only take longer. */
const MOST_POINTS = 160;

/** Where a stroke belongs: from the join nearest its start to the one nearest its end. Null for a slip of the finger. */
export function strokePlace(stroke: readonly Point[], placed: readonly PlacedPart[]): StrokePlace | null {
  const [start, end] = [stroke[0], stroke.at(-1)];
  const [firstPart] = placed;
  if (start === undefined || end === undefined || firstPart === undefined || stroke.length < LEAST_POINTS) {
    return null;
  }
  const joins = [firstPart.from, ...placed.map(({ to }) => to)];
  const [one, other] = [nearestJoin(joins, start), nearestJoin(joins, end)];
  if (one === other) return null;
  const [first, last] = one < other ? [one, other] : [other, one];
  return { first, end: last, from: joins[first] as Point, to: joins[last] as Point };
}

function nearestJoin(joins: readonly Point[], at: Point): number {
  const away = joins.map((join) => Math.hypot(join.x - at.x, join.y - at.y));
  return away.indexOf(Math.min(...away));
}

export interface StrokeReading {
  readonly placed: readonly PlacedPart[];
  readonly radii: readonly ShelfRadius[];
  /** How far what is read may stand from what was drawn, mm. */
  readonly withinMm: number;
}

/** The stroke as flats and curves; null for a slip of the finger. */
export function readStroke(
  stroke: readonly Point[],
  { placed, radii, withinMm }: StrokeReading,
): ReadStroke | null {
  const place = strokePlace(stroke, placed);
  if (place === null) return null;
  const points = laidBetween(stroke, place);
  if (points.length < LEAST_POINTS) return null;
  const fitted = endedAt(fitFace(points, withinMm).chain.pieces, place);
  const planes = new Set<string>();
  const pieces = fitted.map((piece): Piece => {
    if (piece.kind === "line") return piece;
    const onShelf = shelfArc(piece, radii, withinMm);
    if (onShelf === null) return piece;
    planes.add(onShelf.plane);
    return onShelf.arc;
  });
  return {
    place,
    pieces,
    parts: plainParts(pieces),
    planes: [...planes],
    curveCount: pieces.filter(({ kind }) => kind === "arc").length,
  };
}

/** The stroke as one free curve, as it was drawn but for the trembling of the hand. */
export function asFreeCurve(stroke: readonly Point[], { placed, withinMm }: StrokeReading): PartSpec | null {
  const place = strokePlace(stroke, placed);
  if (place === null) return null;
  const { from } = place;
  const own = ({ x, y }: Point): readonly [number, number] => [tidyMm(x - from.x), tidyMm(y - from.y)];
  const beziers = cubicsThrough(laidBetween(stroke, place), withinMm).map(
    (cubic): BezierSpec => ({
      control1: own(cubic.handleFrom),
      control2: own(cubic.handleTo),
      to: own(cubic.to),
    }),
  );
  return beziers.length === 0 ? null : { kind: "free curve", beziers };
}

/** Walked from the gauge edge, its ends brought to the joins, the way between moved along in proportion. */
function laidBetween(stroke: readonly Point[], { from, to }: StrokePlace): readonly Point[] {
  const away = (at: Point): number => Math.hypot(at.x - from.x, at.y - from.y);
  const walked = away(stroke[0] as Point) <= away(stroke.at(-1) as Point) ? stroke : [...stroke].reverse();
  const kept = thinned(walked);
  const [first, last] = [kept[0] as Point, kept.at(-1) as Point];
  const [startX, startY] = [from.x - first.x, from.y - first.y];
  const [endX, endY] = [to.x - last.x, to.y - last.y];
  return kept.map(({ x, y }, index) => {
    const t = index / (kept.length - 1);
    return { x: x + startX * (1 - t) + endX * t, y: y + startY * (1 - t) + endY * t };
  });
}

/** Points at least a hair apart, and no more than are needed; the ends always. */
function thinned(stroke: readonly Point[]): readonly Point[] {
  const apart: Point[] = [];
  for (const at of stroke) {
    const before = apart.at(-1);
    if (before === undefined || Math.hypot(at.x - before.x, at.y - before.y) > LEAST_APART_MM) apart.push(at);
  }
  const every = Math.max(1, Math.ceil(apart.length / MOST_POINTS));
  const last = apart.length - 1;
  return apart.filter((_, index) => index % every === 0 || index === last);
}

const LEAST_APART_MM = 0.05;

/** The first and last piece end in the very joins. */
function endedAt(pieces: readonly Piece[], { from, to }: StrokePlace): readonly Piece[] {
  const last = pieces.length - 1;
  return pieces.map((piece, index) => ({
    ...piece,
    from: index === 0 ? from : piece.from,
    to: index === last ? to : piece.to,
  }));
}

function shelfArc(
  drawn: Extract<Piece, { kind: "arc" }>,
  radii: readonly ShelfRadius[],
  withinMm: number,
): { readonly arc: Extract<Piece, { kind: "arc" }>; readonly plane: string } | null {
  const makes = drawn.bulge < 0 ? "round" : "hollow";
  const { radiusMm } = circleOf(drawn);
  const near = radii
    .filter((one) => one.makes === makes)
    .sort((a, b) => Math.abs(a.radiusMm - radiusMm) - Math.abs(b.radiusMm - radiusMm));
  for (const one of near) {
    const arc = snapArc(drawn, one.radiusMm);
    if (arc !== null && arcsApartMm(drawn, arc) <= withinMm) return { arc, plane: one.plane };
  }
  return null;
}
