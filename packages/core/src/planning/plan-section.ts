/** From a drawing and a shelf to a proven plan. */
import { type Ring, type Vertex, verticesOf } from "../curve/index.ts";
import type { CuttingLimits, Plan } from "../cutting/index.ts";
import {
  DEFAULT_TOLERANCE_MM,
  FLATTEN_MM,
  fine,
  LEAST_TOLERANCE_MM,
  type Outcome,
  refused,
  trouble,
} from "../measure/index.ts";
import { mirrorSection, type Section } from "../section/index.ts";
import { type Shelf, shelfFile } from "../shelf/index.ts";
import { type Bench, layOutBench, type Shavings } from "./bench.ts";
import { tidy } from "./draft-cut.ts";
import { finishOf } from "./finish.ts";
import { type Mirror, mirrorDraft, mirrorPlanned, mirrorRefused, mirrorShelf } from "./handedness.ts";
import { marksFor } from "./marks.ts";
import { normalise } from "./normalise.ts";
import { orderCurves, orderFlats, type Refused } from "./order.ts";
import { COMMON_WORKING, type Working } from "./passes.ts";
import { planCuts } from "./plan-cuts.ts";
import { partsOf } from "./plan-parts.ts";
import { roughingCuts } from "./roughing.ts";
import { makeAll, redrawn, type Sequence, tidied } from "./sequence.ts";
import { wantedCuts, wasteOverCurves } from "./strategy.ts";
import { uncutPlaces } from "./uncut.ts";
import type { BenchUnit } from "./words.ts";

export interface PlanRequest {
  readonly section: Section;
  readonly shelf: Shelf;
  /** How far the finished face may stand from the drawing, mm; 0.2 unless given. */
  readonly toleranceMm?: number;
  /** Unit of the bench sentences; the file's numbers are always mm. */
  readonly unit?: BenchUnit;
  readonly name?: string;
  /** Side of the drawing on which the stick's gauge edge lies; left unless given. */
  readonly gaugeEdge?: "left" | "right";
  readonly limits?: CuttingLimits;
  readonly shavings?: Shavings;
  readonly working?: Working;
}

export interface PlanProgress {
  readonly done: number;
  readonly of: number;
  readonly says: string;
}

const STEPS = 6;

/** Plans in one go; see `planSteps`. */
export function planSection(request: PlanRequest): Outcome<Plan> {
  const steps = planSteps(request);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/**
 * Plans a section, handing control back between its steps. The plan is proven: every cut in it was made, in order,
 * on the wood as it then stands, and none is refused by any rule of the cutting model; what the shelf cannot do
 * stands in `uncut`. Refuses an empty shelf and a tolerance below what the kernel can tell apart.
 */
export function* planSteps(request: PlanRequest): Generator<PlanProgress, Outcome<Plan>> {
  const toleranceMm = request.toleranceMm ?? DEFAULT_TOLERANCE_MM;
  if (request.shelf.planes.length === 0) return refused(trouble("shelf-empty", "planes", {}));
  if (!(toleranceMm >= LEAST_TOLERANCE_MM)) {
    return refused(
      trouble("plan-tolerance-too-small", "tolerance", { toleranceMm, leastMm: LEAST_TOLERANCE_MM }),
    );
  }
  yield progress(0, "reading the section");
  // The search always sees the gauge edge on its left; see handedness.ts.
  const mirrored = request.gaugeEdge === "right";
  const section = mirrored ? mirrorSection(request.section) : request.section;
  const shelf = mirrored ? mirrorShelf(request.shelf) : request.shelf;
  const normalised = normalise(section, shelf, toleranceMm);
  const options = {
    toleranceMm,
    ...(request.limits ? { limits: request.limits } : {}),
    ...(request.shavings ? { shavings: request.shavings } : {}),
  };
  const bench = layOutBench(normalised.planned, section.stick, shelf, options);
  if (bench.worked.length === 0) return refused(trouble("section-nothing-to-cut", "section", {}));
  yield progress(1, "finding a plane for each part");
  const wanted = wantedCuts(bench);
  yield progress(2, "taking the waste");
  const first = orderFlats(bench, bench.stickRegion, wanted.flats);
  const arcs = bench.worked.filter((piece) => piece.curve);
  const rough = roughingCuts(bench, first.wood, arcs, wasteOverCurves(bench, first.wood));
  const flats = rough.length > 0 ? orderFlats(bench, bench.stickRegion, [...wanted.flats, ...rough]) : first;
  yield progress(3, "finding an order for the curves");
  const curves = orderCurves(bench, flats.wood, wanted.curves);
  yield progress(4, "leaving out what is not needed");
  const drafts = [...flats.cuts, ...curves.cuts].map((cut) => cut.draft);
  const sequence = tidied(
    bench,
    bench.stickRegion,
    makeAll(bench, bench.stickRegion, [...drafts, ...wanted.saws]),
  );
  yield progress(5, "proving every cut");
  return fine(proven(request, bench, sequence, [...flats.refused, ...curves.refused], mirrored));
}

function progress(done: number, says: string): PlanProgress {
  return { done, of: STEPS, says };
}

/** The plan of a sequence, every figure taken from cutting it again on finely flattened arcs. */
function proven(
  request: PlanRequest,
  searched: Bench,
  sequence: Sequence,
  refusals: readonly Refused[],
  mirrored: boolean,
): Plan {
  const unit = request.unit ?? "mm";
  const working = request.working ?? COMMON_WORKING;
  const axisXMm = (searched.box.minX + searched.box.maxX) / 2;
  const mirror: Mirror = { axisXMm, pieces: searched.planned.pieces.length };
  const planned = mirrored ? mirrorPlanned(searched.planned, axisXMm) : searched.planned;
  const options = {
    toleranceMm: searched.toleranceMm,
    limits: searched.limits,
    shavings: searched.shavings,
    gaugeEdge: request.gaugeEdge ?? "left",
  } as const;
  const bench = layOutBench(planned, request.section.stick, request.shelf, {
    ...options,
    chordTolMm: FLATTEN_MM,
  });
  const coarse = mirrored ? layOutBench(planned, request.section.stick, request.shelf, options) : searched;
  const refused = mirrored ? refusals.map((r) => mirrorRefused(coarse, r, mirror)) : refusals;
  const drafts = sequence.cuts.map((cut) =>
    mirrored ? mirrorDraft(bench, cut.draft, mirror) : redrawn(bench, cut.draft),
  );
  const made = makeAll(bench, bench.stickRegion, drafts);
  const marks = marksFor(bench, made.cuts);
  const cuts = planCuts(bench, made.cuts, marks, working, unit);
  const settings = cuts.length > 0 ? cuts[cuts.length - 1].setting : 0;
  const minutes = Math.round(cuts.reduce((sum, cut) => sum + cut.minutes, 0) * 10) / 10;
  const way = "flat";
  return {
    format: "mouldwright/plan",
    version: 1,
    unit: "mm",
    name: request.name ?? request.section.name,
    tolerance: searched.toleranceMm,
    shelf: shelfFile(request.shelf),
    assumed: [...request.shelf.assumed, ...assumptions(bench, working)],
    warnings: warningsOf(made),
    way,
    ways: [
      {
        way,
        cuts: cuts.length,
        settings,
        minutes,
        why: "The stick lies flat on its back; it is the plainest way to hold it.",
      },
    ],
    standing: "best found",
    stick: vertices(request.section.stick),
    section: vertices(request.section.outline),
    planned: vertices(planned),
    parts: partsOf(bench, request.section, made.cuts),
    marks,
    cuts,
    finish: finishOf(bench, request.section.outline, made.wood, marks),
    uncut: uncutPlaces(bench, coarse, made.wood, refused, unit),
  };
}

function assumptions(bench: Bench, working: Working): string[] {
  const { heavyMm, ordinaryMm } = bench.shavings;
  return [
    `Shavings of ${heavyMm} mm for waste and ${ordinaryMm} mm for shaping.`,
    `${working.setMinutes} minutes to set a plane, ${working.secondsPerMetre} seconds a stroke of one metre, one stick of ${working.lengthM} m.`,
    "A good hand: gauge line 0.1 mm, plane sideways 0.2 mm, depth 0.15 mm, 95 times in 100.",
  ];
}

function warningsOf(made: Sequence): string[] {
  const warnings: string[] = [];
  made.cuts.forEach((cut, i) => {
    if (cut.guide?.kind === "batten") {
      warnings.push(
        `Cut ${i + 1} has no edge, wall or seat to run on: clamp a straight batten along its line.`,
      );
    }
  });
  return warnings;
}

function vertices(ring: Ring): Vertex[] {
  return verticesOf(ring).map((v) =>
    v[2] === undefined || v[2] === 0 ? [tidy(v[0]), tidy(v[1])] : [tidy(v[0]), tidy(v[1]), v[2]],
  );
}
