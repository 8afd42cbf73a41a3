/** What a maker does with whole jobs: open, keep a new one, copy, rename, throw away and take out again, go back to a backup. */
import type { Job } from "mouldwright/job";
import { change, layOnBench, useBench } from "../bench/job-on-bench.ts";
import { freeName } from "./free-name.ts";
import { layKeptOnBench, theKeeper } from "./keeping.ts";
import { showInList, tell, useKeeping } from "./kept-jobs.ts";
import { newJobId } from "./new-id.ts";
import type { ReadableJob } from "./record.ts";
import type { KeptBackup } from "./store.ts";

/** Lays a kept job on the bench as it lies in the store now. */
export async function openJob(jobId: string): Promise<void> {
  if (useBench.getState().jobId === jobId) return;
  const { store, saver } = await theKeeper();
  await saver.settled();
  const kept = await store.read(jobId);
  if (kept?.kind === "job") layKeptOnBench(kept);
}

/** Lays on the bench what another window has saved of this job. */
export async function takeFromOtherWindow(jobId: string): Promise<void> {
  const { store } = await theKeeper();
  const kept = await store.read(jobId);
  if (kept?.kind === "job") layKeptOnBench(kept);
  tell(null);
}

/** Keeps a new job and lays it on the bench; its name is told apart from those that there are. */
export async function keepNewJob(job: Job): Promise<void> {
  const { saver } = await theKeeper();
  const jobId = newJobId();
  const named = { ...job, name: freeName(job.name, takenNames()) };
  saver.keep(jobId, named);
  layOnBench(jobId, named);
  await saver.settled();
}

/** Keeps new jobs without opening them. */
export async function keepJobs(jobs: readonly Job[]): Promise<void> {
  const { saver } = await theKeeper();
  const taken = takenNames();
  for (const job of jobs) {
    const name = freeName(job.name, taken);
    taken.add(name);
    saver.keep(newJobId(), { ...job, name });
  }
  await saver.settled();
}

export async function duplicateJob({ job }: ReadableJob): Promise<void> {
  await keepJobs([job]);
}

/** A change of one job in the list: on the bench a step to undo, else saved as it is. */
export async function editJob(kept: ReadableJob, what: string, edit: (job: Job) => Job): Promise<void> {
  if (useBench.getState().jobId === kept.jobId) {
    change(what, edit);
    return;
  }
  const { saver } = await theKeeper();
  saver.opened(kept.jobId, kept.revision);
  saver.keep(kept.jobId, edit(kept.job));
  await saver.settled();
}

/** Throws a job away: it stays for some weeks and can be taken out again. */
export async function deleteJob(kept: ReadableJob): Promise<void> {
  const { saver } = await theKeeper();
  await saver.settled();
  const isDone = await markDeleted(kept.jobId, Date.now());
  if (!isDone) return;
  tell({ kind: "deleted", jobId: kept.jobId, name: kept.job.name });
  if (useBench.getState().jobId === kept.jobId) await layAnotherOnBench();
}

export async function takeOutAgain(jobId: string): Promise<void> {
  await markDeleted(jobId, undefined);
  tell(null);
}

async function markDeleted(jobId: string, deletedAtMs: number | undefined): Promise<boolean> {
  const { store, saver, tabs } = await theKeeper();
  const kept = await store.read(jobId);
  if (kept?.kind !== "job") return false;
  const answer = await store.save({
    jobId,
    fromRevision: kept.revision,
    text: kept.text,
    ...(deletedAtMs === undefined ? {} : { deletedAtMs }),
  });
  if (answer.kind === "failed") useKeeping.setState({ saving: { kind: "failed", failure: answer.failure } });
  if (answer.kind !== "saved") return false;
  saver.opened(jobId, answer.revision);
  tabs.tell({ kind: "kept", jobId, revision: answer.revision });
  showInList(jobId, await store.read(jobId));
  return true;
}

/** A bench is never empty: the newest of the other jobs, or a plain one to begin with. */
async function layAnotherOnBench(): Promise<void> {
  const other = useKeeping
    .getState()
    .jobs.find((kept): kept is ReadableJob => kept.kind === "job" && kept.deletedAtMs === undefined);
  if (other !== undefined) layKeptOnBench(other);
  else await keepNewJob({ ...useBench.getState().job, name: "New moulding", section: PLAIN_SECTION });
}

const PLAIN_SECTION: Job["section"] = { parts: [{ kind: "fillet", widthMm: "rest" }] };

/** Gone for good, with its backups. */
export async function destroyJob(jobId: string): Promise<void> {
  const { store, tabs } = await theKeeper();
  const failure = await store.destroy(jobId);
  if (failure !== null) {
    useKeeping.setState({ saving: { kind: "failed", failure } });
    return;
  }
  tabs.tell({ kind: "gone", jobId });
  showInList(jobId, null);
}

export async function backupsOf(jobId: string): Promise<readonly KeptBackup[]> {
  const { store } = await theKeeper();
  return store.backups(jobId);
}

/** Puts a backup back as one change of the job: it can be undone, and what it replaces becomes a backup too. */
export async function putBackupBack(jobId: string, job: Job): Promise<void> {
  await openJob(jobId);
  const { saver } = await theKeeper();
  if (useBench.getState().jobId !== jobId) return;
  change("backup put back", () => job);
  saver.keep(jobId, job, { keepsOld: true });
  tell({ kind: "backup put back", name: job.name });
  await saver.settled();
}

export async function trySavingAgain(): Promise<void> {
  const { saver } = await theKeeper();
  saver.tryAgain();
}

export async function rememberHere(what: string, value: unknown): Promise<void> {
  const { store } = await theKeeper();
  await store.remember(what, value).catch(() => undefined);
}

export async function recallHere(what: string): Promise<unknown> {
  const { store } = await theKeeper();
  return store.recall(what).catch(() => undefined);
}

function takenNames(): Set<string> {
  return new Set(
    useKeeping
      .getState()
      .jobs.flatMap((kept) => (kept.kind === "job" && kept.deletedAtMs === undefined ? [kept.job.name] : [])),
  );
}

/** When everything is in the store, or has been refused by it: nothing is being written any more. */
export async function allSaved(): Promise<void> {
  const { saver } = await theKeeper();
  await saver.settled();
}
