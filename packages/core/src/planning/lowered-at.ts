/** A cut of waste set elsewhere: as deep as the section allows there. */
import { type Run, restBesideWalls } from "../cutting/index.ts";
import { OVERCUT_MM } from "../measure/index.ts";
import type { Bench, Tool } from "./bench.ts";
import { type PlaneDraft, planeDraft, poseAt } from "./draft-cut.ts";

/** The same work with the sole set at these places across, as deep as the section allows with a shaving to spare. */
export function loweredAt(
  bench: Bench,
  draft: PlaneDraft,
  tool: Tool,
  shifts: readonly number[],
): PlaneDraft | null {
  const tiltDeg = draft.runs[0][0][2];
  const profile = bench.profileOfPlanned(tiltDeg);
  const heights = shifts.flatMap((shift) => {
    const rest = restBesideWalls(profile, tool.shape, shift, {
      gapMm: OVERCUT_MM / 4,
      clearance: (source) => (source > 0 ? bench.shavings.ordinaryMm : 0),
    });
    return rest ? [rest.heightMm] : [];
  });
  if (heights.length === 0) return null;
  const heightMm = Math.max(...heights);
  const runs = shifts.map((shift): Run => [poseAt(tiltDeg, shift, heightMm)]);
  const { work, purpose, cantDeg, shapes } = draft;
  return planeDraft(bench, { work, purpose, cantDeg, shapes, tool, runs });
}
