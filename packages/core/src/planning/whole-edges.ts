/**
 * Cuts made while the edge they run against is whole: once a lower step has taken an edge down, no fence hangs deep enough
 * to find it from the steps above, so that these come first.
 */
import type { Region } from "../curve/index.ts";
import { SAME_SCORE } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import { type Draft, isCurved } from "./draft-cut.ts";
import { wholeCost } from "./order-cost.ts";
import { leftMm2, makeAll, SAME_LEFT_MM2, type Sequence } from "./sequence.ts";
import { type TriedCut, tryCut } from "./try-cut.ts";

/** The sequence with each flat cut that nothing guides moved as little further forward as gives it a guide, where that costs less. */
export function withEdgesWhole(bench: Bench, wood: Region, sequence: Sequence): Sequence {
  let best = sequence;
  for (let i = 1; i < best.cuts.length; i++) best = movedForward(bench, wood, best, i) ?? best;
  return best;
}

function movedForward(bench: Bench, wood: Region, sequence: Sequence, index: number): Sequence | null {
  const cut = sequence.cuts[index];
  if (cut?.draft.kind !== "plane" || cut.guide?.kind !== "batten" || isCurved(cut.draft)) return null;
  for (let to = index - 1; to >= 0; to--) {
    const earlier = sequence.cuts[to] as TriedCut;
    // A saw's place is its own.
    if (earlier.draft.kind !== "plane") return null;
    if (tryCut(bench, earlier.before, cut.draft).guide?.kind === "batten") continue;
    const drafts: Draft[] = sequence.cuts.map(({ draft }) => draft);
    drafts.splice(index, 1);
    drafts.splice(to, 0, cut.draft);
    const made = makeAll(bench, wood, drafts);
    const isAsWhole = made.allowed || !sequence.allowed;
    if (!isAsWhole || leftMm2(bench, made.wood) > leftMm2(bench, sequence.wood) + SAME_LEFT_MM2) continue;
    if (wholeCost(bench, made.cuts) < wholeCost(bench, sequence.cuts) - SAME_SCORE) return made;
  }
  return null;
}
