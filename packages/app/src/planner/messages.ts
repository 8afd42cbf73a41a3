/** What goes to the planner's worker and what comes back: plain data. */
import type { ComputedJob, Job } from "mouldwright/job";
import type { Trouble } from "mouldwright/measure";

export interface PlanWish {
  readonly kind: "plan";
  /** Later wishes have greater numbers; an answer carries its wish's. */
  readonly wish: number;
  readonly job: Job;
  /** While something is dragged: proven as ever, but not held against other orders. */
  readonly quick: boolean;
}

export interface Stop {
  readonly kind: "stop";
}

export type ToPlanner = PlanWish | Stop;

export interface OnTheWay {
  readonly kind: "progress";
  readonly wish: number;
  readonly doneRatio: number;
  readonly says: string;
}

export interface Planned {
  readonly kind: "planned";
  readonly wish: number;
  readonly computed: ComputedJob;
  readonly warnings: readonly Trouble[];
}

export interface NotPlanned {
  readonly kind: "refused";
  readonly wish: number;
  readonly troubles: readonly Trouble[];
}

export type FromPlanner = OnTheWay | Planned | NotPlanned;
