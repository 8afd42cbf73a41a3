/** What the strokes of square planes cost an order: of two that do the same work the wide one is taken. */
import type { Bench } from "./bench.ts";
import { isCurved } from "./draft-cut.ts";
import { passesOf } from "./passes.ts";
import type { TriedCut } from "./try-cut.ts";

const STROKE_COSTS = new WeakMap<TriedCut, number>();

/**
 * What the strokes of a flat plane or a beak cost, and a plough that works a step with a side open, its fence set anew
 * for each width: a rebate plane does that better. A curved plane's strokes count by the waste that it takes. Worked out once for
 * the same cut on the same wood.
 */
export function strokeCost(bench: Bench, cut: TriedCut): number {
  const known = STROKE_COSTS.get(cut);
  if (known !== undefined) return known;
  const { draft, before, takesMm2, wallMm } = cut;
  if (draft.kind === "saw" || isCurved(draft)) return 0;
  const isStep = draft.work === "step" && draft.tool.plane.kind === "plough";
  const isOpen = isStep && Math.min(...wallMm) < bench.limits.guideWallMm;
  const { passes } = passesOf(bench, before, draft, takesMm2);
  const cost = passes * bench.weights.perPass + (isOpen ? bench.weights.openPlough * draft.runs.length : 0);
  STROKE_COSTS.set(cut, cost);
  return cost;
}
