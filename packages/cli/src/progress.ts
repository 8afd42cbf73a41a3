import type { Io } from "./io.ts";

export interface Step {
  readonly done: number;
  readonly of: number;
  readonly says: string;
}

/** Wait before anything is said: most plans are there sooner. */
const QUIET_MS = 1000;
/** Between two lines drawn over each other. */
const REDRAW_MS = 200;

/**
 * Runs long work step by step, so that an interrupt is heard between two of them, and says after a while how far
 * it is: on a terminal in one line drawn over itself, elsewhere in a single line.
 * Gives what the work gives, or null if it was interrupted.
 */
export async function runSteps<Result>(steps: Generator<Step, Result>, io: Io): Promise<Result | null> {
  const startedMs = io.now();
  let saidMs = Number.NEGATIVE_INFINITY;
  let drawn = 0;
  try {
    for (;;) {
      const step = steps.next();
      if (step.done === true) return step.value;
      await io.breathe();
      if (io.interrupted.aborted) return null;
      const now = io.now();
      if (now - startedMs < QUIET_MS || now - saidMs < REDRAW_MS) continue;
      if (io.isWatched) {
        const line = lineOf(step.value).slice(0, io.complaintColumns - 1);
        io.complain(`\r${line.padEnd(drawn)}`);
        drawn = line.length;
      } else if (saidMs === Number.NEGATIVE_INFINITY) {
        io.complain("Planning goes on; this may take a while.\n");
      }
      saidMs = now;
    }
  } finally {
    if (drawn > 0) io.complain(`\r${" ".repeat(drawn)}\r`);
  }
}

function lineOf(step: Step): string {
  const share = step.of > 0 ? `${Math.min(100, Math.round((100 * step.done) / step.of))} %  ` : "";
  return `${share}${step.says}`.replaceAll("\n", " ");
}
