/** A plan on trial beside the one there is: what it costs before and after, to be taken or left. */
import type { Plan } from "mouldwright/cutting";
import type { Trouble } from "mouldwright/measure";
import { useEffect, useRef } from "react";
import { Button } from "react-aria-components";
import { TroubleWords } from "../../common/trouble-words.tsx";
import type { Trial } from "../../planner/trial.ts";
import { useLonger } from "./plan-state.tsx";
import { compared } from "./what-if.ts";

export interface TrialViewProps {
  readonly trial: Trial;
  readonly before: Plan;
  /** What is tried, in a few words. */
  readonly words: string;
  /** Warnings that mean that what was wished for does not hold. */
  readonly isRefusal: (warning: Trouble) => boolean;
  /** More to be told of a plan that can be taken. */
  readonly remarks: (plan: Plan) => readonly Trouble[];
  readonly onTake: () => void;
  readonly onLeave: () => void;
}

export function TrialView({ trial, before, words, isRefusal, remarks, onTake, onLeave }: TrialViewProps) {
  const isLong = useLonger(trial.kind === "planning", 500);
  const place = useRef<HTMLElement>(null);
  const isShown = trial.kind !== "none";
  // Asked for far below, it is answered above: the maker is led to it, once for each question.
  // biome-ignore lint/correctness/useExhaustiveDependencies: another question is another answer to be led to.
  useEffect(() => {
    if (isShown) place.current?.scrollIntoView({ block: "start" });
  }, [isShown, words]);
  if (trial.kind === "none") return null;
  const heading = words.charAt(0).toUpperCase() + words.slice(1);
  return (
    <section ref={place} className="trial panel" aria-label={`Tried: ${words}`} aria-live="polite">
      <h3>{heading}</h3>
      {trial.kind === "planning" ? (
        <div className="plan-progress">
          <label>
            <span>{isLong && trial.says !== "" ? `Planning: ${trial.says}…` : "Planning…"}</span>
            <progress value={trial.doneRatio} max={1} />
          </label>
          <Button className="button" onPress={onLeave}>
            Stop
          </Button>
        </div>
      ) : trial.kind === "refused" ? (
        <Refused troubles={trial.troubles} onLeave={onLeave} />
      ) : trial.warnings.some(isRefusal) ? (
        <Refused troubles={trial.warnings.filter(isRefusal)} onLeave={onLeave} />
      ) : (
        <>
          <BeforeAndAfter before={before} after={trial.computed.plan} />
          <TroubleWords troubles={[...trial.warnings, ...remarks(trial.computed.plan)]} />
          <div className="tools">
            <Button className="button button-main" onPress={onTake}>
              Take this plan
            </Button>
            <Button className="button" onPress={onLeave}>
              Leave it
            </Button>
          </div>
        </>
      )}
    </section>
  );
}

function Refused({
  troubles,
  onLeave,
}: {
  readonly troubles: readonly Trouble[];
  readonly onLeave: () => void;
}) {
  return (
    <>
      <TroubleWords troubles={troubles} />
      <div className="tools">
        <Button className="button" onPress={onLeave}>
          Leave it
        </Button>
      </div>
    </>
  );
}

function BeforeAndAfter({ before, after }: { readonly before: Plan; readonly after: Plan }) {
  return (
    <table className="before-after figures">
      <thead>
        <tr>
          <th scope="col">
            <span className="only-read">What</span>
          </th>
          <th scope="col">Now</th>
          <th scope="col">Tried</th>
          <th scope="col">
            <span className="only-read">Judged</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {compared(before, after).map((row) => (
          <tr key={row.what}>
            <th scope="row">{row.what}</th>
            <td>{row.before}</td>
            <td>{row.after}</td>
            <td className={row.isBetter === false ? "is-worse" : "is-better"}>
              {row.isBetter === null ? "" : row.isBetter ? "better" : "worse"}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
