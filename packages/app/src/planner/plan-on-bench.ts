/**
 * The plan of the job on the bench. While a new one is made the old one stays and is marked as old; what is dragged is
 * planned quickly, and again in full when the finger lifts.
 */
import type { ComputedJob, Job } from "mouldwright/job";
import type { Trouble } from "mouldwright/measure";
import { create } from "zustand";
import { useBench } from "../bench/job-on-bench.ts";
import type { FromPlanner } from "./messages.ts";
import { startPlanner } from "./planner.ts";
import { isSameWork } from "./same-work.ts";

export interface PlanOnBench {
  /** The newest plan there is; null before the first. */
  readonly computed: ComputedJob | null;
  /** The job that it was made for. */
  readonly of: Job | null;
  readonly warnings: readonly Trouble[];
  /** Why the shown job has no plan; empty when it has one or one is being made. */
  readonly troubles: readonly Trouble[];
  readonly isPlanning: boolean;
  /** How far the plan under way has come, and what is being done. */
  readonly doneRatio: number;
  readonly says: string;
}

const NOTHING_YET: PlanOnBench = {
  computed: null,
  of: null,
  warnings: [],
  troubles: [],
  isPlanning: false,
  doneRatio: 0,
  says: "",
};

export const usePlan = create<PlanOnBench>()(() => NOTHING_YET);

/** True while the plan on show was made for another state of the job than the one on show. */
export function usePlanIsOld(): boolean {
  const of = usePlan((plan) => plan.of);
  const shown = useBench((bench) => bench.draft ?? bench.job);
  return of !== null && of !== shown;
}

/** What the rooms may ask of the planning under way; nothing before it has begun. */
let underWay: { readonly stop: () => void; readonly again: () => void } | null = null;

/** Stops the plan that is being made: the old one stays, marked as old. */
export function stopPlanning(): void {
  underWay?.stop();
}

/** Makes the plan of the job on the bench once more, after it was stopped or refused. */
export function planAgain(): void {
  underWay?.again();
}

/** Whole plans made lately, so that undo shows them at once and a plan that was tried need not be made again. */
const MOST_KEPT = 6;
let kept: readonly {
  readonly job: Job;
  readonly computed: ComputedJob;
  readonly warnings: readonly Trouble[];
}[] = [];

/** Keeps a plan that was made for a job which is about to be laid on the bench. */
export function keepPlan(job: Job, computed: ComputedJob, warnings: readonly Trouble[]): void {
  kept = [{ job, computed, warnings }, ...kept.filter((one) => !isSameWork(one.job, job))].slice(
    0,
    MOST_KEPT,
  );
}

/** Plans whenever what the plan hangs on has changed. Called once, at the start. */
export function keepPlanning(): () => void {
  let asked: Job | null = null;
  let askedOfJobId = "";
  let wasQuick = false;
  let quickUnderWay = false;
  let askedAtMs = 0;
  const planner = startPlanner((answer) => {
    take(answer, asked);
    if (answer.kind === "planned" && asked !== null && !wasQuick) {
      keepPlan(asked, answer.computed, answer.warnings);
    }
    if (answer.kind === "progress") return;
    performance.measure(wasQuick ? "plan while dragging" : "whole plan", { start: askedAtMs });
    quickUnderWay = false;
    ask();
  });
  const ask = (): void => {
    const { draft, job, jobId } = useBench.getState();
    const shown = draft ?? job;
    if (jobId === "") return;
    const isQuick = draft !== null;
    // What was dragged is planned again in full when it is lifted, though nothing of it has changed.
    if (shown === asked && (isQuick || !wasQuick)) return;
    // A finger moves faster than plans are made: the one under way is finished, and then the newest draft is planned.
    if (isQuick && quickUnderWay && askedOfJobId === jobId) return;
    if (askedOfJobId !== jobId) usePlan.setState(NOTHING_YET);
    if (
      asked !== null &&
      shown !== asked &&
      !isQuick &&
      !wasQuick &&
      askedOfJobId === jobId &&
      isSameWork(asked, shown)
    ) {
      // Notes, ticks and the like change nothing at the bench: the plan stands for the new job as it is.
      // One that is being made goes on, and will be this job's; one that was refused or stopped stays so.
      if (usePlan.getState().of === asked) usePlan.setState({ of: shown });
      asked = shown;
      return;
    }
    asked = shown;
    askedOfJobId = jobId;
    wasQuick = isQuick;
    quickUnderWay = isQuick;
    const known = isQuick ? undefined : kept.find((one) => isSameWork(one.job, shown));
    if (known !== undefined) {
      planner.stop();
      const { computed, warnings } = known;
      usePlan.setState({ computed, of: shown, warnings, troubles: [], isPlanning: false });
      return;
    }
    askedAtMs = performance.now();
    usePlan.setState({ isPlanning: true, doneRatio: 0, says: "" });
    planner.ask(shown, { quick: isQuick });
  };
  const leave = useBench.subscribe(ask);
  underWay = {
    stop: () => {
      planner.stop();
      quickUnderWay = false;
      usePlan.setState({ isPlanning: false });
    },
    again: () => {
      kept = kept.filter(({ job }) => asked === null || !isSameWork(job, asked));
      asked = null;
      ask();
    },
  };
  ask();
  return () => {
    leave();
    planner.close();
    underWay = null;
  };
}

function take(answer: FromPlanner, of: Job | null): void {
  switch (answer.kind) {
    case "progress":
      usePlan.setState({ doneRatio: answer.doneRatio, says: answer.says });
      return;
    case "planned": {
      const { computed, warnings } = answer;
      usePlan.setState({ computed, of, warnings, troubles: [], isPlanning: false });
      return;
    }
    case "refused":
      usePlan.setState({ troubles: answer.troubles, isPlanning: false });
  }
}
