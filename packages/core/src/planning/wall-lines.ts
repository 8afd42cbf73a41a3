/**
 * A line for a flat plane that has nothing to run on where its wall is to stand: a plough's groove at the wall, or a
 * line of a snipe bill, deep enough for its side.
 */
import type { Region } from "../curve/index.ts";
import { leanDeg, turned, turnOf } from "../cutting/index.ts";
import { SAME_SCORE } from "../measure/index.ts";
import { type Bench, sidesFromGauge, type Tool } from "./bench.ts";
import { endsInPlace, type PlaneDraft, planeDraft, poseAt } from "./draft-cut.ts";
import { isClumsy, LEAST_TAKE_MM2, type TriedCut, tryCut } from "./try-cut.ts";

/** A flat cut made after a line for its wall. */
export interface LinedCut {
  readonly line: TriedCut;
  readonly cut: TriedCut;
}

/** How deep a snipe bill's line is sunk for a plane to run in, mm (common practice, no source). */
const LINE_DEPTH_MM = 0.8;

/** What a line that is clumsy, or makes the cut so, counts for less, mm²: any other goes first. */
const CLUMSY_MM2 = 1e4;

/** The line that guides an upright flat cut and the cut after it, or null where none would or it stands guided already. */
export function linedCut(bench: Bench, before: Region, draft: PlaneDraft): LinedCut | null {
  const bare = tryCut(bench, before, draft);
  if (bare.guide?.kind !== "batten" || bare.refusals.length > 0 || draft.tool.plane.kind === "plough")
    return null;
  if (Math.abs(leanDeg(draft.runs[0][0][2], draft.cantDeg)) >= bench.limits.leaningFromDeg) return null;
  let best: { lined: LinedCut; score: number } | null = null;
  for (const side of sidesFromGauge(bench)) {
    const wallMm = side === "left" ? bare.wallMm[0] : bare.wallMm[1];
    if (wallMm < bench.limits.guideWallMm) continue;
    for (const lineDraft of linesAtWall(bench, draft, side, wallMm)) {
      const line = tryCut(bench, before, lineDraft);
      if (line.takesMm2 < LEAST_TAKE_MM2 || line.refusals.length > 0 || line.guide?.kind === "batten")
        continue;
      const cut = tryCut(bench, line.after, draft);
      if (cut.guide?.kind === "batten" || cut.refusals.length > 0 || cut.takesMm2 < LEAST_TAKE_MM2) continue;
      // A groove to the full depth spares the plane its corner; of lines the one that takes most is the surest.
      const score = line.takesMm2 - (isClumsy(line) || isClumsy(cut) ? CLUMSY_MM2 : 0);
      if (!best || score > best.score + SAME_SCORE) best = { lined: { line, cut }, score };
    }
  }
  return best?.lined ?? null;
}

/** Grooves and lines whose outer wall is the wall that the cut leaves on this side. */
function linesAtWall(
  bench: Bench,
  draft: PlaneDraft,
  side: "left" | "right",
  wallMm: number,
): readonly PlaneDraft[] {
  const tiltDeg = draft.runs[0][0][2];
  const turn = turnOf(tiltDeg);
  const ends = draft.runs.map((run) => turned(turn, endsInPlace(draft, run[0])[side]));
  const at = ends.reduce((a, b) => ((side === "left" ? b.x < a.x : b.x > a.x) ? b : a));
  const shiftOf = (tool: Tool) => (side === "left" ? at.x - tool.sole.leftMm : at.x - tool.sole.rightMm);
  return bench.tools.flatMap((tool): PlaneDraft[] => {
    const snipe = tool.plane.kind === "snipe bill";
    if (!snipe && tool.plane.kind !== "plough") return [];
    if (!(side === "left" ? tool.sole.cutsWall.left : tool.sole.cutsWall.right)) return [];
    if (!snipe && tool.sole.widthMm > draft.tool.sole.widthMm) return [];
    const height = snipe ? at.y + Math.max(0, wallMm - LINE_DEPTH_MM) : at.y;
    return [
      planeDraft(bench, {
        work: snipe ? "snipe line" : "groove",
        purpose: snipe ? "relief" : "waste",
        cantDeg: draft.cantDeg,
        shapes: [],
        tool,
        runs: [[poseAt(tiltDeg, shiftOf(tool), height)]],
      }),
    ];
  });
}
