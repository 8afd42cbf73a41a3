/**
 * The one job that lies on the bench: what every room shows and changes. A change is one step to undo; what is dragged
 * is shown as a draft and becomes a change when the finger lifts. Undo and redo have no limit.
 */
import type { Job } from "mouldwright/job";
import { temporal } from "zundo";
import { create, useStore } from "zustand";

export interface JobOnBench {
  /** The kept job's own name in the store; never shown. */
  readonly jobId: string;
  readonly job: Job;
  /** What the last change was, for the button that undoes it: "wider fillet". */
  readonly lastChange: string;
  /** The job as it is being dragged; null when nothing is. */
  readonly draft: Job | null;
}

/** Stands on the bench until the store has been read; never kept, never shown. */
const EMPTY_JOB: Job = {
  format: "mouldwright/job",
  version: 1,
  name: "",
  section: { parts: [{ kind: "fillet", widthMm: "rest" }] },
  stick: { widthMm: 20, thicknessMm: 20 },
};

export const useBench = create<JobOnBench>()(
  temporal((): JobOnBench => ({ jobId: "", job: EMPTY_JOB, lastChange: "", draft: null }), {
    partialize: ({ job, lastChange }) => ({ job, lastChange }),
    equality: (past, current) => past.job === current.job,
  }),
);

/** Puts a job on the bench. What was done to the one before cannot be undone from here. */
export function layOnBench(jobId: string, job: Job): void {
  useBench.setState({ jobId, job, lastChange: "", draft: null });
  useBench.temporal.getState().clear();
}

/** One change, one step to undo. `what` names it in a few words: "bead 10 mm wide". */
export function change(what: string, edit: (job: Job) => Job): void {
  const { job } = useBench.getState();
  const next = edit(job);
  if (next === job) {
    dropDraft();
    return;
  }
  useBench.setState({ job: next, lastChange: what, draft: null });
}

/** Shows a job while it is being dragged; nothing is kept yet. */
export function dragTo(draft: Job): void {
  useBench.setState({ draft });
}

/** The finger lifts: what was dragged becomes one change. */
export function liftFinger(what: string): void {
  const { draft } = useBench.getState();
  if (draft !== null) change(what, () => draft);
}

/** The drag is given up: the job stands as before. */
export function dropDraft(): void {
  if (useBench.getState().draft !== null) useBench.setState({ draft: null });
}

export function undo(): void {
  dropDraft();
  useBench.temporal.getState().undo();
}

export function redo(): void {
  dropDraft();
  useBench.temporal.getState().redo();
}

/** The job as it is to be shown: the draft while something is dragged. */
export function useShownJob(): Job {
  return useBench((bench) => bench.draft ?? bench.job);
}

export interface History {
  readonly undoes: string | null;
  readonly redoes: string | null;
}

/** What undo and redo would do, in words; null where there is nothing. */
export function useHistory(): History {
  const lastChange = useBench((bench) => bench.lastChange);
  const past = useStore(useBench.temporal, (history) => history.pastStates.length);
  const next = useStore(useBench.temporal, (history) => history.futureStates.at(-1)?.lastChange ?? null);
  return { undoes: past === 0 ? null : lastChange, redoes: next };
}
