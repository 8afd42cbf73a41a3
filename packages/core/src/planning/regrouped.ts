/**
 * The order of a found sequence with cuts of one plane at one lean brought together where nothing depends on their
 * place: flutes and coves that stand apart are worked plane by plane, not one after another.
 *
 * A curve that touches another is left where it is: its lines come from the foot of its finished neighbour.
 */
import type { Region } from "../curve/index.ts";
import { SAME_SCORE } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import type { Draft, PlaneDraft } from "./draft-cut.ts";
import { wholeCost } from "./order-cost.ts";
import { curvesTouching } from "./row-cost.ts";
import { leftMm2, makeAll, SAME_LEFT_MM2, type Sequence } from "./sequence.ts";
import type { TriedCut } from "./try-cut.ts";

/** Moves tried at most, each of which makes some of the cuts again. */
const MOST_MOVES = 60;

/** The sequence with as many such moves as make it cheaper. */
export function regrouped(bench: Bench, wood: Region, sequence: Sequence): Sequence {
  if (!sequence.allowed) return sequence;
  let best = sequence;
  let bestCost = wholeCost(bench, best.cuts);
  let moves = 0;
  for (let i = 2; i < best.cuts.length; i++) {
    const to = placeForMove(bench, best.cuts, i);
    if (to === null || ++moves > MOST_MOVES || bench.effort.isHasty) continue;
    const drafts = best.cuts.map((cut) => cut.draft);
    const [moved] = drafts.splice(i, 1);
    drafts.splice(to, 0, moved as Draft);
    const made = makeAll(bench, wood, drafts);
    if (!made.allowed || made.cuts.length !== best.cuts.length) continue;
    if (leftMm2(bench, made.wood) > leftMm2(bench, best.wood) + SAME_LEFT_MM2) continue;
    const cost = wholeCost(bench, made.cuts);
    if (cost < bestCost - SAME_SCORE) {
      best = made;
      bestCost = cost;
    }
  }
  return best;
}

/** Right after the nearest earlier cut of the same plane at the same lean, or null where it stands there already. */
function placeForMove(bench: Bench, cuts: readonly TriedCut[], index: number): number | null {
  const own = cuts[index]?.draft;
  if (own?.kind !== "plane" || !standsApart(bench, own)) return null;
  for (let j = index - 1; j >= 0; j--) {
    const earlier = cuts[j]?.draft;
    if (earlier?.kind !== "plane") return null;
    if (isSameSetting(own, earlier)) return j === index - 1 ? null : j + 1;
  }
  return null;
}

function isSameSetting(a: PlaneDraft, b: PlaneDraft): boolean {
  return (
    a.tool === b.tool && a.cantDeg === b.cantDeg && a.work === b.work && a.runs[0][0][2] === b.runs[0][0][2]
  );
}

/** Whether the curve that the cut makes, or helps to make, shares no end with another curve. */
function standsApart(bench: Bench, draft: PlaneDraft): boolean {
  const index = draft.onLine?.forPiece ?? draft.roomFor ?? draft.shapes[0];
  const own = bench.worked.find((piece) => piece.index === index);
  if (!own?.curve) return false;
  return curvesTouching(bench, own.index).length === 0;
}
