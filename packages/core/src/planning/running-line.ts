/** Which of the lines scribed for a cut its plane is run along. */
import type { Point } from "../curve/index.ts";
import { turned, turnOf } from "../cutting/index.ts";
import { type PlaneDraft, spanAcross } from "./draft-cut.ts";

/** No hand tells a line this near a sole's end from one at it, mm. */
const AT_THE_END_MM = 0.05;

/**
 * The place, among the cut's own lines, of the first that lies under the sole or at its end as it is first set down; -1
 * where none does. A beak is laid into the line it was scribed for, and what follows on an opened line into that one.
 */
export function runningLine(draft: PlaneDraft, lines: readonly Point[]): number {
  if (draft.onLine || draft.tool.plane.kind === "snipe bill") return lines.length > 0 ? 0 : -1;
  const pose = draft.runs[0][0];
  const { left, right } = spanAcross(draft, pose);
  return lines.findIndex((at) => {
    const across = turned(turnOf(pose[2]), at).x;
    return across >= left - AT_THE_END_MM && across <= right + AT_THE_END_MM;
  });
}
