/** Cuts that give a curved plane a seat on the wood as it stands. */
import type { Region } from "../curve/index.ts";
import { SAME_SCORE } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import { firstLeanDeg, type PlaneDraft } from "./draft-cut.ts";
import { isNeverGuided, lostItsEdge } from "./never-guided.ts";
import { evenedArrises, seatMakers } from "./relief.ts";
import { roughingPool } from "./roughing.ts";
import { seatedOn } from "./seated.ts";
import { LEAST_TAKE_MM2, sinksAslant, type TriedCut, tryCut } from "./try-cut.ts";

/**
 * Cuts that give a curved plane a seat: of all single ones that do, the best held at the least waste; else the
 * first set of several that does; one that leaves a fin only where none else does. A single cut is a plough's groove, a line, a step or a chamfer over the arc.
 */
export function makeSeat(bench: Bench, before: Region, draft: PlaneDraft): TriedCut[] | null {
  const sets = seatMakers(bench, before, draft);
  const piece = bench.worked.find((w) => w.index === draft.shapes[0]);
  const pool = piece ? roughingPool(bench, [piece]).map((cut) => [cut]) : [];
  const singles = [...sets.filter((set) => set.length === 1), ...pool];
  const several = sets.filter((set) => set.length > 1);
  return (
    seatMade(bench, before, draft, singles, several, "clean") ??
    seatMade(bench, before, draft, singles, several, "a fin") ??
    seatOnBatten(bench, before, draft, singles)
  );
}

/** What a seat may be made with: nothing a hand would rather not; a fin; a batten where a fence finds no edge any more. */
type SeatWith = "clean" | "a fin" | "a batten";

type CutSets = readonly (readonly PlaneDraft[])[];

interface SeatCuts {
  readonly made: TriedCut[];
  readonly score: number;
}

function seatMade(
  bench: Bench,
  before: Region,
  draft: PlaneDraft,
  singles: CutSets,
  several: CutSets,
  mayBeWith: SeatWith,
): TriedCut[] | null {
  const best = bestSeat(bench, before, draft, singles, mayBeWith);
  if (best) return best.made;
  const evened = bench.effort.isThorough ? evenedAfter(bench, before, singles, draft, mayBeWith) : null;
  if (evened) return evened.made;
  for (const set of several) {
    const made = seatAfter(bench, before, set, draft, mayBeWith);
    if (made) return made.made;
  }
  return null;
}

/** A batten clamped on for a groove or step is still better than one for a curved plane that nothing holds. */
function seatOnBatten(bench: Bench, before: Region, draft: PlaneDraft, singles: CutSets): TriedCut[] | null {
  const offTheirEdge = singles.filter(
    ([cut]) => cut !== undefined && lostItsEdge(bench, tryCut(bench, before, cut)),
  );
  return bestSeat(bench, before, draft, offTheirEdge, "a batten")?.made ?? null;
}

function bestSeat(
  bench: Bench,
  before: Region,
  draft: PlaneDraft,
  singles: CutSets,
  mayBeWith: SeatWith,
): SeatCuts | null {
  let best: SeatCuts | null = null;
  for (const set of singles) {
    const made = seatAfter(bench, before, set, draft, mayBeWith);
    if (made && (!best || made.score > best.score + SAME_SCORE)) best = made;
  }
  return best;
}

/** How many single cuts are followed by a shaving off the higher arris before a seat is given up. */
const MOST_EVENED = 12;

/** One cut that takes waste, then a shaving off the arris that still stands higher. */
function evenedAfter(
  bench: Bench,
  before: Region,
  singles: CutSets,
  draft: PlaneDraft,
  mayBeWith: SeatWith,
): SeatCuts | null {
  const first = singles
    .flatMap(([cut]) => (cut ? [tryCut(bench, before, cut)] : []))
    .filter(
      (tried) =>
        tried.refusals.length === 0 && !isNeverGuided(bench, tried) && tried.takesMm2 >= LEAST_TAKE_MM2,
    )
    .sort((a, b) => b.takesMm2 - a.takesMm2)
    .slice(0, MOST_EVENED);
  let best: SeatCuts | null = null;
  for (const tried of first) {
    for (const shaving of evenedArrises(bench, tried.after, draft)) {
      const made = seatAfter(bench, before, [tried.draft as PlaneDraft, shaving], draft, mayBeWith);
      if (made && (!best || made.score > best.score + SAME_SCORE)) best = made;
    }
  }
  return best;
}

/** Makes a set of cuts and, if they may be made and the plane is held after them, how good that is. */
function seatAfter(
  bench: Bench,
  before: Region,
  set: readonly PlaneDraft[],
  draft: PlaneDraft,
  mayBeWith: SeatWith,
): SeatCuts | null {
  const made: TriedCut[] = [];
  let wood = before;
  for (const cut of set) {
    const tried = tryCut(bench, wood, cut);
    if (tried.refusals.length > 0) return null;
    if (mayBeWith !== "a batten" && isNeverGuided(bench, tried)) return null;
    if (tried.intoGroove || (tried.fin && mayBeWith !== "a fin") || sinksAslant(bench, tried)) return null;
    if (tried.takesMm2 < LEAST_TAKE_MM2) continue;
    made.push(tried);
    wood = tried.after;
  }
  if (made.length === 0) return null;
  // The seat is told without making the cut, and most cuts give none.
  if (!seatedOn(bench, wood, draft)) return null;
  const tried = tryCut(bench, wood, draft);
  if (!tried.seat || tried.refusals.length > 0) return null;
  const held = Math.min(tried.seat.ratio, bench.limits.seatWellHeldRatio) / bench.limits.seatWellHeldRatio;
  // Waste that the helping cut takes is waste the curved plane need not: it counts for it, up to a point.
  const spared = Math.min(1, made.reduce((sum, cut) => sum + cut.takesMm2, 0) / 40);
  const slivers = made.filter((cut) => cut.takesMm2 < SLIVER_CUT_MM2).length;
  return { made, score: held * 2 + spared - firstLeanDegOfAll(made) / 90 - slivers * SLIVER_CUT_COST };
}

/** A helping cut that takes less than this is hardly one, mm²; what it weighs against in the score of a seat. */
const SLIVER_CUT_MM2 = 1;
const SLIVER_CUT_COST = 0.6;

function firstLeanDegOfAll(cuts: readonly TriedCut[]): number {
  return cuts.reduce(
    (most, cut) => (cut.draft.kind === "plane" ? Math.max(most, Math.abs(firstLeanDeg(cut.draft))) : most),
    0,
  );
}
