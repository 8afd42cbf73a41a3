/**
 * Keeps the job on the bench: opens the store at the start, saves at every change, hears what other windows keep, and
 * says what goes wrong. There is one of it in a window.
 */
import type { Job } from "mouldwright/job";
import { change, layOnBench, useBench } from "../bench/job-on-bench.ts";
import { type OpenedDatabase, openDatabase } from "./database.ts";
import type { Failure } from "./failure.ts";
import { nameOfCopy } from "./free-name.ts";
import { showInList, tell, useKeeping } from "./kept-jobs.ts";
import { askToPersist, persistenceNow } from "./persistence.ts";
import { type KeptJob, nameOf, type ReadableJob } from "./record.ts";
import { type SavedElsewhere, type Saver, startSaver } from "./saver.ts";
import { type JobStore, jobStore } from "./store.ts";
import { listenToTabs, type Tabs, type TabWord } from "./tabs.ts";
import { unkeptStore } from "./unkept-store.ts";

/** How long a job that was thrown away can be taken out again. */
export const DELETED_KEPT_DAYS = 30;
const DAY_MS = 24 * 60 * 60_000;

interface Keeper {
  readonly store: JobStore;
  readonly saver: Saver;
  readonly tabs: Tabs;
}

let keeper: Keeper | null = null;
let announce: (started: Keeper) => void = () => undefined;
const started = new Promise<Keeper>((resolve) => {
  announce = resolve;
});

/** The store and what stands round it, as soon as it is open. */
export function theKeeper(): Promise<Keeper> {
  return started;
}

/**
 * Opens the store and lays a job on the bench: that of last time, or on the first visit the first of `firstJobs`, all of
 * which are then kept. Called once, at the start.
 */
export async function startKeeping(firstJobs: () => readonly Job[]): Promise<void> {
  let lost: Failure | null = null;
  const lose = (failure: Failure): void => {
    lost = failure;
    useKeeping.setState({ store: "none", saving: { kind: "failed", failure } });
  };
  const opened = await openDatabase({
    onTakenOver: () => lose({ kind: "newer program" }),
    onLost: () => lose({ kind: "other", detail: "the browser closed its store" }),
  });
  const open = storeOf(opened);
  const store: JobStore = {
    ...open.store,
    save: async (wish) => (lost === null ? open.store.save(wish) : { kind: "failed", failure: lost }),
  };
  const tabs = listenToTabs((word) => void hear(word));
  const saver = startSaver({
    store,
    events: eventsOf(store, tabs),
    nameOfCopy: (name) => nameOfCopy(name, timeNow()),
  });
  keeper = { store, saver, tabs };
  useKeeping.setState({ store: opened.kind, persistence: await persistenceNow() });
  if (open.failure !== null) useKeeping.setState({ saving: { kind: "failed", failure: open.failure } });
  announce(keeper);
  await layOutJobs(keeper, opened.kind === "open", firstJobs);
  keepBench(saver);
  addEventListener("beforeunload", (event) => {
    if (saver.hasUnsaved()) event.preventDefault();
  });
}

function storeOf(opened: OpenedDatabase): { readonly store: JobStore; readonly failure: Failure | null } {
  switch (opened.kind) {
    case "open":
      return { store: jobStore(opened.database), failure: null };
    case "read only": {
      const failure: Failure = { kind: "newer program" };
      return { store: unkeptStore(jobStore(opened.database), failure), failure };
    }
    case "none": {
      const failure: Failure = { kind: "no store", detail: opened.detail };
      return { store: unkeptStore(null, failure), failure };
    }
  }
}

async function layOutJobs(
  { store, saver }: Keeper,
  canKeep: boolean,
  firstJobs: () => readonly Job[],
): Promise<void> {
  const jobs = canKeep ? await tidied(store) : await store.list().catch(() => []);
  useKeeping.setState({ jobs });
  const last = await lastOnBench(store);
  const there = jobs.filter(
    (kept): kept is ReadableJob => kept.kind === "job" && kept.deletedAtMs === undefined,
  );
  const chosen = there.find(({ jobId }) => jobId === last) ?? there[0];
  if (chosen !== undefined) {
    layKeptOnBench(chosen);
    return;
  }
  const isFirst = jobs.length === 0;
  const examples = isFirst ? firstJobs() : firstJobs().slice(0, 1);
  // Names that two windows opened at once agree on, so that neither keeps the cabinet twice.
  for (const [index, job] of [...examples.entries()].reverse()) {
    saver.keep(isFirst ? `chart-cabinet-${index + 1}` : "bench-anew", job);
  }
  const [first] = examples;
  if (first === undefined) return;
  layOnBench(isFirst ? "chart-cabinet-1" : "bench-anew", first);
  await saver.settled();
  // Where nothing is kept, nobody could be told from a newcomer.
  useKeeping.setState({ isFirstVisit: isFirst && canKeep });
}

/** The list, with what was thrown away long ago gone for good. */
async function tidied(store: JobStore): Promise<readonly KeptJob[]> {
  const jobs = await store.list();
  const oldest = Date.now() - DELETED_KEPT_DAYS * DAY_MS;
  const gone = jobs.filter(({ deletedAtMs }) => deletedAtMs !== undefined && deletedAtMs < oldest);
  for (const { jobId } of gone) await store.destroy(jobId);
  return jobs.filter((job) => !gone.includes(job));
}

const LAST_ON_BENCH = "last on the bench";

/** Two windows may have two jobs on their benches; each finds its own again. Nothing else hangs on it. */
async function lastOnBench(store: JobStore): Promise<unknown> {
  try {
    return sessionStorage.getItem(LAST_ON_BENCH) ?? (await store.recall(LAST_ON_BENCH));
  } catch {
    return undefined;
  }
}

function rememberOnBench(jobId: string): void {
  try {
    sessionStorage.setItem(LAST_ON_BENCH, jobId);
  } catch {
    // Then the job last opened in any window is found again.
  }
  void theKeeper().then(({ store }) => store.remember(LAST_ON_BENCH, jobId).catch(() => undefined));
}

/** Lays a job of the store on the bench, as it lies there. */
export function layKeptOnBench(kept: ReadableJob): void {
  keeper?.saver.opened(kept.jobId, kept.revision);
  layOnBench(kept.jobId, kept.job);
  rememberOnBench(kept.jobId);
}

function keepBench(saver: Saver): void {
  let hasAsked = false;
  useBench.subscribe((bench, before) => {
    if (bench.jobId === "") return;
    if (bench.jobId !== before.jobId) {
      rememberOnBench(bench.jobId);
      return;
    }
    if (bench.job === before.job) return;
    saver.keep(bench.jobId, bench.job);
    if (hasAsked) return;
    // Asked when there is work to lose, so that a browser which asks the user in turn asks at a sensible moment.
    hasAsked = true;
    void askToPersist().then((persistence) => useKeeping.setState({ persistence }));
  });
}

function eventsOf(store: JobStore, tabs: Tabs): Parameters<typeof startSaver>[0]["events"] {
  return {
    onSaving: () => {
      if (useKeeping.getState().saving.kind === "saved") useKeeping.setState({ saving: { kind: "saving" } });
    },
    onSaved: (jobId, revision, backup) => {
      const isAllSaved = keeper === null || !keeper.saver.hasFailed();
      if (isAllSaved) useKeeping.setState({ saving: { kind: "saved" } });
      if (backup !== "not due") useKeeping.setState({ backupFailed: backup === "failed" });
      tabs.tell({ kind: "kept", jobId, revision });
      forgetNewerElsewhere(jobId);
      void store.read(jobId).then((kept) => showInList(jobId, kept));
    },
    onFailed: (jobId, failure) => {
      useKeeping.setState({ saving: { kind: "failed", failure } });
      void store.read(jobId).then((kept) => showInList(jobId, kept));
    },
    onSavedElsewhere: goOnWithCopy,
  };
}

/** What this window has now saved itself is no longer older than the other window's. */
function forgetNewerElsewhere(jobId: string): void {
  const { notice } = useKeeping.getState();
  if (notice?.kind === "newer elsewhere" && notice.jobId === jobId) tell(null);
}

/** This window's state goes on as a job of its own; the other window's stays what it is. */
function goOnWithCopy({ jobId, there, copyId, copyName }: SavedElsewhere): void {
  const bench = useBench.getState();
  if (bench.jobId === jobId) {
    useBench.setState({ jobId: copyId });
    change("a name of its own", (job) => ({ ...job, name: copyName }));
    rememberOnBench(copyId);
  }
  if (there === null || there.deletedAtMs !== undefined) tell({ kind: "kept though deleted", copyName });
  else tell({ kind: "kept both", otherId: jobId, name: nameOf(there), copyName });
  showInList(jobId, there);
}

function timeNow(): string {
  return new Date().toLocaleTimeString("en-GB", { hour: "2-digit", minute: "2-digit" });
}

async function hear(word: TabWord): Promise<void> {
  const { store, saver } = await theKeeper();
  const kept = word.kind === "gone" ? null : await store.read(word.jobId);
  showInList(word.jobId, kept);
  const bench = useBench.getState();
  if (bench.jobId !== word.jobId || saver.hasUnsaved()) return;
  const { name } = bench.job;
  if (kept === null || kept.deletedAtMs !== undefined) {
    tell({ kind: "deleted elsewhere", jobId: word.jobId, name });
  } else if (kept.revision > saver.revisionOf(word.jobId)) {
    tell({ kind: "newer elsewhere", jobId: word.jobId, name: nameOf(kept) });
  }
}
