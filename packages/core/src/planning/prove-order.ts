/**
 * The order that costs least over the cuts that were found, by a search that leaves none out.
 *
 * What a set of cuts removes is the same in any order, so a state of the work is the set of what is removed, with the
 * plane in the hand, the lie of the stick and the curve worked last. States are taken by what they cost so far and the
 * least that the rest must cost (A*: Hart, Nilsson, Raphael, IEEE Trans. SSC 4, 1968). The rest is first counted dearer
 * than it need be, which soon finds an order better than the one at hand; then as it is, which proves that none is
 * left (Likhachev, Gordon, Thrun, ARA*, NIPS 2003).
 */
import { difference, type Region, regionAreaMm2 } from "../curve/index.ts";
import { cutAway, leanDeg } from "../cutting/index.ts";
import { bug, countWork, SAME_SCORE } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import { CheapestFirst } from "./cheapest-first.ts";
import { type Draft, isCurved, type PlaneDraft, sweepOfDraft } from "./draft-cut.ts";
import { keptEdgeCost } from "./kept-edge.ts";
import { costOf, planeId } from "./order.ts";
import { leastRest, type Open, openAfter, type Witness, witnessesOf } from "./order-bound.ts";
import { curveAfter, NO_CURVE, stepCost, wholeCost } from "./order-cost.ts";
import { type Removals, removalsOf } from "./order-removals.ts";
import { RemovalSets } from "./removal-sets.ts";
import { rowCost } from "./row-cost.ts";
import { sameWood } from "./same-wood.ts";
import type { Found } from "./search.ts";
import { makeAll, SAME_LEFT_MM2, type Sequence } from "./sequence.ts";
import { LEAST_TAKE_MM2, sinksAslant, type TriedCut, tryCut } from "./try-cut.ts";

export interface Proven {
  /** The cheapest order found; the one given where none is cheaper. */
  readonly sequence: Sequence;
  readonly cost: number;
  /** Whole cost of the order given. */
  readonly givenCost: number;
  /** True where no order over the candidates costs less. */
  readonly isLeast: boolean;
  /** How many cuts were tried on wood. */
  readonly tries: number;
}

export interface ProvingLimits {
  /** Most cuts tried on wood, and most states looked at, before the best so far is given. */
  readonly mostTries: number;
  readonly mostStates: number;
}

/** By how much the rest is counted too dear, one search after the other; the last one proves. */
const HASTES = [2, 0.5, 0] as const;

/**
 * Holds a way's sequence against every order over the candidates that takes all that it takes and breaks no rule. A saw
 * keeps its place before or after the planes. The same answer for the same input: the limits count work, not time.
 */
export function proveOrder(
  found: Pick<Found, "bench" | "sequence">,
  candidates: readonly PlaneDraft[],
  limits: ProvingLimits,
): Proven {
  return new OrderProof(found, candidates, limits).run();
}

/** What a candidate looked at in a state counts for, beside the cuts tried (`countWork`). */
const WORK_OF_CANDIDATE = 8;

interface State {
  /** The number of the set of what is removed. */
  readonly made: number;
  readonly last: TriedCut | undefined;
  readonly lastCurve: number;
  readonly cost: number;
  /** The least that the whole can cost from here. */
  readonly least: number;
  /** The candidate made last. */
  readonly candidate: number;
  readonly before: State | null;
}

class OrderProof {
  private readonly bench: Bench;
  private readonly given: Sequence;
  private readonly candidates: readonly PlaneDraft[];
  private readonly limits: ProvingLimits;
  private readonly sawsBefore: readonly TriedCut[];
  private readonly sawsAfter: readonly Draft[];
  private readonly removals: Removals;
  /** For each candidate what it costs wherever it stands. */
  private readonly leastCosts: readonly number[];
  private readonly witnesses: readonly Witness[];
  private readonly sets: RemovalSets;
  private readonly hands: Hands;
  /** For each candidate the curve it makes, as its place among the curves; NO_CURVE for a flat. */
  private readonly curves: readonly number[];
  private readonly open: (Open | null | undefined)[] = [];
  private readonly rests = new Map<number, number>();
  private readonly woods = new Map<bigint, Region>();
  private readonly tried = new Map<number, TriedCut>();
  private readonly passedOver = new Set<number>();
  private readonly ended = new Map<number, Sequence | null>();
  private bar: number;
  private best: State | null = null;
  private isPassedOver = false;
  private tries = 0;
  private states = 0;

  constructor(
    { bench, sequence }: Pick<Found, "bench" | "sequence">,
    candidates: readonly PlaneDraft[],
    limits: ProvingLimits,
  ) {
    this.bench = bench;
    this.given = sequence;
    this.candidates = candidates;
    this.limits = limits;
    const first = Math.max(
      0,
      sequence.cuts.findIndex(({ draft }) => draft.kind !== "saw"),
    );
    const drafts = sequence.cuts.map(({ draft }) => draft);
    this.sawsBefore = sequence.cuts.slice(0, first);
    this.sawsAfter = drafts.slice(first).filter(({ kind }) => kind === "saw");
    const start = sequence.cuts[first]?.before ?? sequence.wood;
    const planed = drafts.filter(({ kind }) => kind === "plane");
    const end = planed.reduce((wood, draft) => cutAway(wood, sweepOfDraft(draft)), start);
    this.removals = removalsOf(start, candidates);
    this.sets = new RemovalSets(this.removals);
    this.hands = handsOf(candidates);
    this.curves = candidates.map((draft) => curveAfter(bench, draft, NO_CURVE));
    this.leastCosts = candidates.map((draft) => leastCostOf(bench, draft));
    this.witnesses = witnessesOf(bench, start, end, candidates, this.removals.bits, this.leastCosts);
    this.woods.set(0n, start);
    this.bar = wholeCost(bench, sequence.cuts);
  }

  run(): Proven {
    const givenCost = this.bar;
    let isLeast = false;
    for (const haste of HASTES) isLeast = this.search(haste);
    isLeast &&= !this.isPassedOver;
    if (!this.best) return { sequence: this.given, cost: givenCost, givenCost, isLeast, tries: this.tries };
    return { sequence: this.madeInOrder(this.best), cost: this.bar, givenCost, isLeast, tries: this.tries };
  }

  private madeInOrder(end: State): Sequence {
    return makeAll(this.bench, this.bench.startRegion, [
      ...this.sawsBefore.map(({ draft }) => draft),
      ...this.draftsOf(end),
      ...this.sawsAfter,
    ]);
  }

  /**
   * Whether a groove of it runs into an older one, which the given order does not. The wood of a state tells what is
   * gone, not how: this shows when the cuts are made in their order. What is passed over for it is no proof.
   */
  private runsIntoGroove(end: State): boolean {
    const runsInto = !this.given.cuts.some(isIntoGroove) && this.madeInOrder(end).cuts.some(isIntoGroove);
    if (runsInto) this.isPassedOver = true;
    return runsInto;
  }

  /** One search; in haste it stops at the first order below the bar. True where none is left that could be. */
  private search(haste: number): boolean {
    const reached = new Map<number, number>();
    const queue = new CheapestFirst<State>(
      ({ least, cost }) => least + haste * (least - cost),
      (a, b) => b.cost - a.cost,
    );
    const last = this.sawsBefore[this.sawsBefore.length - 1];
    const cost = wholeCost(this.bench, this.sawsBefore);
    const made = this.sets.numberOf(0n);
    const least = cost + this.rest(made, NO_HAND);
    queue.add({ made, last, lastCurve: NO_CURVE, cost, least, candidate: NO_CANDIDATE, before: null });
    for (let state = queue.take(); state; state = queue.take()) {
      if (state.least >= this.bar - SAME_SCORE) continue;
      if (this.tries >= this.limits.mostTries || ++this.states > this.limits.mostStates) return false;
      if (!this.bench.effort.isThorough) return false;
      if (state.cost > (reached.get(this.keyOf(state)) ?? state.cost) + SAME_SCORE) continue;
      const ended = this.endedCost(state);
      if (ended !== null && ended < this.bar - SAME_SCORE && !this.runsIntoGroove(state)) {
        this.bar = ended;
        this.best = state;
        if (haste > 0) return false;
      }
      this.grow(state, reached, queue);
    }
    return true;
  }

  private grow(state: State, reached: Map<number, number>, queue: CheapestFirst<State>): void {
    const before = this.draftsOf(state);
    countWork(WORK_OF_CANDIDATE * this.candidates.length);
    for (let k = 0; k < this.candidates.length; k++) {
      const made = this.sets.grownBy(state.made, k);
      if (made === state.made) continue;
      // What it costs at best is told without making the cut, and leaves few to be made.
      if (this.leastWith(state, made, k) >= this.bar) {
        this.passOver(state.made, k);
        continue;
      }
      const cut = this.try(state.made, k);
      if (cut.takesMm2 < LEAST_TAKE_MM2 || !isAllowed(this.bench, cut)) continue;
      const standing = rowCost(this.bench, cut.draft, before) + this.edgeCost(state.made, cut);
      const cost = state.cost + stepCost(this.bench, cut, state.last, state.lastCurve) + standing;
      const least = Math.max(state.least, cost + this.rest(made, this.hands.ofCandidate[k] as number));
      if (least >= this.bar - SAME_SCORE) continue;
      const lastCurve = curveAfter(this.bench, cut.draft, state.lastCurve);
      const next: State = { made, last: cut, lastCurve, cost, least, candidate: k, before: state };
      const key = this.keyOf(next);
      if (cost >= (reached.get(key) ?? Number.POSITIVE_INFINITY) - SAME_SCORE) continue;
      reached.set(key, cost);
      queue.add(next);
    }
  }

  /** The least that the whole can cost where this candidate is made next: no cut of it costs less than is counted here. */
  private leastWith({ last, lastCurve, cost }: State, made: number, k: number): number {
    const draft = this.candidates[k] as PlaneDraft;
    const own = (this.leastCosts[k] as number) + changeCost(this.bench, draft, last);
    const curve = this.curves[k] as number;
    const isApart = lastCurve !== NO_CURVE && curve !== NO_CURVE && Math.abs(curve - lastCurve) > 1;
    const withIt = cost + own + (isApart ? this.bench.weights.apart : 0);
    // The rest is the dear part of this sum, and cannot bring it down.
    return withIt >= this.bar ? withIt : withIt + this.rest(made, this.hands.ofCandidate[k] as number);
  }

  /** What the whole costs if nothing more is planed, or null where wood is left that the given order does not leave. */
  private endedCost({ made, last, cost }: State): number | null {
    if (this.openOf(made) !== null) return null;
    let ended = this.ended.get(made);
    if (ended === undefined) {
      const sawn = makeAll(this.bench, this.wood(this.sets.bitsOf(made)), this.sawsAfter);
      ended = this.isAsClean(sawn.wood) ? sawn : null;
      this.ended.set(made, ended);
    }
    return ended && cost + costOf(this.bench, ended.cuts, last);
  }

  /** The cut on the wood that is left; made once for each set of removals near it. */
  private try(made: number, k: number): TriedCut {
    const key = this.tryKey(made, k);
    const known = this.tried.get(key);
    if (known) return known;
    if (!this.passedOver.delete(key)) this.tries++;
    const cut = tryCut(this.bench, this.wood(this.sets.bitsOf(made)), this.candidates[k] as PlaneDraft);
    // Whether wood comes loose is no matter of the wood near it alone.
    if (!cut.refusals.some(({ rule }) => rule === "loose wood")) this.tried.set(key, cut);
    return cut;
  }

  private edgeCost(made: number, cut: TriedCut): number {
    if (this.bench.keptEdges.length === 0) return 0;
    return keptEdgeCost(this.bench, cut, this.wood(this.sets.bitsOf(made)));
  }

  /** A cut that need not be made counts as tried all the same, once: how far the search goes does not hang on what it is spared. */
  private passOver(made: number, k: number): void {
    const key = this.tryKey(made, k);
    if (this.tried.has(key) || this.passedOver.has(key)) return;
    this.passedOver.add(key);
    this.tries++;
  }

  private tryKey(made: number, k: number): number {
    return this.sets.nearTo(made, k) * this.candidates.length + k;
  }

  private wood(made: bigint): Region {
    const known = this.woods.get(made);
    if (known) return known;
    const last = made.toString(2).length - 1;
    const maker = this.removals.makers[last] ?? bug("a removal without its cut", { last });
    const wood = sameWood(this.bench, cutAway(this.wood(made & ~(1n << BigInt(last))), sweepOfDraft(maker)));
    this.woods.set(made, wood);
    return wood;
  }

  private openOf(made: number): Open | null {
    const known = this.open[made];
    if (known !== undefined) return known;
    const open = openAfter(this.witnesses, this.sets.bitsOf(made));
    this.open[made] = open;
    return open;
  }

  /** The least that is still to be paid once a set is gone, with what is in hand. */
  private rest(made: number, hand: number): number {
    const at = made * this.hands.all.length + hand;
    const known = this.rests.get(at);
    if (known !== undefined) return known;
    const rest = leastRest(this.bench, this.openOf(made), this.hands.all[hand] ?? null);
    this.rests.set(at, rest);
    return rest;
  }

  /** States of one key have the same before them. */
  private keyOf({ made, candidate, lastCurve }: State): number {
    const hand = candidate === NO_CANDIDATE ? NO_HAND : (this.hands.ofCandidate[candidate] as number);
    return (made * this.hands.all.length + hand) * (this.bench.worked.length + 1) + lastCurve + 1;
  }

  /** Whether no wood is left that the given order takes. */
  private isAsClean(wood: Region): boolean {
    return regionAreaMm2(difference(wood, this.given.wood)) <= SAME_LEFT_MM2;
  }

  private draftsOf(end: State): readonly Draft[] {
    const drafts: Draft[] = [];
    for (let state: State | null = end; state?.before; state = state.before) {
      drafts.push(this.candidates[state.candidate] ?? bug("a state without its cut", {}));
    }
    return drafts.reverse();
  }
}

function isIntoGroove({ intoGroove }: TriedCut): boolean {
  return intoGroove;
}

/** A plane in the hand and a lie of the stick, numbered; the first is neither. */
interface Hands {
  readonly all: readonly (Hand | null)[];
  readonly ofCandidate: readonly number[];
}

interface Hand {
  readonly plane: string;
  readonly cantDeg: number;
}

const NO_HAND = 0;
const NO_CANDIDATE = -1;

function handsOf(candidates: readonly PlaneDraft[]): Hands {
  const all: (Hand | null)[] = [null];
  const ofCandidate = candidates.map((draft) => {
    const [plane, { cantDeg }] = [planeId(draft), draft];
    const known = all.findIndex((hand) => hand?.plane === plane && hand.cantDeg === cantDeg);
    return known > 0 ? known : all.push({ plane, cantDeg }) - 1;
  });
  return { all, ofCandidate };
}

/** No rule refuses it; and a cut that only helps has something to run on and is not sunk aslant into solid wood. */
export function isAllowed(bench: Bench, cut: TriedCut): boolean {
  const { draft, guide, refusals } = cut;
  if (refusals.length > 0) return false;
  if (draft.kind !== "plane" || draft.purpose === "shape" || isCurved(draft)) return true;
  return guide?.kind !== "batten" && !sinksAslant(bench, cut);
}

/** What one cut costs wherever it stands in an order: its setting, and its least lean. */
function leastCostOf(bench: Bench, draft: PlaneDraft): number {
  const tilts = draft.rock ? [draft.rock.lowDeg, draft.rock.highDeg] : [draft.runs[0][0][2]];
  const leans = tilts.map((tilt) => leanDeg(tilt, draft.cantDeg));
  const isUprightBetween = Math.min(...leans) <= 0 && Math.max(...leans) >= 0;
  const leastDeg = isUprightBetween ? 0 : Math.min(...leans.map(Math.abs));
  return bench.weights.setting + leastDeg * bench.weights.leanPerDegree;
}

/** What it costs to take up another plane, and to lay the stick another way, for this cut. */
function changeCost(bench: Bench, draft: PlaneDraft, last: TriedCut | undefined): number {
  if (!last) return 0;
  const change = planeId(last.draft) === planeId(draft) ? 0 : bench.weights.planeChange;
  return change + (last.draft.cantDeg === draft.cantDeg ? 0 : bench.weights.turnStick);
}
