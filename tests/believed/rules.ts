/**
 * What no woodworker believes in a plan, asked of the plan file alone: nothing here comes from the program's packages.
 * Common practice, no source. README.md tells each rule.
 */
import { cutsOnBench, type SaidPlan } from "./bench.ts";
import { finsLeft } from "./fins.ts";
import { droppedIn, fencesOutOfReach, leansFree } from "./guides.ts";
import { looseIn } from "./loose.ts";
import { posesUnsaid } from "./poses.ts";
import { overlappingSlots, plungedSlots } from "./slots.ts";
import { startsOnBareFlat } from "./starts.ts";

export const RULES = [
  "overlapping grooves",
  "plunged slot",
  "poses without a reason",
  "bare flat",
  "dropped into a face",
  "fence out of reach",
  "free lean",
  "loose wood",
  "standing fin",
] as const;

export type BelievedRule = (typeof RULES)[number];

export interface Unbelieved {
  readonly rule: BelievedRule;
  readonly cut: number;
  readonly says: string;
}

/** Everything in a plan that is not believed; nothing when all of it is. */
export function unbelievedIn(plan: SaidPlan): readonly Unbelieved[] {
  const cuts = cutsOnBench(plan);
  const found: readonly (readonly [BelievedRule, readonly Said[]])[] = [
    ["overlapping grooves", overlappingSlots(cuts)],
    ["plunged slot", plungedSlots(cuts)],
    ["poses without a reason", posesUnsaid(plan)],
    ["bare flat", startsOnBareFlat(cuts)],
    ["dropped into a face", droppedIn(plan, cuts)],
    ["fence out of reach", fencesOutOfReach(plan, cuts)],
    ["free lean", leansFree(cuts)],
    ["loose wood", looseIn(plan)],
    ["standing fin", finsLeft(plan, cuts)],
  ];
  return found.flatMap(([rule, all]) => all.map((said) => ({ rule, ...said })));
}

export interface Said {
  readonly cut: number;
  readonly says: string;
}
