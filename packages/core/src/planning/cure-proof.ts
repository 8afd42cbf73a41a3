/**
 * Whether a cure really cures: the plan made again with it. First the quick way, in which the cuts that were found stay and
 * only what they left is planned; else the long one, the whole search again.
 */
import { difference, type Region, type Ring } from "../curve/index.ts";
import { deepestFrom } from "../cutting/index.ts";
import { DEFAULT_TOLERANCE_MM, FLATTEN_MM, OVERCUT_MM } from "../measure/index.ts";
import { mirrorSection } from "../section/index.ts";
import type { Bench } from "./bench.ts";
import { benchesFor } from "./benches-for.ts";
import { type CurveCover, curveCovers, otherCovers } from "./curves.ts";
import type { Draft, PlaneDraft } from "./draft-cut.ts";
import { floorCuts, wallCuts } from "./flats.ts";
import { type ArcToCut, orderCurves, orderFlats } from "./order.ts";
import type { PlanRequest } from "./request.ts";
import { roughingCuts } from "./roughing.ts";
import { type BenchMaker, type Found, searchWay } from "./search.ts";
import { makeAll, redrawn } from "./sequence.ts";
import { wasteOverCurves } from "./strategy.ts";
import { LEAST_TAKE_MM2, type TriedCut } from "./try-cut.ts";
import { type LeftStretch, leftStretches } from "./uncut-stretches.ts";
import type { WorkedPiece } from "./worked-piece.ts";

/** What a plan with a cure comes to; the stretches in the search's frame, the gauge edge on the left. */
export interface Proof {
  readonly left: readonly LeftStretch[];
  readonly cuts: number;
  /** How often a plane is set: once a cut, or once for each facet and each line of a curve that is crept over. */
  readonly settings: number;
}

/** How often planes are set for these cuts, those apart that take nothing. */
export function settingsOf(cuts: readonly TriedCut[]): number {
  return cuts.reduce((sum, { draft, takesMm2 }) => {
    if (takesMm2 < LEAST_TAKE_MM2) return sum;
    const isCreeping = draft.kind === "plane" && (draft.work === "ridges" || draft.work === "facets");
    return sum + (isCreeping ? draft.runs.length : 1);
  }, 0);
}

/** A cure as the proof needs it: what is then asked, and what of the plan so far no longer stands. */
export interface ProofRequest {
  readonly request: PlanRequest;
  /** Places in the planned ring (the search's frame) whose cuts are made anew. */
  readonly changed: ReadonlySet<number>;
  /** A cut that the search itself would not think of, to be made first of what is new. */
  readonly extra?: (bench: Bench) => readonly PlaneDraft[];
}

/** The cuts that were found, and after them what the cure makes possible. Null where they do not hold together. */
export function provenAfter(found: Found, { request, changed, extra }: ProofRequest): Proof | null {
  const makeBench = benchesFor(request, request.toleranceMm ?? DEFAULT_TOLERANCE_MM, found.bench.effort);
  const cantsDeg = found.bench.cantsDeg;
  const bench = makeBench({ cantsDeg });
  if (bench.planned.pieces.length !== found.bench.planned.pieces.length) return null;
  const kept = found.sequence.cuts
    .map((cut) => cut.draft)
    .filter((draft) => draft.shapes.every((index) => !changed.has(index)));
  // What is sawn off at the end is sawn off at the end still.
  const planed = kept.reduce((last, draft, i) => (draft.kind === "plane" ? i + 1 : last), 0);
  const sawn = kept.slice(planed);
  const first = kept.slice(0, planed).map((draft) => redrawn(bench, draft));
  const before = makeAll(bench, bench.startRegion, first);
  if (!before.allowed || overcutMm(bench, before.wood) > OVERCUT_MM) return null;
  const added = extra?.(bench) ?? [];
  const opened = makeAll(bench, before.wood, added);
  const more = cutsForRest(bench, opened.wood);
  const drafts = [...first, ...added, ...more, ...sawn];
  return evaluated(makeBench, request, drafts, cantsDeg);
}

/** The whole search again, the way that was taken. */
export function provenAnew(found: Found, { request }: ProofRequest): Proof | null {
  const makeBench = benchesFor(request, request.toleranceMm ?? DEFAULT_TOLERANCE_MM, found.bench.effort);
  const search = searchWay(found.way, makeBench);
  for (let step = search.next(); ; step = search.next()) {
    if (!step.done) continue;
    if (!step.value) return null;
    const { bench, sequence } = step.value;
    return evaluated(
      makeBench,
      request,
      sequence.cuts.map((cut) => cut.draft),
      bench.cantsDeg,
    );
  }
}

/** All cuts made again on finely flattened arcs, as the plan itself is proven. */
function evaluated(
  makeBench: BenchMaker,
  request: PlanRequest,
  drafts: readonly Draft[],
  cantsDeg: readonly number[],
): Proof | null {
  const fine = makeBench({ cantsDeg, chordTolMm: FLATTEN_MM });
  const made = makeAll(
    fine,
    fine.startRegion,
    drafts.map((draft) => redrawn(fine, draft)),
  );
  if (!made.allowed || overcutMm(fine, made.wood) > OVERCUT_MM) return null;
  return {
    left: leftStretches(fine, made.wood, drawnOf(request)),
    cuts: made.cuts.filter((cut) => cut.takesMm2 >= LEAST_TAKE_MM2).length,
    settings: settingsOf(made.cuts),
  };
}

/** The drawing in the search's frame. */
export function drawnOf(request: PlanRequest): Ring {
  return request.gaugeEdge === "right" ? mirrorSection(request.section).outline : request.section.outline;
}

/** How far into the planned section any of the cuts went, mm. */
export function overcutMm(bench: Bench, wood: Region): number {
  return deepestFrom(bench.planned, difference(bench.plannedRegion, wood), OVERCUT_MM).depthMm;
}

/** How many planes are tried on an arc. */
const MOST_COVERS = 3;

/** Flats, waste and curves for what still stands on the section, in the search's own manner. */
export function cutsForRest(bench: Bench, wood: Region): Draft[] {
  const left = [...new Map(leftStretches(bench, wood).map(({ piece }) => [piece.index, piece])).values()];
  const flats = left.flatMap((piece) => {
    const ways = piece.curve ? [] : waysOfFlat(bench, piece);
    return ways.length > 0 ? [{ ways }] : [];
  });
  const arcs = left.filter((piece) => piece.curve);
  const flat = orderFlats(bench, wood, flats);
  const rough = roughingCuts(bench, flat.wood, arcs, wasteOverCurves(bench, flat.wood));
  const open = orderFlats(
    bench,
    flat.wood,
    rough.map((draft) => ({ ways: [draft] })),
  );
  const curves = orderCurves(
    bench,
    open.wood,
    arcs.map((piece) => arcToCut(bench, piece)),
  );
  return [...flat.cuts, ...open.cuts, ...curves.cuts].map((cut) => cut.draft);
}

function waysOfFlat(bench: Bench, piece: WorkedPiece): PlaneDraft[] {
  const floors = floorCuts(bench, piece);
  return floors.length > 0 ? floors : wallCuts(bench, piece);
}

function arcToCut(bench: Bench, piece: WorkedPiece): ArcToCut {
  const draftsOf = (covers: readonly CurveCover[]) =>
    covers.slice(0, MOST_COVERS).map((cover) => cover.drafts);
  return {
    covers: draftsOf(curveCovers(bench, piece)),
    others: () => draftsOf(otherCovers(bench, piece)),
  };
}
