import { describe, expect, test } from "vitest";
import { SAME_POINT_MM } from "../measure/index.ts";
import { type Crossing, intersect } from "./intersect.ts";
import { arc, line, reversePiece } from "./piece.ts";
import { distanceMm, point } from "./point.ts";
import type { Piece } from "./types.ts";

const TOL_MM = SAME_POINT_MM;
const P = point;

/** Upper half circle of radius 5 about the origin, from (5, 0) over (0, 5) to (-5, 0). */
const over = arc(P(5, 0), P(-5, 0), 1);
/** Its lower half, from (-5, 0) under to (5, 0). */
const under = arc(P(-5, 0), P(5, 0), 1);
/** The 3-4-5 triangle makes hand arithmetic exact. */
const level = (y: number, fromX = -10, toX = 10) => line(P(fromX, y), P(toX, y));

type Expected =
  | { readonly kind: "none" }
  | {
      readonly kind: "points";
      readonly at: readonly (readonly [number, number])[];
      readonly tangent: boolean;
    }
  | {
      readonly kind: "overlap";
      readonly from: readonly [number, number];
      readonly to: readonly [number, number];
    };

const none: Expected = { kind: "none" };
const at = (tangent: boolean, ...points: [number, number][]): Expected => ({
  kind: "points",
  at: points,
  tangent,
});
const overlap = (from: [number, number], to: [number, number]): Expected => ({ kind: "overlap", from, to });

const CASES: readonly (readonly [string, Piece, Piece, Expected])[] = [
  ["line, line: crossing", level(0), line(P(5, -5), P(5, 5)), at(false, [5, 0])],
  ["line, line: apart and parallel", level(0), level(1), none],
  ["line, line: carriers cross outside", level(0), line(P(11, -1), P(11, 1)), none],
  ["line, line: end on the other's middle", level(0), line(P(5, 0), P(5, 5)), at(false, [5, 0])],
  ["line, line: end to end at an angle", level(0), line(P(10, 0), P(12, 5)), at(false, [10, 0])],
  ["line, line: end to end straight on", level(0), line(P(10, 0), P(15, 0)), at(true, [10, 0])],
  ["line, line: in one line with a gap", level(0), line(P(10.1, 0), P(15, 0)), none],
  ["line, line: overlapping by part", level(0), line(P(5, 0), P(15, 0)), overlap([5, 0], [10, 0])],
  ["line, line: one inside the other", level(0), line(P(4, 0), P(-3, 0)), overlap([-3, 0], [4, 0])],
  ["line, line: the same", level(0), level(0), overlap([-10, 0], [10, 0])],
  ["line, line: parallel within the tolerance", level(0), level(5e-7, -3, 20), overlap([-3, 5e-7], [10, 0])],
  ["line, line: no length, on the other", level(0), line(P(2, 0), P(2, 0)), at(true, [2, 0])],
  ["line, line: no length, off the other", level(0), line(P(2, 1), P(2, 1)), none],
  ["line, arc: through both sides", level(3), over, at(false, [-4, 3], [4, 3])],
  ["line, arc: through one side", level(3, 0), over, at(false, [4, 3])],
  ["line, arc: inside without touching", level(3, -1, 1), over, none],
  ["line, arc: touching at the top", level(5), over, at(true, [0, 5])],
  ["line, arc: touching within the tolerance above", level(5 + 9e-7), over, at(true, [0, 5])],
  ["line, arc: touching within the tolerance below", level(5 - 9e-7), over, at(true, [0, 5])],
  ["line, arc: just too high to touch", level(5 + 1.1e-6), over, none],
  ["line, arc: hits the circle where there is no arc", level(-3), over, none],
  ["line, arc: along the diameter, at both ends", level(0), over, at(false, [-5, 0], [5, 0])],
  ["line, arc: smooth join at the arc's end", line(P(5, -8), P(5, 0)), over, at(true, [5, 0])],
  ["line, arc: arris at the arc's end", line(P(9, 0), P(5, 0)), over, at(false, [5, 0])],
  ["line, arc: line ends on the arc", line(P(0, 0), P(3, 4)), over, at(false, [3, 4])],
  ["arc, arc: crossing twice", over, arc(P(5, 6), P(-5, 6), -1), at(false, [-4, 3], [4, 3])],
  ["arc, arc: touching from outside", over, arc(P(-5, 10), P(5, 10), 1), at(true, [0, 5])],
  ["arc, arc: touching from inside", over, arc(P(2, 3), P(-2, 3), 1), at(true, [0, 5])],
  ["arc, arc: one inside the other", over, arc(P(3, 0), P(-3, 0), 1), none],
  ["arc, arc: far apart", over, arc(P(25, 0), P(15, 0), 1), none],
  ["arc, arc: circles cross where there is no arc", over, arc(P(5, -6), P(-5, -6), 1), none],
  ["arc, arc: touching ends", over, arc(P(15, 0), P(5, 0), 1), at(true, [5, 0])],
  ["arc, arc: the two halves of one circle", over, under, at(true, [-5, 0], [5, 0])],
  ["arc, arc: overlapping by a quarter", over, arc(P(0, -5), P(0, 5), 1), overlap([0, 5], [5, 0])],
  ["arc, arc: the same", over, over, overlap([-5, 0], [5, 0])],
  [
    "arc, arc: a short one within a long one",
    over,
    arc(P(4, 3), P(3, 4), Math.tan(Math.atan(7 / 24) / 4)),
    overlap([3, 4], [4, 3]),
  ],
  [
    "arc, line: an arc too flat to tell",
    arc(P(-10, 0), P(10, 0), 1e-12),
    level(0, 2, 4),
    overlap([2, 0], [4, 0]),
  ],
];

function check(crossing: Crossing, expected: Expected): void {
  expect(crossing.kind).toBe(expected.kind);
  if (crossing.kind === "overlap" && expected.kind === "overlap") {
    expect(distanceMm(crossing.from, P(...expected.from))).toBeLessThanOrEqual(TOL_MM);
    expect(distanceMm(crossing.to, P(...expected.to))).toBeLessThanOrEqual(TOL_MM);
  }
  if (crossing.kind === "points" && expected.kind === "points") {
    expect(crossing.hits).toHaveLength(expected.at.length);
    for (const [x, y] of expected.at) {
      expect(Math.min(...crossing.hits.map((hit) => distanceMm(hit.point, P(x, y))))).toBeLessThanOrEqual(
        TOL_MM,
      );
    }
    for (const hit of crossing.hits) expect(hit.tangent).toBe(expected.tangent);
  }
}

/** A piece moved, and turned by quarter turns so that hand-made numbers stay exact. */
function placed(piece: Piece, quarters: number, dx: number, dy: number): Piece {
  const place = ({ x, y }: { x: number; y: number }) => {
    let turned = { x, y };
    for (let i = 0; i < quarters; i++) turned = { x: -turned.y, y: turned.x };
    return P(turned.x + dx, turned.y + dy);
  };
  return { ...piece, from: place(piece.from), to: place(piece.to) };
}

function unplaced(crossing: Crossing, quarters: number, dx: number, dy: number): Crossing {
  const back = (p: { x: number; y: number }) =>
    placed(line(P(p.x - dx, p.y - dy), P(0, 0)), (4 - quarters) % 4, 0, 0).from;
  if (crossing.kind === "none") return crossing;
  if (crossing.kind === "overlap") {
    const ends = [back(crossing.from), back(crossing.to)].sort((a, b) =>
      Math.abs(a.x - b.x) > TOL_MM ? a.x - b.x : a.y - b.y,
    );
    return { kind: "overlap", from: ends[0]!, to: ends[1]! };
  }
  return { ...crossing, hits: crossing.hits.map((hit) => ({ ...hit, point: back(hit.point) })) };
}

function scaled(piece: Piece, scale: number): Piece {
  const place = ({ x, y }: { x: number; y: number }) => P(x * scale, y * scale);
  return { ...piece, from: place(piece.from), to: place(piece.to) };
}

function unscaled(crossing: Crossing, scale: number): Crossing {
  const back = ({ x, y }: { x: number; y: number }) => P(x / scale, y / scale);
  if (crossing.kind === "none") return crossing;
  if (crossing.kind === "overlap") return { ...crossing, from: back(crossing.from), to: back(crossing.to) };
  return { ...crossing, hits: crossing.hits.map((hit) => ({ ...hit, point: back(hit.point) })) };
}

describe.each(CASES)("%s", (_, a, b, expected) => {
  test("as drawn", () => check(intersect(a, b, TOL_MM), expected));
  test("the other order", () => check(intersect(b, a, TOL_MM), expected));
  test("either piece travelled back", () => {
    check(intersect(reversePiece(a), b, TOL_MM), expected);
    check(intersect(a, reversePiece(b), TOL_MM), expected);
    check(intersect(reversePiece(b), reversePiece(a), TOL_MM), expected);
  });
  test("turned by quarters", () => {
    for (const quarters of [1, 2, 3]) {
      const crossing = intersect(placed(a, quarters, 0, 0), placed(b, quarters, 0, 0), TOL_MM);
      check(unplaced(crossing, quarters, 0, 0), expected);
    }
  });
  test("a thousand times as large, and a thousandth, with the tolerance", () => {
    for (const scale of [1000, 0.001]) {
      const crossing = intersect(scaled(a, scale), scaled(b, scale), TOL_MM * scale);
      check(unscaled(crossing, scale), expected);
    }
  });
  test("ten metres away", () => {
    const crossing = intersect(placed(a, 0, 10_000, -10_000), placed(b, 0, 10_000, -10_000), TOL_MM);
    check(unplaced(crossing, 0, 10_000, -10_000), expected);
  });
});

describe("hits", () => {
  test("run in the order of the first piece, and tell the places on both", () => {
    const crossing = intersect(reversePiece(level(3)), over, TOL_MM);
    if (crossing.kind !== "points") throw new Error(crossing.kind);
    expect(crossing.hits[0]!.tA).toBeCloseTo(0.3, 12);
    expect(crossing.hits[1]!.tA).toBeCloseTo(0.7, 12);
    // From (5, 0) by atan(3/4) of the half circle.
    expect(crossing.hits[0]!.tB).toBeCloseTo(Math.atan2(3, 4) / Math.PI, 12);
    expect(crossing.hits[1]!.tB).toBeCloseTo(1 - Math.atan2(3, 4) / Math.PI, 12);
  });

  test("at an end give the stored point, to the last bit", () => {
    const end = P(3 + 3e-7, 4);
    const crossing = intersect(line(P(0, 0), end), over, TOL_MM);
    if (crossing.kind !== "points") throw new Error(crossing.kind);
    expect(crossing.hits[0]!.point).toBe(end);
    expect(crossing.hits[0]!.tA).toBe(1);
  });

  test("a smooth join is one hit at the joint, although the pieces part slowly", () => {
    const crossing = intersect(line(P(-30, 5), P(0, 5)), arc(P(0, 5), P(5, 0), 1 - Math.SQRT2), TOL_MM);
    if (crossing.kind !== "points") throw new Error(crossing.kind);
    expect(crossing.hits).toHaveLength(1);
    expect(crossing.hits[0]).toMatchObject({ tA: 1, tB: 0, tangent: true });
  });

  test("no tolerance finds a plain crossing", () => {
    check(intersect(level(3), over, 0), at(false, [-4, 3], [4, 3]));
    check(intersect(over, arc(P(5, 6), P(-5, 6), -1), 0), at(false, [-4, 3], [4, 3]));
  });
});
