/** The room "Section": a moulding is drawn, and whether and with what it can be made is seen at once. */
import { useMemo, useState } from "react";
import { useBench } from "../../bench/job-on-bench.ts";
import { usePlan, usePlanIsOld } from "../../planner/plan-on-bench.ts";
import { AnswerPanel } from "./answer/answer-panel.tsx";
import { plannedPlaces, verdictsOf } from "./answer/verdicts.ts";
import { Board } from "./board/board.tsx";
import { PartsList } from "./list/parts-list.tsx";
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
  const of = usePlan((plan) => plan.of);
  const isOld = usePlanIsOld();
  const isPath = drawn.job.section.parts === undefined;
  const isOfThisChain = of !== null && of.section.parts?.length === drawn.job.section.parts?.length;
  const verdicts = useMemo(
    () => (computed === null || of === null || !isOfThisChain ? [] : verdictsOf(computed, of)),
    [computed, of, isOfThisChain],
  );
  const numbered = useMemo(
    () => (isPath ? (computed === null ? [] : plannedPlaces(computed.plan)) : drawn.placed),
    [isPath, computed, drawn.placed],
  );
  const count = drawn.job.section.parts?.length ?? numbered.length;
  const chosen = selected !== null && selected < count ? selected : null;
  return (
    <div className="section-room">
      <h1 className="only-read">Section</h1>
      <AnswerPanel troubles={drawn.troubles} />
      <Board drawn={drawn} numbered={numbered} verdicts={verdicts} selected={chosen} onSelect={setSelected} />
      <div className="section-side">
        <PartsList drawn={drawn} verdicts={verdicts} isOld={isOld} selected={chosen} onSelect={setSelected} />
      </div>
    </div>
  );
}
