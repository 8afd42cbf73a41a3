import { describe, expect, test } from "vitest";
import { floorsRunOn } from "./floors-run-on.ts";
import { orderFlats } from "./order.ts";
import { withFloorsRunOn } from "./run-on.ts";
import { wantedCuts } from "./strategy.ts";
import { benchOf, drawnSection, pieceAt } from "./testing/benches.ts";
import { rebate, shelfOf } from "./testing/shelves.ts";

/** Falling to the right in steps of 6 mm, each 8 mm wide: a floor may run on over all that lie lower. */
const STAIRS = drawnSection(40, 30, [
  [0, 0],
  [40, 0],
  [40, 12],
  [32, 12],
  [32, 18],
  [24, 18],
  [24, 24],
  [16, 24],
  [16, 30],
  [0, 30],
]);

/** The same floor with a bead's height of wood beyond it: nothing may be run on. */
const SUNK = drawnSection(40, 30, [
  [0, 0],
  [40, 0],
  [40, 30],
  [24, 30],
  [24, 24],
  [16, 24],
  [16, 30],
  [0, 30],
]);

const SHELF = shelfOf(rebate(8), rebate(20));

describe("a floor run on", () => {
  test("goes out of the wood over what lies lower beside it, its wall where the floor ends", () => {
    const bench = benchOf(STAIRS, SHELF);
    const drafts = floorsRunOn(bench, pieceAt(bench, 20, 24));
    expect(drafts.length).toBeGreaterThan(0);
    for (const { runs, tool } of drafts) {
      const lefts = runs.map(([[x]]) => x + tool.sole.leftMm);
      const rights = runs.map(([[x]]) => x + tool.sole.rightMm);
      expect(Math.min(...lefts)).toBeCloseTo(16, 6);
      expect(Math.max(...rights)).toBeGreaterThanOrEqual(40);
      expect(runs.every(([[, y]]) => Math.abs(y - 24) < 1e-6)).toBe(true);
    }
  });

  test("takes nothing of the section", () => {
    const bench = benchOf(STAIRS, SHELF);
    const drafts = floorsRunOn(bench, pieceAt(bench, 28, 18));
    const made = orderFlats(bench, bench.startRegion, [{ ways: drafts }], "guided");
    expect(made.refused).toEqual([]);
    expect(made.cuts).toHaveLength(1);
  });

  test("is none where wood has to stand beyond", () => {
    const bench = benchOf(SUNK, SHELF);
    expect(floorsRunOn(bench, pieceAt(bench, 20, 24))).toEqual([]);
  });
});

describe("which floors are run on", () => {
  test("none where it spares no setting: the very same flats", () => {
    const bench = benchOf(STAIRS, SHELF);
    const { flats } = wantedCuts(bench);
    expect(withFloorsRunOn(bench, bench.startRegion, flats)).toBe(flats);
  });
});
