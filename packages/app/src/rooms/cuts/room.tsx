/** The plan as the bench card's pages to turn. */
import type { Plan } from "mouldwright/cutting";
import { type Stage, ticksOn, withTick } from "mouldwright/job";
import { useCallback, useMemo, useState } from "react";
import { Button } from "react-aria-components";
import { change, useBench } from "../../bench/job-on-bench.ts";
import { usePlan } from "../../planner/plan-on-bench.ts";
import { BenchView } from "./bench-view.tsx";
import { CameOutDrawer } from "./came-out-drawer.tsx";
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
import { WhatIfDrawer } from "./what-if-drawer.tsx";
import "./cuts.css";

const NO_STAGES: readonly Stage[] = [];

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
  const stages = useBench((bench) => bench.job.standing) ?? NO_STAGES;
  const wished = useWishedPage(jobId);
  const page = useMemo(() => pageOnShow(plan, wished, done, stages), [plan, wished, done, stages]);
  const pages = useMemo(() => pagesOf(plan, stages), [plan, stages]);
  const at = pages.findIndex((one) => isSamePage(one, page));
  const [open, setOpen] = useState<"bench" | "what if" | "came out" | null>(null);
  const close = useCallback(() => setOpen(null), []);
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
  const made = page.kind === "made" ? stages[page.stage]?.plan : undefined;
  const cut =
    page.kind === "overview" ? undefined : (made ?? plan).cuts.find(({ number }) => number === page.number);
  return (
    <>
      <DroppedTicks plan={plan} dropped={dropped} />
      <div className="cuts-desk">
        <CutStrip plan={plan} stages={stages} page={page} done={done} rule={rule} onTurn={turn} />
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
              {cut === undefined
                ? "Overview"
                : made === undefined
                  ? `Cut ${cut.number} of ${plan.cuts.length}`
                  : `Made: cut ${cut.number}`}
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
                setOpen("bench");
              }}
            >
              At the bench
            </Button>
          </div>
          <div className="tools more-tools">
            <Button className="button" isDisabled={plan.cuts.length === 0} onPress={() => setOpen("what if")}>
              What if…
            </Button>
            <Button
              className="button"
              isDisabled={plan.cuts.length === 0}
              onPress={() => setOpen("came out")}
            >
              It came out so…
            </Button>
          </div>
          {cut === undefined ? (
            <OverviewPage plan={plan} rule={rule} done={done} onTurn={turn} />
          ) : (
            <CutPage
              plan={made ?? plan}
              cut={cut}
              rule={rule}
              isDone={made !== undefined || done.has(cut.number)}
              onTick={made === undefined ? (isDone) => tick(cut.number, isDone) : null}
            />
          )}
        </div>
      </div>
      {open === "what if" ? <WhatIfDrawer plan={plan} rule={rule} onClose={close} /> : null}
      {open === "came out" ? (
        <CameOutDrawer plan={plan} rule={rule} lastMade={lastMadeIn(plan, done)} onClose={close} />
      ) : null}
      {open === "bench" ? (
        <BenchView
          plan={plan}
          number={made === undefined && cut !== undefined ? cut.number : nextIn(plan, done)}
          rule={rule}
          done={done}
          onTurn={(number) => turn({ kind: "cut", number })}
          onTick={tick}
          onLeave={close}
        />
      ) : null}
    </>
  );
}

/** The first cut that is not done; when all are, the first. */
function nextIn(plan: Plan, done: ReadonlySet<number>): number {
  return (plan.cuts.find(({ number }) => !done.has(number)) ?? plan.cuts[0])?.number ?? 1;
}

/** The last of the cuts that are done without a gap; the first, where none is. */
function lastMadeIn(plan: Plan, done: ReadonlySet<number>): number {
  const open = plan.cuts.findIndex(({ number }) => !done.has(number));
  const at = open < 0 ? plan.cuts.length - 1 : Math.max(0, open - 1);
  return plan.cuts[at]?.number ?? 1;
}

function useRule(): Rule {
  const unit = useBench((bench) => bench.job.unit ?? "mm");
  const inchStep = useBench((bench) => bench.job.inchStep);
  return useMemo(() => ({ unit, inchStep }), [unit, inchStep]);
}
