/** What `plan` plans: a section and a shelf from files, or what is still to do on a half-done stick. */
import { extentsOf, type Ring, ringFromVertices } from "mouldwright/curve";
import { type Plan, readPlan } from "mouldwright/cutting";
import {
  type Job,
  leftOutOf,
  planesMeant,
  planRequestOf,
  readMeasured,
  sectionOfJob,
  startedOf,
} from "mouldwright/job";
import type { LengthUnit, Outcome, Trouble } from "mouldwright/measure";
import { type Measured, type PlanRequest, standingAfter } from "mouldwright/planning";
import type { Section } from "mouldwright/section";
import { gaugeEdgeOf } from "mouldwright/sheets";
import { readShelf, type Shelf } from "mouldwright/shelf";
import { wrongValue } from "./arguments.ts";
import { type Command, readPlacement, readTolerance, troublesOfRefusal } from "./command.ts";
import {
  notRead,
  type Read,
  readSectionInput,
  readShelfInput,
  type ShelfInput,
  unitOf,
  unitOfPlan,
} from "./input.ts";
import { onlyName } from "./names.ts";
import {
  type FromOptions,
  readFromOptions,
  readWayOptions,
  type WayOptions,
  withOptions,
} from "./plan-options.ts";
import { MOST_INPUT_BYTES, MOST_PLAN_BYTES, readTextFile } from "./read-file.ts";

/** Something noticed, and the file it was noticed in. */
export interface Noticed {
  readonly file: string;
  readonly troubles: readonly Trouble[];
}

export interface PlanInput {
  readonly request: PlanRequest;
  /** Name of the moulding: the job's, the section's or the plan's. */
  readonly name: string;
  readonly unit: LengthUnit;
  /** The file that a refusal of the planner is about. */
  readonly file: string;
  /** Everything that was read, which nothing may be written over. */
  readonly files: readonly string[];
  readonly noticed: readonly Noticed[];
}

/** Everything a plan is made from, as the words of the command say; what they say wrongly is refused first. */
export async function readPlanInput(command: Command): Promise<Read<PlanInput>> {
  const { given } = command;
  const from = readFromOptions(given);
  if (!from.ok) return notRead("", from);
  const path =
    from.value !== null && given.names.length === 0 ? null : onlyName(given, "a section file or a job");
  if (path?.ok === false) return notRead("", path);
  const options = readWayOptions(given, command.askedUnit ?? "mm");
  if (!options.ok) return notRead("", options);
  const tolerance = readTolerance(command);
  if (!tolerance.ok) return tolerance;
  const said = { options: options.value, toleranceMm: tolerance.value };
  if (from.value !== null) return goOn(command, from.value, path?.value ?? null, said);
  return begin(command, path?.value ?? "", said);
}

interface Said {
  readonly options: WayOptions;
  readonly toleranceMm: number | undefined;
}

/** A whole stick: section and shelf as they are given. */
async function begin(command: Command, path: string, said: Said): Promise<Read<PlanInput>> {
  const placement = readPlacement(command);
  if (!placement.ok) return placement;
  const input = await readSectionInput(path, placement.value, command.given.values.get("shelf"));
  if (!input.ok) return input;
  const { section, job } = input.value;
  const shelf = await readShelfInput(
    command.given.values.get("shelf"),
    job,
    path,
    unitOf(command.askedUnit, job),
  );
  if (!shelf.ok) return shelf;
  const without = leftOut(command, job, shelf.value, said.options, path);
  if (!without.ok) return without;
  const unit = unitOf(command.askedUnit, job);
  const name = job?.name ?? section.name;
  const started = startedOf(job ?? {}, shelf.value.shelf);
  if (!started.ok) return notRead(path, started);
  const { shelf: real = shelf.value.shelf, wood } = started.value ?? {};
  return whole({
    request: {
      ...requestOf(job, section, real, said),
      name,
      unit,
      without: without.value,
      ...(wood === undefined ? {} : { from: wood }),
    },
    name,
    unit,
    file: path,
    files: [path, shelf.value.file],
    noticed: [
      { file: path, troubles: input.warnings },
      { file: shelf.value.file, troubles: shelf.warnings },
    ],
  });
}

/** A half-done stick: what the plan does not say is taken from the section and the shelf that are given. */
async function goOn(
  command: Command,
  from: FromOptions,
  path: string | null,
  said: Said,
): Promise<Read<PlanInput>> {
  const { planPath, after, measuredPath } = from;
  const text = await readTextFile(planPath, MOST_PLAN_BYTES);
  if (!text.ok) return notRead(planPath, text);
  const plan = readPlan(text.value);
  if (!plan.ok) return notRead(planPath, plan);
  const cuts = plan.value.cuts.length;
  if (after < 0 || after > cuts) {
    const wanted =
      cuts === 0 ? "0: the plan has no cut" : `a whole number from 0 to ${cuts}, the cuts of that plan`;
    return notRead("", wrongValue("after", command.given.values.get("after") ?? "", wanted));
  }
  const drawn = await sectionToFinish(command, plan.value, path);
  if (!drawn.ok) return drawn;
  const { job } = drawn.value;
  const shelf = await shelfToFinish(command, plan.value, planPath, path, job);
  if (!shelf.ok) return shelf;
  const made = madeOn(shelf.value.shelf, drawn.value.section, job, path ?? planPath);
  if (!made.ok) return made;
  const section = made.value;
  const without = leftOut(command, job, shelf.value, said.options, path ?? planPath);
  if (!without.ok) return without;
  const measured = await measurements(measuredPath, plan.value, shelf.value.shelf, after);
  if (!measured.ok) return measured;
  const started = standingAfter(plan.value, shelf.value.shelf, after, measured.value);
  const unit = job === null ? unitOfPlan(command.askedUnit, plan.value) : unitOf(command.askedUnit, job);
  const name = job?.name ?? (path === null ? plan.value.name : section.name);
  const own = requestOf(job, section, started.shelf, said);
  return whole({
    request: {
      ...own,
      name,
      unit,
      without: without.value,
      from: started.wood,
      toleranceMm: own.toleranceMm ?? plan.value.tolerance,
      gaugeEdge: own.gaugeEdge ?? gaugeEdgeOf(plan.value),
    },
    name,
    unit,
    file: path ?? planPath,
    files: [
      planPath,
      ...(path === null ? [] : [path]),
      shelf.value.file,
      ...(measuredPath === undefined ? [] : [measuredPath]),
    ],
    noticed: [
      { file: path ?? planPath, troubles: drawn.warnings },
      { file: shelf.value.file, troubles: shelf.warnings },
      { file: measuredPath ?? "", troubles: measured.warnings },
    ],
  });
}

/** The section with its bands made on the shelf that is really there; any other stays as it was read. */
function madeOn(shelf: Shelf, section: Section, job: Job | null, path: string): Read<Section> {
  if (job?.section.parts?.some((part) => part.kind === "band") !== true) {
    return { ok: true, value: section, warnings: [] };
  }
  const made = sectionOfJob(job, { shelf });
  return made.ok ? made : notRead(path, made);
}

function whole(value: PlanInput): Read<PlanInput> {
  return { ok: true, value, warnings: [] };
}

function requestOf(
  job: Job | null,
  section: Section,
  shelf: Shelf,
  { options, toleranceMm }: Said,
): PlanRequest {
  const own = job === null ? { section, shelf } : planRequestOf(job, section, shelf);
  return {
    ...own,
    ...withOptions(own, options),
    ...(toleranceMm === undefined ? {} : { toleranceMm }),
  };
}

interface Drawn {
  readonly section: Section;
  readonly job: Job | null;
}

/** The section that is given, else the one the plan was made for. */
async function sectionToFinish(command: Command, plan: Plan, path: string | null): Promise<Read<Drawn>> {
  const placement = readPlacement(command);
  if (!placement.ok) return placement;
  if (path !== null) return readSectionInput(path, placement.value, command.given.values.get("shelf"));
  for (const option of ["stick", "at"]) {
    const typed = command.given.values.get(option);
    if (typed === undefined) continue;
    return notRead("", wrongValue(option, typed, "it only with a section file; else the plan has its stick"));
  }
  return { ok: true, value: { section: sectionOfPlan(plan), job: null }, warnings: [] };
}

/** The section a plan was made for, in the board that its stick fills: of a stick begun already, the board around it. */
function sectionOfPlan(plan: Plan): Section {
  const { minX, minY, maxX, maxY } = extentsOf(ringFromVertices(plan.stick));
  const stick: Ring = ringFromVertices([
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ]);
  return { name: plan.name, stick, outline: ringFromVertices(plan.section), freeSpans: [], named: [] };
}

/** The shelf that is given, else the job's, else the plan's own. */
async function shelfToFinish(
  command: Command,
  plan: Plan,
  planPath: string,
  path: string | null,
  job: Job | null,
): Promise<Read<ShelfInput>> {
  const given = command.given.values.get("shelf");
  if (given !== undefined || job?.shelf !== undefined)
    return readShelfInput(given, job, path ?? planPath, unitOf(command.askedUnit, job));
  const shelf = readShelf(plan.shelf, { at: "shelf" });
  if (!shelf.ok) return notRead(planPath, shelf);
  return { ok: true, value: { shelf: shelf.value, file: planPath }, warnings: [] };
}

async function measurements(
  path: string | undefined,
  plan: Plan,
  shelf: Shelf,
  after: number,
): Promise<Read<Measured>> {
  if (path === undefined) return { ok: true, value: {}, warnings: [] };
  const text = await readTextFile(path, MOST_INPUT_BYTES);
  if (!text.ok) return notRead(path, text);
  const measured = readMeasured(text.value, { plan, shelf, after });
  return measured.ok ? measured : notRead(path, measured);
}

/** Ids of the planes left out: on the command line, else in the job. */
function leftOut(
  command: Command,
  job: Job | null,
  { shelf }: ShelfInput,
  { without }: WayOptions,
  path: string,
): Read<readonly string[]> {
  const refusal = (file: string, outcome: Outcome<unknown> & { readonly ok: false }): Read<never> => ({
    ok: false,
    file,
    troubles: troublesOfRefusal(outcome),
  });
  if (without !== undefined) {
    const meant = planesMeant(shelf, without, () => "--without");
    return meant.ok ? meant : refusal("", meant);
  }
  if (job === null) return { ok: true, value: [], warnings: [] };
  const meant = leftOutOf(job, shelf);
  if (meant.ok) return meant;
  // A job's list belongs to its own shelf; of another that is tried out the planes that it does have are left out.
  if (command.given.values.get("shelf") === undefined) return refusal(path, meant);
  const known = shelf.planes.filter(({ id }) => job.way?.without?.includes(id)).map(({ id }) => id);
  return known.length === shelf.planes.length
    ? refusal(path, meant)
    : { ok: true, value: known, warnings: [] };
}
