/** One way of working, planned: from the wood as it stands to a tidied sequence of cuts and what it costs. */
import type { Region } from "../curve/index.ts";
import { cutAway, leanDeg } from "../cutting/index.ts";
import { normaliseDeg, SAME_SCORE } from "../measure/index.ts";
import { type Bench, type BenchOptions, layOutBench } from "./bench.ts";
import { FLAT_CANTS_DEG } from "./cants.ts";
import { isCurved, type PlaneDraft, type SawDraft } from "./draft-cut.ts";
import { withEdgeLast } from "./edge-last.ts";
import { orderFlatsApart } from "./grooves-apart.ts";
import { keptEdgeCost } from "./kept-edge.ts";
import { costOf, type Ordered, orderCurves, type Refused } from "./order.ts";
import { roughingCuts } from "./roughing.ts";
import { withFloorsRunOn } from "./run-on.ts";
import { isQuicker, type Rip, savesMinutes, sawnWaste } from "./sawn-waste.ts";
import { makeAll, SAME_LEFT_MM2, type Sequence, tidied, withoutIdleRuns } from "./sequence.ts";
import { type Wanted, wantedCuts, wasteOverCurves } from "./strategy.ts";
import { withStripsClosed } from "./strips-closed.ts";
import { isClumsy } from "./try-cut.ts";
import { leftStretches } from "./uncut-stretches.ts";
import { withWasteMoved } from "./waste-moved.ts";
import type { Way } from "./way.ts";
import { withEdgesWhole } from "./whole-edges.ts";
import { outwardTiltDeg, type WorkedPiece } from "./worked-piece.ts";

export interface Found {
  readonly way: Way;
  readonly bench: Bench;
  readonly sequence: Sequence;
  readonly refused: readonly Refused[];
  /** Soft cost of the whole, the weights over all cuts; places left uncut count as refused cuts. */
  readonly cost: number;
  readonly cutsMm2Left: number;
  /** Set where no other order of the cuts that were thought of costs less. */
  readonly isLeast?: boolean;
}

export type BenchMaker = (options: Partial<BenchOptions>) => Bench;

/** Progress between the parts of a search: hands control back, with a word on what comes next. */
export type SearchStep = string;

/**
 * Plans one way. Flat: the stick on its back, bevels sawn last. Bevelled: the spring bevels sawn first and the stick
 * lying on one of them, planes square to it. Canted: the square stick held in a canted jaw, bevels sawn last.
 * Null where the way does not exist (no bevel to saw, curves already upright).
 */
export function* searchWay(way: Way, makeBench: BenchMaker): Generator<SearchStep, Found | null> {
  const flat = makeBench({});
  const saws = wantedCuts(flat).saws;
  yield "finding a plane for each part";
  const laid = layFor(way, flat, saws);
  if (!laid) return null;
  const whole = makeBench(laid.options);
  // The rip takes the far edge: it is not for a stick that is to keep it.
  const rip = whole.keptEdges.includes("far edge") ? null : sawnWaste(whole, whole.startRegion);
  if (rip?.isSure) return yield* searchLaid(way, flat, withRip(laid, whole, rip, makeBench));
  const planed = yield* searchLaid(way, flat, { ...laid, bench: whole });
  const sawnBefore = laid.before.length;
  if (!rip || !savesMinutes(whole, whole.startRegion, planed.sequence.cuts.slice(sawnBefore), rip))
    return planed;
  yield "trying it with the waste sawn off";
  const sawn = yield* searchLaid(way, flat, withRip(laid, whole, rip, makeBench));
  return isAsWhole(sawn, planed) && isQuicker(whole, sawn.sequence.cuts, planed.sequence.cuts)
    ? sawn
    : planed;
}

/** Whether one finding leaves no more uncut than another. */
function isAsWhole(one: Found, than: Found): boolean {
  return (
    one.sequence.allowed &&
    one.refused.length <= than.refused.length &&
    one.cutsMm2Left <= than.cutsMm2Left + SAME_LEFT_MM2
  );
}

/** Plans the face of a stick that lies as it is to lie, on its own bench. */
function* searchLaid(
  way: Way,
  flat: Bench,
  { bench, before, after }: Laid & { readonly bench: Bench },
): Generator<SearchStep, Found> {
  const wanted = wantedCuts(bench);
  yield "taking the waste";
  const arcs = bench.worked.filter((piece) => piece.curve);
  const face = cutFaceRunOn(bench, wanted, arcs);
  yield "finding an order for the curves";
  // No waste is taken for a curve that cannot be cut: what stands there is a carver's or another shelf's.
  const lost = new Set(face.curves.refused.flatMap((r) => r.draft.shapes));
  const { flats, curves } =
    lost.size === 0
      ? face
      : cutFace(
          bench,
          wanted,
          arcs.filter((arc) => !lost.has(arc.index)),
        );
  yield "leaving out what is not needed";
  const drafts = [...before, ...[...flats.cuts, ...curves.cuts].map((cut) => cut.draft), ...after];
  const needed = tidied(
    bench,
    flat.startRegion,
    withEdgesWhole(bench, flat.startRegion, makeAll(bench, flat.startRegion, drafts)),
  );
  const whole = withWasteMoved(bench, flat.startRegion, needed);
  const sequence = withEdgeLast(bench, flat.startRegion, withoutIdleRuns(bench, flat.startRegion, whole));
  const cutsMm2Left = wasteOverCurves(bench, sequence.wood);
  const refused = [...flats.refused, ...curves.refused];
  const cost =
    costOf(bench, sequence.cuts) +
    sequence.cuts.reduce((sum, cut) => sum + keptEdgeCost(bench, cut, cut.before), 0) +
    bench.weights.refused * (refused.length + wanted.none.length) +
    bench.weights.drawnIn * leftStretches(bench, sequence.wood).length;
  return { way, bench, sequence, refused, cost, cutsMm2Left };
}

/**
 * The face with each floor as wide as it is drawn; where that leaves a curve nothing to ride on or a cut no hand would
 * make, with floors run on out of the wood if that makes the whole cheaper.
 */
function cutFaceRunOn(bench: Bench, wanted: Wanted, arcs: readonly WorkedPiece[]): Face {
  const face = cutFace(bench, wanted, arcs);
  if (!bench.effort.mayWorkFaceAgain || !isTroubled(face)) return face;
  const flats = withFloorsRunOn(bench, bench.startRegion, wanted.flats);
  if (flats === wanted.flats) return face;
  const runOn = cutFace(bench, { ...wanted, flats }, arcs);
  return costOfFace(bench, runOn) < costOfFace(bench, face) - SAME_SCORE ? runOn : face;
}

function isTroubled({ flats, curves }: Face): boolean {
  return [...flats.cuts, ...curves.cuts].some(
    (cut) => isClumsy(cut) || (cut.draft.kind === "plane" && isCurved(cut.draft) && !cut.seat),
  );
}

/** Flats, waste over the given arcs, then the curves, each in the best order found. */
function cutFace(bench: Bench, wanted: Wanted, arcs: readonly WorkedPiece[]): Face {
  const start = bench.startRegion;
  const first = orderFlatsApart(bench, start, wanted.flats);
  const waste = wasteOverCurves(bench, first.wood);
  const careful = roughingCuts(bench, first.wood, arcs, waste);
  const cut = (rough: readonly PlaneDraft[]): Face => {
    const open =
      rough.length > 0
        ? orderFlatsApart(bench, start, [...wanted.flats, ...rough.map((draft) => ({ ways: [draft] }))])
        : first;
    const { cuts, wood } = withStripsClosed(bench, start, { ...open, allowed: true }, STRIP_MM2);
    const flats = { ...open, cuts, wood };
    return { flats, curves: orderCurves(bench, flats.wood, wanted.curves) };
  };
  const face = cut(careful);
  if (!bench.effort.isThorough) return face;
  // Waste in the way of a flat's groove may be worth moving that groove for.
  const bold = roughingCuts(bench, first.wood, arcs, waste, true);
  if (keysOf(bold) === keysOf(careful)) return face;
  const moved = cut(bold);
  return costOfFace(bench, moved) < costOfFace(bench, face) - SAME_SCORE ? moved : face;
}

/** Waste that may be left elsewhere for a strip that is closed, mm². */
const STRIP_MM2 = 2;

interface Face {
  readonly flats: Ordered;
  readonly curves: Ordered;
}

function keysOf(drafts: readonly PlaneDraft[]): string {
  return drafts.map(({ key }) => key).join(" ");
}

function costOfFace(bench: Bench, { flats, curves }: Face): number {
  return flats.cost + curves.cost + flats.refused.length * bench.weights.refused;
}

/** How the stick is laid for a way: what its bench is made with, and what is sawn before and after the planing. */
interface Laid {
  readonly options: Partial<BenchOptions>;
  readonly before: readonly SawDraft[];
  readonly after: readonly SawDraft[];
}

function layFor(way: Way, flat: Bench, saws: readonly SawDraft[]): Laid | null {
  if (way === "flat") return { options: {}, before: [], after: saws };
  if (way === "bevelled") {
    const cants = [...new Set(saws.flatMap((saw) => bevelCant(flat, saw)))];
    if (cants.length === 0) return null;
    let start: Region = flat.startRegion;
    for (const saw of saws) start = cutAway(start, saw.sweep);
    return { options: { start, cantsDeg: [...FLAT_CANTS_DEG, ...cants] }, before: saws, after: [] };
  }
  const cant = bestCantDeg(flat);
  if (cant === null) return null;
  return { options: { cantsDeg: [...FLAT_CANTS_DEG, cant] }, before: [], after: saws };
}

/** The way with its waste ripped off before anything is planed, and the bench for what is left. */
function withRip(
  laid: Laid,
  whole: Bench,
  { draft }: Rip,
  makeBench: BenchMaker,
): Laid & { readonly bench: Bench } {
  const options = { ...laid.options, start: cutAway(whole.startRegion, draft.sweep) };
  return { options, before: [...laid.before, draft], after: laid.after, bench: makeBench(options) };
}

/** Bevels smaller than this give the stick nothing to lie on, mm. */
const LEAST_BED_MM = 6;
/** A jaw is canted no further than this, degrees (common practice, no source). */
const MOST_JAW_DEG = 60;

/** How the stick is turned when it lies on a sawn bevel: the bevel's outward side looks down. */
function bevelCant(bench: Bench, saw: SawDraft): number[] {
  const piece = bench.planned.pieces[saw.shapes[0]];
  if (Math.hypot(saw.to.x - saw.from.x, saw.to.y - saw.from.y) < LEAST_BED_MM) return [];
  const cant = Math.round(normaliseDeg(180 - outwardTiltDeg(piece, 0.5)) * 1e6) / 1e6;
  return Math.abs(cant) <= MOST_JAW_DEG ? [cant] : [];
}

/** A cant is worth a jaw only from here, degrees: planes held nearer to upright are held true anyway. */
const LEAST_CANT_DEG = 10;
const MOST_CANT_DEG = 45;

/** The whole-degree cant that brings the face's curves most upright, weighted by their length; null where none is worth it. */
export function bestCantDeg(bench: Bench): number | null {
  let leans = 0;
  let lengths = 0;
  for (const piece of bench.worked) {
    if (!piece.curve) continue;
    const middle = (piece.curve.lowTiltDeg + piece.curve.highTiltDeg) / 2;
    if (Math.abs(leanDeg(middle, 0)) > 90) continue;
    leans += middle * piece.lengthMm;
    lengths += piece.lengthMm;
  }
  if (lengths === 0) return null;
  const cant = Math.max(-MOST_CANT_DEG, Math.min(MOST_CANT_DEG, -Math.round(leans / lengths)));
  return Math.abs(cant) < LEAST_CANT_DEG ? null : cant;
}

/** A bench maker for one planned section and shelf, options laid over the plan's own; without any it is always the same bench. */
export function benchMaker(
  planned: Parameters<typeof layOutBench>[0],
  stick: Parameters<typeof layOutBench>[1],
  shelf: Parameters<typeof layOutBench>[2],
  own: BenchOptions,
): BenchMaker {
  let plain: Bench | undefined;
  return (options) => {
    if (Object.keys(options).length > 0) return layOutBench(planned, stick, shelf, { ...own, ...options });
    plain ??= layOutBench(planned, stick, shelf, own);
    return plain;
  };
}
