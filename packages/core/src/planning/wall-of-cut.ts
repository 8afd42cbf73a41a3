/** Which earlier cut left the wall that a plane runs against. */
import { placed } from "../cutting/index.ts";
import { endsInPlace, type PlaneDraft } from "./draft-cut.ts";
import type { TriedCut } from "./try-cut.ts";

/** Sole ends nearer than this stand on one line, mm. */
const SAME_WALL_MM = 0.1;

/** The number of the last cut before this one whose own sole ended on the same line, or null. */
export function cutOfWall(
  cuts: readonly TriedCut[],
  index: number,
  draft: PlaneDraft,
  side: "left" | "right",
): number | null {
  const end = endsInPlace(draft, draft.runs[0][0])[side];
  for (let i = index - 1; i >= 0; i--) {
    const earlier = cuts[i].draft;
    if (earlier.kind !== "plane") continue;
    for (const run of earlier.runs)
      for (const which of [earlier.cut.ends.left, earlier.cut.ends.right]) {
        const p = placed(run[0], which);
        if (Math.abs(p.x - end.x) < SAME_WALL_MM || Math.abs(p.y - end.y) < SAME_WALL_MM) return i + 1;
      }
  }
  return null;
}
