/** The planner as the rooms see it: ask, stop, be told. One worker each; the newest wish wins. */
import type { Job } from "mouldwright/job";
import type { FromPlanner, ToPlanner } from "./messages.ts";

export interface Planner {
  /** Asks for a plan; an older wish is dropped. */
  readonly ask: (job: Job, options: { readonly quick: boolean }) => void;
  /** Drops the wish under way. */
  readonly stop: () => void;
  /** Ends the worker. */
  readonly close: () => void;
}

/** `onAnswer` hears only what belongs to the newest wish. */
export function startPlanner(onAnswer: (answer: FromPlanner) => void): Planner {
  let wish = 0;
  let worker: Worker | null = null;
  const tell = (message: ToPlanner): void => {
    worker ??= begin();
    worker.postMessage(message);
  };
  const begin = (): Worker => {
    const begun = new Worker(new URL("./planner.worker.ts", import.meta.url), { type: "module" });
    begun.addEventListener("message", ({ data }: MessageEvent<FromPlanner>) => {
      if (data.wish === wish) onAnswer(data);
    });
    return begun;
  };
  return {
    ask: (job, { quick }) => {
      wish += 1;
      tell({ kind: "plan", wish, job, quick });
    },
    stop: () => {
      wish += 1;
      if (worker !== null) tell({ kind: "stop" });
    },
    close: () => {
      worker?.terminate();
      worker = null;
    },
  };
}
