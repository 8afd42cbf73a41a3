/**
 * A store that keeps nothing: every save is refused with the reason. What it was given lies in this window until it is
 * closed, so that work can go on; what lies in a store that may only be read can be looked at.
 */
import type { Failure } from "./failure.ts";
import { type KeptJob, RECORD_VERSION, readRecord } from "./record.ts";
import type { JobStore } from "./store.ts";

export function unkeptStore(read: JobStore | null, failure: Failure): JobStore {
  const inWindow = new Map<string, KeptJob>();
  return {
    list: async () => {
      const there = read === null ? [] : await read.list();
      return [...inWindow.values(), ...there.filter(({ jobId }) => !inWindow.has(jobId))];
    },
    read: async (jobId) => inWindow.get(jobId) ?? (read === null ? null : read.read(jobId)),
    backups: async (jobId) => (read === null ? [] : read.backups(jobId)),
    recall: async (what) => (read === null ? undefined : read.recall(what)),
    save: async ({ jobId, fromRevision, text }) => {
      const revision = Math.max(1, fromRevision);
      inWindow.set(
        jobId,
        readRecord({ jobId, revision, recordVersion: RECORD_VERSION, savedAtMs: Date.now(), text }),
      );
      return { kind: "failed", failure };
    },
    destroy: async () => failure,
    remember: async () => undefined,
  };
}
