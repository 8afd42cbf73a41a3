/** Strokes weigh where one plane does what another does in more of them. */
import { expect, test } from "vitest";
import { strokeCost } from "./stroke-cost.ts";
import { benchOf, draftAt, drawnSection, planOf } from "./testing/benches.ts";
import { plough, rebate, shelfOf } from "./testing/shelves.ts";
import { tryCut } from "./try-cut.ts";

/** A groove 9 mm wide and 3 mm deep at 8 mm, and a step 9 mm wide and 10 mm deep at the far edge. */
const grooveAndStep = drawnSection(40, 25, [
  [0, 0],
  [40, 0],
  [40, 15],
  [31, 15],
  [31, 25],
  [17, 25],
  [17, 22],
  [8, 22],
  [8, 25],
  [0, 25],
]);

test("a stroke costs a hundredth of a setting, a plough with a side open four tenths besides", () => {
  const bench = benchOf(grooveAndStep, shelfOf(plough(9), rebate(20)));
  const cost = (planeId: string, x: number, y: number) =>
    strokeCost(bench, tryCut(bench, bench.startRegion, draftAt(bench, planeId, [x, y, 0])));
  // 3 mm in shavings of 0.3 mm are 10 strokes, 10 mm are 34, and one fine one each.
  expect(cost("plough", 12.5, 22)).toBeCloseTo(0.11, 9);
  expect(cost("rebate-20", 41, 15)).toBeCloseTo(0.35, 9);
  expect(cost("plough", 35.5, 15)).toBeCloseTo(0.35 + 0.4, 9);
});

test("a step at an edge is a rebate plane's, though the plough is in the hand for the groove beside it", () => {
  const plan = planOf(grooveAndStep, shelfOf(plough(9), rebate(20)));
  expect(plan.cuts.map(({ plane }) => plane.kind).sort()).toEqual(["plough", "rebate"]);
});

test("a wide step at an edge is taken by the widest plane that clears it, in few widths", () => {
  const wide = drawnSection(60, 20, [
    [0, 0],
    [60, 0],
    [60, 14],
    [15, 14],
    [15, 20],
    [0, 20],
  ]);
  const plan = planOf(wide, shelfOf(rebate(12), rebate(32), plough(12)));
  // 45 mm: a groove beside the wall to run in, then two widths of 32 mm, the outer over the edge.
  expect(plan.cuts.map(({ plane }) => plane.id)).toEqual(["plough", "rebate-32"]);
  expect(plan.cuts[1]?.runs).toHaveLength(2);
});
