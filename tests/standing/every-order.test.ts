import { expect, test } from "vitest";
import { candidatesOf } from "../../packages/core/src/planning/order-candidates.ts";
import { wholeCost } from "../../packages/core/src/planning/order-cost.ts";
import { proveOrder } from "../../packages/core/src/planning/prove-order.ts";
import { leastOfEveryOrder } from "./every-order.ts";
import { smallPlans } from "./small-plans.ts";

/** As many candidates as every order can be tried over in a second or two. */
const MOST_CANDIDATES = 11;
const MANY = { mostTries: 100_000, mostStates: 1_000_000 };

const few = smallPlans().flatMap(({ name, found }) => {
  const candidates = candidatesOf(found);
  const hasSaw = found.sequence.cuts.some(({ draft }) => draft.kind === "saw");
  return candidates.length <= MOST_CANDIDATES && !hasSaw ? [{ name, found, candidates }] : [];
});

test("there are such sections", () => {
  expect(few.length).toBeGreaterThanOrEqual(8);
});

test.each(few)("$name: the proof gives the cost that every order gives", ({ found, candidates }) => {
  const proven = proveOrder(found, candidates, MANY);
  expect(proven.isLeast).toBe(true);
  expect(proven.cost).toBeCloseTo(leastOfEveryOrder(found, candidates), 6);
});

test.each(few)("$name: the order it gives is allowed, costs what it says, and leaves no more", (one) => {
  const { bench, sequence } = one.found;
  const proven = proveOrder(one.found, one.candidates, MANY);
  expect(proven.sequence.allowed).toBe(true);
  expect(wholeCost(bench, proven.sequence.cuts)).toBeCloseTo(proven.cost, 6);
  expect(proven.cost).toBeLessThanOrEqual(proven.givenCost);
  expect(proven.givenCost).toBe(wholeCost(bench, sequence.cuts));
});

test("with nothing allowed to be tried the order given stands, and nothing is claimed", () => {
  const one = few[0];
  if (!one) throw new Error("no section");
  const proven = proveOrder(one.found, one.candidates, { mostTries: 0, mostStates: 0 });
  expect(proven.sequence).toBe(one.found.sequence);
  expect(proven.isLeast).toBe(false);
});

test("the same question is answered the same twice", () => {
  for (const { found, candidates } of few.slice(0, 3)) {
    const keys = () => proveOrder(found, candidates, MANY).sequence.cuts.map(({ draft }) => draft.key);
    expect(keys()).toEqual(keys());
  }
});
