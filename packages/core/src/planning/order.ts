/**
 * The order of cuts, found by making them: flats first, by most waste; then the curved planes, by a beam over the
 * sets already cut, each tried on the wood as it then stands, with the relief and the seat it needs put before it.
 */

import type { Region } from "../curve/index.ts";
import { isFlatKind, leanDeg, turned, turnOf } from "../cutting/index.ts";
import { SAME_SCORE } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import { rockedWithin } from "./curves.ts";
import { type Draft, firstLeanDeg, type PlaneDraft } from "./draft-cut.ts";
import { evenedArrises, reliefsAt, seatMakers } from "./relief.ts";
import { roughingPool } from "./roughing.ts";
import { isCurved, type Refusal, type TriedCut, tryCut } from "./try-cut.ts";
import { isFaceUp } from "./turning.ts";

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

/** A flat to be cut, or waste to be taken: the ways to do it, likeliest first. */
export interface FlatToCut {
  readonly ways: readonly PlaneDraft[];
}

/** How many ways of a flat are looked at each time it may be its turn. */
const MOST_WAYS = 6;

/**
 * Takes the flats in a believable order: what turns the stick over first, then steps from the face down, so that each
 * still has its full edge to run on and shortens the next, leaning ones after upright ones. Of a flat's ways the
 * first is taken that nothing forbids and that has a guide, the plane already in the hand before another.
 */
export function orderFlats(bench: Bench, wood: Region, flats: readonly FlatToCut[]): Ordered {
  let left = [...flats];
  let before = wood;
  const cuts: TriedCut[] = [];
  const refused: Refused[] = [];
  while (left.length > 0) {
    let best: { tried: TriedCut; flat: FlatToCut; score: number } | null = null;
    let held: { draft: PlaneDraft; refusal: Refusal; flat: FlatToCut } | null = null;
    const idle = new Set<FlatToCut>();
    for (const flat of left) {
      const way = bestOfFlat(bench, before, flat, cuts[cuts.length - 1]);
      if (way.kind === "idle") idle.add(flat);
      else if (way.kind === "refused") held ??= { draft: way.draft, refusal: way.refusal, flat };
      else if (!best || way.score > best.score + SAME_SCORE)
        best = { tried: way.tried, flat, score: way.score };
    }
    const gone = best?.flat ?? held?.flat;
    if (best) {
      cuts.push(best.tried);
      before = best.tried.after;
    } else if (held) refused.push({ draft: held.draft, refusal: held.refusal });
    left = left.filter((flat) => flat !== gone && !idle.has(flat));
  }
  return { cuts, wood: before, cost: costOf(bench, cuts), refused };
}

type FlatWay =
  | { readonly kind: "idle" }
  | { readonly kind: "refused"; readonly draft: PlaneDraft; readonly refusal: Refusal }
  | { readonly kind: "made"; readonly tried: TriedCut; readonly score: number };

function bestOfFlat(bench: Bench, before: Region, flat: FlatToCut, last: TriedCut | undefined): FlatWay {
  let best: { tried: TriedCut; score: number } | null = null;
  let refused: FlatWay | null = null;
  for (const [rank, draft] of flat.ways.slice(0, MOST_WAYS).entries()) {
    const tried = tryCut(bench, before, draft);
    if (tried.takesMm2 < LEAST_TAKE_MM2) return { kind: "idle" };
    const refusal = tried.refusals[0];
    if (refusal) {
      refused ??= { kind: "refused", draft, refusal };
      continue;
    }
    const score = flatScore(bench, draft, tried, last) - rank * WAY_RANK_COST;
    if (!best || score > best.score + SAME_SCORE) best = { tried, score };
    if (rank === 0 && tried.guide?.kind !== "batten" && !last) break;
  }
  if (best) return { kind: "made", ...best };
  return refused ?? { kind: "idle" };
}

/** What a later way must be better by, in the units of `flatScore`. */
const WAY_RANK_COST = 12;

/** A cut that takes less is not made, mm². */
const LEAST_TAKE_MM2 = 0.02;

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
  const order = leaning ? -20000 + tried.takesMm2 : -DEPTH_ORDER_PER_MM * depthBelowFaceMm(bench, draft);
  return turnedStick + snipe + batten + order + inHand + tried.takesMm2 * 0.01;
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
  readonly done: number;
  /** The curve finished last, -1 before the first. */
  readonly last: number;
  readonly wood: Region;
  readonly cuts: readonly TriedCut[];
  readonly cost: number;
  readonly refused: readonly Refused[];
}

const BEAM_WIDTH = 10;

/** An arc's covers, best first; each with its ways, alternatives to one another. */
export type CurveWays = readonly (readonly PlaneDraft[])[];

/** An arc to be cut: its covers, and others that are only worked out when none of those can be made. */
export interface ArcToCut {
  readonly covers: CurveWays;
  readonly others: () => CurveWays;
}

/** The best order found for the curved cuts; each entry is one arc's ways of being cut, one of which is taken. */
export function orderCurves(bench: Bench, wood: Region, curves: readonly ArcToCut[]): Ordered {
  let beam: BeamState[] = [{ done: 0, last: -1, wood, cuts: [], cost: 0, refused: [] }];
  for (let step = 0; step < curves.length; step++) {
    const next = new Map<number, BeamState>();
    for (const state of beam) {
      curves.forEach((arc, i) => {
        if (state.done & (1 << i)) return;
        const grown = cutBestWay(bench, state, arc, i);
        const known = next.get(grown.done);
        if (!known || grown.cost < known.cost - SAME_SCORE) next.set(grown.done, grown);
      });
    }
    beam = [...next.values()].sort((a, b) => a.cost - b.cost || a.done - b.done).slice(0, BEAM_WIDTH);
  }
  const best = beam[0] as BeamState;
  return { cuts: best.cuts, wood: best.wood, cost: best.cost, refused: best.refused };
}

/** A rock is drawn in from the side that would leave too much wall, in steps of this, as long as it helps, degrees. */
const DRAW_IN_DEG = 5;
const MOST_DRAWN_IN = 8;

/** As `cutWithHelp`; a rock that no relief makes room for is drawn in until it can be made, rather than given up. */
function cutWithinRoom(bench: Bench, wood: Region, draft: PlaneDraft): Made {
  const whole = cutWithHelp(bench, wood, draft);
  if (whole.ok || !draft.rock) return whole;
  let rock = draft.rock;
  let refusal = whole.refusal;
  for (let tries = 0; tries < MOST_DRAWN_IN; tries++) {
    // Leaned to the left (a higher tilt) the plane's left end reaches furthest round: the refused side is given up.
    const giveUpHigh = refusal.side === "left";
    const lowDeg = giveUpHigh ? rock.lowDeg : rock.lowDeg + DRAW_IN_DEG;
    const highDeg = giveUpHigh ? rock.highDeg - DRAW_IN_DEG : rock.highDeg;
    if (highDeg - lowDeg < DRAW_IN_DEG / 2) break;
    rock = { ...rock, lowDeg, highDeg };
    const made = cutWithHelp(bench, wood, rockedWithin(bench, draft, lowDeg, highDeg));
    if (made.ok) return made;
    refusal = made.refusal;
  }
  return whole;
}

/**
 * Takes the first of an arc's covers that can be made whole, and of its ways the one that costs least; only when no
 * cover can be made whole is a rock drawn in.
 */
function cutBestWay(bench: Bench, state: BeamState, arc: ArcToCut, index: number): BeamState {
  const done = state.done | (1 << index);
  let why: Refused | null = null;
  const attempts: readonly (readonly [typeof cutWithHelp, () => CurveWays])[] = [
    [cutWithHelp, () => arc.covers],
    [cutWithHelp, arc.others],
    [cutWithinRoom, () => arc.covers],
  ];
  for (const [make, covers] of attempts) {
    for (const ways of covers()) {
      let best: BeamState | null = null;
      for (const draft of ways) {
        const made = make(bench, state.wood, draft);
        if (!made.ok) {
          why ??= { draft, refusal: made.refusal };
          continue;
        }
        const cost =
          state.cost +
          costOf(bench, made.cuts, state.cuts[state.cuts.length - 1]) +
          placeCost(bench, state.last, index, draft);
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

/** Cost of where a curve stands: beside the last one finished, or, for the first, near the gauge edge. */
function placeCost(bench: Bench, last: number, index: number, draft: PlaneDraft): number {
  if (last < 0) return ((draft.runs[0][0][0] - bench.box.minX) * bench.weights.startPer100Mm) / 100;
  return Math.abs(last - index) === 1 ? 0 : bench.weights.apart;
}

type Made =
  | { readonly ok: true; readonly cuts: readonly TriedCut[] }
  | { readonly ok: false; readonly refusal: Refusal };

/** A curved cut with what must go before it: relief where a wall would stand, then a seat where none holds it. */
export function cutWithHelp(bench: Bench, wood: Region, draft: PlaneDraft): Made {
  const cuts: TriedCut[] = [];
  let before = wood;
  let tried = tryCut(bench, before, draft);
  if (tried.takesMm2 < LEAST_TAKE_MM2) return { ok: true, cuts: [] };
  for (const side of ["left", "right"] as const) {
    if (!wallRefused(tried, side)) continue;
    const relieved = relieve(bench, before, draft, side);
    if (!relieved) return { ok: false, refusal: tried.refusals[0] as Refusal };
    cuts.push(relieved);
    before = relieved.after;
    tried = tryCut(bench, before, draft);
  }
  const refusal = tried.refusals[0];
  if (refusal) return { ok: false, refusal };
  if (!tried.seat) {
    const seated = makeSeat(bench, before, draft);
    if (seated) {
      cuts.push(...seated);
      before = (seated[seated.length - 1] as TriedCut).after;
      tried = tryCut(bench, before, draft);
    }
  }
  return { ok: true, cuts: [...cuts, tried] };
}

function wallRefused(tried: TriedCut, side: "left" | "right"): boolean {
  return tried.refusals.some((r) => r.rule === "wall" && r.side === side);
}

function relieve(bench: Bench, before: Region, draft: PlaneDraft, side: "left" | "right"): TriedCut | null {
  for (const relief of reliefsAt(bench, before, draft, side)) {
    const made = tryCut(bench, before, relief);
    if (made.refusals.length > 0) continue;
    if (!wallRefused(tryCut(bench, made.after, draft), side)) return made;
  }
  return null;
}

/**
 * Cuts that give a curved plane a seat: of all single ones that do, the best held at the least waste; else the
 * first set of several that does. A single cut is a plough's groove, a line, a step or a chamfer over the arc.
 */
function makeSeat(bench: Bench, before: Region, draft: PlaneDraft): TriedCut[] | null {
  const sets = seatMakers(bench, before, draft);
  const piece = bench.worked.find((w) => w.index === draft.shapes[0]);
  const pool = piece ? roughingPool(bench, [piece]).map((cut) => [cut]) : [];
  let best: { made: TriedCut[]; score: number } | null = null;
  for (const set of [...sets.filter((s) => s.length === 1), ...pool]) {
    const made = seatAfter(bench, before, set, draft);
    if (made && (!best || made.score > best.score + SAME_SCORE)) best = made;
  }
  best ??= evenedAfter(bench, before, [...sets.filter((s) => s.length === 1), ...pool], draft);
  if (best) return best.made;
  for (const set of sets) {
    if (set.length === 1) continue;
    const made = seatAfter(bench, before, set, draft);
    if (made) return made.made;
  }
  return null;
}

/** How many single cuts are followed by a shaving off the higher arris before a seat is given up. */
const MOST_EVENED = 12;

/** One cut that takes waste, then a shaving off the arris that still stands higher. */
function evenedAfter(
  bench: Bench,
  before: Region,
  singles: readonly (readonly PlaneDraft[])[],
  draft: PlaneDraft,
): { made: TriedCut[]; score: number } | null {
  const first = singles
    .flatMap(([cut]) => (cut ? [tryCut(bench, before, cut)] : []))
    .filter(
      (tried) =>
        tried.refusals.length === 0 && tried.guide?.kind !== "batten" && tried.takesMm2 >= LEAST_TAKE_MM2,
    )
    .sort((a, b) => b.takesMm2 - a.takesMm2)
    .slice(0, MOST_EVENED);
  let best: { made: TriedCut[]; score: number } | null = null;
  for (const tried of first) {
    for (const shaving of evenedArrises(bench, tried.after, draft)) {
      const made = seatAfter(bench, before, [tried.draft as PlaneDraft, shaving], draft);
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
): { made: TriedCut[]; score: number } | null {
  const made: TriedCut[] = [];
  let wood = before;
  for (const cut of set) {
    const tried = tryCut(bench, wood, cut);
    if (tried.refusals.length > 0 || tried.guide?.kind === "batten") return null;
    const lean = Math.abs(firstLeanDeg(cut));
    if (isFlatKind(cut.tool.plane.kind) && lean > 1 && Math.max(...tried.wallMm) > bench.limits.guideWallMm)
      return null;
    if (tried.takesMm2 < LEAST_TAKE_MM2) continue;
    made.push(tried);
    wood = tried.after;
  }
  if (made.length === 0) return null;
  const tried = tryCut(bench, wood, draft);
  if (!tried.seat || tried.refusals.length > 0) return null;
  const held = Math.min(tried.seat.ratio, bench.limits.seatWellHeldRatio) / bench.limits.seatWellHeldRatio;
  // Waste that the helping cut takes is waste the curved plane need not: it counts for it, up to a point.
  const spared = Math.min(1, made.reduce((sum, cut) => sum + cut.takesMm2, 0) / 40);
  return { made, score: held * 2 + spared - firstLeanDegOfAll(made) / 90 };
}

function firstLeanDegOfAll(cuts: readonly TriedCut[]): number {
  return cuts.reduce(
    (most, cut) => (cut.draft.kind === "plane" ? Math.max(most, Math.abs(firstLeanDeg(cut.draft))) : most),
    0,
  );
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
    if (cut.guide?.kind === "batten") cost += bench.weights.batten;
    if (cut.seat && cut.seat.ratio < bench.limits.seatWellHeldRatio) cost += bench.weights.weakSeat;
    if (cut.draft.kind === "plane") {
      cost += Math.abs(leanDeg(cut.draft.runs[0][0][2], cut.draft.cantDeg)) * bench.weights.leanPerDegree;
      if (isCurved(cut.draft)) cost += cut.takesMm2 * bench.weights.wasteLeftPerMm2;
    }
    last = cut;
  }
  return cost;
}

function planeId(draft: Draft): string {
  return draft.kind === "plane" ? draft.tool.plane.id : "saw";
}
