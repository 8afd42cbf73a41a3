import { expect, test } from "vitest";
import { GOOD_HAND } from "./accuracy.ts";
import { marksFor } from "./marks.ts";
import { COMMON_WORKING } from "./minutes.ts";
import { planCuts } from "./plan-cuts.ts";
import { runningLine } from "./running-line.ts";
import { makeAll } from "./sequence.ts";
import { benchOf, draftAt, drawnSection } from "./testing/benches.ts";
import { rebate, shelfOf, snipeBill } from "./testing/shelves.ts";
import { tryCut } from "./try-cut.ts";

const BENCH = benchOf(
  drawnSection(120, 30, [
    [0, 0],
    [120, 0],
    [120, 5],
    [0, 5],
  ]),
  shelfOf(rebate(12), snipeBill("left")),
);

test("of a cut's lines the first that lies under the sole or at its end is run along", () => {
  // The sole stands from 44 to 56.
  const draft = draftAt(BENCH, "rebate-12", [50, 24, 0]);
  const at = (...xs: readonly number[]) =>
    runningLine(
      draft,
      xs.map((x) => ({ x, y: 30 })),
    );
  expect(at(40, 56.04, 50)).toBe(1);
  expect(at(43.96, 56)).toBe(0);
  expect(at(43.9, 56.1)).toBe(-1);
  expect(at()).toBe(-1);
});

test("under a leaning sole a line is looked for along the plane's own axis", () => {
  const draft = draftAt(BENCH, "rebate-12", [50, 24, 45]);
  // Six across along the sole, and two up the axis from there.
  const along = Math.SQRT1_2;
  expect(runningLine(draft, [{ x: 50 + 6 * along - 2 * along, y: 24 + 6 * along + 2 * along }])).toBe(0);
  expect(runningLine(draft, [{ x: 50 + 7 * along, y: 24 + 7 * along }])).toBe(-1);
});

test("a beak is laid into the line it was scribed for", () => {
  expect(runningLine(draftAt(BENCH, "snipe-left", [50, 28, 0]), [{ x: 70, y: 30 }])).toBe(0);
});

test("a plane set down so lightly in the middle of a face that no line is told for it is charged for its batten", () => {
  const light = draftAt(BENCH, "rebate-12", [50, 29.8, 0]);
  expect(tryCut(BENCH, BENCH.stickRegion, light).guide?.kind).toBe("batten");
});

test("a wall of which several cuts left too little each to run against is run against all the same, and told so", () => {
  const down = [29.8, 29.6, 29.4, 29].map((y) => draftAt(BENCH, "rebate-12", [50, y, 0]));
  const { cuts } = makeAll(BENCH, BENCH.startRegion, down);
  expect(cuts.map(({ guide }) => guide?.kind)).toEqual(["batten", "batten", "wall", "wall"]);
  const planned = planCuts(BENCH, cuts, marksFor(BENCH, cuts, GOOD_HAND), COMMON_WORKING, { unit: "mm" });
  const told = planned.cuts.map(({ runsAgainst }) => runsAgainst);
  expect(told).toEqual(["batten", "batten", "standing wall", "standing wall"]);
  expect(planned.cuts[2]?.says).toContain("against the standing wall");
});
