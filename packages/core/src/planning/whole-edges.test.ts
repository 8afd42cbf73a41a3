import { expect, test } from "vitest";
import { makeAll } from "./sequence.ts";
import { benchOf, draftAt, drawnSection } from "./testing/benches.ts";
import { rebate, shelfOf } from "./testing/shelves.ts";
import { withEdgesWhole } from "./whole-edges.ts";

/** Two steps along the far edge of a stick of 60 by 40 mm: 20 mm wide at 35, 8 mm wide at 20. */
const STEPS = drawnSection(60, 40, [
  [0, 0],
  [60, 0],
  [60, 20],
  [52, 20],
  [52, 35],
  [40, 35],
  [40, 40],
  [0, 40],
]);

test("a step that finds its edge cut down too far is made before it is cut down", () => {
  const bench = benchOf(STEPS, shelfOf(rebate(12), rebate(32)));
  const low = draftAt(bench, "rebate-12", [58, 20, 0], { work: "step", purpose: "shape" });
  const high = draftAt(bench, "rebate-32", [56, 35, 0], { work: "step", purpose: "shape" });
  const asGiven = makeAll(bench, bench.startRegion, [low, high]);
  expect(asGiven.cuts.map(({ guide }) => guide?.kind)).toEqual(["edge", "batten"]);
  const moved = withEdgesWhole(bench, bench.startRegion, asGiven);
  expect(moved.cuts.map(({ draft }) => draft)).toEqual([high, low]);
  expect(moved.cuts.map(({ guide }) => guide?.kind)).toEqual(["edge", "edge"]);
  // What is guided already stays as it is.
  expect(withEdgesWhole(bench, bench.startRegion, moved)).toBe(moved);
});
