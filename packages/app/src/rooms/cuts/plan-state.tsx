/** How the plan stands: old, being made, refused, or with ticks that its cuts no longer have. */
import type { Plan } from "mouldwright/cutting";
import { withoutDropped } from "mouldwright/job";
import { useEffect, useState } from "react";
import { Button } from "react-aria-components";
import { change } from "../../bench/job-on-bench.ts";
import { TroubleWords } from "../../common/trouble-words.tsx";
import { planAgain, stopPlanning, usePlan, usePlanIsOld } from "../../planner/plan-on-bench.ts";

/** Shorter work is not worth a word. */
const WORTH_TELLING_MS = 500;

export function PlanState() {
  const { computed, troubles, isPlanning, warnings } = usePlan();
  const isOld = usePlanIsOld();
  const isLong = useLonger(isPlanning, WORTH_TELLING_MS);
  return (
    <>
      {isOld && computed !== null && (isLong || !isPlanning) ? (
        <div className="plan-old" role="status">
          <p>
            <strong>Old plan.</strong>{" "}
            {isPlanning
              ? "The job has changed; a new plan is being made."
              : "The job has changed since it was made."}
          </p>
          {isPlanning ? null : (
            <Button className="button" onPress={planAgain}>
              Plan again
            </Button>
          )}
        </div>
      ) : null}
      {isLong ? <Progress /> : null}
      <TroubleWords troubles={troubles} />
      {isOld ? null : <TroubleWords troubles={warnings} />}
    </>
  );
}

/** How far the plan under way has come, what is being done, and the way to stop it. */
function Progress() {
  const { doneRatio, says } = usePlan();
  const words = says === "" ? "Planning" : `Planning: ${says}`;
  return (
    <div className="plan-progress">
      <label>
        <span>{words}…</span>
        <progress value={doneRatio} max={1} />
      </label>
      <Button className="button" onPress={stopPlanning}>
        Stop
      </Button>
    </div>
  );
}

export interface DroppedTicksProps {
  readonly plan: Plan;
  readonly dropped: readonly { readonly number: number; readonly name: string }[];
}

export function DroppedTicks({ plan, dropped }: DroppedTicksProps) {
  if (dropped.length === 0) return null;
  const told = dropped.map(({ number, name }) => (name === "" ? `cut ${number}` : `cut ${number} (${name})`));
  return (
    <div className="plan-old" role="status">
      <p>
        <strong>
          {dropped.length === 1 ? "A tick was dropped." : `${dropped.length} ticks were dropped.`}
        </strong>{" "}
        This plan no longer has {listed(told)}. If that wood is gone already, tell how the stick stands with
        “It came out so”.
      </p>
      <Button
        className="button"
        onPress={() => change("dropped ticks cleared", (job) => withoutDropped(job, plan))}
      >
        I know
      </Button>
    </div>
  );
}

function listed(words: readonly string[]): string {
  const last = words[words.length - 1] ?? "";
  return words.length < 2 ? last : `${words.slice(0, -1).join(", ")} and ${last}`;
}

/** True once something has been so for so long. */
export function useLonger(isSo: boolean, afterMs: number): boolean {
  const [isLong, setIsLong] = useState(false);
  useEffect(() => {
    if (!isSo) {
      setIsLong(false);
      return;
    }
    const timer = setTimeout(() => setIsLong(true), afterMs);
    return () => clearTimeout(timer);
  }, [isSo, afterMs]);
  return isLong;
}
