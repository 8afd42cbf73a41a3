import { describe, expect, test } from "vitest";
import { regionAreaMm2 } from "../curve/index.ts";
import type { PlaneDraft } from "./draft-cut.ts";
import { openAfter, witnessesOf } from "./order-bound.ts";
import { candidatesOf } from "./order-candidates.ts";
import { stepCost, wholeCost } from "./order-cost.ts";
import { removalsOf } from "./order-removals.ts";
import { ORDER_WEIGHTS } from "./order-weights.ts";
import { proveOrder } from "./prove-order.ts";
import { makeAll } from "./sequence.ts";
import { benchOf, draftAt, drawnSection } from "./testing/benches.ts";
import { rebate, shelfOf } from "./testing/shelves.ts";

/** From the left: a step of 5 × 2 mm; on the right one of 20 × 3 mm, and in it one of 10 × 3 mm deeper. */
const THREE_STEPS = drawnSection(60, 20, [
  [0, 0],
  [60, 0],
  [60, 14],
  [50, 14],
  [50, 17],
  [40, 17],
  [40, 20],
  [5, 20],
  [5, 18],
  [0, 18],
]);

// What strokes cost is looked at by itself (stroke-cost.test.ts).
const bench = {
  ...benchOf(THREE_STEPS, shelfOf(rebate(12), rebate(30))),
  weights: { ...ORDER_WEIGHTS, perPass: 0 },
};
const left = draftAt(bench, "rebate-12", [-1, 18, 0]);
const wide = draftAt(bench, "rebate-30", [55, 17, 0]);
const deep = draftAt(bench, "rebate-12", [56, 14, 0]);
const MANY = { mostTries: 1000, mostStates: 1000 };

const given = (...drafts: readonly PlaneDraft[]) => ({
  bench,
  sequence: makeAll(bench, bench.stickRegion, drafts),
});

describe("the order that costs least", () => {
  test("one plane twice in a row saves a change: 3 settings and 1 change, not 2", () => {
    const proven = proveOrder(given(left, wide, deep), [left, wide, deep], MANY);
    // The plane change weighs 0.3 of a setting; all planes stand upright and nothing is curved.
    expect(proven.givenCost).toBeCloseTo(3.6, 9);
    expect(proven.cost).toBeCloseTo(3.3, 9);
    expect(proven.isLeast).toBe(true);
    expect(proven.sequence.allowed).toBe(true);
    const planes = proven.sequence.cuts.map(({ draft }) =>
      draft.kind === "plane" ? draft.tool.plane.id : "",
    );
    expect([
      ["rebate-12", "rebate-12", "rebate-30"],
      ["rebate-30", "rebate-12", "rebate-12"],
    ]).toContainEqual(planes);
  });

  test("an order that is the least is given back as it is", () => {
    const best = given(wide, left, deep);
    const proven = proveOrder(best, [left, wide, deep], MANY);
    expect(proven.sequence).toBe(best.sequence);
    expect(proven.isLeast).toBe(true);
  });

  test("a cut whose place another clears with it is left out", () => {
    // Waste off the deep step first, a millimetre above its floor: the deep cut takes that too.
    const waste = draftAt(bench, "rebate-12", [56, 15, 0]);
    const proven = proveOrder(given(waste, deep, left, wide), [waste, deep, left, wide], MANY);
    expect(proven.sequence.cuts).toHaveLength(3);
    expect(proven.cost).toBeCloseTo(3.3, 9);
  });

  test("too few tries leave the question open and the given order standing", () => {
    const one = given(left, wide, deep);
    const proven = proveOrder(one, [left, wide, deep], { mostTries: 2, mostStates: 1000 });
    expect(proven).toMatchObject({ isLeast: false, cost: proven.givenCost });
    expect(proven.sequence).toBe(one.sequence);
    expect(proven.tries).toBeLessThanOrEqual(2 + 3);
  });

  test("the cuts of the sequence and those thought of for each flat are candidates, each once", () => {
    const one = given(left, wide, deep);
    const keys = candidatesOf(one).map(({ key }) => key);
    for (const { key } of [left, wide, deep]) expect(keys).toContain(key);
    expect(new Set(keys).size).toBe(keys.length);
  });
});

test("the whole cost is the sum of what each cut adds", () => {
  const { sequence } = given(left, wide, deep);
  const steps = sequence.cuts.map((cut, i) => stepCost(bench, cut, sequence.cuts[i - 1], -1));
  expect(steps).toEqual([1, 1.3, 1.3]);
  expect(wholeCost(bench, sequence.cuts)).toBeCloseTo(3.6, 9);
});

describe("what candidates remove", () => {
  test("planes of two widths that run the same step remove the same", () => {
    // Its right end hangs over the edge either way.
    const wider = draftAt(bench, "rebate-30", [65, 14, 0]);
    const { bits, makers } = removalsOf(bench.stickRegion, [deep, left, wider]);
    expect(bits).toEqual([1n, 2n, 1n]);
    expect(makers.map(({ key }) => key)).toEqual([deep.key, left.key]);
  });

  test("only what lies beside a sole matters to it", () => {
    const { near } = removalsOf(bench.stickRegion, [left, wide, deep]);
    expect(near).toEqual([0b001n, 0b110n, 0b110n]);
  });
});

test("each place that must come clear is counted once for the cuts that clear it", () => {
  const candidates = [left, wide, deep];
  const { sequence } = given(...candidates);
  const { bits } = removalsOf(bench.stickRegion, candidates);
  const witnesses = witnessesOf(bench, bench.stickRegion, sequence.wood, candidates, bits, [1, 1, 1]);
  expect(regionAreaMm2(sequence.wood)).toBeCloseTo(60 * 20 - 10 - 60 - 30, 6);
  // The left step's floor and the deep one's are each cleared by one cut alone, the middle one's by the wide cut.
  const open = openAfter(witnesses, 0n);
  expect(open?.cutsCost).toBe(3);
  expect(open?.planes.map((planes) => [...planes].sort())).toEqual([["rebate-12"], ["rebate-30"]]);
  expect(openAfter(witnesses, 0b001n)?.cutsCost).toBe(2);
  expect(openAfter(witnesses, 0b111n)).toBeNull();
});
