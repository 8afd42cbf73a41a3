/** The room "Section": a moulding is drawn, and whether and with what it can be made is seen at once. */
import { useMemo, useState } from "react";
import { Button, ToggleButton } from "react-aria-components";
import { change, useBench } from "../../bench/job-on-bench.ts";
import { usePlan, usePlanIsOld } from "../../planner/plan-on-bench.ts";
import { AnswerPanel } from "./answer/answer-panel.tsx";
import { plannedPlaces, type Verdict, verdictsOf } from "./answer/verdicts.ts";
import { Board } from "./board/board.tsx";
import { turnedRound } from "./chain/turn-round.ts";
import { HandPanel } from "./hand/hand-panel.tsx";
import { useHandDrawing } from "./hand/use-hand-drawing.ts";
import { HabitsForm } from "./limits/habits-form.tsx";
import { LimitsForm } from "./limits/limits-form.tsx";
import { StickForm } from "./limits/stick-form.tsx";
import { PartsList } from "./list/parts-list.tsx";
import { PathPanel } from "./path/path-panel.tsx";
import { shelfRadii } from "./pull/soles.ts";
import "./section.css";
import { useDrawn } from "./use-drawn.ts";

export function Content() {
  const jobId = useBench((bench) => bench.jobId);
  // Another job begins with nothing chosen.
  return <SectionRoom key={jobId} />;
}

function SectionRoom() {
  const drawn = useDrawn();
  const [selected, setSelected] = useState<number | null>(null);
  const computed = usePlan((plan) => plan.computed);
  const isPath = drawn.job.section.parts === undefined;
  const verdicts = useVerdicts(drawn.job.section.parts?.length ?? null);
  const isOld = usePlanIsOld();
  const radii = useMemo(() => shelfRadii(drawn.shelf), [drawn.shelf]);
  const hand = useHandDrawing(drawn, radii);
  const numbered = useMemo(
    () => (isPath ? (computed === null ? [] : plannedPlaces(computed.plan)) : drawn.placed),
    [isPath, computed, drawn.placed],
  );
  const count = drawn.job.section.parts?.length ?? numbered.length;
  const chosen = selected !== null && selected < count && !hand.isOn ? selected : null;
  const turn = (): void => {
    change("turned left to right", (job) => turnedRound(job, drawn.placed));
    setSelected(null);
  };
  return (
    <div className="section-room">
      <h1 className="only-read">Section</h1>
      <AnswerPanel troubles={drawn.troubles} />
      <Board
        drawn={drawn}
        numbered={numbered}
        verdicts={verdicts}
        radii={radii}
        selected={chosen}
        onSelect={setSelected}
        hand={hand}
      >
        <div className="tools tight">
          {isPath ? null : (
            <ToggleButton
              className="button small"
              isSelected={hand.isOn}
              onChange={hand.setOn}
              isDisabled={drawn.placed.length === 0}
            >
              By hand
            </ToggleButton>
          )}
          <Button className="button small" onPress={turn}>
            Turn round
          </Button>
        </div>
        {hand.isOn ? <HandPanel hand={hand} /> : null}
      </Board>
      <div className="section-side">
        {isPath ? (
          <PathPanel
            drawn={drawn}
            numbered={numbered}
            names={computed?.plan.parts.map(({ name }) => name).reverse() ?? []}
            verdicts={verdicts}
            isOld={isOld}
            selected={chosen}
            onSelect={setSelected}
          />
        ) : (
          <PartsList
            drawn={drawn}
            verdicts={verdicts}
            isOld={isOld}
            selected={chosen}
            onSelect={setSelected}
          />
        )}
      </div>
      <div className="section-more">
        <section className="panel" aria-labelledby="stick-head">
          <h2 id="stick-head">Stick and back</h2>
          <StickForm
            stick={drawn.job.stick}
            startHeightMm={drawn.job.section.startHeightMm}
            back={drawn.job.section.back}
            isPath={isPath}
          />
        </section>
        <section className="panel" aria-labelledby="limits-head">
          <h2 id="limits-head">Limits</h2>
          <LimitsForm way={drawn.job.way} unit={drawn.job.unit ?? "mm"} />
        </section>
        <section className="panel" aria-labelledby="habits-head">
          <h2 id="habits-head">Rule, hand and pace</h2>
          <HabitsForm
            unit={drawn.job.unit ?? "mm"}
            inchStep={drawn.job.inchStep}
            hand={drawn.job.hand}
            working={drawn.job.working}
          />
        </section>
      </div>
    </div>
  );
}

/** Those of the newest plan, while it is of a chain with as many parts: else its numbers would name others. */
function useVerdicts(partCount: number | null): readonly Verdict[] {
  const computed = usePlan((plan) => plan.computed);
  const of = usePlan((plan) => plan.of);
  const isOfThisChain = of !== null && (of.section.parts?.length ?? null) === partCount;
  return useMemo(
    () => (computed === null || of === null || !isOfThisChain ? [] : verdictsOf(computed, of)),
    [computed, of, isOfThisChain],
  );
}
