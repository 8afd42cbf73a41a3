/**
 * Changes of a job's shelf, as functions from job to job. A changed shelf is read as any shelf file is, so that what
 * cannot be a plane comes back as troubles with the key they are about, and nothing is changed.
 */
import { type Job, planesMeant, shelfOfJob } from "mouldwright/job";
import { fine, INCH_MM, type Outcome, refused, sameMm, type Trouble } from "mouldwright/measure";
import {
  type FilePlane,
  type Plane,
  planeEntry,
  readShelf,
  SHELF_FORMAT,
  SHELF_VERSION,
  type Shelf,
  shelfFile,
} from "mouldwright/shelf";

export type FileKind = FilePlane["kind"];
/** A plane as the shelf file holds it, lengths in mm unless they are text. */
export type Entry = Readonly<Record<string, unknown>>;

type Unit = "mm" | "in";

const NO_PLANES: Shelf = { planes: [], assumed: [] };

/** The shelf that stands in the job; empty where it has none. Troubles where what stands there cannot be read. */
export function shelfOn(job: Job): Outcome<Shelf> {
  if (job.shelf === undefined || "file" in job.shelf) return fine(NO_PLANES);
  return shelfOfJob(job);
}

/** Entries of a shelf file, as they stand in ours: in mm, with everything filled in. */
export function entriesOf(shelf: Shelf): readonly Entry[] {
  return shelfFile(shelf).planes;
}

function readEntries(entries: readonly Entry[], tellIn: Unit): Outcome<Shelf> {
  return readShelf({ format: SHELF_FORMAT, version: SHELF_VERSION, unit: "mm", planes: entries }, { tellIn });
}

function withShelf(job: Job, shelf: Shelf): Job {
  return { ...job, shelf: shelfFile(shelf) };
}

/** The job with other planes on its shelf; refused as `readShelf` refuses. */
export function withEntries(job: Job, entries: readonly Entry[]): Outcome<Job> {
  const read = readEntries(entries, job.unit ?? "mm");
  return read.ok ? fine(withShelf(job, read.value), read.warnings) : read;
}

/** New planes after those there are. Troubles name the key alone, as they concern the new planes only. */
export function withPlanesAdded(job: Job, added: readonly Entry[]): Outcome<Job> {
  const shelf = shelfOn(job);
  if (!shelf.ok) return shelf;
  const old = entriesOf(shelf.value);
  const outcome = withEntries(job, [...old, ...added.map((entry) => inUnit(entry, job.unit ?? "mm"))]);
  return outcome.ok ? outcome : keysOnly(outcome);
}

/** One plane as it is now said to be. A name that was made of its sizes is made again of the new ones. */
export function withPlaneChanged(job: Job, id: string, entry: Entry): Outcome<Job> {
  const shelf = shelfOn(job);
  if (!shelf.ok) return shelf;
  const old = shelf.value.planes.find((plane) => plane.id === id);
  if (old === undefined) return fine(job);
  const { name, ...rest } = entry;
  const isAsMade = name === old.name && hasMadeName(old);
  const isUnnamed = typeof name !== "string" || name.trim() === "" || isAsMade;
  const changed = inUnit(isUnnamed ? rest : { ...rest, name }, job.unit ?? "mm");
  const entries = shelf.value.planes.map((plane, index) =>
    plane.id === id ? { ...changed, id } : (entriesOf(shelf.value)[index] ?? {}),
  );
  const outcome = withEntries(job, entries);
  return outcome.ok ? outcome : keysOnly(outcome);
}

/** Another note on a plane, or none: nothing else of the shelf is written anew, so that its plan stands. */
export function withPlaneNoted(job: Job, id: string, note: string): Outcome<Job> {
  const shelf = shelfOn(job);
  if (!shelf.ok) return shelf;
  const at = shelf.value.planes.findIndex((plane) => plane.id === id);
  if (at < 0 || job.shelf === undefined || "file" in job.shelf) return fine(job);
  const planes = job.shelf.planes.map((plane, index) => {
    if (index !== at) return plane;
    const { note: _, ...rest } = plane;
    return note === "" ? rest : { ...rest, note };
  });
  const noted: Job = { ...job, shelf: { ...job.shelf, planes } };
  const read = shelfOn(noted);
  return read.ok ? fine(noted) : keysOnly(read);
}

/** The shelf without a plane; what the job said of leaving it out goes too. */
export function withPlaneRemoved(job: Job, id: string): Outcome<Job> {
  const shelf = shelfOn(job);
  if (!shelf.ok) return shelf;
  const planes = shelf.value.planes.filter((plane) => plane.id !== id);
  const without = leftOutIds(job, shelf.value).filter((leftOut) => leftOut !== id);
  return fine(withLeftOut(withShelf(job, { ...shelf.value, planes }), without));
}

/** Ids of the planes that this job leaves out; words that mean no plane of the shelf are passed over. */
export function leftOutIds(job: Job, shelf: Shelf): readonly string[] {
  const words = job.way?.without ?? [];
  const ids = new Set<string>();
  for (const word of words) {
    const meant = planesMeant(shelf, [word], () => "");
    // The only plane of a shelf may be left out too: planning says then that none is left.
    if (meant.ok) for (const id of meant.value) ids.add(id);
    else if (shelf.planes.length === 1) ids.add(shelf.planes[0]?.id ?? "");
  }
  return [...ids];
}

/** Leaves a plane out of this job, or takes it in again. */
export function withPlaneLeftOut(job: Job, shelf: Shelf, id: string, isOut: boolean): Job {
  const others = leftOutIds(job, shelf).filter((leftOut) => leftOut !== id);
  return withLeftOut(job, isOut ? [...others, id] : others);
}

function withLeftOut(job: Job, without: readonly string[]): Job {
  const { without: _, ...way } = job.way ?? {};
  const { way: __, ...rest } = job;
  if (without.length > 0) return { ...job, way: { ...way, without: [...without] } };
  return Object.keys(way).length === 0 ? rest : { ...rest, way };
}

export interface BroughtIn {
  readonly job: Job;
  readonly addedCount: number;
  /** Planes of the file that the shelf has already, size for size. */
  readonly knownCount: number;
}

/** Adds what a shelf does not have yet: a plane alike in kind, hand and sizes is not put there twice. */
export function withShelfAdded(job: Job, brought: Shelf): Outcome<BroughtIn> {
  const shelf = shelfOn(job);
  if (!shelf.ok) return shelf;
  const known = new Set(shelf.value.planes.map(likeness));
  const fresh = brought.planes.filter((plane) => !known.has(likeness(plane)));
  const taken = new Set(shelf.value.planes.map(({ id }) => id.toLowerCase()));
  const entries = entriesOf({ planes: fresh, assumed: [] }).map((entry) => {
    const id = typeof entry.id === "string" ? entry.id : "";
    if (!taken.has(id.toLowerCase())) return entry;
    // An id that is taken by another plane is made anew.
    const { id: _, ...rest } = entry;
    return rest;
  });
  const outcome = withEntries(job, [...entriesOf(shelf.value), ...entries]);
  if (!outcome.ok) return outcome;
  const addedCount = fresh.length;
  return fine({ job: outcome.value, addedCount, knownCount: brought.planes.length - addedCount });
}

/** The same for two planes of one kind, hand and size, whatever they are called. */
export function likeness(plane: Plane): string {
  const { id: _, name: __, ...sizes } = planeEntry(plane);
  return JSON.stringify(sizes);
}

/** Whether a plane's name is the one that its sizes give, in millimetres or in inches. */
export function hasMadeName(plane: Plane): boolean {
  const { name: _, ...unnamed } = planeEntry(plane);
  return (["mm", "in"] as const).some((unit) => {
    const read = readEntries([inUnit(unnamed, unit)], unit);
    return read.ok && read.value.planes[0]?.name === plane.name;
  });
}

const ANGLES: readonly string[] = ["pitch", "skew", "slope"];

/** Lengths as they are written in a unit, so that a name made of them is in it. A drawn sole stays in mm. */
function inUnit(entry: Entry, unit: Unit): Entry {
  if (unit === "mm") return entry;
  return Object.fromEntries(
    Object.entries(entry).map(([key, value]): [string, unknown] => {
      if (typeof value === "number" && !ANGLES.includes(key)) return [key, inches(value)];
      if (key === "widths" && Array.isArray(value)) {
        return [key, value.map((one: unknown) => (typeof one === "number" ? inches(one) : one))];
      }
      return [key, value];
    }),
  );
}

/** Far finer than the millionth of a millimetre that lengths are read to. */
const INCH_DECIMALS = 9;

function inches(lengthMm: number): string {
  return `${Number((lengthMm / INCH_MM).toFixed(INCH_DECIMALS))} in`;
}

/** Troubles with the key alone as their place: the field that they are said at. */
function keysOnly(outcome: Outcome<unknown> & { readonly ok: false }): ReturnType<typeof refused> {
  const troubles = [outcome.trouble, ...(outcome.more ?? [])].map(
    (trouble): Trouble => ({ ...trouble, where: keyOf(trouble.where) }),
  );
  const [first = outcome.trouble, ...more] = troubles;
  return refused(first, ...more);
}

/** `planes[12].widths[0]` is about `widths`. */
export function keyOf(where: string): string {
  return /^(?:shelf\.)?planes\[\d+\]\.?([A-Za-z]*)/.exec(where)?.[1] ?? where;
}

/** Whether two planes are a pair: one hollow, one round, of one radius. */
export function isPair(one: Plane, other: Plane): boolean {
  return one.kind === "hollow" && other.kind === "round" && sameMm(one.radiusMm, other.radiusMm);
}
