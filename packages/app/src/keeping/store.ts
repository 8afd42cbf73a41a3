/**
 * The jobs in the browser's database. A save is written whole under a new revision, read back and compared before the
 * old one goes, and names the revision it started from: where another window has saved since, nothing is written.
 * Whatever happens between, the greatest revision that lies there is whole, since a transaction is all or nothing.
 */
import { isBackupDue, keptBackups } from "./backups.ts";
import type { Database, RawBackup } from "./database.ts";
import { type Failure, failureOf } from "./failure.ts";
import { type JobRecord, type KeptJob, type RawRecord, RECORD_VERSION, readRecord } from "./record.ts";

export interface SaveWish {
  readonly jobId: string;
  /** The revision that this state grew out of; 0 for a new job. */
  readonly fromRevision: number;
  /** The job file. */
  readonly text: string;
  readonly deletedAtMs?: number;
  /** The first save since the job was laid on the bench. */
  readonly isFirstSinceOpened?: boolean;
  /** The state that is replaced becomes a backup, however new the last one is. */
  readonly keepsOld?: boolean;
}

export type SaveAnswer =
  | { readonly kind: "saved"; readonly revision: number; readonly backup: "made" | "not due" | "failed" }
  /** Another window has saved since (or thrown the job away); this is what lies there now. Nothing was written. */
  | { readonly kind: "saved elsewhere"; readonly there: KeptJob | null }
  | { readonly kind: "failed"; readonly failure: Failure };

export interface KeptBackup {
  readonly stoodAtMs: number;
  readonly job: KeptJob;
}

export interface JobStore {
  /** Every job, thrown away or not, the newest first. */
  readonly list: () => Promise<readonly KeptJob[]>;
  readonly read: (jobId: string) => Promise<KeptJob | null>;
  readonly save: (wish: SaveWish) => Promise<SaveAnswer>;
  /** Newest first. */
  readonly backups: (jobId: string) => Promise<readonly KeptBackup[]>;
  /** For good, with its backups. */
  readonly destroy: (jobId: string) => Promise<Failure | null>;
  readonly remember: (what: string, value: unknown) => Promise<void>;
  readonly recall: (what: string) => Promise<unknown>;
}

export type Clock = () => number;

const STRICT = { durability: "strict" } as const;

/** All of a job's keys in a shelf: an array sorts after every number. */
function allOf(jobId: string): IDBKeyRange {
  return IDBKeyRange.bound([jobId, Number.NEGATIVE_INFINITY], [jobId, []]);
}

export function jobStore(database: Database, now: Clock = Date.now): JobStore {
  return {
    list: () => listJobs(database),
    read: (jobId) => readNewest(database, jobId),
    save: (wish) => saveJob(database, wish, now()),
    backups: (jobId) => listBackups(database, jobId),
    destroy: (jobId) => destroyJob(database, jobId),
    remember: async (what, value) => {
      await database.put("remembered", value, what);
    },
    recall: (what) => database.get("remembered", what),
  };
}

async function listJobs(database: Database): Promise<readonly KeptJob[]> {
  const newest = new Map<string, KeptJob>();
  // Sorted by name and revision: of two revisions the later is the one last saved, or else the last that can be read.
  for (const raw of await database.getAll("jobs")) {
    const kept = readRecord(raw);
    const before = newest.get(kept.jobId);
    if (kept.kind === "unreadable" && before !== undefined) continue;
    newest.set(kept.jobId, kept);
  }
  return [...newest.values()].sort((one, other) => other.savedAtMs - one.savedAtMs);
}

async function readNewest(database: Database, jobId: string): Promise<KeptJob | null> {
  const revisions = (await database.getAll("jobs", allOf(jobId))).map(readRecord);
  return revisions.findLast(({ kind }) => kind !== "unreadable") ?? revisions.at(-1) ?? null;
}

async function saveJob(database: Database, wish: SaveWish, nowMs: number): Promise<SaveAnswer> {
  try {
    const written = await writeNext(database, wish, nowMs);
    if (written.kind === "saved elsewhere") return written;
    const { record, replaced } = written;
    if (replaced === "same") return { kind: "saved", revision: record.revision, backup: "not due" };
    if (!(await isWrittenAs(database, record))) {
      await takeAway(database, IDBKeyRange.only([record.jobId, record.revision]));
      return { kind: "failed", failure: { kind: "came back otherwise" } };
    }
    const backup = await letOldGo(database, wish, replaced, nowMs);
    return { kind: "saved", revision: record.revision, backup };
  } catch (error) {
    return { kind: "failed", failure: failureOf(error) };
  }
}

type Written =
  | { readonly kind: "written"; readonly record: JobRecord; readonly replaced: RawRecord | null | "same" }
  | { readonly kind: "saved elsewhere"; readonly there: KeptJob | null };

/** In one transaction: what lies there is what this state grew out of, and the new revision beside it. */
async function writeNext(database: Database, wish: SaveWish, nowMs: number): Promise<Written> {
  const { jobId, fromRevision, text, deletedAtMs } = wish;
  const transaction = database.transaction("jobs", "readwrite", STRICT);
  const newest = (await transaction.store.openCursor(allOf(jobId), "prev"))?.value ?? null;
  const record: JobRecord = {
    jobId,
    revision: (newest?.revision ?? 0) + 1,
    recordVersion: RECORD_VERSION,
    savedAtMs: nowMs,
    text,
    ...(deletedAtMs === undefined ? {} : { deletedAtMs }),
  };
  if ((newest?.revision ?? 0) !== fromRevision) {
    await transaction.done;
    // Both windows came to the same: there is nothing to keep twice.
    if (newest !== null && newest.text === text && newest.deletedAtMs === deletedAtMs) {
      return { kind: "written", record: { ...record, revision: newest.revision }, replaced: "same" };
    }
    return { kind: "saved elsewhere", there: newest === null ? null : readRecord(newest) };
  }
  await Promise.all([transaction.store.add(record), transaction.done]);
  return { kind: "written", record, replaced: newest };
}

async function isWrittenAs(database: Database, record: JobRecord): Promise<boolean> {
  const back = await database.get("jobs", [record.jobId, record.revision]);
  return back?.text === record.text && back.deletedAtMs === record.deletedAtMs;
}

async function takeAway(database: Database, revisions: IDBKeyRange): Promise<void> {
  const transaction = database.transaction("jobs", "readwrite", STRICT);
  await Promise.all([transaction.store.delete(revisions), transaction.done]);
}

/** The old revision goes, into the backups where one is due. A backup that finds no room never holds up a save. */
async function letOldGo(
  database: Database,
  wish: SaveWish,
  replaced: RawRecord | null,
  nowMs: number,
): Promise<"made" | "not due" | "failed"> {
  if (replaced === null) return "not due";
  const olderOnes = IDBKeyRange.bound(
    [wish.jobId, Number.NEGATIVE_INFINITY],
    [wish.jobId, replaced.revision],
  );
  try {
    const transaction = database.transaction(["jobs", "backups"], "readwrite", STRICT);
    const backups = transaction.objectStore("backups");
    const stoodAtMs = (await backups.getAllKeys(allOf(wish.jobId))).map(([, ms]) => ms);
    const isDue = isBackupDue({
      newestBackupMs: stoodAtMs.length === 0 ? null : Math.max(...stoodAtMs),
      nowMs,
      isFirstSinceOpened: wish.isFirstSinceOpened === true,
      // A record of an older shape is kept as it was before today's takes its place.
      isAskedFor: wish.keepsOld === true || replaced.recordVersion < RECORD_VERSION,
    });
    const steps: Promise<unknown>[] = [transaction.objectStore("jobs").delete(olderOnes)];
    if (isDue) {
      const backup = backupOf(replaced, nowMs);
      steps.push(backups.put(backup));
      const kept = keptBackups([...new Set([...stoodAtMs, backup.stoodAtMs])], nowMs);
      for (const ms of stoodAtMs) if (!kept.includes(ms)) steps.push(backups.delete([wish.jobId, ms]));
    }
    await Promise.all([...steps, transaction.done]);
    return isDue ? "made" : "not due";
  } catch {
    // Two revisions lie there now, the newer one whole: nothing is lost, and the next save tidies up.
    await takeAway(database, olderOnes).catch(() => undefined);
    return "failed";
  }
}

function backupOf(replaced: RawRecord, nowMs: number): RawBackup {
  const { savedAtMs } = replaced;
  return { ...replaced, stoodAtMs: typeof savedAtMs === "number" ? savedAtMs : nowMs };
}

async function listBackups(database: Database, jobId: string): Promise<readonly KeptBackup[]> {
  const raw = await database.getAll("backups", allOf(jobId));
  return raw.map((backup) => ({ stoodAtMs: backup.stoodAtMs, job: readRecord(backup) })).reverse();
}

async function destroyJob(database: Database, jobId: string): Promise<Failure | null> {
  try {
    const transaction = database.transaction(["jobs", "backups"], "readwrite", STRICT);
    await Promise.all([
      transaction.objectStore("jobs").delete(allOf(jobId)),
      transaction.objectStore("backups").delete(allOf(jobId)),
      transaction.done,
    ]);
    return null;
  } catch (error) {
    return failureOf(error);
  }
}
