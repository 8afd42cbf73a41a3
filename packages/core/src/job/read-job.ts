import { checkHeader, jsonText, outlineFaults, readJsonText, troublesOf } from "../cutting/index.ts";
import { cataloguedTrouble, fine, type Outcome, refused, type Trouble } from "../measure/index.ts";
import { readShelf } from "../shelf/index.ts";
import { JOB_FORMAT, JOB_LIMITS, JOB_VERSION, type Job, jobSchema, pathOf } from "./job-schema.ts";
import { standingFaults } from "./started.ts";
import { areShavingsInOrder } from "./way-schema.ts";

/**
 * The job a job file holds; millimetres and degrees.
 *
 * Refuses, with the path of the fault (`section.parts[2].widthMm`): what is no JSON, another format, a newer
 * version (`file-version-newer`; nothing in it is looked at), keys it does not know (with the nearest it does), a
 * shelf that cannot be used, a shelf file outside the job's folder, a section given twice or not at all. Whether
 * the parts make a section is `sectionOfJob`'s business. Never throws.
 */
export function readJob(text: string): Outcome<Job> {
  const json = readJsonText(text, JOB_LIMITS);
  if (!json.ok) return json;
  const otherFile = checkHeader(json.value, JOB_FORMAT, JOB_VERSION);
  if (otherFile !== null) return refused(otherFile);
  const inline = inlineShelf(json.value);
  if (inline !== undefined) {
    // The shelf's own reader names the plane and the key meant; the schema's choice of two only says "neither".
    const shelf = readShelf(inline, { at: "shelf" });
    if (!shelf.ok) return shelf;
  }
  const parsed = jobSchema.safeParse(json.value);
  if (!parsed.success) return refused(...troublesOf(parsed.error.issues, json.value));
  const [first, ...more] = faultsAcrossKeys(parsed.data);
  return first === undefined ? fine(parsed.data) : refused(first, ...more);
}

/** The job as its file: keys in the order of the schema, numbers unrounded, so that it reads back the same. */
export function writeJob(job: Job): string {
  const ordered = jobSchema.safeParse(job);
  // A job that does not pass its own schema was never read by us; it is written as it is rather than lost.
  return `${jsonText(ordered.success ? ordered.data : job)}\n`;
}

function inlineShelf(value: unknown): object | undefined {
  const shelf = (value as { readonly shelf?: unknown }).shelf;
  return typeof shelf === "object" && shelf !== null && !Object.hasOwn(shelf, "file") ? shelf : undefined;
}

function faultsAcrossKeys(job: Job): readonly Trouble[] {
  const faults: Trouble[] = [];
  if (job.section.parts !== undefined && job.section.path !== undefined) {
    faults.push(cataloguedTrouble("job-section-twofold", "section", {}));
  }
  if (job.section.parts === undefined && job.section.path === undefined) {
    faults.push(cataloguedTrouble("job-section-missing", "section", {}));
  }
  for (const key of ["startHeightMm", "back"] as const) {
    if (job.section.path !== undefined && job.section[key] !== undefined) {
      faults.push(
        cataloguedTrouble("file-key-unknown", `section.${key}`, { key, nearest: "", known: ["path"] }),
      );
    }
  }
  const path = pathOf(job.section);
  if (path !== undefined) faults.push(...outlineFaults(path, "section.path", true));
  faults.push(...standingFaults(job));
  if (!areShavingsInOrder(job.way?.shavings)) {
    faults.push(
      cataloguedTrouble("file-value-wrong", "way.shavings", {
        found: "a shaving heavier than the one before it",
        wanted: "heavy, ordinary and last, each no heavier than the one before",
      }),
    );
  }
  if (job.shelf !== undefined && "file" in job.shelf && !isWithinFolder(job.shelf.file)) {
    faults.push(cataloguedTrouble("job-shelf-elsewhere", "shelf.file", { file: job.shelf.file }));
  }
  return faults;
}

/**
 * Whether a name stays inside the job's folder on any system: relative, no way up, no drive, no control character.
 * A job may come from a stranger; it must not choose which files of this machine are opened.
 */
function isWithinFolder(file: string): boolean {
  if (/[\p{C}\\:]/u.test(file) || file.startsWith("/")) return false;
  return file.split("/").every((step) => step !== "" && step !== "." && step !== "..");
}
