/** Waste cuts moved over by the fin that they would leave, so that they meet the opening beyond it. */
import { turned, turnOf } from "../cutting/index.ts";
import type { Bench, Tool } from "./bench.ts";
import type { PlaneDraft } from "./draft-cut.ts";
import type { Fin } from "./fins.ts";
import { loweredAt } from "./lowered-at.ts";

/** A narrower iron is tried down to this share of the one that leaves the fin. */
const NARROWEST_RATIO = 0.5;

/** The cut moved over its fin with the same plane, and, in one setting, with narrower irons of the plough. */
export function closedUp(bench: Bench, draft: PlaneDraft, fin: Fin): PlaneDraft[] {
  const tiltDeg = draft.runs[0][0][2];
  if (draft.runs.some((run) => run.length > 1 || run[0][2] !== tiltDeg)) return [];
  const turn = turnOf(tiltDeg);
  const asideMm = fin.side === "left" ? -fin.thickMm : fin.thickMm;
  const shifts = draft.runs.map(([pose]) => turned(turn, { x: pose[0], y: pose[1] }).x + asideMm);
  const own = draft.tool.sole;
  const placed = [{ tool: draft.tool, shifts }];
  const [shift] = shifts;
  if (shift !== undefined && shifts.length === 1) {
    for (const tool of bench.tools.filter((other) => isNarrowerPlough(other, draft.tool))) {
      const besideMm = fin.side === "left" ? own.leftMm - tool.sole.leftMm : own.rightMm - tool.sole.rightMm;
      placed.push({ tool, shifts: [shift + besideMm] });
    }
  }
  return placed.flatMap(({ tool, shifts: at }) => loweredAt(bench, draft, tool, at) ?? []);
}

function isNarrowerPlough(tool: Tool, than: Tool): boolean {
  const ratio = tool.sole.widthMm / than.sole.widthMm;
  return tool.plane === than.plane && tool.plane.kind === "plough" && ratio < 1 && ratio >= NARROWEST_RATIO;
}
