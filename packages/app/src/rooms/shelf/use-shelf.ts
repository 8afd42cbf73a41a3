/** The shelf of the job on the bench, and changes of it that may be refused. */
import type { Job } from "mouldwright/job";
import type { Outcome, Trouble } from "mouldwright/measure";
import type { Shelf } from "mouldwright/shelf";
import { useMemo } from "react";
import { change, useBench, useShownJob } from "../../bench/job-on-bench.ts";
import { usePlan } from "../../planner/plan-on-bench.ts";
import { leftOutIds, shelfOn } from "./shelf-edits.ts";
import { type PlaneUse, usesOf } from "./shelf-list.ts";

export interface ShelfOfJob {
  readonly shelf: Shelf;
  readonly troubles: readonly Trouble[];
  readonly leftOut: ReadonlySet<string>;
  /** By the newest plan there is; empty before the first. */
  readonly uses: ReadonlyMap<string, PlaneUse>;
}

const NO_USES: ReadonlyMap<string, PlaneUse> = new Map();

export function useShelf(): ShelfOfJob {
  const job = useShownJob();
  const plan = usePlan(({ computed }) => computed?.plan ?? null);
  const outcome = useMemo(() => shelfOn(job), [job]);
  const uses = useMemo(() => (plan === null ? NO_USES : usesOf(plan)), [plan]);
  return useMemo(() => {
    const shelf = outcome.ok ? outcome.value : { planes: [], assumed: [] };
    const troubles = outcome.ok ? [] : [outcome.trouble, ...(outcome.more ?? [])];
    return { shelf, troubles, leftOut: new Set(leftOutIds(job, shelf)), uses };
  }, [outcome, job, uses]);
}

/** One step to undo if it can be done; else nothing changes and the troubles come back. */
export function tryChange(what: string, edit: (job: Job) => Outcome<Job>): readonly Trouble[] {
  const outcome = edit(useBench.getState().job);
  if (!outcome.ok) return [outcome.trouble, ...(outcome.more ?? [])];
  change(what, () => outcome.value);
  return [];
}
