/** A version of a job that was held to be compared with; kept while the app is open, never in the job. */
import type { Job } from "mouldwright/job";
import { create } from "zustand";

export interface HeldVersion {
  readonly job: Job;
  /** The last change before it was held; empty for a job just opened. */
  readonly after: string;
}

export const useHeld = create<{ readonly held: HeldVersion | null }>()(() => ({ held: null }));

export function holdVersion(job: Job, after: string): void {
  useHeld.setState({ held: { job, after } });
}

export function letGoOfVersion(): void {
  useHeld.setState({ held: null });
}

/** Whether both have the same section, so that there is nothing to compare. */
export function isSameSection(one: Job, other: Job): boolean {
  return one.section === other.section && one.stick === other.stick && one.shelf === other.shelf;
}
