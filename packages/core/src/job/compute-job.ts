import { ringFromVertices } from "../curve/index.ts";
import type { Plan } from "../cutting/index.ts";
import {
  cataloguedTrouble,
  fine,
  type Outcome,
  refused,
  SAME_POINT_MM,
  type Trouble,
} from "../measure/index.ts";
import { type PlanProgress, type PlanRequest, planSteps } from "../planning/index.ts";
import {
  bandOnShelf,
  gaugeEdgePoint,
  inspectSection,
  type LaidPart,
  layOutSection,
  layParts,
  type PartSpec,
  type Section,
} from "../section/index.ts";
import { readShelf, type Shelf } from "../shelf/index.ts";
import { backOf, type Job, partsOf, pathOf } from "./job-schema.ts";
import { planesMeant } from "./left-out.ts";
import { startedOf } from "./started.ts";
import { wayRequestOf } from "./way-request.ts";

export interface ComputedJob {
  readonly section: Section;
  readonly shelf: Shelf;
  readonly plan: Plan;
}

export interface JobInputs {
  /** The shelf, where the job only names its file, or where the maker gives another. */
  readonly shelf?: Shelf;
  /** Set while a drawing is being dragged; see `PlanRequest`. */
  readonly quick?: boolean;
  /** The plan before, of a drawing that has moved a little since; see `PlanRequest`. */
  readonly like?: Plan;
}

/**
 * The section a job wants, in its stick, mm. Parts are built as by `buildSection`, bands of a count alone with the
 * soles of the shelf, where the job holds one or one is given; a path is taken as drawn, snapped
 * to a millionth of a millimetre. Troubles name their place in the job file.
 */
export function sectionOfJob(job: Job, inputs: JobInputs = {}): Outcome<Section> {
  const section = drawnSectionOfJob(job, inputs);
  if (!section.ok) return section;
  const { refusals, warnings } = inspectSection(section.value);
  const [first, ...more] = refusals;
  return first === undefined ? fine(section.value, warnings) : refused(first, ...more);
}

/**
 * The same before anything is said against it: the outline may cross itself or stand out of the stick. Takes a small part
 * of the time, for a picture while something is being pulled.
 */
export function drawnSectionOfJob(job: Job, inputs: JobInputs = {}): Outcome<Section> {
  const drawn = partsOf(job.section);
  if (drawn !== undefined) {
    const laid = withBandsOnShelf(drawn, job, inputs);
    if (!laid.ok) return laid;
    const parts = laid.value;
    return layOutSection({
      name: job.name,
      stick: job.stick,
      startHeightMm: job.section.startHeightMm,
      parts,
      back: backOf(job.section),
    });
  }
  const path = pathOf(job.section);
  if (path === undefined) return refused(cataloguedTrouble("job-section-missing", "section", {}));
  const { widthMm, thicknessMm } = job.stick;
  return fine({
    name: job.name,
    stick: ringFromVertices([
      [0, 0],
      [widthMm, 0],
      [widthMm, thicknessMm],
      [0, thicknessMm],
    ]),
    outline: ringFromVertices(path.map(([x, y, bulge]) => [snapped(x), snapped(y), bulge ?? 0])),
    freeSpans: [],
    named: [],
  });
}

/**
 * The parts of a job's section where they stand, walked from the gauge edge; also where they miss the far edge, which a
 * section may not. A section that is held as a path has none.
 */
export function chainOfJob(job: Job, inputs: JobInputs = {}): Outcome<readonly LaidPart[]> {
  const drawn = partsOf(job.section);
  if (drawn === undefined) return fine([]);
  const parts = withBandsOnShelf(drawn, job, inputs);
  if (!parts.ok) return parts;
  const { widthMm, thicknessMm } = job.stick;
  const start = gaugeEdgePoint(job.section.startHeightMm ?? thicknessMm);
  return layParts(parts.value, start, widthMm, "section.parts");
}

/** Bands made with the planes there are: hollows make reeds, rounds flutes. Without a shelf they stay as they are drawn. */
function withBandsOnShelf(
  parts: readonly PartSpec[],
  job: Job,
  inputs: JobInputs,
): Outcome<readonly PartSpec[]> {
  if (!parts.some((part) => part.kind === "band")) return fine(parts);
  const shelf = shelfOfJob(job, inputs);
  if (!shelf.ok) return fine(parts);
  const laid: PartSpec[] = [];
  for (const [index, part] of parts.entries()) {
    if (part.kind !== "band") {
      laid.push(part);
      continue;
    }
    const kind = part.of === "reeds" ? "hollow" : "round";
    const soles = shelf.value.planes.flatMap((plane) => (plane.kind === kind ? [plane] : []));
    const band = bandOnShelf(part, soles, `section.parts[${index}]`);
    if (!band.ok) return band;
    laid.push(band.value);
  }
  return fine(laid);
}

function snapped(valueMm: number): number {
  return Math.round(valueMm / SAME_POINT_MM) * SAME_POINT_MM;
}

/**
 * The shelf of a job: the one given, or the one inside the job. Refuses (`job-shelf-missing`) a job that only names
 * a file: the core opens none; whoever called has to.
 */
export function shelfOfJob(job: Job, inputs: JobInputs = {}): Outcome<Shelf> {
  if (inputs.shelf !== undefined) return fine(inputs.shelf);
  if (job.shelf === undefined || "file" in job.shelf) {
    return refused(cataloguedTrouble("job-shelf-missing", "shelf", {}));
  }
  return readShelf(job.shelf, { at: "shelf", tellIn: job.unit ?? "mm" });
}

/** The name of the shelf file that a job refers to, in the job's own folder; null if it needs none. */
export function shelfFileOfJob(job: Job): string | null {
  return job.shelf !== undefined && "file" in job.shelf ? job.shelf.file : null;
}

/**
 * What a job computes, in order: section, shelf, plan; of a stick that is begun, the plan of the rest. Hands control back about every 8 ms with the progress, so
 * that whoever drives it may stop; the warnings of all three steps come with the value.
 */
export function* jobSteps(job: Job, inputs: JobInputs = {}): Generator<PlanProgress, Outcome<ComputedJob>> {
  const section = sectionOfJob(job, inputs);
  if (!section.ok) return section;
  const shelf = shelfOfJob(job, inputs);
  if (!shelf.ok) return shelf;
  const without = leftOutOf(job, shelf.value);
  if (!without.ok) return without;
  const started = startedOf(job, shelf.value);
  if (!started.ok) return started;
  const request = planRequestOf(job, section.value, started.value?.shelf ?? shelf.value);
  const plan = yield* planSteps({
    ...request,
    without: without.value,
    ...(started.value === null ? {} : { from: started.value.wood }),
    ...(inputs.quick === true ? { quick: true } : {}),
    ...(inputs.like === undefined ? {} : { like: inputs.like }),
  });
  if (!plan.ok) return plan;
  const warnings: readonly Trouble[] = [...section.warnings, ...shelf.warnings, ...plan.warnings];
  return fine({ section: section.value, shelf: shelf.value, plan: plan.value }, warnings);
}

/** What the planner is asked for by a job; planes left out as the job names them (`leftOutOf` gives their ids). */
export function planRequestOf(job: Job, section: Section, shelf: Shelf): PlanRequest {
  return { ...wayRequestOf(job), section, shelf, name: job.name, unit: job.unit ?? "mm" };
}

/** Ids of the planes that the job leaves out; refused where the shelf has no such plane, or no other. */
export function leftOutOf(job: Job, shelf: Shelf): Outcome<readonly string[]> {
  return planesMeant(shelf, job.way?.without ?? [], (index) => `way.without[${index}]`);
}

/** `jobSteps` run to its end. */
export function computeJob(job: Job, inputs: JobInputs = {}): Outcome<ComputedJob> {
  const steps = jobSteps(job, inputs);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
