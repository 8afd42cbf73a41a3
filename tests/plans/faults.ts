/** What every plan of a random section is held to, as one list of what does not hold. */
import { recutPlan } from "../../packages/core/src/cutting/index.ts";
import { KNOWN } from "../second-route/known.ts";
import type { PlanJson } from "../second-route/plan-json.ts";
import { examine } from "../second-route/recut-by-polygons.ts";

export interface Fault {
  /** Who says so: the program's own re-cut, the second route, or the list of what stays uncut. */
  readonly by: "re-cut" | "second route" | "uncut";
  readonly rule: string;
  readonly says: string;
  /** Whether it is among what the planner is known to get wrong (`tests/second-route/known.ts`). */
  readonly isKnown: boolean;
}

/** The same as known to the program's own proof. */
const KNOWN_TO_RECUT: readonly string[] = "unlisted" in KNOWN ? ["recut-unlisted"] : [];

/** All that may be said to keep a plane off a place; written down a second time on purpose. */
const UNCUT_RULES: readonly string[] = [
  "out of reach",
  "wall",
  "seat",
  "body",
  "bench",
  "loose wood",
  "bearing",
  "lean",
  "guide",
];

/**
 * Everything that does not hold in a plan's file. What no plane reaches still stands, and the second route holds all
 * that stands against the list of what is uncut, so that a place left out of it is a fault too.
 */
export function faultsOf(plan: PlanJson): readonly Fault[] {
  const recut = recutPlan(plan as never).findings.map(
    ({ code, where, facts }): Fault => ({
      by: "re-cut",
      rule: code,
      says: `${where} ${JSON.stringify(facts)}`,
      isKnown: KNOWN_TO_RECUT.includes(code),
    }),
  );
  const second = examine(plan).map(
    ({ rule, cut, says }): Fault => ({
      by: "second route",
      rule,
      says: cut === undefined ? says : `cut ${cut}: ${says}`,
      isKnown: rule in KNOWN,
    }),
  );
  return [...recut, ...second, ...uncutFaults(plan)];
}

function uncutFaults(plan: PlanJson): readonly Fault[] {
  return plan.uncut.flatMap((place) => {
    const missing = [
      ...(UNCUT_RULES.includes(place.rule) ? [] : [`no known rule: "${place.rule}"`]),
      ...(place.why === "" ? ["no reason"] : []),
      ...(place.try === "" ? ["nothing to try"] : []),
    ];
    return missing.map((says): Fault => ({ by: "uncut", rule: "named", says, isKnown: false }));
  });
}
