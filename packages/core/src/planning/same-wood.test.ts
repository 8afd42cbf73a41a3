import { describe, expect, test } from "vitest";
import { type Region, regionOfPolygon } from "../curve/index.ts";
import { planeDraft, withRuns } from "./draft-cut.ts";
import { sameWood } from "./same-wood.ts";
import { keepSlots, type Slot, slotsIn } from "./slots.ts";
import { benchOf, draftAt, drawnSection } from "./testing/benches.ts";
import { rebate, round, shelfOf } from "./testing/shelves.ts";
import { tryCut } from "./try-cut.ts";

const PLATE = drawnSection(40, 20, [
  [0, 0],
  [40, 0],
  [40, 0.5],
  [0, 0.5],
]);

const newBench = () => benchOf(PLATE, shelfOf(rebate(6), rebate(12), round(6)));

/** A board of its own, 40 × 20 mm, with its right top corner off by this much. */
function board(offMm: number): Region {
  return regionOfPolygon([
    { x: 0, y: 0 },
    { x: 40, y: 0 },
    { x: 40, y: 20 - offMm },
    { x: 0, y: 20 },
  ]);
}

const GROOVE: Slot = { tiltDeg: 0, leftMm: 10, rightMm: 16, floorMm: 15, depthMm: 5 };

function withGrooves(wood: Region, grooves: readonly Slot[]): Region {
  keepSlots(board(0), wood, grooves);
  return wood;
}

describe("wood that was met before", () => {
  test("is the very same, whichever way it came about", () => {
    const bench = newBench();
    const first = board(1);
    expect(sameWood(bench, first)).toBe(first);
    expect(sameWood(bench, board(1))).toBe(first);
  });

  test("two steps cut in either order leave the very same wood", () => {
    const bench = newBench();
    const left = draftAt(bench, "rebate-6", [3, 15, 0]);
    const right = draftAt(bench, "rebate-12", [34, 14, 0]);
    const start = bench.stickRegion;
    const leftFirst = tryCut(bench, tryCut(bench, start, left).after, right).after;
    const rightFirst = tryCut(bench, tryCut(bench, start, right).after, left).after;
    expect(leftFirst).toBe(rightFirst);
    expect(leftFirst).not.toBe(tryCut(bench, start, left).after);
  });

  test("is another where a corner lies otherwise by a hair, on another bench, or by other grooves", () => {
    const bench = newBench();
    const first = sameWood(bench, board(1));
    const other = board(1 + 2 ** -20);
    expect(sameWood(bench, other)).toBe(other);
    const elsewhere = board(1);
    expect(sameWood(newBench(), elsewhere)).toBe(elsewhere);
    const grooved = withGrooves(board(1), [GROOVE]);
    expect(sameWood(bench, grooved)).toBe(grooved);
    expect(sameWood(bench, withGrooves(board(1), [GROOVE]))).toBe(grooved);
    expect(sameWood(bench, withGrooves(board(1), [{ ...GROOVE, depthMm: 4 }]))).not.toBe(grooved);
    expect(slotsIn(first)).toEqual([]);
  });

  test("is let go once thousands of others were met since", () => {
    const bench = newBench();
    const first = sameWood(bench, board(1));
    for (let i = 0; i < 3_000; i++) sameWood(bench, board(2 + i / 1000));
    expect(sameWood(bench, board(1))).toBe(first);
    for (let i = 0; i < 5_000; i++) sameWood(bench, board(6 + i / 1000));
    expect(sameWood(bench, board(1))).not.toBe(first);
  });
});

describe("a draft that came to mind before", () => {
  test("is the very same; another purpose, order of settings or place makes it another", () => {
    const bench = newBench();
    const draft = draftAt(bench, "rebate-6", [30, 15, 0]);
    expect(planeDraft(bench, { ...draft, runs: [[[30, 15, 0]]] })).toBe(draft);
    const helping = planeDraft(bench, { ...draft, purpose: draft.purpose === "waste" ? "shape" : "waste" });
    expect(helping).not.toBe(draft);
    expect(helping.cut).toBe(draft.cut);
    expect(planeDraft(bench, { ...draft, runs: [[[30, 15.000001, 0]]] })).not.toBe(draft);
  });

  test("two settings in the other order are drawn once, with the sweep they had", () => {
    const bench = newBench();
    const one = draftAt(bench, "rebate-6", [30, 15, 0]);
    const two = planeDraft(bench, { ...one, runs: [[[30, 15, 0]], [[20, 15, 0]]] });
    const turned = withRuns(bench, two, [...two.runs].reverse());
    expect(turned.runs).toEqual([...two.runs].reverse());
    expect(turned.cut.sweep).toBe(two.cut.sweep);
    expect(withRuns(bench, two, [...two.runs].reverse())).toBe(turned);
    expect(withRuns(bench, turned, two.runs)).toBe(two);
  });
});
