/** Random shapes for the property tests: valid ones and, half the time, near misses. */
import * as fc from "fast-check";
import { LEAST_BULGE } from "../../measure/index.ts";
import { arc, arcsThrough, circleOf, line, pointAt } from "../piece.ts";
import { distanceMm } from "../point.ts";
import { ring } from "../ring.ts";
import type { Arc, Piece, Point, Ring } from "../types.ts";

/** Settings of every property test: a failing run can be repeated. */
export const PROPERTY = { seed: 20261124, numRuns: 1000 } as const;

/** A few units in the last place, or one of the sizes at which a tolerance could trip. */
const whisker = fc.oneof(
  { weight: 3, arbitrary: fc.integer({ min: -4, max: 4 }).map((ulps) => ulps * 2 ** -47) },
  fc.constantFrom(1e-9, -1e-9, 1e-7, -1e-7, 9e-7, -9e-7, 1.1e-6, -1.1e-6, 1e-5, -1e-5),
);

/** Coordinates of a stick: anything, whole numbers (which meet exactly), and whole numbers a whisker off. */
export const coordinate: fc.Arbitrary<number> = fc.oneof(
  fc.double({ min: -60, max: 60, noNaN: true, noDefaultInfinity: true }),
  fc.integer({ min: -8, max: 8 }),
  fc.tuple(fc.integer({ min: -8, max: 8 }), whisker).map(([whole, off]) => whole + off),
);

export const anyPoint: fc.Arbitrary<Point> = fc.record({ x: coordinate, y: coordinate });

export const bulge: fc.Arbitrary<number> = fc.oneof(
  fc.double({ min: -1, max: 1, noNaN: true, noDefaultInfinity: true }),
  // Half and quarter circles, the sole's sixth, and arcs that are hardly any.
  fc.constantFrom(1, -1, Math.SQRT2 - 1, 1 - Math.SQRT2, 2 - Math.sqrt(3), 1e-3, -1e-6, 1e-9),
);

/** No shorter than what anybody draws: shorter pieces are within tolerance of nothing but themselves. */
const LEAST_PIECE_MM = 1e-2;

/** No sole or section is flatter than this; beyond, an arc of the same circle would leave the bench altogether. */
const LARGEST_RADIUS_MM = 1e4;

const spanning = fc.tuple(anyPoint, anyPoint).filter(([from, to]) => distanceMm(from, to) > LEAST_PIECE_MM);

export const anyLine: fc.Arbitrary<Piece> = spanning.map(([from, to]) => line(from, to));

export const anyArc: fc.Arbitrary<Arc> = fc
  .tuple(spanning, bulge)
  .filter(([, b]) => Math.abs(b) >= LEAST_BULGE)
  .map(([[from, to], b]) => arc(from, to, b));

export const anyPiece: fc.Arbitrary<Piece> = fc.oneof(anyLine, anyArc);

/** A second piece that nearly (or exactly) touches, continues, doubles or meets the end of the first. */
function nearMissOf(first: Piece): fc.Arbitrary<Piece> {
  const t = fc.oneof(fc.constantFrom(0, 1 / 2, 1), fc.double({ min: 0, max: 1, noNaN: true }));
  const turnRad = fc.oneof(
    fc.constantFrom(0, Math.PI / 2, Math.PI),
    fc.double({ min: -Math.PI, max: Math.PI, noNaN: true }),
  );
  return fc
    .tuple(t, turnRad, whisker, fc.double({ min: 0.5, max: 30, noNaN: true }), bulge)
    .map(([at, turn, off, lengthMm, b]) => {
      const p = pointAt(first, at);
      if (first.kind === "arc" && turn === Math.PI && circleOf(first).radiusMm < LARGEST_RADIUS_MM)
        return aroundSameCircle(first, at, off);
      const x = p.x + off;
      const to = { x: x + lengthMm * Math.cos(turn), y: p.y + lengthMm * Math.sin(turn) };
      return b >= LEAST_BULGE ? arc({ x, y: p.y }, to, b) : line({ x, y: p.y }, to);
    });
}

/** An arc of the first one's circle, its radius a whisker off, begun somewhere along it. */
function aroundSameCircle(first: Arc, at: number, off: number): Piece {
  const circle = circleOf(first);
  const start = pointAt(first, at);
  const startRad = Math.atan2(start.y - circle.centre.y, start.x - circle.centre.x);
  const arcs = arcsThrough({ ...circle, radiusMm: circle.radiusMm + off }, startRad, 1.2);
  return arcs[0] as Piece;
}

/** Two pieces: strangers half the time, near misses the other half. */
export const piecePair: fc.Arbitrary<readonly [Piece, Piece]> = fc.oneof(
  fc.tuple(anyPiece, anyPiece),
  anyPiece.chain((first) => nearMissOf(first).map((second) => [first, second] as const)),
);

/**
 * A ring that does not cross itself: corners at growing angles about a middle, joined by lines and by arcs that
 * stay within their wedge.
 */
export const starRing: fc.Arbitrary<Ring> = fc
  .tuple(
    fc.array(
      fc.tuple(
        fc.double({ min: 8, max: 30, noNaN: true }),
        fc.double({ min: -0.12, max: 0.12, noNaN: true }),
      ),
      {
        minLength: 5,
        maxLength: 24,
      },
    ),
    anyPoint,
    fc.boolean(),
  )
  .map(([corners, middle, isWhole]) => {
    const place = (index: number): Point => {
      const [radius] = corners[index % corners.length]!;
      const angle = (2 * Math.PI * (index % corners.length)) / corners.length;
      const p = { x: middle.x + radius * Math.cos(angle), y: middle.y + radius * Math.sin(angle) };
      return isWhole ? { x: Math.round(p.x), y: Math.round(p.y) } : p;
    };
    const points: Point[] = corners
      .map((_, index) => place(index))
      .filter((p, index, all) => distanceMm(p, all[(index + 1) % all.length]!) > LEAST_PIECE_MM);
    const pieces = points.map((from, index) => {
      const to = points[(index + 1) % points.length]!;
      const b = corners[index]![1];
      return Math.abs(b) < 0.02 || isWhole ? line(from, to, index + 1) : arc(from, to, b, index + 1);
    });
    return ring(pieces);
  });
