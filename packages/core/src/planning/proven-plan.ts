/** The plan file of a search: every figure in it taken from making the cuts again on finely flattened arcs. */
import {
  type Ring,
  regionAreaMm2,
  regionOf,
  ringFromVertices,
  ringsOf,
  type Vertex,
  verticesOf,
} from "../curve/index.ts";
import type { Plan, PlanWay } from "../cutting/index.ts";
import { FLATTEN_MM, SEARCH_FLATTEN_MM } from "../measure/index.ts";
import { shelfFile } from "../shelf/index.ts";
import { GOOD_HAND } from "./accuracy.ts";
import { linesAndBands } from "./bands.ts";
import { type Bench, type BenchOptions, layOutBench } from "./bench.ts";
import { tidy } from "./draft-cut.ts";
import { NOT_ALL_COMPARED } from "./effort.ts";
import { finishOf } from "./finish.ts";
import { type Mirror, mirrorDraft, mirrorPlanned, mirrorRefused } from "./handedness.ts";
import { keptEdgeWords } from "./kept-edge-words.ts";
import { marksFor } from "./marks.ts";
import { COMMON_WORKING, planTime } from "./minutes.ts";
import { planCuts } from "./plan-cuts.ts";
import { partsOf } from "./plan-parts.ts";
import type { PlanRequest } from "./request.ts";
import type { Found } from "./search.ts";
import { makeAll, redrawn, type Sequence } from "./sequence.ts";
import { holdingWords } from "./small-stick.ts";
import { takenAsGiven } from "./taken-as-given.ts";
import { type UncutPlace, uncutPlaces } from "./uncut.ts";
import { leftStretches } from "./uncut-stretches.ts";
import { wayFigures } from "./way-figures.ts";
import { type WayStanding, wayWords } from "./ways.ts";

export interface ProvenWay {
  readonly plan: Plan;
  /** The real bench (not mirrored) on coarsely flattened arcs: what advice is looked for on. */
  readonly bench: Bench;
  /** What was found, in the search's own frame (the gauge edge on the left). */
  readonly found: Found;
  /** The places that stay uncut, on the real bench, in the plan's order. */
  readonly places: readonly UncutPlace[];
}

/** Proves the way that is taken and writes it down as a plan, with the figures of those it was compared with. */
export function provenPlan(request: PlanRequest, standing: WayStanding): ProvenWay {
  const found = standing.taken;
  const writing = { unit: request.unit ?? "mm", inchStep: request.inchStep };
  const working = request.working ?? COMMON_WORKING;
  const hand = request.hand ?? GOOD_HAND;
  const searched = found.bench;
  const isMirrored = request.gaugeEdge === "right";
  const axisXMm = (searched.box.minX + searched.box.maxX) / 2;
  const mirror: Mirror = { axisXMm, pieces: searched.planned.pieces.length };
  const planned = isMirrored ? mirrorPlanned(searched.planned, axisXMm) : searched.planned;
  const lay = (chordTolMm: number): Bench =>
    layOutBench(planned, request.section.stick, request.shelf, {
      ...ownOptions(searched, request),
      ...(request.from ? { start: regionOf(request.from, chordTolMm) } : {}),
      chordTolMm,
    });
  const bench = lay(FLATTEN_MM);
  const coarse = lay(SEARCH_FLATTEN_MM);
  const refused = isMirrored ? found.refused.map((r) => mirrorRefused(coarse, r, mirror)) : found.refused;
  const drafts = found.sequence.cuts.map((cut) =>
    isMirrored ? mirrorDraft(bench, cut.draft, mirror) : redrawn(bench, cut.draft),
  );
  const made = makeAll(bench, bench.startRegion, drafts);
  const lines = linesAndBands(bench, request.section, made.cuts, hand);
  const { cuts, settings, times } = planCuts(bench, made.cuts, lines.marks, working, writing);
  const places = uncutPlaces(bench, coarse, made.wood, refused, writing.unit, request.section.outline);
  const uncut = places.map(({ place }) => place);
  const time = planTime(times, working);
  const figures = {
    cuts: cuts.length,
    settings,
    minutes: time.totalMinutes,
    uncut: uncut.length,
    ...wayFigures(made.cuts, lines.marks),
  };
  const others = standing.found
    .filter((other) => other !== found)
    .map((other) => comparedWay(request, other, standing));
  const placement = { cuts: made.cuts, placed: lines.cuts, hand };
  const plan: Plan = {
    format: "mouldwright/plan",
    version: 1,
    unit: "mm",
    name: request.name ?? request.section.name,
    tolerance: searched.toleranceMm,
    shelf: shelfFile(request.shelf),
    gaugeEdge: bench.gaugeEdge,
    assumed: takenAsGiven(
      { shavings: bench.shavings, working, hand },
      {
        shelf: request.shelf,
        cuts,
        marks: lines.marks,
        uncut,
        isCarriedOn: times.some(({ setting }) => setting === "carried"),
      },
      writing,
    ),
    warnings: [
      ...warningsOf(made),
      ...holdingWords(bench, made.cuts, writing),
      ...(searched.effort.isThorough ? [] : [NOT_ALL_COMPARED]),
      ...keptEdgeWords(bench, { made, cuts, marks: lines.marks, writing }),
    ],
    way: found.way,
    ways: [{ way: found.way, ...figures, why: wayWords(found, standing) }, ...others],
    standing: found.isLeast ? "proven least" : "best found",
    stick: startRing(request, bench),
    section: vertices(request.section.outline),
    planned: vertices(planned),
    parts: partsOf(bench, request.section, made.cuts),
    marks: lines.marks,
    ...(lines.bands.length > 0 ? { bands: lines.bands } : {}),
    time,
    cuts,
    // Held against the drawing as the file writes it, as the proof will read it.
    finish: finishOf(bench, ringFromVertices(vertices(request.section.outline)), made.wood, placement, uncut),
    uncut,
  };
  return { plan, bench: coarse, found, places };
}

/** The figures of a way that was not taken, read on the search's own bench. */
function comparedWay(request: PlanRequest, found: Found, standing: WayStanding): PlanWay {
  const { way, bench, sequence } = found;
  const working = request.working ?? COMMON_WORKING;
  const marks = marksFor(bench, sequence.cuts, request.hand);
  const { cuts, settings, times } = planCuts(bench, sequence.cuts, marks, working, { unit: "mm" });
  return {
    way,
    cuts: cuts.length,
    settings,
    minutes: planTime(times, working).totalMinutes,
    uncut: leftStretches(bench, sequence.wood).length,
    ...wayFigures(sequence.cuts, marks),
    why: wayWords(found, standing),
  };
}

function ownOptions(searched: Bench, request: PlanRequest): BenchOptions {
  return {
    toleranceMm: searched.toleranceMm,
    limits: searched.limits,
    shavings: searched.shavings,
    gaugeEdge: request.gaugeEdge ?? "left",
    keptEdges: searched.keptEdges,
    weights: searched.weights,
  };
}

/** The wood before any cut: the stick, or its largest piece as it stands where some of it is cut already. */
function startRing(request: PlanRequest, bench: Bench): Vertex[] {
  if (!request.from) return vertices(request.section.stick);
  const rings = ringsOf(bench.startRegion, bench.book.circles, FLATTEN_MM * 2);
  const largest = rings.reduce((a, b) => (areaOf(b) > areaOf(a) ? b : a));
  return vertices(largest);
}

function areaOf(ring: Ring): number {
  return regionAreaMm2(regionOf(ring, SEARCH_FLATTEN_MM));
}

function warningsOf(made: Sequence): string[] {
  return made.cuts.flatMap((cut, i) =>
    cut.guide?.kind === "batten"
      ? [`Cut ${i + 1} has no edge, wall or seat to run on: clamp a straight batten along its line.`]
      : [],
  );
}

function vertices(ring: Ring): Vertex[] {
  return verticesOf(ring).map((v) =>
    v[2] === undefined || v[2] === 0 ? [tidy(v[0]), tidy(v[1])] : [tidy(v[0]), tidy(v[1]), v[2]],
  );
}
