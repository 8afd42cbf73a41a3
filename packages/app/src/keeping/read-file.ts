/** Whatever file a maker chooses or drops, as a job to look at: a job file, or a drawing of a section. Only ever read as data. */
import { JOB_LIMITS, type Job, readJob } from "mouldwright/job";
import type { Outcome, Trouble, TroubleCode } from "mouldwright/measure";
import type { Section } from "mouldwright/section";
import { type FromBench, hasFreeCurves, jobOfDrawing } from "./drawn-job.ts";
import type { FromReader, ToReader } from "./reader-messages.ts";

/** Largest file that is opened at all, bytes; the readers have closer bounds of their own. */
export const LARGEST_FILE_BYTES = 20_000_000;

/** What must be said of a file beside the troubles of its reader. */
export type FileRemark =
  /** The job names a shelf file, which a browser cannot open: it has the bench's shelf. */
  { readonly kind: "shelf from the bench"; readonly file: string } | { readonly kind: "curves as arcs" };

export type ReadFile =
  | {
      readonly kind: "job";
      readonly fileName: string;
      readonly job: Job;
      readonly warnings: readonly Trouble[];
      readonly remarks: readonly FileRemark[];
    }
  | { readonly kind: "refused"; readonly fileName: string; readonly troubles: readonly Trouble[] }
  /** JSON, but nothing that a job is. */
  | { readonly kind: "no job file"; readonly fileName: string }
  | { readonly kind: "too large"; readonly fileName: string; readonly megabytes: number }
  | { readonly kind: "cannot be opened"; readonly fileName: string };

/** What a drawing is read with; in the page a worker. */
export type DrawingReader = (file: ToReader) => Promise<FromReader>;

export interface Reading {
  /** How much a number of the drawing is, mm, where the maker says so. */
  readonly numberMm?: number | undefined;
  readonly readDrawing?: DrawingReader;
}

/** Whether the sizes of a drawing hang on what its numbers are, and the file does not say that for certain. */
export function isSizeInDoubt(file: ReadFile): boolean {
  const codes = (file.kind === "job" ? file.warnings : file.kind === "refused" ? file.troubles : []).map(
    ({ code }) => code,
  );
  return SIZE_DOUBTS.some((code) => codes.includes(code));
}

const SIZE_DOUBTS = [
  "size-without-unit",
  "size-in-pixels-assumed",
  "section-maybe-inches",
  "section-too-small",
  "section-too-large",
  "dxf-unit-unknown",
] as const satisfies readonly TroubleCode[];

export async function readFile(
  file: Pick<File, "name" | "size" | "text">,
  given: FromBench,
  { numberMm, readDrawing = readInWorker }: Reading = {},
): Promise<ReadFile> {
  const fileName = file.name;
  if (file.size > LARGEST_FILE_BYTES) return { kind: "too large", fileName, megabytes: file.size / 1e6 };
  let text: string;
  try {
    text = await file.text();
  } catch {
    return { kind: "cannot be opened", fileName };
  }
  return looksLikeJson(text)
    ? readJobText(fileName, text, given)
    : readDrawn({ fileName, text, unit: given.unit ?? "mm", numberMm }, given, readDrawing);
}

function looksLikeJson(text: string): boolean {
  const start = text
    .slice(0, 200)
    .replace(/^\uFEFF/, "")
    .trimStart();
  return start.startsWith("{") || start.startsWith("[");
}

function readJobText(fileName: string, text: string, given: FromBench): ReadFile {
  const read = readJob(text);
  if (!read.ok) {
    const { code, where } = read.trouble;
    const isOther = where === "format" || (where === "" && code === "file-value-wrong");
    return isOther ? { kind: "no job file", fileName } : refuse(fileName, read);
  }
  const { value: job, warnings } = read;
  if (job.shelf !== undefined && !("file" in job.shelf)) {
    return { kind: "job", fileName, job, warnings, remarks: [] };
  }
  const remarks: FileRemark[] =
    job.shelf === undefined ? [] : [{ kind: "shelf from the bench", file: job.shelf.file }];
  const { shelf: _named, ...bare } = job;
  const whole = given.shelf === undefined ? bare : { ...bare, shelf: given.shelf };
  return { kind: "job", fileName, job: whole, warnings, remarks };
}

async function readDrawn(file: ToReader, given: FromBench, readDrawing: DrawingReader): Promise<ReadFile> {
  const { fileName } = file;
  const answer = await readDrawing(file);
  if (answer.kind === "refused") return { kind: "refused", fileName, troubles: answer.troubles };
  const job = jobOfDrawing(named(answer.section), given);
  if (!job.ok) return refuse(fileName, job);
  return {
    kind: "job",
    fileName,
    job: job.value,
    warnings: [...answer.warnings, ...job.warnings],
    remarks: hasFreeCurves(answer.section) ? [{ kind: "curves as arcs" }] : [],
  };
}

function named(section: Section): Section {
  return { ...section, name: section.name.slice(0, JOB_LIMITS.mostNameCharacters) };
}

function refuse(fileName: string, outcome: Extract<Outcome<unknown>, { readonly ok: false }>): ReadFile {
  return { kind: "refused", fileName, troubles: [outcome.trouble, ...(outcome.more ?? [])] };
}

function readInWorker(file: ToReader): Promise<FromReader> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL("./reader.worker.ts", import.meta.url), { type: "module" });
    worker.onmessage = ({ data }: MessageEvent<FromReader>) => {
      worker.terminate();
      resolve(data);
    };
    worker.onerror = (event) => {
      worker.terminate();
      reject(new Error(event.message));
    };
    worker.postMessage(file);
  });
}
