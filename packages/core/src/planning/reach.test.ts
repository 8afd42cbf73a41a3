import { describe, expect, test } from "vitest";
import { nearestOnRing } from "../curve/index.ts";
import { curveCovers } from "./curves.ts";
import { reachAt } from "./reach.ts";
import { benchOf, drawnSection, pieceAt } from "./testing/benches.ts";
import { hollow, rebate, round, shelfOf, WHOLE_SHELF } from "./testing/shelves.ts";

const BULGE_90 = Math.tan(Math.PI / 8);
const WITHIN_MM = 0.1;

/** Half a circle of 10 mm radius standing on a floor at 10 mm, crown level with the face. */
const HALF_ROUND = drawnSection(40, 20, [
  [0, 0],
  [40, 0],
  [40, 10],
  [30, 10, BULGE_90],
  [20, 20, BULGE_90],
  [10, 10],
  [0, 10],
]);

/** A slot 3 mm wide and 5 mm deep with upright walls. */
const NARROW_SLOT = drawnSection(40, 20, [
  [0, 0],
  [40, 0],
  [40, 20],
  [21.5, 20],
  [21.5, 15],
  [18.5, 15],
  [18.5, 20],
  [0, 20],
]);

/** A groove 10 mm wide at its mouth and 20 mm at its floor. */
const DOVETAILED = drawnSection(40, 20, [
  [0, 0],
  [40, 0],
  [40, 20],
  [25, 20],
  [30, 10],
  [10, 10],
  [15, 20],
  [0, 20],
]);

describe("places that a plane can touch", () => {
  test.each([0.05, 0.5, 0.95])("every place of a half-round under its own hollow (%d along)", (t) => {
    const bench = benchOf(HALF_ROUND, shelfOf(hollow(10)));
    for (const piece of bench.worked.filter((worked) => worked.curve)) {
      const reach = reachAt(bench, piece, t, WITHIN_MM);
      expect(reach.reached).toBe(true);
      expect(reach.overcutMm).toBe(0);
      expect(reach.tool?.plane.id).toBe("hollow-10-10");
    }
  });

  test("a slot's floor under a plane that fits into it", () => {
    const bench = benchOf(NARROW_SLOT, shelfOf(rebate(3)));
    expect(reachAt(bench, pieceAt(bench, 20, 15), 0.5, WITHIN_MM).reached).toBe(true);
  });
});

test("touching is not lying on: a larger round dips a corner into a flute, and yet it is no way to cut it", () => {
  const flute = drawnSection(40, 20, [
    [0, 0],
    [40, 0],
    [40, 20],
    [25, 20, -Math.tan(Math.PI / 12)],
    [15, 20],
    [0, 20],
  ]);
  const bench = benchOf(flute, shelfOf(round(20)));
  const piece = pieceAt(bench, 20, 20 - (10 - Math.sqrt(75)));
  // The corner of a 60° sole leaves 60° between sole and side; the flute's tangents open 120° and more.
  expect(reachAt(bench, piece, 0.5, WITHIN_MM).reached).toBe(true);
  expect(curveCovers(bench, piece)).toEqual([]);
});

describe("places that no plane can touch", () => {
  test("the floor of a slot narrower than the plane: the plane is named, and where it strikes", () => {
    const bench = benchOf(NARROW_SLOT, shelfOf(rebate(6)));
    const reach = reachAt(bench, pieceAt(bench, 20, 15), 0.5, WITHIN_MM);
    expect(reach.reached).toBe(false);
    expect(reach.tool?.plane.id).toBe("rebate-6");
    expect(reach.overcutMm).toBeGreaterThan(0);
    // Upright it is stopped by the face, 5 mm over the floor: leaning may come nearer, never be worse.
    expect(reach.overcutMm).toBeLessThanOrEqual(5 - WITHIN_MM + 1e-6);
    expect(reach.meets && nearestOnRing(bench.planned, reach.meets).distanceMm).toBeLessThan(0.01);
  });

  test("the corners of a groove wider at its floor than at its mouth, with any plane of the whole shelf", () => {
    const bench = benchOf(DOVETAILED, WHOLE_SHELF);
    const floor = pieceAt(bench, 20, 10);
    expect(reachAt(bench, floor, 0.5, WITHIN_MM).reached).toBe(true);
    expect(reachAt(bench, floor, 0.005, WITHIN_MM).reached).toBe(false);
    expect(reachAt(bench, floor, 0.995, WITHIN_MM).reached).toBe(false);
  });
});
