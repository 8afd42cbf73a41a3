import { expect, test } from "vitest";
import { regionOf, ringFromVertices } from "../curve/index.ts";
import { FLATTEN_MM } from "../measure/index.ts";
import { passesOf } from "./passes.ts";
import { benchOf, draftAt, drawnSection } from "./testing/benches.ts";
import { hollow, rebate, round, shelfOf } from "./testing/shelves.ts";

const bench = benchOf(
  drawnSection(40, 20, [
    [0, 0],
    [40, 0],
    [40, 5],
    [0, 5],
  ]),
  shelfOf(rebate(12), hollow(12), round(12)),
);

test("6 mm with a heavy iron is 20 strokes of 0.3 mm, and one fine one", () => {
  const draft = draftAt(bench, "rebate-12", [36, 14, 0]);
  const passes = passesOf(bench, bench.stickRegion, draft, 60);
  expect(passes.depthMm).toBeCloseTo(6, 9);
  expect(passes.shavingMm).toBe(0.3);
  expect(passes.passes).toBe(21);
});

test("a strip narrower than the sole's places are apart is not passed over", () => {
  // 1.8 mm of 32 stand 7.2 mm high at the sole's right end: 24 strokes of 0.3 mm.
  const wide = benchOf(
    drawnSection(40, 20, [
      [0, 0],
      [40, 0],
      [40, 12.8],
      [0, 12.8],
    ]),
    shelfOf(rebate(32)),
  );
  const before = regionOf(
    ringFromVertices([
      [0, 0],
      [40, 0],
      [40, 20],
      [38.2, 20],
      [38.2, 12.8],
      [0, 12.8],
    ]),
    FLATTEN_MM,
  );
  const passes = passesOf(
    wide,
    before,
    draftAt(wide, "rebate-32", [24, 12.8, 0], { purpose: "waste" }),
    1.8 * 7.2,
  );
  expect(passes.depthMm).toBeCloseTo(7.2, 6);
  expect(passes.passes).toBe(24);
});

test("a curved plane is set ordinary: 0.15 mm", () => {
  // Sunk so that its middle stands 1.5 mm deep: 10 shavings, and a fine one.
  const draft = draftAt(bench, "round-12-12", [20, 18.5, 0], { work: "curve" });
  const passes = passesOf(bench, bench.stickRegion, draft, 12);
  expect(passes.shavingMm).toBe(0.15);
  expect(passes.passes).toBe(11);
});

test("a flat plane in two widths takes its strokes in each", () => {
  const one = draftAt(bench, "rebate-12", [35, 17, 0]);
  const two = { ...one, runs: [...one.runs, [[24, 17, 0]] as const] };
  const strokes = (draft: typeof one, takesMm2: number) =>
    passesOf(bench, bench.stickRegion, draft, takesMm2).passes - 1;
  // 3 mm in shavings of 0.3 mm: 10, and 20. One width takes 11 × 3 mm, both take 22 × 3 mm.
  expect(strokes(one, 33)).toBe(10);
  expect(strokes(two, 66)).toBe(20);
});

// Known: the count by area has none of the slack that the count by depth has, so 36 / (0.3 × 12), which is a hair over
// 10 in the machine, is told as 11 strokes.
test("3 mm sunk into whole wood over the full width is 10 strokes of 0.3 mm", () => {
  const groove = draftAt(bench, "rebate-12", [20, 17, 0]);
  expect(passesOf(bench, bench.stickRegion, groove, 36).passes).toBe(10 + 1);
});
