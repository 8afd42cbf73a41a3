/** The sheets for the bench: the pages of the very file that is printed, and what goes into them. */
import type { Plan } from "mouldwright/cutting";
import { type Job, stemOf } from "mouldwright/job";
import { PAPERS } from "mouldwright/sheets";
import { type ReactNode, useEffect, useMemo, useRef, useState } from "react";
import { Button } from "react-aria-components";
import { useShownJob } from "../../bench/job-on-bench.ts";
import { saveFile } from "../../common/save-file.ts";
import { TroubleWords } from "../../common/trouble-words.tsx";
import { hintDone } from "../../first-visit/shown-hints.ts";
import { usePlan, usePlanIsOld } from "../../planner/plan-on-bench.ts";
import { ChoicesPanel } from "./choices-panel.tsx";
import { OtherFilesPanel } from "./other-files-panel.tsx";
import { PageGrid } from "./page-grid.tsx";
import { PrintButton } from "./print-button.tsx";
import { clearPrinting } from "./print-pdf.ts";
import { PrinterPanel } from "./printer-panel.tsx";
import { isTrue, kindsOf, kindsSaid, madeOf, pagesSaid, paperOf, sheetOptionsOf } from "./sheet-choices.ts";
import "./sheets.css";
import { type Sheets, useSheets, useWriter } from "./use-sheets.ts";

export function Content() {
  const job = useShownJob();
  const plan = usePlan((state) => state.computed?.plan ?? null);
  const planTroubles = usePlan((state) => state.troubles);
  const writer = useWriter();
  const options = useSheetOptions(job);
  const sheets = useSheets(writer, plan, { options, job: useFittedJob(job) });
  useEffect(() => clearPrinting, []);
  return (
    <div className="sheets-room">
      <SheetsHead job={job} sheets={sheets} hasPlan={plan !== null} />
      <div className="sheets-choices">
        <Fold title="Paper and sheets" says={`${PAPERS[paperOf(job)].name}, ${kindsSaid(kindsOf(job))}`}>
          <ChoicesPanel job={job} pages={sheets.made?.pages ?? []} />
        </Fold>
        <Fold title="Full size" says={madeSaid(job)}>
          <PrinterPanel job={job} />
        </Fold>
        {plan === null ? null : (
          <Fold title="Other files" says="drawings and solids for other programs" isClosed>
            <OtherFilesPanel plan={plan} writer={writer} />
          </Fold>
        )}
      </div>
      <div className="sheets-pages">
        <TroubleWords troubles={plan === null ? planTroubles : [...sheets.troubles, ...sheets.warnings]} />
        <Pages
          plan={plan}
          sheets={sheets}
          kindCount={options.kinds?.length ?? 0}
          isRefused={planTroubles.length > 0}
        />
      </div>
    </div>
  );
}

/** The same object as long as nothing printed hangs on what has changed. */
function useSheetOptions(job: Job) {
  const { unit, inchStep, sheets, working } = job;
  return useMemo(
    () => sheetOptionsOf({ unit, inchStep, sheets, working }),
    [unit, inchStep, sheets, working],
  );
}

/** The job as the fit sheet sees it: the same object as long as nothing of its fitting changes. */
function useFittedJob(job: Job): Job {
  const fitted = useRef(job);
  const last = fitted.current;
  if (FITTED_FROM.some((key) => last[key] !== job[key])) fitted.current = job;
  return fitted.current;
}

const FITTED_FROM = [
  "name",
  "unit",
  "section",
  "stick",
  "working",
  "fit",
] as const satisfies readonly (keyof Job)[];

function madeSaid(job: Job): string {
  const made = madeOf(job);
  return isTrue(made)
    ? "print at 100 %, measure the bars"
    : `corrected for ${made.acrossMm} × ${made.upMm} mm`;
}

function SheetsHead({
  job,
  sheets: { made, isMaking },
  hasPlan,
}: {
  readonly job: Job;
  readonly sheets: Sheets;
  readonly hasPlan: boolean;
}) {
  const isOld = usePlanIsOld();
  const name = `${stemOf(job.name)}.pdf`;
  const isReady = made !== null && !isMaking;
  return (
    <div className="sheets-head">
      <h1 className="figures">{made === null ? "Sheets" : pagesSaid(made.pages, made.paper)}</h1>
      <div className="tools">
        <Button
          className="button button-main"
          isDisabled={!isReady}
          onPress={() => {
            if (made !== null) saveFile(name, made.file);
            hintDone("sheet");
          }}
        >
          Save the PDF
        </Button>
        <PrintButton file={isReady ? made.file : null} />
      </div>
      <p className="quiet sheets-state" aria-live="polite">
        {isMaking
          ? "The sheets are being made…"
          : isOld && hasPlan
            ? "A new plan is being made; these sheets are of the one before."
            : ""}
      </p>
    </div>
  );
}

interface PagesProps {
  readonly plan: Plan | null;
  readonly sheets: Sheets;
  readonly kindCount: number;
  readonly isRefused: boolean;
}

function Pages({ plan, sheets, kindCount, isRefused }: PagesProps) {
  if (sheets.made !== null) return <PageGrid made={sheets.made} />;
  if (plan === null) {
    return (
      <p className="waiting">
        {isRefused
          ? "The pages to print stand here once the section has a plan. Mend what is said above in Section or Shelf."
          : "The pages to print come here as soon as the cuts are planned."}
      </p>
    );
  }
  if (kindCount === 0) {
    return (
      <p className="waiting">
        No sheet is chosen. Tick one under “Paper and sheets” and its pages stand here.
      </p>
    );
  }
  return sheets.troubles.length > 0 ? null : <p className="waiting">The pages are being laid out…</p>;
}

/** Folded away on a phone, where it would push the pages out of sight; open where there is room beside them. */
function Fold({
  title,
  says,
  isClosed = false,
  children,
}: {
  readonly title: string;
  readonly says: string;
  readonly isClosed?: boolean;
  readonly children: ReactNode;
}) {
  const [isOpen, setOpen] = useState(() => !isClosed && matchMedia("(min-width: 48rem)").matches);
  return (
    <details className="panel fold" open={isOpen} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        <span className="fold-title">{title}</span>
        <span className="fold-says">{says}</span>
      </summary>
      <div className="fold-content">{children}</div>
    </details>
  );
}
