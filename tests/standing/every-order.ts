/**
 * Every order over a few cuts, by the plainest means: all sets of cuts made, smallest first, each tried with every
 * cut that is left. Nothing is judged but single cuts (the planner's own `tryCut`) and whole orders (its own cost).
 */
import { difference, type Region, regionAreaMm2 } from "../../packages/core/src/curve/index.ts";
import { isFlatKind, leanDeg } from "../../packages/core/src/cutting/index.ts";
import type { PlaneDraft } from "../../packages/core/src/planning/draft-cut.ts";
import { wholeCost } from "../../packages/core/src/planning/order-cost.ts";
import type { Found } from "../../packages/core/src/planning/search.ts";
import { type TriedCut, tryCut } from "../../packages/core/src/planning/try-cut.ts";

/** A way of having made a set of cuts: the cuts in their order, and what they cost. */
interface Made {
  readonly cuts: readonly TriedCut[];
  readonly cost: number;
}

/** Wood that may be left where the given order leaves none, mm², and a take that is none: as in the planner. */
const SAME_LEFT_MM2 = 0.05;
const LEAST_TAKE_MM2 = 0.02;
const SAME_COST = 1e-6;

/**
 * The least that any order costs that takes all that the plan's takes, not dearer than the plan's itself. For
 * sequences without a saw. Sets are numbers of up to 30 bits.
 */
export function leastOfEveryOrder({ bench, sequence }: Found, candidates: readonly PlaneDraft[]): number {
  if (candidates.length > 30 || sequence.cuts.some(({ draft }) => draft.kind === "saw"))
    throw new Error("too much for every order");
  const isAsClean = (wood: Region) => regionAreaMm2(difference(wood, sequence.wood)) <= SAME_LEFT_MM2;
  const givenCost = wholeCost(bench, sequence.cuts);
  let least = givenCost;
  let layer = new Map<number, { readonly wood: Region; readonly ways: Map<string, Made> }>([
    [0, { wood: bench.startRegion, ways: new Map([["", { cuts: [], cost: 0 }]]) }],
  ]);
  while (layer.size > 0) {
    const next: typeof layer = new Map();
    for (const [set, { wood, ways }] of layer) {
      if (isAsClean(wood)) for (const { cost } of ways.values()) least = Math.min(least, cost);
      candidates.forEach((draft, k) => {
        if (set & (1 << k)) return;
        const cut = tryCut(bench, wood, draft);
        if (cut.takesMm2 < LEAST_TAKE_MM2 || !mayBeMade(cut, bench.limits.guideWallMm)) return;
        for (const { cuts } of ways.values()) {
          const longer = [...cuts, cut];
          const cost = wholeCost(bench, longer);
          if (cost > givenCost + SAME_COST) continue;
          const after = set | (1 << k);
          const entry = next.get(after) ?? { wood: cut.after, ways: new Map<string, Made>() };
          next.set(after, entry);
          const key = handAfter(longer);
          const known = entry.ways.get(key);
          if (!known || cost < known.cost) entry.ways.set(key, { cuts: longer, cost });
        }
      });
    }
    layer = next;
  }
  return least;
}

function mayBeMade({ draft, refusals, guide, wallMm }: TriedCut, guideWallMm: number): boolean {
  if (refusals.length > 0) return false;
  if (draft.kind !== "plane" || draft.purpose === "shape" || !isFlatKind(draft.tool.plane.kind)) {
    return draft.kind !== "plane" || draft.purpose === "shape" || guide?.kind !== "batten";
  }
  const isAslant = Math.abs(leanDeg(draft.runs[0][0][2], draft.cantDeg)) > 1;
  return guide?.kind !== "batten" && !(isAslant && Math.max(...wallMm) > guideWallMm);
}

/** All that later costs depend on: the plane in the hand, the lie of the stick, the curve worked last. */
function handAfter(cuts: readonly TriedCut[]): string {
  const last = cuts[cuts.length - 1]?.draft;
  const curved = cuts.filter(
    ({ draft }) =>
      draft.kind === "plane" && (draft.tool.plane.kind === "hollow" || draft.tool.plane.kind === "round"),
  );
  const shapes = curved[curved.length - 1]?.draft.shapes ?? [];
  return `${last?.kind === "plane" ? last.tool.plane.id : ""}/${last?.cantDeg}/${shapes.join(",")}`;
}
