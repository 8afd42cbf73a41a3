/** A sequence with the cuts that touch an edge to be kept put as late as the others allow. */
import type { Region } from "../curve/index.ts";
import { SAME_SCORE } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import type { Draft } from "./draft-cut.ts";
import { touchesKept } from "./kept-edge.ts";
import { wholeCost } from "./order-cost.ts";
import { leftMm2, makeAll, SAME_LEFT_MM2, type Sequence } from "./sequence.ts";

/** Moves tried at most, each of which makes some of the cuts again. */
const MOST_MOVES = 60;

/**
 * First all of them put last together, in their own order; where that does not hold, one after the other as late as it
 * may go. Kept only where the whole costs less so. Saws keep their places.
 */
export function withEdgeLast(bench: Bench, wood: Region, sequence: Sequence): Sequence {
  if (bench.keptEdges.length === 0 || !sequence.allowed) return sequence;
  let best = better(bench, wood, sequence, allLast(bench, sequence));
  let moves = 0;
  for (let i = best.cuts.length - 1; i >= 0; i--) {
    const cut = best.cuts[i];
    if (!cut || cut.draft.kind === "saw" || !touchesKept(bench, cut)) continue;
    for (let to = lastPlaned(best); to > i && moves < MOST_MOVES && !bench.effort.isHasty; to--) {
      moves++;
      const drafts = best.cuts.map(({ draft }) => draft);
      drafts.splice(to, 0, ...drafts.splice(i, 1));
      const moved = better(bench, wood, best, drafts);
      if (moved === best) continue;
      best = moved;
      break;
    }
  }
  return best;
}

function allLast(bench: Bench, { cuts }: Sequence): readonly Draft[] {
  const planed = cuts.filter(({ draft }) => draft.kind === "plane");
  const touching = planed.filter((cut) => touchesKept(bench, cut));
  const inOrder = [...planed.filter((cut) => !touching.includes(cut)), ...touching];
  let next = 0;
  return cuts.map(({ draft }) => (draft.kind === "saw" ? draft : (inOrder[next++]?.draft ?? draft)));
}

function lastPlaned({ cuts }: Sequence): number {
  return cuts.reduce((last, { draft }, i) => (draft.kind === "plane" ? i : last), 0);
}

/** The same cuts in another order, where that is allowed, leaves no more and costs less; else the sequence itself. */
function better(bench: Bench, wood: Region, sequence: Sequence, drafts: readonly Draft[]): Sequence {
  const made = makeAll(bench, wood, drafts);
  if (!made.allowed || made.cuts.length !== sequence.cuts.length) return sequence;
  if (leftMm2(bench, made.wood) > leftMm2(bench, sequence.wood) + SAME_LEFT_MM2) return sequence;
  const isCheaper = wholeCost(bench, made.cuts) < wholeCost(bench, sequence.cuts) - SAME_SCORE;
  return isCheaper ? made : sequence;
}
