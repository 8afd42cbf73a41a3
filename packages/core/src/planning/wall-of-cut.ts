/** Which earlier cut left the wall that a plane runs against. */
import { type CuttingLimits, wallLeftBy } from "../cutting/index.ts";
import type { PlaneDraft } from "./draft-cut.ts";
import type { TriedCut } from "./try-cut.ts";

/** The number of the last cut before this one that left the wall beside its first pose, as the proof finds it; or null. */
export function cutOfWall(
  cuts: readonly TriedCut[],
  index: number,
  draft: PlaneDraft,
  limits: CuttingLimits,
): number | null {
  const now = cuts[index].before;
  for (let i = index - 1; i >= 0; i--) {
    const { before, after } = cuts[i];
    if (wallLeftBy(draft.cut, draft.runs[0][0], { before, left: after, now }, limits)) return i + 1;
  }
  return null;
}
