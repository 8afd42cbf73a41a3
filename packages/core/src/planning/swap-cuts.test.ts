import { describe, expect, test } from "vitest";
import { recutPlan } from "../cutting/index.ts";
import { sayTrouble } from "../measure/index.ts";
import { planSection } from "./plan-section.ts";
import type { CutSwap } from "./request.ts";
import type { Found } from "./search.ts";
import { makeAll } from "./sequence.ts";
import { swapCuts, withSwaps } from "./swap-cuts.ts";
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
const SHELF = shelfOf(rebate(12), rebate(30));

const bench = benchOf(THREE_STEPS, SHELF);
const LEFT = draftAt(bench, "rebate-12", [-1, 18, 0]);
const WIDE = draftAt(bench, "rebate-30", [55, 17, 0]);
const DEEP = draftAt(bench, "rebate-12", [56, 14, 0]);

function found(...drafts: readonly (typeof LEFT)[]): Found {
  const sequence = makeAll(bench, bench.stickRegion, drafts);
  return { way: "flat", bench, sequence, refused: [], cost: 0, cutsMm2Left: 0, isLeast: true };
}

function keysOf({ sequence }: Found): readonly string[] {
  return sequence.cuts.map(({ draft }) => draft.key);
}

const swapOf = (first: number, second: number, planes: readonly [string, string], cuts = 3): CutSwap => ({
  first,
  second,
  cuts,
  planes,
});

describe("two cuts that change places", () => {
  test("steps on either side of the stick do not know of each other", () => {
    const swapped = swapCuts(found(LEFT, WIDE, DEEP), swapOf(1, 2, ["rebate-12", "rebate-30"]));
    expect(swapped.ok && keysOf(swapped.value)).toEqual([WIDE.key, LEFT.key, DEEP.key]);
    expect(swapped.ok && swapped.value.isLeast).toBe(false);
  });

  test("the same is left afterwards, each cut made on the wood as it then stands", () => {
    const before = found(LEFT, WIDE, DEEP);
    const swapped = swapCuts(before, swapOf(1, 3, ["rebate-12", "rebate-12"]));
    if (!swapped.ok) throw new Error(swapped.trouble.code);
    const taken = (one: Found): number => one.sequence.cuts.reduce((sum, { takesMm2 }) => sum + takesMm2, 0);
    expect(keysOf(swapped.value)).toEqual([DEEP.key, WIDE.key, LEFT.key]);
    expect(taken(swapped.value)).toBeCloseTo(taken(before), 6);
    // The deep step now takes the wide one's wood above it too: 10 × 6 mm instead of 10 × 3.
    expect(swapped.value.sequence.cuts[0]?.takesMm2).toBeCloseTo(60, 6);
  });

  test("a cut that then finds nothing to take is no cut: refused, and told by its own number", () => {
    const inside = draftAt(bench, "rebate-12", [56, 17, 0]);
    const swapped = swapCuts(found(inside, WIDE, DEEP), swapOf(1, 2, ["rebate-12", "rebate-30"]));
    expect(swapped.ok ? null : swapped.trouble).toMatchObject({
      code: "swap-refused",
      facts: { first: 1, second: 2, cut: 1, rule: "nothing to cut" },
    });
    expect(swapped.ok ? "" : sayTrouble(swapped.trouble, { unit: "mm" }).sentence).toContain(
      "made in that order, cut 1 (12 mm rebate plane) finds nothing left to cut.",
    );
  });

  test("of another plan's cuts, of one cut with itself and of one that is not there: refused", () => {
    const order = found(LEFT, WIDE, DEEP);
    for (const swap of [
      swapOf(1, 2, ["rebate-30", "rebate-12"]),
      swapOf(1, 2, ["rebate-12", "rebate-30"], 4),
      swapOf(2, 2, ["rebate-30", "rebate-30"]),
      swapOf(1, 4, ["rebate-12", "rebate-12"]),
    ]) {
      const swapped = swapCuts(order, swap);
      expect(swapped.ok ? "" : swapped.trouble.code).toBe("swap-other-plan");
    }
  });

  test("one that does not hold is left out, those after it are made on what stands", () => {
    const order = found(LEFT, WIDE, DEEP);
    const wrong = swapOf(1, 2, ["rebate-30", "rebate-12"]);
    const right = swapOf(1, 2, ["rebate-12", "rebate-30"]);
    const { found: swapped, troubles } = withSwaps(order, [wrong, right]);
    expect(keysOf(swapped)).toEqual([WIDE.key, LEFT.key, DEEP.key]);
    expect(troubles.map(({ code }) => code)).toEqual(["swap-other-plan"]);
    expect(withSwaps(order, []).found).toBe(order);
  });
});

describe("a plan with cuts swapped", () => {
  const request = { section: THREE_STEPS, shelf: SHELF };
  const before = planSection(request);
  if (!before.ok) throw new Error(before.trouble.code);
  const plan = before.value;
  const idOf = (number: number): string => plan.cuts[number - 1]?.plane.id ?? "";

  test("holds, has its sentences for the new order, and is no longer called the least", () => {
    const last = plan.cuts.length;
    const swaps = [swapOf(1, last, [idOf(1), idOf(last)], last)];
    const after = planSection({ ...request, swaps });
    if (!after.ok) throw new Error(after.trouble.code);
    expect(after.warnings).toEqual([]);
    expect(after.value.standing).toBe("best found");
    expect(recutPlan(after.value).holds).toBe(true);
    expect(after.value.cuts[0]?.runs).toEqual(plan.cuts[last - 1]?.runs);
    expect(after.value.cuts.map(({ number }) => number)).toEqual(plan.cuts.map(({ number }) => number));
  });

  test("a swap that does not hold leaves the plan as it was, with a warning", () => {
    const after = planSection({ ...request, swaps: [swapOf(1, 2, ["nobody", "nothing"])] });
    if (!after.ok) throw new Error(after.trouble.code);
    expect(after.value).toEqual(plan);
    expect(after.warnings.map(({ code }) => code)).toEqual(["swap-other-plan"]);
  });
});
