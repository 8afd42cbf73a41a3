/** Which earlier cut left the wall that a plane runs against. */
import { type CuttingLimits, type Pose, wallLeftMm } from "../cutting/index.ts";
import { OVERCUT_MM } from "../measure/index.ts";
import type { PlaneDraft } from "./draft-cut.ts";
import type { TriedCut } from "./try-cut.ts";

/**
 * The number of the cut before this one that left most of the wall beside its first pose, or another of its poses, of two
 * alike the later; null where none left enough of it to run against, as the proof finds it.
 */
export function cutOfWall(
  cuts: readonly TriedCut[],
  index: number,
  draft: PlaneDraft,
  limits: CuttingLimits,
  pose: Pose = draft.runs[0][0],
): number | null {
  const now = cuts[index].before;
  let best: { readonly number: number; readonly leftMm: number } | null = null;
  for (let i = index - 1; i >= 0; i--) {
    const { before, after } = cuts[i];
    const leftMm = wallLeftMm(draft.cut, pose, { before, left: after, now }, limits);
    if (leftMm < limits.guideWallMm || (best && leftMm < best.leftMm + OVERCUT_MM)) continue;
    best = { number: i + 1, leftMm };
  }
  return best?.number ?? null;
}
