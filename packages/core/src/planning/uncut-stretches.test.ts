import { describe, expect, test } from "vitest";
import { difference, regionOfPolygon } from "../curve/index.ts";
import type { Section } from "../section/index.ts";
import { benchOf, drawnSection } from "./testing/benches.ts";
import { rebate, shelfOf } from "./testing/shelves.ts";
import { leftStretches } from "./uncut-stretches.ts";

/** What is told of a section whose stick has not been touched: from, to and how far the wood stands off. */
function toldOf(section: Section) {
  const bench = benchOf(section, shelfOf(rebate(12)));
  return leftStretches(bench, bench.stickRegion).map(({ piece, leftMm }) => ({
    at: [piece.piece.from.x, piece.piece.from.y, piece.piece.to.x, piece.piece.to.y],
    leftMm,
  }));
}

describe("how far wood stands off each stretch that it touches", () => {
  test("a slot filled with wood: as deep as it is off its floor, as wide as it is off its walls", () => {
    const told = toldOf(
      drawnSection(40, 40, [
        [0, 0],
        [40, 0],
        [40, 40],
        [17, 40],
        [17, 14],
        [12, 14],
        [12, 40],
        [0, 40],
      ]),
    );
    expect(told.map(({ leftMm }) => Math.round(leftMm * 100) / 100)).toEqual([5, 26, 5]);
  });

  test("a cove filled with wood: no further than its far side lies from the nearest of it", () => {
    const cove = toldOf(
      drawnSection(30, 20, [
        [0, 0],
        [30, 0],
        [30, 10, -Math.tan(Math.PI / 8)],
        [20, 20],
        [0, 20],
      ]),
    );
    expect(cove).toHaveLength(1);
    // About (30, 20): the corner is the centre of the cove, 10 mm from all of it.
    expect(cove[0]?.leftMm).toBeCloseTo(10, 2);
  });

  test("wood that stands beside a stretch counts where it is nearer to no other", () => {
    // A step of 4 × 6 mm at the far edge: off its floor by 6, off its wall by 4, never by the diagonal.
    const told = toldOf(
      drawnSection(40, 20, [
        [0, 0],
        [40, 0],
        [40, 14],
        [36, 14],
        [36, 20],
        [0, 20],
      ]),
    );
    expect(told.map(({ leftMm }) => Math.round(leftMm * 100) / 100)).toEqual([6, 4]);
  });

  test("in an inner corner a film within the tolerance tells nothing of the side that it hardly stands off", () => {
    // A step whose floor and wall keep 0.15 mm of wood, and on the floor, 10 mm out, a ridge 1 mm high.
    const step = drawnSection(40, 20, [
      [0, 0],
      [40, 0],
      [40, 14],
      [20, 14],
      [20, 20],
      [0, 20],
    ]);
    const bench = benchOf(step, shelfOf(rebate(12)));
    const air = [
      [41, 14.15],
      [41, 21],
      [20.15, 21],
      [20.15, 14.15],
      [30, 14.15],
      [30, 15],
      [32, 15],
      [32, 14.15],
    ].map(([x, y]) => ({ x, y }));
    const told = leftStretches(bench, difference(bench.stickRegion, regionOfPolygon(air)));
    expect(told.map(({ piece }) => piece.piece.to)).toEqual([{ x: 20, y: 14 }]);
    expect(told[0]?.leftMm).toBeCloseTo(1, 2);
  });

  test("over the corner of two slopes: as high as any place of a long slanting edge stands", () => {
    // Two slopes rise to (20, 10); the wood's edge falls from (0, 30) to (40, 10). Square over the corner to the left slope it
    // is met at (15, 22.5); from there on to the right nothing of the left slope but the corner itself lies nearer.
    const peak = drawnSection(40, 30, [
      [0, 0],
      [40, 0],
      [40, 2],
      [20, 10],
      [0, 2],
    ]);
    const bench = benchOf(peak, shelfOf(rebate(12)));
    const air = [
      [40, 10],
      [41, 10],
      [41, 31],
      [0, 31],
      [0, 30],
    ].map(([x, y]) => ({ x, y }));
    const told = leftStretches(bench, difference(bench.stickRegion, regionOfPolygon(air)));
    expect(told.map(({ piece }) => piece.piece.from.x)).toEqual([40, 20]);
    const highMm = Math.hypot(5, 12.5);
    expect(told[0]?.leftMm).toBeLessThanOrEqual(highMm);
    expect(told[0]?.leftMm).toBeGreaterThan(highMm - 0.25);
  });

  test("whichever hand, the same is told", () => {
    // A tail under an overhang of 10°, at either edge.
    const slope = 8 * Math.tan((10 * Math.PI) / 180);
    const told = toldOf(
      drawnSection(40, 20, [
        [0, 0],
        [40, 0],
        [40, 12],
        [28, 12],
        [28 + slope, 20],
        [12 - slope, 20],
        [12, 12],
        [0, 12],
      ]),
    ).map(({ leftMm }) => leftMm);
    expect(told.length % 2).toBe(0);
    told.forEach((leftMm, i) => {
      expect(leftMm).toBeCloseTo(told[told.length - 1 - i] as number, 6);
      expect(leftMm).toBeLessThan(20);
    });
  });
});
