/**
 * What the other kept jobs use of the planes: each is planned once, one after the other, when the maker asks for it, and
 * again only when it has been saved since. Planes are known by kind, hand and sizes, as every job has a shelf of its own.
 */
import type { ComputedJob } from "mouldwright/job";
import { useMemo } from "react";
import { create } from "zustand";
import { useBench } from "../../bench/job-on-bench.ts";
import { useKeeping } from "../../keeping/kept-jobs.ts";
import type { KeptJob, ReadableJob } from "../../keeping/record.ts";
import { startPlanner } from "../../planner/planner.ts";
import { likeness } from "./shelf-edits.ts";
import { usesOf } from "./shelf-list.ts";

/** Numbers of the cuts that a job makes with a plane, by the plane's likeness. */
export type UsesByLikeness = ReadonlyMap<string, readonly number[]>;

interface LookedThrough {
  readonly isLooking: boolean;
  /** By job and revision; a job that cannot be planned uses nothing. */
  readonly known: ReadonlyMap<string, UsesByLikeness>;
}

const useLookedThrough = create<LookedThrough>()(() => ({ isLooking: false, known: new Map() }));

export interface OtherJobs {
  /** How many other jobs there are. */
  readonly count: number;
  /** How many of them have not been looked through as they stand now. */
  readonly unknownCount: number;
  readonly isLooking: boolean;
  /** The other jobs that use a plane, by its likeness. */
  readonly uses: ReadonlyMap<string, readonly OtherUse[]>;
}

export interface OtherUse {
  readonly jobId: string;
  readonly name: string;
  readonly cuts: readonly number[];
}

export function useOtherJobs(): OtherJobs {
  const jobs = useKeeping((keeping) => keeping.jobs);
  const here = useBench((bench) => bench.jobId);
  const { isLooking, known } = useLookedThrough();
  return useMemo(() => {
    const others = othersOf(jobs, here);
    const unknownCount = others.filter((job) => !known.has(keyOf(job))).length;
    return { count: others.length, unknownCount, isLooking, uses: gathered(others, known) };
  }, [jobs, here, isLooking, known]);
}

/** The kept jobs that can be read, were not thrown away, and do not lie on the bench. */
export function othersOf(jobs: readonly KeptJob[], here: string): readonly ReadableJob[] {
  return jobs.flatMap((job) =>
    job.kind === "job" && job.deletedAtMs === undefined && job.jobId !== here ? [job] : [],
  );
}

/** For each plane the jobs that use it. */
export function gathered(
  others: readonly ReadableJob[],
  known: LookedThrough["known"],
): ReadonlyMap<string, readonly OtherUse[]> {
  const uses = new Map<string, OtherUse[]>();
  for (const kept of others) {
    for (const [like, cuts] of known.get(keyOf(kept)) ?? []) {
      const use: OtherUse = { jobId: kept.jobId, name: kept.job.name, cuts };
      uses.set(like, [...(uses.get(like) ?? []), use]);
    }
  }
  return uses;
}

export function keyOf({ jobId, revision }: Pick<ReadableJob, "jobId" | "revision">): string {
  return `${jobId} ${revision}`;
}

/** What a plan uses of its own shelf. */
export function usesByLikeness({ plan, shelf }: Pick<ComputedJob, "plan" | "shelf">): UsesByLikeness {
  const uses = usesOf(plan);
  return new Map(
    shelf.planes.flatMap((plane) => {
      const use = uses.get(plane.id);
      return use === undefined ? [] : [[likeness(plane), use.cuts] as const];
    }),
  );
}

/** Plans the other jobs that are not known as they stand now, in a worker of its own that is ended afterwards. */
export function lookThroughOtherJobs(): void {
  if (useLookedThrough.getState().isLooking) return;
  const { known } = useLookedThrough.getState();
  const waiting = [...othersOf(useKeeping.getState().jobs, useBench.getState().jobId)].filter(
    (job) => !known.has(keyOf(job)),
  );
  let under: ReadableJob | undefined;
  const next = (): void => {
    under = waiting.shift();
    if (under === undefined) {
      planner.close();
      useLookedThrough.setState({ isLooking: false });
      return;
    }
    planner.ask(under.job, { quick: true });
  };
  const planner = startPlanner((answer) => {
    if (answer.kind === "progress" || under === undefined) return;
    const found: UsesByLikeness = answer.kind === "planned" ? usesByLikeness(answer.computed) : new Map();
    const key = keyOf(under);
    useLookedThrough.setState((state) => ({ known: new Map([...state.known, [key, found]]) }));
    next();
  });
  useLookedThrough.setState({ isLooking: true });
  next();
}
