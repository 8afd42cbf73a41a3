/** The order of a way's cuts once it is found: few enough of them are held against every other order. */
import { candidatesOf } from "./order-candidates.ts";
import { wholeCost } from "./order-cost.ts";
import { proveOrder } from "./prove-order.ts";
import { regrouped } from "./regrouped.ts";
import type { Found } from "./search.ts";
import { withoutIdleRuns } from "./sequence.ts";

/** Orders of more cuts than this are not held against all others: there are too many. */
const MOST_CUTS = 12;

/** Work that may go into it before the best so far is taken: cuts tried on wood, and states looked at. */
const LIMITS = { mostTries: 1500, mostStates: 40_000 } as const;

/** The way with the cheapest order found, `isLeast` set where none over the cuts that were thought of costs less. */
export function withLeastOrder(found: Found): Found {
  const grouped = regrouped(found.bench, found.bench.startRegion, found.sequence);
  return leastOf({ ...found, sequence: grouped });
}

function leastOf(found: Found): Found {
  const planed = found.sequence.cuts.filter(({ draft }) => draft.kind === "plane");
  if (planed.length > MOST_CUTS || !found.sequence.allowed) return found;
  const proven = proveOrder(found, candidatesOf(found), LIMITS);
  const sequence = withoutIdleRuns(found.bench, found.bench.startRegion, proven.sequence);
  const saved = wholeCost(found.bench, found.sequence.cuts) - wholeCost(found.bench, sequence.cuts);
  return { ...found, sequence, cost: found.cost - saved, isLeast: proven.isLeast };
}
