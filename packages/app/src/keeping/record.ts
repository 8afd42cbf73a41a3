/** A job as it lies in the store: its file's text whole, and beside it what the store needs to know. Plain data. */
import { type Job, readJob } from "mouldwright/job";
import type { Trouble } from "mouldwright/measure";
import { z } from "mouldwright/measure";
import { migrate } from "./migrations.ts";

/** Counted up when a record's shape changes; the job's own file has a version of its own (`mouldwright/job`). */
export const RECORD_VERSION = 1;

const recordSchema = z.object({
  jobId: z.string().min(1),
  /** Counted from 1; the greatest one there is holds the job as it was last saved. */
  revision: z.int().min(1),
  recordVersion: z.literal(RECORD_VERSION),
  savedAtMs: z.number(),
  /** The job file, letter for letter. */
  text: z.string(),
  /** Thrown away then, and still kept for a while. */
  deletedAtMs: z.number().optional(),
});

export type JobRecord = z.infer<typeof recordSchema>;

/** What stands in the store under a job's name, whichever version of the program wrote it. */
export interface RawRecord {
  readonly jobId: string;
  readonly revision: number;
  readonly recordVersion: number;
  readonly [key: string]: unknown;
}

/** A job of the store as it can be shown: read, or with the reason why it cannot be. */
export type KeptJob = ReadableJob | NewerJob | UnreadableJob;

interface Kept {
  readonly jobId: string;
  readonly revision: number;
  readonly savedAtMs: number;
  readonly deletedAtMs?: number | undefined;
}

export interface ReadableJob extends Kept {
  readonly kind: "job";
  readonly job: Job;
  readonly text: string;
}

/** Written by a newer version of the program: listed, never touched. */
export interface NewerJob extends Kept {
  readonly kind: "newer";
  readonly name: string;
  /** As it lies there, for a file. */
  readonly text: string;
}

/** Damaged: listed, never touched. */
export interface UnreadableJob extends Kept {
  readonly kind: "unreadable";
  readonly name: string;
  readonly text: string;
  readonly troubles: readonly Trouble[];
}

/** Reads what lies in the store; never throws, changes nothing. */
export function readRecord(raw: RawRecord): KeptJob {
  const { jobId, revision } = raw;
  const savedAtMs = typeof raw.savedAtMs === "number" ? raw.savedAtMs : 0;
  const kept = { jobId, revision, savedAtMs };
  const text = typeof raw.text === "string" ? raw.text : JSON.stringify(raw, null, 2);
  const name = nameIn(text);
  if (raw.recordVersion > RECORD_VERSION) return { kind: "newer", ...kept, name, text };
  const record = recordSchema.safeParse(migrate(raw, RECORD_VERSION));
  if (!record.success) return { kind: "unreadable", ...kept, name, text, troubles: [] };
  const { deletedAtMs } = record.data;
  const known = {
    ...kept,
    savedAtMs: record.data.savedAtMs,
    ...(deletedAtMs === undefined ? {} : { deletedAtMs }),
  };
  const job = readJob(record.data.text);
  if (job.ok) return { kind: "job", ...known, job: job.value, text: record.data.text };
  if (job.trouble.code === "file-version-newer") return { kind: "newer", ...known, name, text };
  return { kind: "unreadable", ...known, name, text, troubles: [job.trouble, ...(job.more ?? [])] };
}

/** What a job is called, readable or not. */
export function nameOf(kept: KeptJob): string {
  return kept.kind === "job" ? kept.job.name : kept.name;
}

const LONGEST_NAME = 200;

/** The name in a text that may be no job at all. */
function nameIn(text: string): string {
  const found = /"name"\s*:\s*("(?:[^"\\]|\\.){1,400}")/.exec(text.slice(0, 4000))?.[1];
  if (found === undefined) return "";
  try {
    const name: unknown = JSON.parse(found);
    return typeof name === "string" ? name.slice(0, LONGEST_NAME) : "";
  } catch {
    return "";
  }
}
