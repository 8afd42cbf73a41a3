/** A plan on trial: made in a worker of its own beside the plan on the bench, to be taken or left. */
import type { ComputedJob, Job } from "mouldwright/job";
import type { Trouble } from "mouldwright/measure";
import { useCallback, useEffect, useRef, useState } from "react";
import type { FromPlanner } from "./messages.ts";
import { type Planner, startPlanner } from "./planner.ts";

export type Trial =
  | { readonly kind: "none" }
  | { readonly kind: "planning"; readonly job: Job; readonly doneRatio: number; readonly says: string }
  | {
      readonly kind: "planned";
      readonly job: Job;
      readonly computed: ComputedJob;
      readonly warnings: readonly Trouble[];
    }
  | { readonly kind: "refused"; readonly job: Job; readonly troubles: readonly Trouble[] };

export interface OnTrial {
  readonly trial: Trial;
  readonly ask: (job: Job) => void;
  /** Stops what is being planned, or leaves what was. */
  readonly leave: () => void;
}

const NONE: Trial = { kind: "none" };

export function useTrial(): OnTrial {
  const [trial, setTrial] = useState<Trial>(NONE);
  const planner = useRef<Planner | null>(null);
  const asked = useRef<Job | null>(null);
  useEffect(
    () => () => {
      planner.current?.close();
      planner.current = null;
    },
    [],
  );
  const ask = useCallback((job: Job) => {
    planner.current ??= startPlanner((answer) => {
      if (asked.current !== null) setTrial(trialAfter(answer, asked.current));
    });
    asked.current = job;
    setTrial({ kind: "planning", job, doneRatio: 0, says: "" });
    planner.current.ask(job, { quick: false });
  }, []);
  const leave = useCallback(() => {
    asked.current = null;
    planner.current?.stop();
    setTrial(NONE);
  }, []);
  return { trial, ask, leave };
}

function trialAfter(answer: FromPlanner, job: Job): Trial {
  switch (answer.kind) {
    case "progress":
      return { kind: "planning", job, doneRatio: answer.doneRatio, says: answer.says };
    case "planned":
      return { kind: "planned", job, computed: answer.computed, warnings: answer.warnings };
    case "refused":
      return { kind: "refused", job, troubles: answer.troubles };
  }
}
