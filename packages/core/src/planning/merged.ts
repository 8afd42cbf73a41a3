/**
 * Two cuts of waste made one: where a single step, groove or chamfer can stand in for two that an order was found
 * with, the second setting is saved. One run on to an opening that stands already leaves no tower for a later cut.
 */
import { intersection, type Region, regionAreaMm2 } from "../curve/index.ts";
import { SAME_SCORE } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import { type Draft, isCurved, type PlaneDraft, sweepOfDraft } from "./draft-cut.ts";
import { isNeverGuided } from "./never-guided.ts";
import { wholeCost } from "./order-cost.ts";
import { roughingPool } from "./roughing.ts";
import { leftMm2, SAME_LEFT_MM2, type Sequence } from "./sequence.ts";
import { isClumsy, LEAST_TAKE_MM2, sinksAslant, type TriedCut, tryCut } from "./try-cut.ts";

/** Cuts made again to find out, over all rounds of looking: the likeliest come first. */
const MOST_MADE_AGAIN = 1500;
/** Cuts tried in the stead of any two. */
const MOST_FOR_TWO = 30;
/** One cut stands in for another only where it takes at least this share of what that took. */
const LEAST_SHARE = 0.05;
/** What an order may cost more once two of its cuts are made one, where two more can be after it, in settings. */
const MAY_COST_MORE = 0.5;

/** The sequence with two cuts made one wherever that holds, costs less and leaves no more; the very same one where nothing is gained. */
export function withWasteMerged(bench: Bench, wood: Region, sequence: Sequence): Sequence {
  if (!sequence.allowed) return sequence;
  const pool = roughingPool(
    bench,
    bench.worked.filter(({ curve }) => curve),
  );
  const looking = { pool, count: { made: 0 } };
  let best = sequence;
  for (let last: Sequence | null = sequence; last; ) {
    const enoughCost = wholeCost(bench, best.cuts) - SAME_SCORE;
    const mayCost = enoughCost + (last === best ? MAY_COST_MORE : 0);
    last = mergedOnce(bench, wood, last, { ...looking, enoughCost, mayCost });
    if (last && wholeCost(bench, last.cuts) < enoughCost) best = last;
  }
  return best;
}

/** What a helper takes in its place in the order, and how large and where that is. */
interface Helped {
  readonly at: number;
  readonly taken: Region;
  readonly areaMm2: number;
}

interface Looking {
  readonly pool: readonly PlaneDraft[];
  /** How many cuts were made again. */
  readonly count: { made: number };
  /** The first order found that costs less than this is taken. */
  readonly enoughCost: number;
  /** And if there is none, the cheapest that costs less than this. */
  readonly mayCost: number;
}

/** An order in which one cut stands in for two; null where none is found. */
function mergedOnce(bench: Bench, wood: Region, sequence: Sequence, looking: Looking): Sequence | null {
  const { pool, count, enoughCost, mayCost } = looking;
  let best: Sequence | null = null;
  let leastCost = mayCost;
  for (const pair of likeliest(sequence, pool)) {
    if (!bench.effort.isThorough || count.made > MOST_MADE_AGAIN) break;
    const made = remade(bench, wood, sequence, { ...pair, leastCost, count });
    if (!made) continue;
    best = made;
    leastCost = wholeCost(bench, made.cuts);
    if (leastCost < enoughCost) break;
  }
  return best;
}

type Pair = Pick<Merging, "first" | "second" | "other">;

/**
 * Two cuts and one of the pool in their stead: of every two first the one that takes most of them, then of every two
 * the next, so that no two of them use up all tries.
 */
function likeliest(sequence: Sequence, pool: readonly PlaneDraft[]): Pair[] {
  const helpers = sequence.cuts.flatMap((cut, at): Helped[] => (isHelper(cut) ? [helped(cut, at)] : []));
  if (helpers.length < 2) return [];
  const others = unlike(
    pool.map((other) => ({ other, shares: helpers.map((one) => shareTaken(one, other)) })),
  );
  const pairs = helpers.flatMap((one, i) =>
    helpers.flatMap((two, k) => (i === k ? [] : standIns(others, i, k, { first: one.at, second: two.at }))),
  );
  return pairs.sort((a, b) => a.rank - b.rank || b.share - a.share);
}

interface Ranked extends Pair {
  readonly share: number;
  readonly rank: number;
}

/** What could stand in for two of the helpers, by how much of them it takes. */
function standIns(
  others: readonly Other[],
  i: number,
  k: number,
  two: Pick<Pair, "first" | "second">,
): Ranked[] {
  return others
    .map(({ other, shares }) => ({ ...two, other, share: (shares[i] ?? 0) + (shares[k] ?? 0) }))
    .filter(({ share }) => share >= LEAST_SHARE)
    .sort((a, b) => b.share - a.share)
    .slice(0, MOST_FOR_TWO)
    .map((pair, rank) => ({ ...pair, rank }));
}

interface Other {
  readonly other: PlaneDraft;
  /** What it would take of each helper's work, as shares. */
  readonly shares: readonly number[];
}

/** One of all that take the same of every helper: they differ in their planes only. The pool's first stays. */
function unlike(others: readonly Other[]): Other[] {
  const kept = new Map<string, Other>();
  for (const one of others) {
    if (one.shares.every((share) => share < LEAST_SHARE)) continue;
    const key = `${one.other.work} ${one.shares.map((share) => share.toFixed(3)).join(" ")}`;
    if (!kept.has(key)) kept.set(key, one);
  }
  return [...kept.values()];
}

function helped(cut: TriedCut, at: number): Helped {
  const taken = intersection(cut.before, sweepOfDraft(cut.draft));
  return { at, taken, areaMm2: regionAreaMm2(taken) };
}

/** How much of what a helper takes another cut would take in its stead, as a share. */
function shareTaken({ taken, areaMm2 }: Helped, other: PlaneDraft): number {
  return areaMm2 > 0 ? regionAreaMm2(intersection(taken, sweepOfDraft(other))) / areaMm2 : 0;
}

interface Merging {
  readonly first: number;
  readonly second: number;
  readonly other: PlaneDraft;
  /** What the order has to cost less than. */
  readonly leastCost: number;
  readonly count: Looking["count"];
}

/** The order with one cut in place of the first and none in place of the second; null as soon as it does not hold or serve. */
function remade(bench: Bench, wood: Region, sequence: Sequence, merging: Merging): Sequence | null {
  const { first, second, other, leastCost, count } = merging;
  const from = Math.min(first, second);
  const cuts: TriedCut[] = sequence.cuts.slice(0, from);
  let at = cuts[from - 1]?.after ?? wood;
  for (let i = from; i < sequence.cuts.length; i++) {
    if (i === second) continue;
    const old = sequence.cuts[i] as TriedCut;
    const draft: Draft = i === first ? other : old.draft;
    const tried = tryCut(bench, at, draft);
    count.made++;
    if (tried.takesMm2 < LEAST_TAKE_MM2) continue;
    if (i === first ? !isFit(bench, tried) : !isAsSound(bench, tried, old)) return null;
    cuts.push(tried);
    at = tried.after;
  }
  const made = { cuts, wood: at, allowed: true };
  if (wholeCost(bench, made.cuts) >= leastCost) return null;
  return leftMm2(bench, at) <= leftMm2(bench, sequence.wood) + SAME_LEFT_MM2 ? made : null;
}

/** Whether a cut is there for the sake of others: a flat plane's that finishes nothing. */
function isHelper({ draft }: TriedCut): boolean {
  return draft.kind === "plane" && draft.purpose !== "shape" && !isCurved(draft);
}

function isFit(bench: Bench, tried: TriedCut): boolean {
  return (
    tried.refusals.length === 0 &&
    !isClumsy(tried) &&
    !sinksAslant(bench, tried) &&
    !isNeverGuided(bench, tried)
  );
}

/** Whether a cut of the order is as good in its place as it was: held, guided and clean. */
function isAsSound(bench: Bench, tried: TriedCut, old: TriedCut): boolean {
  if (tried.refusals.length > 0) return false;
  if (isClumsy(tried) && !isClumsy(old)) return false;
  if (old.seat && !tried.seat) return false;
  if (tried.guide?.kind === "batten" && old.guide?.kind !== "batten") return false;
  return !sinksAslant(bench, tried) || sinksAslant(bench, old);
}
