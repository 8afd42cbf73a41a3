/** What is said at the saw, as a maker says it. */
import type { SawCut } from "mouldwright/making";
import { formatDeg } from "mouldwright/measure";
import type { LongPoint } from "../../fitting/corner-answer.ts";

/** To the quarter degree of a saw's scale. */
export function sawDegrees(angleDeg: number): string {
  return formatDeg(angleDeg, { stepDeg: 0.25 });
}

/** `Face up, ceiling edge at the fence. Handle to the right, blade leaning left. Keep the part on the left.` */
export function cutSentence(cut: SawCut, lie: "flat" | "held"): string {
  const handle = cut.turnHandleTo === "neither" ? "Handle straight" : `Handle to the ${cut.turnHandleTo}`;
  const blade = cut.bladeLeans === "upright" ? "blade upright" : `blade leaning ${cut.bladeLeans}`;
  const lies =
    lie === "flat"
      ? `Flat on its back, face up, ${cut.edgeAtFence} at the fence.`
      : "Upside down: the wall’s side against the fence, the ceiling’s side on the table.";
  return `${lies} ${handle}, ${blade}. Keep the part on the ${cut.keep}.`;
}

export function longPointSentence({ edge, pastShortMm }: LongPoint, length: (mm: number) => string): string {
  if (edge === null) return "The cut is square across the back: no long point.";
  return `Long point at the ${edge}, ${length(pastShortMm)} past the short point along the back.`;
}
