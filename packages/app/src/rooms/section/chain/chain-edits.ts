/** The chain of parts changed as a whole: put in, taken out, doubled, moved along, replaced. The job's other parts stay. */
import type { Job } from "mouldwright/job";
import type { BackSpec, PartSpec } from "mouldwright/section";

export type JobParts = NonNullable<Job["section"]["parts"]>;

/** The parts of a job; none where its section is held as a path. */
export function partsOfJob(job: Job): readonly PartSpec[] {
  return job.section.parts ?? [];
}

/** The job with another chain; the very same job where the chain is. */
export function withParts(job: Job, parts: readonly PartSpec[]): Job {
  if (parts === partsOfJob(job)) return job;
  // The schema's own type is the same data, only not marked as never to be changed (`partsOf` in the core's job folder).
  return { ...job, section: { ...job.section, parts: [...parts] as JobParts } };
}

export function withPart(job: Job, index: number, part: PartSpec): Job {
  const parts = partsOfJob(job);
  return parts[index] === part || parts[index] === undefined ? job : withParts(job, parts.with(index, part));
}

/** Puts parts in so that the first of them stands at `index`. */
export function withPartsPutIn(job: Job, index: number, parts: readonly PartSpec[]): Job {
  return parts.length === 0 ? job : withParts(job, partsOfJob(job).toSpliced(index, 0, ...parts));
}

export function withoutPart(job: Job, index: number): Job {
  const parts = partsOfJob(job);
  return index < 0 || index >= parts.length ? job : withParts(job, parts.toSpliced(index, 1));
}

/** The same part once more, beside it. A fillet that takes the rest is doubled with a width of its own. */
export function withPartDoubled(job: Job, index: number, widthMm: number): Job {
  const part = partsOfJob(job)[index];
  if (part === undefined) return job;
  const again: PartSpec =
    part.kind === "fillet" && part.widthMm === "rest" ? { ...part, widthMm: roundedMm(widthMm / 2) } : part;
  return withPartsPutIn(job, index + 1, [again]);
}

/** Moves a part so that it stands at `to` in the new order. */
export function withPartMoved(job: Job, from: number, to: number): Job {
  const parts = partsOfJob(job);
  const part = parts[from];
  const place = Math.max(0, Math.min(parts.length - 1, to));
  if (part === undefined || place === from) return job;
  return withParts(job, parts.toSpliced(from, 1).toSpliced(place, 0, part));
}

export function withBack(job: Job, edge: BackSpec["edge"], back: BackSpec | null): Job {
  const others = (job.section.back ?? []).filter((one) => one.edge !== edge);
  const all = back === null ? others : [...others, back];
  const { back: _, ...section } = job.section;
  return { ...job, section: all.length === 0 ? section : { ...section, back: all } };
}

/** What a part is called in a list: the maker's own name, or its kind's. */
export function nameOfPart(part: PartSpec): string {
  return part.name === undefined || part.name.trim() === "" ? part.kind : part.name;
}

function roundedMm(valueMm: number): number {
  return Math.max(0.5, Math.round(valueMm * 2) / 2);
}
