/** What a command reads: a shelf, a section from a drawing or a job. */
import { basename, dirname, extname, join } from "node:path";
import { type Plan, readJsonText } from "mouldwright/cutting";
import { type Job, type JobInputs, readJob, sectionOfJob, shelfFileOfJob, shelfOfJob } from "mouldwright/job";
import { cataloguedTrouble, type LengthUnit, type Outcome, refused, type Trouble } from "mouldwright/measure";
import { inspectSection, readSectionFile, type Section } from "mouldwright/section";
import { readShelf, type Shelf } from "mouldwright/shelf";
import { MOST_INPUT_BYTES, readTextFile } from "./read-file.ts";

/** A refusal together with the file it is about; empty where none is. */
export type Read<T> =
  | { readonly ok: true; readonly value: T; readonly warnings: readonly Trouble[] }
  | { readonly ok: false; readonly file: string; readonly troubles: readonly Trouble[] };

export function notRead(file: string, outcome: Outcome<unknown> & { readonly ok: false }): Read<never> {
  return { ok: false, file, troubles: [outcome.trouble, ...(outcome.more ?? [])] };
}

export interface Placement {
  readonly stick?: undefined | { readonly widthMm: number; readonly thicknessMm: number };
  readonly at?: undefined | { readonly x: number; readonly y: number };
  /** What a list of points is in, unless it says so itself. */
  readonly unit?: undefined | LengthUnit;
}

export interface SectionInput {
  readonly section: Section;
  /** The job it came from, if it was one. */
  readonly job: Job | null;
}

/**
 * The section of a job (a file whose name ends in .json), of a drawing or of a list of measured points, told by what it
 * holds. A job's bands are made with the planes of the shelf that is given, else of its own.
 */
export async function readSectionInput(
  path: string,
  placement: Placement,
  shelfPath?: string,
): Promise<Read<SectionInput>> {
  const text = await readTextFile(path, MOST_INPUT_BYTES);
  if (!text.ok) return notRead(path, text);
  if (extname(path).toLowerCase() === ".json") {
    const job = readJob(text.value);
    if (!job.ok) return notRead(path, job);
    if (placement.at !== undefined) {
      // A job's section has its place already; moving it is the job's own business.
      const facts = { option: "--at", nearest: "", known: ["--stick"] };
      return notRead("", refused(cataloguedTrouble("option-unknown", "", facts)));
    }
    const placed = { ...job.value, stick: placement.stick ?? job.value.stick };
    const inputs = await shelfForBands(placed, path, shelfPath);
    if (!inputs.ok) return inputs;
    const section = sectionOfJob(placed, inputs.value);
    if (!section.ok) return notRead(path, section);
    return { ok: true, value: { section: section.value, job: placed }, warnings: section.warnings };
  }
  const section = readSectionFile({
    fileName: basename(path),
    text: text.value,
    stickMm: placement.stick,
    atMm: placement.at,
    unit: placement.unit,
  });
  if (!section.ok) return notRead(path, section);
  const { refusals, warnings } = inspectSection(section.value);
  if (refusals.length > 0) return { ok: false, file: path, troubles: refusals };
  return {
    ok: true,
    value: { section: section.value, job: null },
    warnings: [...section.warnings, ...warnings],
  };
}

/** The shelf that is given or stands beside the job, where a band waits for a sole that is on it. */
async function shelfForBands(job: Job, path: string, given: string | undefined): Promise<Read<JobInputs>> {
  const own = shelfFileOfJob(job);
  const named = given ?? (own === null ? null : join(dirname(path), own));
  const waits = job.section.parts?.some((part) => part.kind === "band" && part.radiusMm === undefined);
  if (waits !== true || named === null) return { ok: true, value: {}, warnings: [] };
  const shelf = await readShelfFile(named);
  return shelf.ok ? { ok: true, value: { shelf: shelf.value }, warnings: [] } : shelf;
}

/** The shelf of a file, what is assumed of it told in a unit. */
export async function readShelfFile(path: string, tellIn: LengthUnit = "mm"): Promise<Read<Shelf>> {
  const text = await readTextFile(path, MOST_INPUT_BYTES);
  if (!text.ok) return notRead(path, text);
  // Parsed here, so that a fault in the text is told by line and column on every system.
  const json = readJsonText(text.value, { mostCharacters: MOST_INPUT_BYTES });
  if (!json.ok) return notRead(path, json);
  const shelf = readShelf(json.value, { tellIn });
  return shelf.ok ? shelf : notRead(path, shelf);
}

export interface ShelfInput {
  readonly shelf: Shelf;
  /** The file it was read from. */
  readonly file: string;
}

/** The shelf given with `--shelf`, else the job's own: inside it, or in a file beside it. */
export async function readShelfInput(
  given: string | undefined,
  job: Job | null,
  jobPath: string,
  tellIn: LengthUnit,
): Promise<Read<ShelfInput>> {
  const named = job === null ? null : shelfFileOfJob(job);
  const path = given ?? (named === null ? undefined : join(dirname(jobPath), named));
  if (path !== undefined) {
    const shelf = await readShelfFile(path, tellIn);
    return shelf.ok ? { ...shelf, value: { shelf: shelf.value, file: path } } : shelf;
  }
  if (job === null) {
    const facts = { option: "--shelf", sample: "--shelf planes.json" };
    return notRead("", refused(cataloguedTrouble("option-missing", "", facts)));
  }
  const shelf = shelfOfJob(job);
  if (!shelf.ok) return notRead(jobPath, shelf);
  return { ok: true, value: { shelf: shelf.value, file: jobPath }, warnings: shelf.warnings };
}

/** The unit to talk in: the one asked for, else the job's, else millimetres. */
export function unitOf(asked: LengthUnit | undefined, job: Job | null): LengthUnit {
  return asked ?? job?.unit ?? "mm";
}

/**
 * The unit to talk in of a plan: the one asked for, else that of its sentences. The numbers of a plan file are always
 * millimetres; inches show in what it says, planes' own names apart.
 */
export function unitOfPlan(asked: LengthUnit | undefined, plan: Plan): LengthUnit {
  return asked ?? unitOfSentences(plan);
}

/** What a plan's own sentences are written in. */
export function unitOfSentences(plan: Plan): LengthUnit {
  const speaksInches = plan.cuts.some(({ says, doneWhen, plane }) =>
    [says, doneWhen].some((words) => withoutName(words, plane.name).includes("″")),
  );
  return speaksInches ? "in" : "mm";
}

function withoutName(words: string, name: string | undefined): string {
  if (name === undefined || name === "") return words;
  return words.toLowerCase().replaceAll(name.toLowerCase(), "");
}
