/**
 * Room for a curved cut that a rule forbids on the wood as it stands, and that no single line beside it frees: waste
 * is taken away step by step, each time the cut that brings it nearest to being allowed.
 */
import type { Region } from "../curve/index.ts";
import { SAME_SCORE } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import { firstLeanDeg, type PlaneDraft } from "./draft-cut.ts";
import { reliefsAt } from "./relief.ts";
import { roughingPool } from "./roughing.ts";
import { isClumsy, LEAST_TAKE_MM2, sinksAslant, type TriedCut, tryCut } from "./try-cut.ts";

/** More cuts than this for the room of one curve is no way to make it. */
const MOST_CUTS = 3;
/** What a leaning cut must bring more than an upright one, mm of wall. */
const LEAN_COST_MM = 0.2;

/** What a groove into an older one, or a fin, must bring more: more than any wall is high, so that all else goes first. */
const CLUMSY_COST_MM = 1000;

/** The cuts that free a curved one, in order, or null where they would be too many or none brings it nearer. */
export function clearedFor(bench: Bench, wood: Region, draft: PlaneDraft): readonly TriedCut[] | null {
  const piece = bench.worked.find((worked) => worked.index === draft.shapes[0]);
  if (!piece) return null;
  const pool = roughingPool(bench, [piece]);
  const cuts: TriedCut[] = [];
  let before = wood;
  let most = hindranceMm(tryCut(bench, before, draft));
  while (most > 0 && Number.isFinite(most) && cuts.length < MOST_CUTS) {
    const best = bestClearing(bench, before, draft, pool, most);
    if (!best) return null;
    cuts.push(best.cut);
    before = best.cut.after;
    most = best.leavesMm;
  }
  return most === 0 && cuts.length > 0 ? cuts : null;
}

interface Clearing {
  readonly cut: TriedCut;
  readonly leavesMm: number;
  readonly score: number;
}

function bestClearing(
  bench: Bench,
  before: Region,
  draft: PlaneDraft,
  pool: readonly PlaneDraft[],
  most: number,
): Clearing | null {
  let best: Clearing | null = null;
  const lines = (["left", "right"] as const).flatMap((side) => reliefsAt(bench, before, draft, side));
  for (const candidate of [...pool, ...lines]) {
    const cut = tryCut(bench, before, candidate);
    if (!mayBeMade(bench, cut)) continue;
    const leavesMm = hindranceMm(tryCut(bench, cut.after, draft));
    if (leavesMm > most - LEAST_GAIN_MM) continue;
    const score =
      most -
      leavesMm -
      (Math.abs(firstLeanDeg(candidate)) > 1 ? LEAN_COST_MM : 0) -
      (isClumsy(cut) ? CLUMSY_COST_MM : 0);
    if (!best || score > best.score + SAME_SCORE) best = { cut, leavesMm, score };
  }
  return best;
}

/** A cut that frees less is no step towards it, mm. */
const LEAST_GAIN_MM = 0.05;

function mayBeMade(bench: Bench, cut: TriedCut): boolean {
  if (cut.draft.kind !== "plane" || cut.takesMm2 < LEAST_TAKE_MM2) return false;
  if (cut.refusals.length > 0 || cut.guide?.kind === "batten") return false;
  return !sinksAslant(bench, cut);
}

/**
 * How far a cut is from being allowed: wall beyond its allowance, mm, and loose wood as if it were a wall one mm wide;
 * infinite where what forbids it is no waste that could be taken.
 */
function hindranceMm(tried: TriedCut): number {
  let total = 0;
  for (const { rule, foundMm, limitMm } of tried.refusals) {
    if (rule === "wall" && foundMm !== undefined && limitMm !== undefined) total += foundMm - limitMm + 0.1;
    else if (rule === "loose wood" && foundMm !== undefined) total += foundMm;
    else return Number.POSITIVE_INFINITY;
  }
  return total;
}
