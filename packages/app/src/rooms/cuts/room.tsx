/** The plan as the bench card's pages to turn. */
import type { Plan } from "mouldwright/cutting";
import { ticksOn, withTick } from "mouldwright/job";
import { useCallback, useMemo, useState } from "react";
import { Button } from "react-aria-components";
import { change, useBench } from "../../bench/job-on-bench.ts";
import { usePlan } from "../../planner/plan-on-bench.ts";
import { BenchView } from "./bench-view.tsx";
import { CutPage } from "./cut-page.tsx";
import { CutStrip } from "./cut-strip.tsx";
import type { Rule } from "./cut-words.ts";
import { enterFullScreen } from "./full-screen.ts";
import { OverviewPage } from "./overview-page.tsx";
import { turnTo, useWishedPage } from "./page-on-show.ts";
import { isSamePage, type Page, pageOnShow, pagesOf } from "./pages.ts";
import { DroppedTicks, PlanState } from "./plan-state.tsx";
import { BackSign, OnSign } from "./signs.tsx";
import { useSwipe, useTurningKeys } from "./turning.ts";
import "./cuts.css";

export function Content() {
  const plan = usePlan((state) => state.computed?.plan ?? null);
  return (
    <div className="cuts-room">
      <h1 className="only-read">Cuts</h1>
      <PlanState />
      {plan === null ? <NoPlanYet /> : <PlanPages plan={plan} />}
    </div>
  );
}

function NoPlanYet() {
  const { isPlanning, troubles } = usePlan();
  return (
    <div className="panel no-plan">
      <h2>{isPlanning ? "The plan is being made" : "No plan yet"}</h2>
      <p>
        Here stand the cuts, one to a page: which plane, how it is held, one distance, and the sign that it is
        done.
      </p>
      <p>
        {isPlanning
          ? "The first page opens by itself as soon as every cut is proven."
          : troubles.length > 0
            ? "Put right what is told above; the plan is then made by itself."
            : "Draw a section and put planes on the shelf; the plan is then made by itself."}
      </p>
      <p className="tools">
        <a className="button" href="#section">
          To the section
        </a>
        <a className="button" href="#shelf">
          To the shelf
        </a>
      </p>
    </div>
  );
}

function PlanPages({ plan }: { readonly plan: Plan }) {
  const jobId = useBench((bench) => bench.jobId);
  const ticks = useBench((bench) => bench.job.ticks);
  const rule = useRule();
  const { done, dropped } = useMemo(() => ticksOn(plan, ticks), [plan, ticks]);
  const wished = useWishedPage(jobId);
  const page = useMemo(() => pageOnShow(plan, wished, done), [plan, wished, done]);
  const pages = useMemo(() => pagesOf(plan), [plan]);
  const at = pages.findIndex((one) => isSamePage(one, page));
  const [isAtBench, setIsAtBench] = useState(false);
  const turn = useCallback((to: Page) => turnTo(jobId, to), [jobId]);
  const turnToPlace = useCallback(
    (place: number) => {
      const to = pages[Math.max(0, Math.min(place, pages.length - 1))];
      if (to !== undefined) turnTo(jobId, to);
    },
    [pages, jobId],
  );
  useTurningKeys(at, pages.length, turnToPlace);
  const swipe = useSwipe((step) => turnToPlace(at + step));
  const tick = useCallback(
    (number: number, isDone: boolean) => {
      // The page stays, though without a wish it would go on to the next cut that is not done.
      turnTo(jobId, { kind: "cut", number });
      change(`cut ${number} ${isDone ? "done" : "not done"}`, (job) => withTick(job, plan, number, isDone));
    },
    [plan, jobId],
  );
  const cut = page.kind === "cut" ? plan.cuts.find(({ number }) => number === page.number) : undefined;
  return (
    <>
      <DroppedTicks plan={plan} dropped={dropped} />
      <div className="cuts-desk">
        <CutStrip plan={plan} page={page} done={done} rule={rule} onTurn={turn} />
        <div className="cuts-page" {...swipe}>
          <div className="pager">
            <Button
              className="button pager-turn"
              aria-label="Page before"
              isDisabled={at === 0}
              onPress={() => turnToPlace(at - 1)}
            >
              <BackSign />
            </Button>
            <p className="pager-place figures" aria-live="polite">
              {cut === undefined ? "Overview" : `Cut ${cut.number} of ${plan.cuts.length}`}
            </p>
            <Button
              className="button pager-turn"
              aria-label="Next page"
              isDisabled={at === pages.length - 1}
              onPress={() => turnToPlace(at + 1)}
            >
              <OnSign />
            </Button>
            <Button
              className="button button-main"
              isDisabled={plan.cuts.length === 0}
              onPress={() => {
                enterFullScreen();
                setIsAtBench(true);
              }}
            >
              At the bench
            </Button>
          </div>
          {cut === undefined ? (
            <OverviewPage plan={plan} rule={rule} done={done} onTurn={turn} />
          ) : (
            <CutPage
              plan={plan}
              cut={cut}
              rule={rule}
              isDone={done.has(cut.number)}
              onTick={(isDone) => tick(cut.number, isDone)}
            />
          )}
        </div>
      </div>
      {isAtBench ? (
        <BenchView
          plan={plan}
          number={cut?.number ?? plan.cuts[0]?.number ?? 1}
          rule={rule}
          done={done}
          onTurn={(number) => turn({ kind: "cut", number })}
          onTick={tick}
          onLeave={() => setIsAtBench(false)}
        />
      ) : null}
    </>
  );
}

function useRule(): Rule {
  const unit = useBench((bench) => bench.job.unit ?? "mm");
  const inchStep = useBench((bench) => bench.job.inchStep);
  return useMemo(() => ({ unit, inchStep }), [unit, inchStep]);
}
