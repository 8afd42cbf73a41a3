/** The order of a way's cuts once it is found: few enough of them are held against every other order. */
import { SAME_SCORE } from "../measure/index.ts";
import { withWasteMerged } from "./merged.ts";
import { candidatesOf } from "./order-candidates.ts";
import { wholeCost } from "./order-cost.ts";
import { proveOrder } from "./prove-order.ts";
import { regrouped } from "./regrouped.ts";
import type { Found } from "./search.ts";
import { withoutIdleRuns } from "./sequence.ts";
import { withWasteMoved } from "./waste-moved.ts";

/** Orders of more cuts than this are not held against all others: there are too many. */
const MOST_CUTS = 12;

/** Up to this many cuts the search is let go on until it has most often proven the least. */
const FEW_CUTS = 9;

/** Work that may go into it before the best so far is taken: cuts tried on wood, and states looked at. */
const LIMITS = {
  few: { mostTries: 4500, mostStates: 100_000 },
  many: { mostTries: 1800, mostStates: 40_000 },
} as const;

/** The way with the cheapest order found, `isLeast` set where none over the cuts that were thought of costs less. */
export function withLeastOrder(found: Found): Found {
  const grouped = regrouped(found.bench, found.bench.startRegion, found.sequence);
  // Two cuts that one can stand in for are made one before orders are compared: fewer cuts have far fewer orders.
  const merged = withWasteMerged(found.bench, found.bench.startRegion, grouped);
  const fewer = wholeCost(found.bench, grouped.cuts) - wholeCost(found.bench, merged.cuts);
  const least = leastOf({ ...found, sequence: merged, cost: found.cost - fewer });
  const sequence = withWasteMoved(least.bench, least.sequence.cuts[0]?.before ?? [], least.sequence);
  if (sequence === least.sequence) return least;
  const saved = wholeCost(least.bench, least.sequence.cuts) - wholeCost(least.bench, sequence.cuts);
  return leastOf({ ...least, sequence, cost: least.cost - saved, isLeast: false });
}

/** A better order brings cuts to mind that the first did not: it is held against others once more. */
const MOST_ROUNDS = 2;

function leastOf(found: Found): Found {
  const planed = found.sequence.cuts.filter(({ draft }) => draft.kind === "plane");
  if (planed.length > MOST_CUTS || !found.sequence.allowed || !found.bench.effort.isThorough) return found;
  const limits = planed.length <= FEW_CUTS ? LIMITS.few : LIMITS.many;
  let best = found;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const { sequence: proven, isLeast } = proveOrder(best, candidatesOf(best), limits);
    const sequence = withoutIdleRuns(best.bench, best.bench.startRegion, proven);
    const saved = wholeCost(best.bench, best.sequence.cuts) - wholeCost(best.bench, sequence.cuts);
    best = { ...best, sequence, cost: best.cost - saved, isLeast };
    if (saved <= SAME_SCORE) break;
  }
  return best;
}
