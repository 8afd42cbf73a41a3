/** A sequence of cuts made one after another, and the tidying of one: cuts that are not needed are dropped. */

import { difference, type Region, regionAreaMm2 } from "../curve/index.ts";
import { cutAway, sweepOf } from "../cutting/index.ts";
import { SAME_SCORE } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import { type Draft, isCurved, type PlaneDraft, planeDraft, sawDraft, sweepOfDraft } from "./draft-cut.ts";
import { costOf } from "./order.ts";
import { strokeCost } from "./stroke-cost.ts";
import { LEAST_TAKE_MM2, sinksAslant, type TriedCut, tryCut } from "./try-cut.ts";

export interface Sequence {
  readonly cuts: readonly TriedCut[];
  readonly wood: Region;
  /** True when no cut of it is refused by any rule. */
  readonly allowed: boolean;
}

/** Makes the cuts in the order given. */
export function makeAll(bench: Bench, wood: Region, drafts: readonly Draft[]): Sequence {
  const cuts: TriedCut[] = [];
  let before = wood;
  let allowed = true;
  for (const draft of drafts) {
    const tried = tryCut(bench, before, draft);
    cuts.push(tried);
    before = tried.after;
    if (tried.refusals.length > 0) allowed = false;
  }
  return { cuts, wood: before, allowed };
}

/** The same draft on another bench (another flattening); its runs, and so its first pose, stay as they are. */
export function redrawn(bench: Bench, draft: Draft): Draft {
  if (draft.kind === "saw") return sawDraft(bench, draft.from, draft.to, draft.cantDeg, draft.shapes);
  return planeDraft(bench, {
    work: draft.work,
    purpose: draft.purpose,
    cantDeg: draft.cantDeg,
    shapes: draft.shapes,
    tool: draft.tool,
    runs: draft.runs,
    ...(draft.onLine ? { onLine: draft.onLine } : {}),
    ...(draft.roomFor === undefined ? {} : { roomFor: draft.roomFor }),
    ...(draft.ridgeMm === undefined ? {} : { ridgeMm: draft.ridgeMm }),
  });
}

/** Leftover that may differ between two orders without one being worse, mm². */
export const SAME_LEFT_MM2 = 0.05;

/**
 * Drops, one by one, cuts without which the rest still holds, costs no more and leaves no more wood; each try is
 * made again from the stick. Shaping cuts are dropped only when others leave nothing of theirs.
 */
export function tidied(bench: Bench, wood: Region, sequence: Sequence): Sequence {
  let best = sequence;
  let bestCost = soundCost(bench, best);
  for (let i = best.cuts.length - 1; i >= 0 && !bench.effort.isHasty; i--) {
    // What is sawn is not planed for want of a saw: bevels and ripped waste stay.
    if (i >= best.cuts.length || best.cuts[i]?.draft.kind === "saw") continue;
    const tried = withoutCut(bench, wood, best, i);
    if (!tried) continue;
    const cost = soundCost(bench, tried);
    if (cost < bestCost - SAME_SCORE) {
      best = tried;
      bestCost = cost;
    }
  }
  return best;
}

/**
 * The sequence without one of its cuts, or null where a rule then forbids another or more wood would be left. What
 * would be left is looked at first, since the removal is the same in any order and cheaper to tell than the rules.
 */
function withoutCut(bench: Bench, wood: Region, sequence: Sequence, index: number): Sequence | null {
  const before = sequence.cuts.slice(0, index);
  const after = sequence.cuts.slice(index + 1);
  const start = before[before.length - 1]?.after ?? wood;
  let left = start;
  for (const cut of after) left = cutAway(left, sweepOfDraft(cut.draft));
  if (leftMm2(bench, left) > leftMm2(bench, sequence.wood) + SAME_LEFT_MM2) return null;
  const cuts: TriedCut[] = [...before];
  let at = start;
  for (const cut of after) {
    const tried = tryCut(bench, at, cut.draft);
    if (tried.takesMm2 < LEAST_TAKE_MM2) continue;
    if (tried.refusals.length > 0) return null;
    if (cut.draft.purpose !== "shape" && sinksAslant(bench, tried) && !sinksAslant(bench, cut)) return null;
    cuts.push(tried);
    at = tried.after;
  }
  return { cuts, wood: at, allowed: true };
}

/** The sequence with every setting left out that takes nothing when its turn comes. */
export function withoutIdleRuns(bench: Bench, wood: Region, sequence: Sequence): Sequence {
  let changed = false;
  const drafts = sequence.cuts.map((cut): Draft => {
    const fewer = workingRuns(bench, cut);
    if (fewer !== cut.draft) changed = true;
    return fewer;
  });
  if (!changed) return sequence;
  const made = makeAll(bench, wood, drafts);
  const isAsGood = made.allowed && leftMm2(bench, made.wood) <= leftMm2(bench, sequence.wood) + SAME_LEFT_MM2;
  return isAsGood && soundCost(bench, made) <= soundCost(bench, sequence) + SAME_SCORE ? made : sequence;
}

function workingRuns(bench: Bench, cut: TriedCut): Draft {
  const { draft } = cut;
  if (draft.kind !== "plane" || draft.runs.length < 2 || draft.rock) return draft;
  let before = cut.before;
  const runs = draft.runs.filter((run) => {
    const after = cutAway(before, sweepOf(draft.tool.sole.chain, [run], bench.sweepOptions));
    const takesMm2 = regionAreaMm2(before) - regionAreaMm2(after);
    before = after;
    return takesMm2 >= LEAST_TAKE_MM2;
  });
  return runs.length === draft.runs.length || runs.length === 0 ? draft : redrawn(bench, { ...draft, runs });
}

/** Cost of a sequence as it is worked: waste counts dearer where a curved plane has to take all of it. */
function soundCost(bench: Bench, sequence: Sequence): number {
  return costOf(bench, sequence.cuts) + sequence.cuts.reduce((sum, cut) => sum + heavyCost(cut), 0);
}

/** As `soundCost`, the strokes of square planes apart: where a groove lies is not settled by a pass more or less. */
export function placesCost(bench: Bench, sequence: Sequence): number {
  return sequence.cuts.reduce((sum, cut) => sum - strokeCost(bench, cut), soundCost(bench, sequence));
}

/** What a curved plane's cut costs beside the order's own weights, where it has to take more than a few shavings. */
export function heavyCost({ draft, takesMm2 }: TriedCut): number {
  if (draft.kind !== "plane" || !isCurved(draft)) return 0;
  return Math.max(0, takesMm2 - easyTakeMm2(draft)) * HEAVY_CURVE_PER_MM2;
}

/** What a curved plane takes without complaint: a few shavings over its width, mm². */
function easyTakeMm2(draft: PlaneDraft): number {
  return draft.tool.sole.widthMm * 0.6;
}

const HEAVY_CURVE_PER_MM2 = 0.08;

/** Wood left over the wanted section, mm². */
export function leftMm2(bench: Bench, wood: Region): number {
  return regionAreaMm2(difference(wood, bench.plannedRegion));
}
