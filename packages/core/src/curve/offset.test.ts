import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { SAME_POINT_MM } from "../measure/index.ts";
import { chainFromVertices, verticesOf } from "./chain.ts";
import { offsetChain, offsetRing } from "./offset.ts";
import { circleOf, pointAt } from "./piece.ts";
import { distanceMm } from "./point.ts";
import { areaMm2, insideRing, nearestOnRing, ringFromVertices } from "./ring.ts";
import { PROPERTY, starRing } from "./testing/generators.ts";
import { samesOf } from "./testing/sames.ts";
import type { Arc, Chain, Vertex } from "./types.ts";

/** Vertices rounded to a millionth: what is compared by hand. */
const rounded = (run: Chain) =>
  verticesOf(run).map(
    (vertex) => vertex.map((value) => Math.round(value * 1e6) / 1e6 + 0) as unknown as Vertex,
  );

const QUARTER = Math.round((Math.SQRT2 - 1) * 1e6) / 1e6;

describe("offsetChain", () => {
  const steps = chainFromVertices([
    [0, 0],
    [10, 0],
    [10, 10],
    [20, 10],
  ]);

  test("left of a step: mitred inside, rounded outside", () => {
    expect(rounded(offsetChain(steps, 1))).toEqual([
      [0, 1],
      [9, 1],
      [9, 10, -QUARTER],
      [10, 11],
      [20, 11],
    ]);
  });

  test("right of a step: the other way about", () => {
    expect(rounded(offsetChain(steps, -1))).toEqual([
      [0, -1],
      [10, -1, QUARTER],
      [11, 0],
      [11, 9],
      [20, 9],
    ]);
  });

  test("arcs stay arcs about their centres", () => {
    const over = chainFromVertices([
      [5, 0, 1],
      [-5, 0],
    ]);
    const [outer] = offsetChain(over, -2).pieces as [Arc];
    expect(circleOf(outer).radiusMm).toBeCloseTo(7, 12);
    const [inner] = offsetChain(over, 2).pieces as [Arc];
    expect(circleOf(inner).radiusMm).toBeCloseTo(3, 12);
    expect(offsetChain(over, 5.5).pieces).toHaveLength(0);
  });

  test("a hollow too narrow for the distance is bridged by its two arrises: 3-4-5", () => {
    // Arrises at (±3, 0), distance 5: their circles meet 4 above the middle.
    const groove = chainFromVertices([
      [-10, 0],
      [-3, 0, 1],
      [3, 0],
      [10, 0],
    ]);
    const vertices = rounded(offsetChain(groove, 5));
    expect(vertices.map(([x, y]) => [x, y])).toEqual([
      [-10, 5],
      [-3, 5],
      [0, 4],
      [3, 5],
      [10, 5],
    ]);
  });

  test("no distance is no change; a number that is none is refused", () => {
    expect(offsetChain(steps, 0)).toBe(steps);
    expect(() => offsetChain(steps, Number.NaN)).toThrow("distanceMm");
  });
});

describe("offsetRing", () => {
  const square = ringFromVertices([
    [0, 0],
    [10, 0],
    [10, 10],
    [0, 10],
  ]);

  test("a square inwards, outwards and past its middle, and its sames", () => {
    for (const { ring, scale, isReversed } of samesOf(square)) {
      const inwards = isReversed ? -1 : 1;
      const areas = (distanceMm: number) =>
        offsetRing(ring, inwards * distanceMm * scale).map((r) => Math.abs(areaMm2(r)) / scale ** 2);
      expect(areas(1)).toHaveLength(1);
      expect(areas(1)[0]).toBeCloseTo(64, 8);
      // 100 + 4 sides of 10 × 2 + a circle of radius 2.
      expect(areas(-2)[0]).toBeCloseTo(180 + 4 * Math.PI, 8);
      expect(areas(5.1)).toEqual([]);
      expect(areas(30)).toEqual([]);
    }
  });

  test("a dumb-bell falls into two where its waist is too narrow", () => {
    const dumbBell = ringFromVertices([
      [0, 0],
      [10, 0],
      [10, 4],
      [20, 4],
      [20, 0],
      [30, 0],
      [30, 10],
      [20, 10],
      [20, 6],
      [10, 6],
      [10, 10],
      [0, 10],
    ]);
    const parts = offsetRing(dumbBell, 1.5);
    expect(parts).toHaveLength(2);
    // Each 7 × 7, less nothing: the waist is 2 wide and leaves two corners rounded by arrises of 1.5.
    for (const part of parts) expect(areaMm2(part)).toBeGreaterThan(49);
  });

  test("a bay closed from outside leaves a hole", () => {
    const bay = ringFromVertices([
      [0, 0],
      [20, 0],
      [20, 20],
      [11, 20],
      [11, 18],
      [18, 18],
      [18, 2],
      [2, 2],
      [2, 18],
      [9, 18],
      [9, 20],
      [0, 20],
    ]);
    const rings = offsetRing(bay, -1.5);
    expect(rings).toHaveLength(2);
    expect(areaMm2(rings[0]!)).toBeGreaterThan(400);
    expect(areaMm2(rings[1]!)).toBeLessThan(0);
  });

  test("an inset never grows, stays inside, and keeps its distance", () => {
    fc.assert(
      fc.property(starRing, fc.double({ min: 0.01, max: 40, noNaN: true }), (ring, distance) => {
        const parts = offsetRing(ring, distance);
        const area = parts.reduce((sum, part) => sum + areaMm2(part), 0);
        expect(area).toBeLessThan(areaMm2(ring));
        for (const part of parts) {
          for (const piece of part.pieces) {
            for (const t of [0, 0.3, 0.5, 0.8]) {
              const p = pointAt(piece, t);
              expect(insideRing(ring, p)).toBe("in");
              expect(Math.abs(nearestOnRing(ring, p).distanceMm - distance)).toBeLessThan(3 * SAME_POINT_MM);
            }
          }
        }
      }),
      { ...PROPERTY, numRuns: 300 },
    );
  });

  test("nothing is missed: a point inside, farther than the distance from the ring, is inside an inset", () => {
    const place = fc.double({ min: -30, max: 30, noNaN: true });
    fc.assert(
      fc.property(
        starRing,
        fc.double({ min: 0.2, max: 6, noNaN: true }),
        place,
        place,
        (ring, distance, dx, dy) => {
          const p = { x: ring.pieces[0]!.from.x + dx, y: ring.pieces[0]!.from.y + dy };
          const gap = nearestOnRing(ring, p).distanceMm - distance;
          if (Math.abs(gap) < 1e-3) return;
          const isInset = offsetRing(ring, distance).some((part) => insideRing(part, p) === "in");
          expect(isInset).toBe(insideRing(ring, p) === "in" && gap > 0);
        },
      ),
      { ...PROPERTY, numRuns: 400 },
    );
  });

  test("the two ends of an open chain's parallel stand square to its ends", () => {
    const run = chainFromVertices([
      [0, 0],
      [10, 3, 0.3],
      [20, 0],
    ]);
    const moved = offsetChain(run, 0.7);
    expect(distanceMm(moved.pieces[0]!.from, run.pieces[0]!.from)).toBeCloseTo(0.7, 12);
    expect(distanceMm(moved.pieces.at(-1)!.to, run.pieces.at(-1)!.to)).toBeCloseTo(0.7, 12);
  });
});
