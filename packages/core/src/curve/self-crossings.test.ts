import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { SAME_POINT_MM } from "../measure/index.ts";
import { piecesBetween } from "./chain.ts";
import { distanceMm, point } from "./point.ts";
import { closedRun, ringFromVertices } from "./ring.ts";
import { selfCrossings } from "./self-crossings.ts";
import { PROPERTY, starRing } from "./testing/generators.ts";
import { samesOf } from "./testing/sames.ts";
import type { Vertex } from "./types.ts";

/** A closed run as given: rings that cross themselves may enclose nothing on balance. */
function runOf(...vertices: Vertex[]) {
  return closedRun(
    vertices.flatMap((vertex, i) => piecesBetween(vertex, vertices[(i + 1) % vertices.length]!)),
  );
}

describe("selfCrossings", () => {
  test("a bow tie crosses in its middle, and so do its sames", () => {
    const bow = runOf([0, 0], [10, 0], [0, 10], [10, 10]);
    expect(selfCrossings(bow, SAME_POINT_MM)).toEqual([point(5, 5)]);
    for (const { ring, scale } of samesOf(bow)) {
      expect(selfCrossings(ring, SAME_POINT_MM * Math.min(1, scale))).toHaveLength(1);
    }
  });

  test("an arc that dips through the far side crosses twice: a 3-4-5 triangle", () => {
    // A hollow of radius 5 from (-5, 0) to (5, 0), its centre at (0, 0), through the line y = -3.
    const found = selfCrossings(runOf([-5, 0, 1], [5, 0], [9, 0], [9, -3], [-9, -3], [-9, 0]), SAME_POINT_MM);
    expect(found).toHaveLength(2);
    for (const [x, y] of [
      [-4, -3],
      [4, -3],
    ] as const) {
      expect(Math.min(...found.map((p) => distanceMm(p, point(x, y))))).toBeLessThan(1e-9);
    }
  });

  test("a corner that touches another side is told", () => {
    expect(selfCrossings(runOf([0, 0], [10, 0], [10, 10], [5, 0], [0, 10]), SAME_POINT_MM)).toEqual([
      point(5, 0),
    ]);
  });

  test("neighbours folded back on one another are told by both ends", () => {
    const found = selfCrossings(runOf([0, 0], [10, 0], [4, 0], [4, 8], [0, 8]), SAME_POINT_MM);
    expect(found).toContainEqual(point(10, 0));
    expect(found).toContainEqual(point(4, 0));
  });

  test("neighbouring arcs that meet again past their joint are told", () => {
    // Half circles about (0, 0) and (0, 3), both through (5, 0): x² + y² = 25 and x² + (y − 3)² = 34 give y = 0.
    const found = selfCrossings(runOf([-5, 0, -1], [5, 0, -1], [-5, 6], [-9, 6], [-9, 0]), SAME_POINT_MM);
    expect(found).toHaveLength(1);
    expect(distanceMm(found[0]!, point(-5, 0))).toBeLessThan(1e-9);
  });

  test("a smooth run of lines and arcs crosses nowhere", () => {
    const ogee = ringFromVertices([
      [0, 0],
      [40, 0],
      [40, 10],
      [30, 10, 1 - Math.SQRT2],
      [20, 20, Math.SQRT2 - 1],
      [10, 30],
      [0, 30],
    ]);
    for (const { ring, scale } of samesOf(ogee)) {
      expect(selfCrossings(ring, SAME_POINT_MM * Math.min(1, scale))).toEqual([]);
    }
  });

  test("no ring of corners at growing angles crosses itself", () => {
    fc.assert(
      fc.property(starRing, (ring) => {
        expect(selfCrossings(ring, SAME_POINT_MM)).toEqual([]);
      }),
      PROPERTY,
    );
  });

  test("the crossings of a scribble are those that trying every pair of sides finds", () => {
    const corner = fc.tuple(
      fc.double({ min: 0, max: 50, noNaN: true }),
      fc.double({ min: 0, max: 50, noNaN: true }),
    );
    fc.assert(
      fc.property(fc.array(corner, { minLength: 4, maxLength: 14 }), (corners) => {
        const isSpread = corners.every((a, i) =>
          corners.every((b, j) => i === j || Math.hypot(a[0] - b[0], a[1] - b[1]) > 1),
        );
        if (!isSpread) return;
        const found = selfCrossings(runOf(...corners), SAME_POINT_MM);
        expect(found).toHaveLength(countedCrossings(corners));
      }),
      { ...PROPERTY, numRuns: 300 },
    );
  });
});

/** Pairs of sides whose ends lie on either side of one another; no three corners of the property lie in a line. */
function countedCrossings(corners: readonly (readonly [number, number])[]): number {
  const count = corners.length;
  const side = (a: readonly [number, number], b: readonly [number, number], p: readonly [number, number]) =>
    (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) > 0;
  let crossings = 0;
  for (let i = 0; i < count; i++) {
    for (let j = i + 2; j < count; j++) {
      if (i === 0 && j === count - 1) continue;
      const [a, b, c, d] = [corners[i]!, corners[i + 1]!, corners[j]!, corners[(j + 1) % count]!];
      if (side(a, b, c) !== side(a, b, d) && side(c, d, a) !== side(c, d, b)) crossings++;
    }
  }
  return crossings;
}
