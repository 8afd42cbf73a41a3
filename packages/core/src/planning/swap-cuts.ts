/**
 * Two cuts of a found order that a maker wants the other way round. The whole order is made again so, cut by cut, and
 * stands only where no rule forbids any of it: what a set of cuts takes is the same in any order, what holds the planes
 * and what stands beside them is not.
 */
import { type CuttingLimits, type Plan, recutPlan } from "../cutting/index.ts";
import { bug, cataloguedTrouble, fine, type Outcome, refused, type Trouble } from "../measure/index.ts";
import { type Draft, isCurved } from "./draft-cut.ts";
import { isAllowed } from "./prove-order.ts";
import type { CutSwap } from "./request.ts";
import type { Found } from "./search.ts";
import { leftMm2, makeAll, SAME_LEFT_MM2 } from "./sequence.ts";
import { LEAST_TAKE_MM2, type TriedCut } from "./try-cut.ts";

export interface Swapped {
  readonly found: Found;
  /** Why swaps were left out, each with its reason; the order is then as if they had not been asked for. */
  readonly troubles: readonly Trouble[];
}

/** The order with each swap made after the other; one that does not hold is left out and told. */
export function withSwaps(found: Found, swaps: readonly CutSwap[]): Swapped {
  let standing = found;
  const troubles: Trouble[] = [];
  for (const swap of swaps) {
    const tried = swapCuts(standing, swap);
    if (tried.ok) standing = tried.value;
    else troubles.push(tried.trouble);
  }
  return { found: standing, troubles };
}

/** The order with two of its cuts swapped. Troubles: `swap-other-plan`, `swap-refused` with the cut and the rule. */
export function swapCuts(found: Found, swap: CutSwap): Outcome<Found> {
  const { cuts } = found.sequence;
  const first = cuts[swap.first - 1];
  const second = cuts[swap.second - 1];
  const isOfThis =
    first !== undefined &&
    second !== undefined &&
    swap.first !== swap.second &&
    cuts.length === swap.cuts &&
    planeOf(first.draft) === swap.planes[0] &&
    planeOf(second.draft) === swap.planes[1];
  if (!isOfThis) {
    return refused(
      cataloguedTrouble("swap-other-plan", "way.swaps", { first: swap.first, second: swap.second }),
    );
  }
  const order = cuts.map((cut) => (cut === first ? second : cut === second ? first : cut));
  const start = cuts[0]?.before ?? bug("an order without cuts", {});
  const made = makeAll(
    found.bench,
    start,
    order.map(({ draft }) => draft),
  );
  for (const [index, cut] of made.cuts.entries()) {
    const stop = whatForbids(found, cut, order[index] as TriedCut);
    if (stop === null) continue;
    // Told by the number that the maker knows the cut by.
    const number = cuts.indexOf(order[index] as TriedCut) + 1;
    const facts = { first: swap.first, second: swap.second, cut: number, plane: nameOf(cut.draft), ...stop };
    return refused(cataloguedTrouble("swap-refused", "way.swaps", facts));
  }
  if (leftMm2(found.bench, made.wood) > leftMm2(found.bench, found.sequence.wood) + SAME_LEFT_MM2) {
    const facts = { first: swap.first, second: swap.second, cut: swap.first, plane: nameOf(first.draft) };
    return refused(
      cataloguedTrouble("swap-refused", "way.swaps", {
        ...facts,
        rule: "wood left",
        standsMm: 0,
        clearsMm: 0,
      }),
    );
  }
  return fine({ ...found, sequence: made, isLeast: false });
}

/** The plan's own proof of a swapped order: what was found on coarse arcs has to hold on fine ones too. */
export function provesSwapped(plan: Plan, limits: CuttingLimits | undefined): boolean {
  return recutPlan(plan, limits).holds;
}

interface Stop {
  readonly rule: string;
  /** What stands beside the plane, and what it clears; 0 where that is not the reason. */
  readonly standsMm: number;
  readonly clearsMm: number;
}

/** Null where the cut may be made in its new place. `before` is the same cut in its old place. */
function whatForbids({ bench }: Found, cut: TriedCut, before: TriedCut): Stop | null {
  const [refusal] = cut.refusals;
  if (refusal !== undefined) {
    const { rule, foundMm = 0, limitMm = 0 } = refusal;
    return { rule, standsMm: rule === "wall" ? foundMm : 0, clearsMm: rule === "wall" ? limitMm : 0 };
  }
  const forbids = (rule: string): Stop => ({ rule, standsMm: 0, clearsMm: 0 });
  if (cut.takesMm2 < LEAST_TAKE_MM2) return forbids("nothing to cut");
  const isHeldLess =
    cut.draft.kind === "plane" && isCurved(cut.draft) && cut.seat === null && before.seat !== null;
  if (isHeldLess) return forbids("seat");
  return isAllowed(bench, cut) || !isAllowed(bench, before) ? null : forbids("guide");
}

function planeOf(draft: Draft): string {
  return draft.kind === "saw" ? "saw" : draft.tool.plane.id;
}

function nameOf(draft: Draft): string {
  return draft.kind === "saw" ? "saw" : draft.tool.plane.name;
}
