/**
 * The planner away from the screen. Works in short turns and listens between them, so that a newer wish stops an older
 * one at once.
 */
import type { Plan } from "mouldwright/cutting";
import { type ComputedJob, jobSteps } from "mouldwright/job";
import { cataloguedTrouble, type Outcome } from "mouldwright/measure";
import type { FromPlanner, PlanWish, ToPlanner } from "./messages.ts";

/** How long to work before listening, ms. */
const TURN_MS = 12;

let newest = -1;
/** The plan made last: while something is dragged the next one follows it. */
let lastPlan: Plan | undefined;

addEventListener("message", ({ data }: MessageEvent<ToPlanner>) => {
  if (data.kind === "stop") {
    newest = Number.POSITIVE_INFINITY;
    return;
  }
  newest = data.wish;
  void answer(data);
});

async function answer(wish: PlanWish): Promise<void> {
  const steps = jobSteps(wish.job, {
    quick: wish.quick,
    ...(lastPlan === undefined ? {} : { like: lastPlan }),
  });
  try {
    let turnFrom = performance.now();
    for (;;) {
      const step = steps.next();
      if (step.done === true) {
        if (step.value.ok) lastPlan = step.value.value.plan;
        send(answerOf(wish.wish, step.value));
        return;
      }
      if (performance.now() - turnFrom < TURN_MS) continue;
      const { done, of, says } = step.value;
      send({ kind: "progress", wish: wish.wish, doneRatio: of > 0 ? done / of : 0, says });
      await nextTurn();
      if (newest !== wish.wish) return;
      turnFrom = performance.now();
    }
  } catch (error) {
    const detail = error instanceof Error ? error.message : String(error);
    send({ kind: "refused", wish: wish.wish, troubles: [cataloguedTrouble("internal", "", { detail })] });
  }
}

function answerOf(wish: number, outcome: Outcome<ComputedJob>): FromPlanner {
  return outcome.ok
    ? { kind: "planned", wish, computed: outcome.value, warnings: outcome.warnings }
    : { kind: "refused", wish, troubles: [outcome.trouble, ...(outcome.more ?? [])] };
}

/** A turn through the queue of messages; timers are held back by browsers, a channel is not. */
function nextTurn(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel();
    port1.onmessage = () => {
      port1.close();
      resolve();
    };
    port2.postMessage(null);
  });
}

function send(message: FromPlanner): void {
  postMessage(message);
}
