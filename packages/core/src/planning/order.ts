/**
 * The order of cuts, found by making them: flats first, by most waste; then the curved planes, by a beam over the
 * sets already cut, each tried on the wood as it then stands, with the relief and the seat it needs put before it.
 */

import { difference, type Region, regionAreaMm2 } from "../curve/index.ts";
import { leanDeg, turned, turnOf, withoutFallen } from "../cutting/index.ts";
import { SAME_SCORE } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import { type Draft, firstLeanDeg, isCurved, type PlaneDraft } from "./draft-cut.ts";
import { cutWithClearing, cutWithHelp, cutWithinRoom, type Made } from "./help.ts";
import { touchesKept } from "./kept-edge.ts";
import { rowCost } from "./row-cost.ts";
import { strokeCost } from "./stroke-cost.ts";
import { isClumsy, LEAST_TAKE_MM2, type Refusal, type TriedCut, tryCut } from "./try-cut.ts";
import { isFaceUp } from "./turning.ts";
import { linedCut } from "./wall-lines.ts";

export interface Refused {
  readonly draft: PlaneDraft;
  readonly refusal: Refusal;
}

export interface Ordered {
  readonly cuts: readonly TriedCut[];
  readonly wood: Region;
  readonly cost: number;
  readonly refused: readonly Refused[];
}

export interface OrderedFlats extends Ordered {
  /** Waste that is left because its groove would run into an older one, or it would leave a fin. */
  readonly keptOff: readonly TriedCut[];
}

/** A flat to be cut, or waste to be taken: the ways to do it, likeliest first. */
export interface FlatToCut {
  readonly ways: readonly PlaneDraft[];
}

/** How many ways of a flat are looked at each time it may be its turn. */
export const MOST_WAYS = 6;
const MOST_WAYS_IN_HASTE = 2;

/**
 * Takes the flats in a believable order: what turns the stick over first, then steps from the face down, so that each
 * still has its full edge to run on and shortens the next, leaning ones after upright ones. Of a flat's ways the
 * first is taken that nothing forbids and that has a guide, the plane already in the hand before another. What would run
 * into an older groove or leave a fin comes last of all: by then the wood beside it may be gone.
 */
export function orderFlats(
  bench: Bench,
  wood: Region,
  flats: readonly FlatToCut[],
  rather: RatherThanClumsy = "batten",
): OrderedFlats {
  let left = [...flats];
  let before = wood;
  const cuts: TriedCut[] = [];
  const refused: Refused[] = [];
  let keptOff: TriedCut[] = [];
  while (left.length > 0) {
    keptOff = [];
    let best: { made: readonly TriedCut[]; flat: FlatToCut; score: number } | null = null;
    let held: { draft: PlaneDraft; refusal: Refusal; flat: FlatToCut } | null = null;
    const idle = new Set<FlatToCut>();
    for (const flat of left) {
      const way = bestOfFlat(bench, before, flat, cuts[cuts.length - 1], rather);
      if (way.kind === "idle") idle.add(flat);
      else if (way.kind === "kept off") keptOff.push(way.cut);
      else if (way.kind === "unguided") continue;
      else if (way.kind === "refused") held ??= { draft: way.draft, refusal: way.refusal, flat };
      else if (!best || way.score > best.score + SAME_SCORE)
        best = { made: way.made, flat, score: way.score };
    }
    if (!best && !held && idle.size === 0) break;
    const gone = best?.flat ?? held?.flat;
    if (best) {
      cuts.push(...best.made);
      before = (best.made[best.made.length - 1] as TriedCut).after;
    } else if (held) refused.push({ draft: held.draft, refusal: held.refusal });
    left = left.filter((flat) => flat !== gone && !idle.has(flat));
  }
  return { cuts, wood: before, cost: costOf(bench, cuts), refused, keptOff };
}

type FlatWay =
  | { readonly kind: "idle" }
  /** Waste that nothing guides yet: it is taken when something does, or not at all. */
  | { readonly kind: "unguided" }
  /** Waste that would run into an older groove or leave a fin, the same. */
  | { readonly kind: "kept off"; readonly cut: TriedCut }
  | { readonly kind: "refused"; readonly draft: PlaneDraft; readonly refusal: Refusal }
  | { readonly kind: "made"; readonly made: readonly TriedCut[]; readonly score: number };

function bestOfFlat(
  bench: Bench,
  before: Region,
  flat: FlatToCut,
  last: TriedCut | undefined,
  rather: RatherThanClumsy,
): FlatWay {
  let best: { made: readonly TriedCut[]; score: number; clumsy: boolean } | null = null;
  let refused: FlatWay | null = null;
  let keptOff: TriedCut | null = null;
  let unguided = false;
  const mostWays = bench.effort.isHasty ? MOST_WAYS_IN_HASTE : MOST_WAYS;
  for (const [rank, draft] of flat.ways.slice(0, mostWays).entries()) {
    const tried = tryCut(bench, before, draft);
    if (tried.takesMm2 < LEAST_TAKE_MM2) return { kind: "idle" };
    const refusal = tried.refusals[0];
    if (refusal) {
      refused ??= { kind: "refused", draft, refusal };
      continue;
    }
    if (isClumsy(tried) && draft.purpose !== "shape") {
      keptOff ??= tried;
      continue;
    }
    const lined = tried.guide?.kind === "batten" ? linedCut(bench, before, draft) : null;
    if (tried.guide?.kind === "batten" && !lined && draft.purpose !== "shape") {
      unguided = true;
      continue;
    }
    const made = lined ? [lined.line, lined.cut] : [tried];
    const clumsy = made.some(isClumsy);
    if (clumsy && draft.purpose !== "shape") {
      keptOff ??= tried;
      continue;
    }
    const score =
      flatScore(bench, draft, lined?.cut ?? tried, last) -
      rank * WAY_RANK_COST -
      (lined ? LINE_COST : 0) -
      made.reduce((sum, cut) => sum + strokeCost(bench, cut), 0) * SETTING_SCORE -
      (clumsy ? CLUMSY_COST[rather] : 0);
    if (!best || score > best.score + SAME_SCORE) best = { made, score, clumsy };
    if (rank === 0 && tried.guide?.kind !== "batten" && !last) break;
  }
  if (best) return { kind: "made", made: best.made, score: best.score - (best.clumsy ? WAITS_COST : 0) };
  if (keptOff) return { kind: "kept off", cut: keptOff };
  return refused ?? { kind: unguided ? "unguided" : "idle" };
}

/** What a flat is cut with rather than run into an older groove or leave a fin: anything, or anything that is guided. */
export type RatherThanClumsy = "batten" | "guided";

/** What such a cut costs beside the other ways of its flat, in the units of `flatScore`, a batten being 10,000. */
const CLUMSY_COST: Readonly<Record<RatherThanClumsy, number>> = { batten: 50_000, guided: 5000 };

/** What puts such a flat after all others. */
const WAITS_COST = 100_000;

/** What a line of its own costs a flat, in the units of `flatScore`. */
const LINE_COST = 30;

/** What a setting of the order's cost counts in the units of `flatScore`. */
const SETTING_SCORE = 30;

/** What a later way must be better by, in the units of `flatScore`. */
const WAY_RANK_COST = 12;

function flatScore(bench: Bench, draft: PlaneDraft, tried: TriedCut, last: TriedCut | undefined): number {
  // The back and the edges are worked while the stick still has a flat to lie on; a canted jaw comes last.
  const turnedStick = draft.cantDeg === 0 ? 0 : isFaceUp(draft.cantDeg) ? -15000 : 40000;
  const leaning = Math.abs(firstLeanDeg(draft)) > 1;
  const snipe = draft.tool.plane.kind === "snipe bill" ? -30000 : 0;
  const batten = tried.guide?.kind === "batten" ? -10000 : 0;
  const inHand =
    last?.draft.kind === "plane" && last.draft.tool === draft.tool && draft.tool.plane.kind !== "plough"
      ? 30
      : 0;
  // What takes an edge that is to stay square comes when everything else is done.
  const edge = touchesKept(bench, tried) ? -60000 : 0;
  const order = leaning ? -20000 + tried.takesMm2 : -DEPTH_ORDER_PER_MM * depthBelowFaceMm(bench, draft);
  return turnedStick + snipe + batten + edge + order + inHand + tried.takesMm2 * 0.01;
}

/** Steps come in the order of their floors from the face down; this is what a millimetre counts. */
const DEPTH_ORDER_PER_MM = 100;

/** How far below the top of the stick, as it is turned, the sole of a cut comes to stand, mm. */
function depthBelowFaceMm(bench: Bench, draft: PlaneDraft): number {
  const turn = turnOf(-draft.cantDeg);
  const { minX, maxX, minY, maxY } = bench.box;
  const top = Math.max(...[minX, maxX].flatMap((x) => [minY, maxY].map((y) => turned(turn, { x, y }).y)));
  const pose = draft.runs[0][0];
  return top - turned(turn, { x: pose[0], y: pose[1] }).y;
}

interface BeamState {
  /** One bit for each curve already cut. */
  readonly done: bigint;
  /** The curve finished last, -1 before the first. */
  readonly last: number;
  readonly wood: Region;
  readonly cuts: readonly TriedCut[];
  readonly cost: number;
  readonly refused: readonly Refused[];
}

/** States kept after each curve: many where there are few curves, fewer where there are many; one once work presses. */
function beamWidth({ effort }: Bench, curves: number): number {
  if (!effort.isThorough) return 1;
  return Math.max(2, Math.min(10, Math.floor(40 / Math.max(1, curves))));
}

/** An arc's covers, best first; each with its ways, alternatives to one another. */
export type CurveWays = readonly (readonly PlaneDraft[])[];

/** An arc to be cut: its covers, and others that are only worked out when none of those can be made. */
export interface ArcToCut {
  readonly covers: CurveWays;
  readonly others: () => CurveWays;
}

/**
 * The states that cost least, and those that have gone along from one end of the face without a gap: in a long row they
 * are dearer on the way than others that first take what is cheap, and cheapest at its end.
 */
function keptStates(bench: Bench, states: readonly BeamState[], curves: number): BeamState[] {
  const sorted = [...states].sort((a, b) => a.cost - b.cost || (a.done < b.done ? -1 : 1));
  const width = beamWidth(bench, curves);
  if (width === 1) return sorted.slice(0, width);
  const whole = (1n << BigInt(curves)) - 1n;
  const isAlong = ({ done }: BeamState) =>
    (done & (done + 1n)) === 0n || ((whole ^ done) & ((whole ^ done) + 1n)) === 0n;
  return sorted.filter((state, rank) => rank < width || isAlong(state));
}

/** The best order found for the curved cuts; each entry is one arc's ways of being cut, one of which is taken. */
export function orderCurves(bench: Bench, wood: Region, curves: readonly ArcToCut[]): Ordered {
  let beam: BeamState[] = [{ done: 0n, last: -1, wood, cuts: [], cost: 0, refused: [] }];
  for (let step = 0; step < curves.length; step++) {
    const next = new Map<bigint, BeamState>();
    for (const state of beam) {
      curves.forEach((arc, i) => {
        if (state.done & (1n << BigInt(i))) return;
        // In haste the next one of the drawing is taken.
        if (bench.effort.isHasty && next.size > 0) return;
        const grown = leftCounted(bench, cutBestWay(bench, state, arc, i), step === curves.length - 1);
        const known = next.get(grown.done);
        if (!known || grown.cost < known.cost - SAME_SCORE) next.set(grown.done, grown);
      });
    }
    beam = keptStates(bench, [...next.values()], curves.length);
  }
  const best = beam[0] as BeamState;
  return { cuts: best.cuts, wood: best.wood, cost: best.cost, refused: best.refused };
}

/** With all curves cut, what is left over the section counts: orders of the same cuts may leave more or less of it. */
function leftCounted(bench: Bench, state: BeamState, isWhole: boolean): BeamState {
  if (!isWhole) return state;
  const leftMm2 = regionAreaMm2(
    difference(withoutFallen(state.wood, bench.limits.shavingMm2), bench.plannedRegion),
  );
  return { ...state, cost: state.cost + leftMm2 * bench.weights.leftPerMm2 };
}

/**
 * Takes the first of an arc's covers that can be made whole, and of its ways the one that costs least; only when no
 * cover can be made whole is a rock drawn in.
 */
function cutBestWay(bench: Bench, state: BeamState, arc: ArcToCut, index: number): BeamState {
  const done = state.done | (1n << BigInt(index));
  const before = state.cuts.map((cut) => cut.draft);
  let why: Refused | null = null;
  const attempts: readonly (readonly [typeof cutWithHelp, () => CurveWays, number])[] = [
    [cutWithHelp, () => arc.covers, 0],
    [cutWithClearing, () => arc.covers, 0],
    [cutWithHelp, arc.others, 0],
    [cutWithinRoom, () => arc.covers, bench.weights.drawnIn],
  ];
  for (const [make, covers, extra] of bench.effort.isHasty ? attempts.slice(0, 1) : attempts) {
    for (const ways of covers()) {
      let best: BeamState | null = null;
      for (const draft of ways) {
        const made = withFollowing(bench, state.wood, draft, make);
        if (!made.ok) {
          why ??= { draft, refusal: made.refusal };
          continue;
        }
        const cost =
          state.cost +
          extra +
          costOf(bench, made.cuts, state.cuts[state.cuts.length - 1]) +
          placeCost(bench, state.last, index, draft) +
          rowCost(bench, draft, before);
        const last = made.cuts[made.cuts.length - 1];
        const wood = last ? last.after : state.wood;
        if (!best || cost < best.cost - SAME_SCORE) {
          best = {
            done,
            last: index,
            wood,
            cuts: [...state.cuts, ...made.cuts],
            cost,
            refused: state.refused,
          };
        }
      }
      if (best) return best;
    }
  }
  const refused = why ? [...state.refused, why] : state.refused;
  return { ...state, done, last: index, cost: state.cost + bench.weights.refused, refused };
}

/** The cut with its help, and whatever must follow to finish the same arc with the stick laid otherwise. */
function withFollowing(bench: Bench, wood: Region, draft: PlaneDraft, make: typeof cutWithHelp): Made {
  const made = make(bench, wood, draft);
  if (!made.ok || !draft.followedBy) return made;
  const next = withFollowing(bench, made.cuts[made.cuts.length - 1]?.after ?? wood, draft.followedBy, make);
  return next.ok ? { ok: true, cuts: [...made.cuts, ...next.cuts] } : next;
}

/** Cost of where a curve stands: beside the last one finished, or, for the first, near the gauge edge. */
export function placeCost(bench: Bench, last: number, index: number, draft: PlaneDraft): number {
  if (last < 0) return ((draft.runs[0][0][0] - bench.box.minX) * bench.weights.startPer100Mm) / 100;
  return Math.abs(last - index) === 1 ? 0 : bench.weights.apart;
}

/** The soft cost of a run of cuts, following another. */
export function costOf(bench: Bench, cuts: readonly TriedCut[], previous?: TriedCut): number {
  let cost = 0;
  let last = previous;
  for (const cut of cuts) {
    cost += bench.weights.setting;
    const id = planeId(cut.draft);
    if (last && planeId(last.draft) !== id) cost += bench.weights.planeChange;
    if (last && last.draft.cantDeg !== cut.draft.cantDeg) cost += bench.weights.turnStick;
    if (cut.guide?.kind === "batten") {
      const isCurve = cut.draft.kind === "plane" && isCurved(cut.draft);
      cost += isCurve ? bench.weights.noSeat : bench.weights.batten;
    }
    if (cut.intoGroove) cost += bench.weights.intoGroove;
    if (cut.fin) cost += bench.weights.fin;
    if (cut.seat && cut.seat.ratio < bench.limits.seatWellHeldRatio) cost += bench.weights.weakSeat;
    if (cut.draft.kind === "plane") {
      cost += Math.abs(leanDeg(cut.draft.runs[0][0][2], cut.draft.cantDeg)) * bench.weights.leanPerDegree;
      cost += strokeCost(bench, cut);
      if (isCurved(cut.draft)) cost += cut.takesMm2 * bench.weights.wasteLeftPerMm2;
      if (cut.draft.ridgeMm !== undefined) cost += (cut.draft.runs.length - 1) * bench.weights.nextSetting;
    }
    last = cut;
  }
  return cost;
}

/** What the hand takes up: two cuts of one plane follow one another without a change. */
export function planeId(draft: Draft): string {
  return draft.kind === "plane" ? draft.tool.plane.id : "saw";
}
