/** The answer on top of the room: can it be made with what is on the shelf, and what one change would cure it. */
import type { PlanCure } from "mouldwright/cutting";
import type { Trouble } from "mouldwright/measure";
import { memo } from "react";
import { Button } from "react-aria-components";
import { change } from "../../../bench/job-on-bench.ts";
import { TroubleWords } from "../../../common/trouble-words.tsx";
import { usePlan, usePlanIsOld } from "../../../planner/plan-on-bench.ts";
import { withCure } from "./apply-cure.ts";
import { sortedCures, wholeVerdict } from "./verdicts.ts";

export interface AnswerPanelProps {
  readonly troubles: readonly Trouble[];
}

export const AnswerPanel = memo(function AnswerPanel({ troubles }: AnswerPanelProps) {
  const computed = usePlan((plan) => plan.computed);
  const isPlanning = usePlan((plan) => plan.isPlanning);
  const doneRatio = usePlan((plan) => plan.doneRatio);
  const planTroubles = usePlan((plan) => plan.troubles);
  const isOld = usePlanIsOld();
  const told = troubles.length > 0 ? troubles : isPlanning ? [] : planTroubles;
  if (told.length > 0) {
    return (
      <section className="answer answer-no" aria-label="Answer">
        <TroubleWords troubles={told} />
      </section>
    );
  }
  if (computed === null) {
    return (
      <section className="answer" aria-label="Answer">
        <p className="answer-says" role="status">
          {isPlanning ? `Looking for the cuts … ${percent(doneRatio)}` : "No answer yet."}
        </p>
      </section>
    );
  }
  const { plan } = computed;
  const { canBeMade, says } = wholeVerdict(plan);
  const cures = canBeMade ? [] : sortedCures(plan.cures ?? []);
  return (
    <section
      className={`answer ${canBeMade ? "answer-yes" : "answer-no"}${isOld ? " answer-old" : ""}`}
      aria-label="Answer"
    >
      <p className="answer-says" role="status">
        <VerdictSign isGood={canBeMade} />
        <strong>{says}</strong>
        {isOld ? (
          <span className="answer-age">
            before the change{isPlanning ? ` – planning, ${percent(doneRatio)}` : ""}
          </span>
        ) : null}
      </p>
      {cures.slice(0, 1).map((cure) => (
        <CureLine key={cure.says} cure={cure} isOld={isOld} />
      ))}
      {!canBeMade && cures.length === 0 ? (
        <p className="quiet">
          No small change and no single plane was found that cures it. Open a part below to see why.
        </p>
      ) : null}
    </section>
  );
});

export function CureLine({ cure, isOld }: { readonly cure: PlanCure; readonly isOld: boolean }) {
  const apply = (): void => {
    const { computed } = usePlan.getState();
    if (computed === null) return;
    change(cureName(cure), (job) => withCure(job, computed, cure) ?? job);
  };
  return (
    <div className="cure">
      <p className="cure-says">
        {cure.says} <span className="quiet">{afterwards(cure)}</span>
      </p>
      <Button className="button cure-button" onPress={apply} isDisabled={isOld}>
        {cure.kind === "change" ? "Change it" : "Put it on the shelf"}
        <span className="only-read">: {cure.says}</span>
      </Button>
    </div>
  );
}

function cureName(cure: PlanCure): string {
  return cure.says.replace(/\.$/, "").replace(/^\p{Lu}/u, (letter) => letter.toLowerCase());
}

function afterwards({ placesAfter, cutsAfter }: PlanCure): string {
  if (placesAfter === 0) return `Then all of it can be cut: ${cutsAfter} cuts.`;
  return placesAfter === 1 ? "Then 1 place stays uncut." : `Then ${placesAfter} places stay uncut.`;
}

function percent(ratio: number): string {
  return `${Math.round(ratio * 100)} %`;
}

/** A tick or a cross: never the colour alone. */
export function VerdictSign({ isGood }: { readonly isGood: boolean }) {
  return (
    <svg className={isGood ? "verdict-sign yes" : "verdict-sign no"} viewBox="0 0 24 24" aria-hidden="true">
      <path d={isGood ? "M5 13l5 5 9 -12" : "M6 6l12 12M18 6l-12 12"} />
    </svg>
  );
}
