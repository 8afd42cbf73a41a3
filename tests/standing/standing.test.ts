import { expect, test } from "vitest";
import { candidatesOf } from "../../packages/core/src/planning/order-candidates.ts";
import { proveOrder } from "../../packages/core/src/planning/prove-order.ts";
import { smallPlans } from "./small-plans.ts";
import { STILL_BEATEN } from "./still-beaten.ts";

/** More cuts to try than this, and the plan stays `best found`. */
const LIMITS = { mostTries: 3000, mostStates: 100_000 };

const plans = smallPlans();

test("every plan named as beaten is one of the small ones", () => {
  const names = plans.map(({ name }) => name);
  expect(Object.keys(STILL_BEATEN).filter((name) => !names.includes(name))).toEqual([]);
});

for (const { name, found } of plans) {
  const isLeast = () => {
    const { cost, givenCost } = proveOrder(found, candidatesOf(found), LIMITS);
    expect(givenCost - cost).toBeLessThan(1e-6);
  };
  const title = `${name}: no order over the cuts that were found costs less`;
  if (name in STILL_BEATEN) test.fails(`${title} (${STILL_BEATEN[name]})`, isLeast);
  else test(title, isLeast);
}
