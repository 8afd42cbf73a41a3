/** What the screen knows of the keeping: the jobs there are, how the saving goes, and what has to be told or asked. */
import { create } from "zustand";
import type { Failure } from "./failure.ts";
import type { Persistence } from "./persistence.ts";
import type { KeptJob } from "./record.ts";

export type Saving =
  | { readonly kind: "saved" }
  | { readonly kind: "saving" }
  | { readonly kind: "failed"; readonly failure: Failure };

export type Notice =
  /** Another window saved the job on this bench first: both are kept, and this window goes on with its own. */
  | { readonly kind: "kept both"; readonly otherId: string; readonly name: string; readonly copyName: string }
  /** The other window threw the job away that this one went on with: it is kept here under a name of its own. */
  | { readonly kind: "kept though deleted"; readonly copyName: string }
  /** Another window has saved the job that lies on this bench; here nothing has been changed since. */
  | { readonly kind: "newer elsewhere"; readonly jobId: string; readonly name: string }
  /** Another window has thrown the job away that lies on this bench. */
  | { readonly kind: "deleted elsewhere"; readonly jobId: string; readonly name: string }
  | { readonly kind: "deleted"; readonly jobId: string; readonly name: string }
  | { readonly kind: "backup put back"; readonly name: string }
  /** One file with all jobs was handed to the browser, and read back whole before. */
  | { readonly kind: "all saved"; readonly count: number; readonly fileName: string }
  /** Read back, the file did not hold these as they are: it was not saved. */
  | { readonly kind: "not all saved"; readonly names: readonly string[] };

export interface Keeping {
  readonly store: "opening" | "open" | "read only" | "none";
  /** All of them, thrown away or not, the newest first. */
  readonly jobs: readonly KeptJob[];
  readonly saving: Saving;
  readonly notice: Notice | null;
  readonly persistence: Persistence;
  /** The last backup found no room. */
  readonly backupFailed: boolean;
  /** The jobs of the chart cabinet were laid out just now: nobody has worked here before. */
  readonly isFirstVisit: boolean;
}

export const useKeeping = create<Keeping>()(() => ({
  store: "opening",
  jobs: [],
  saving: { kind: "saved" },
  notice: null,
  persistence: "unknown",
  backupFailed: false,
  isFirstVisit: false,
}));

export function tell(notice: Notice | null): void {
  useKeeping.setState({ notice });
}

/** Puts a job's newest state into the list, or takes it out. */
export function showInList(jobId: string, kept: KeptJob | null): void {
  useKeeping.setState(({ jobs }) => {
    const others = jobs.filter((job) => job.jobId !== jobId);
    const all = kept === null ? others : [...others, kept];
    return { jobs: all.sort((one, other) => other.savedAtMs - one.savedAtMs) };
  });
}
