/** Cuts that nothing guides on the wood as it stands, since the edge they would run against is out of reach by now. */
import type { Bench } from "./bench.ts";
import { firstLeanDeg } from "./draft-cut.ts";
import { hasLostItsEdge } from "./edge-guide.ts";
import { type TriedCut, tryCut } from "./try-cut.ts";

/** Whether nothing guides the cut, neither on this wood nor before the edge that it would run against was cut down. */
export function isNeverGuided(bench: Bench, cut: TriedCut): boolean {
  if (cut.guide?.kind !== "batten") return false;
  return !lostItsEdge(bench, cut) || tryCut(bench, bench.startRegion, cut.draft).guide?.kind === "batten";
}

/** Whether an upright plane wants a batten for no other reason than that its edge is out of reach. */
export function lostItsEdge(bench: Bench, { draft, guide, before }: TriedCut): boolean {
  return (
    guide?.kind === "batten" &&
    draft.kind === "plane" &&
    Math.abs(firstLeanDeg(draft)) < bench.limits.leaningFromDeg &&
    draft.runs.some((run) => hasLostItsEdge(bench, before, draft, run[0]))
  );
}
