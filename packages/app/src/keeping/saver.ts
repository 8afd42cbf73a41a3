/**
 * Saves what it is given, one job after the other; of one job only the newest state. Where another window has saved
 * since, this window's state is kept as a job of its own. What cannot be saved stays here and is tried again.
 */
import { type Job, writeJob } from "mouldwright/job";
import type { Failure } from "./failure.ts";
import { newJobId } from "./new-id.ts";
import type { KeptJob } from "./record.ts";
import type { JobStore } from "./store.ts";

export interface SavedElsewhere {
  readonly jobId: string;
  /** What the other window saved; null where nothing lies there any more. */
  readonly there: KeptJob | null;
  /** Under which this window's state is kept, and what it is called. */
  readonly copyId: string;
  readonly copyName: string;
}

export interface SaverEvents {
  readonly onSaving: () => void;
  readonly onSaved: (jobId: string, revision: number, backup: "made" | "not due" | "failed") => void;
  readonly onFailed: (jobId: string, failure: Failure) => void;
  readonly onSavedElsewhere: (found: SavedElsewhere) => void;
}

export interface Saver {
  /** The job grew out of this revision; said when it is laid on the bench. */
  readonly opened: (jobId: string, revision: number) => void;
  readonly revisionOf: (jobId: string) => number;
  /** The state to keep; an older one that still waits is dropped. */
  readonly keep: (jobId: string, job: Job, how?: { readonly keepsOld?: boolean }) => void;
  /** Tries again what failed. */
  readonly tryAgain: () => void;
  /** Whether a save was refused and has not been made good. */
  readonly hasFailed: () => boolean;
  /** Whether anything is not in the store yet. */
  readonly hasUnsaved: () => boolean;
  /** When nothing is under way any more. */
  readonly settled: () => Promise<void>;
}

interface Waiting {
  readonly job: Job;
  readonly keepsOld: boolean;
}

export interface SaverOptions {
  readonly store: JobStore;
  readonly events: SaverEvents;
  /** What this window's copy is called. */
  readonly nameOfCopy: (name: string) => string;
}

export function startSaver({ store, events, nameOfCopy }: SaverOptions): Saver {
  const waiting = new Map<string, Waiting>();
  const revisions = new Map<string, number>();
  const openedAfresh = new Set<string>();
  const failed = new Set<string>();
  let underWay: Promise<void> | null = null;

  const next = (): string | undefined => [...waiting.keys()].find((jobId) => !failed.has(jobId));

  const work = async (): Promise<void> => {
    for (let jobId = next(); jobId !== undefined; jobId = next()) {
      const wish = waiting.get(jobId);
      if (wish === undefined) return;
      waiting.delete(jobId);
      await saveOne(jobId, wish);
    }
  };

  const start = (): void => {
    if (underWay !== null || next() === undefined) return;
    events.onSaving();
    // A turn later: what is given in the same breath goes together.
    underWay = Promise.resolve()
      .then(work)
      .finally(() => {
        underWay = null;
        start();
      });
  };

  const putBack = (jobId: string, wish: Waiting): void => {
    const newer = waiting.get(jobId);
    waiting.set(jobId, newer === undefined ? wish : { ...newer, keepsOld: newer.keepsOld || wish.keepsOld });
  };

  const saveOne = async (jobId: string, wish: Waiting): Promise<void> => {
    const answer = await store.save({
      jobId,
      fromRevision: revisions.get(jobId) ?? 0,
      text: writeJob(wish.job),
      isFirstSinceOpened: openedAfresh.has(jobId),
      keepsOld: wish.keepsOld,
    });
    switch (answer.kind) {
      case "saved":
        revisions.set(jobId, answer.revision);
        openedAfresh.delete(jobId);
        events.onSaved(jobId, answer.revision, answer.backup);
        return;
      case "failed":
        putBack(jobId, wish);
        failed.add(jobId);
        events.onFailed(jobId, answer.failure);
        return;
      case "saved elsewhere": {
        const copyId = newJobId();
        const copyName = nameOfCopy(wish.job.name);
        const newest = waiting.get(jobId) ?? wish;
        waiting.delete(jobId);
        waiting.set(copyId, { job: { ...newest.job, name: copyName }, keepsOld: false });
        events.onSavedElsewhere({ jobId, there: answer.there, copyId, copyName });
      }
    }
  };

  return {
    opened: (jobId, revision) => {
      revisions.set(jobId, revision);
      openedAfresh.add(jobId);
    },
    revisionOf: (jobId) => revisions.get(jobId) ?? 0,
    keep: (jobId, job, how = {}) => {
      const keepsOld = how.keepsOld === true || waiting.get(jobId)?.keepsOld === true;
      waiting.set(jobId, { job, keepsOld });
      // What was refused before may pass now: with every change all of it is tried again.
      failed.clear();
      start();
    },
    tryAgain: () => {
      failed.clear();
      start();
    },
    hasFailed: () => failed.size > 0,
    hasUnsaved: () => waiting.size > 0 || underWay !== null,
    settled: async () => {
      while (underWay !== null) await underWay;
    },
  };
}
