/** Above every room: a job that could not be kept, what another window did, what has just been thrown away. */
import { lazy, type ReactNode, Suspense, useEffect, useRef, useState } from "react";
import { Button } from "react-aria-components";
import { useBench } from "../bench/job-on-bench.ts";
import { takeLostFocus } from "../common/lost-focus.ts";
import { type Failure, failureWords } from "./failure.ts";
import { openJob, takeFromOtherWindow, takeOutAgain, trySavingAgain } from "./job-actions.ts";
import { saveJobFile } from "./job-files.ts";
import { type Notice, tell, useKeeping } from "./kept-jobs.ts";
import "./keeping.css";
import { bringsJob } from "./link-start.ts";

/** Loaded when a link brings a job: few do. */
const ArrivedJob = lazy(async () => ({ default: (await import("./arrived-job.tsx")).ArrivedJob }));

export function KeepingBanner() {
  return (
    <>
      <NotSaved />
      <Told />
      <Arrived />
    </>
  );
}

function Arrived() {
  const [fragment, setFragment] = useState<string | null>(null);
  useEffect(() => {
    const look = (): void => {
      if (bringsJob(location.hash)) setFragment(location.hash);
    };
    look();
    addEventListener("hashchange", look);
    return () => removeEventListener("hashchange", look);
  }, []);
  if (fragment === null) return null;
  return (
    <Suspense>
      <ArrivedJob key={fragment} fragment={fragment} onAnswered={() => setFragment(null)} />
    </Suspense>
  );
}

function NotSaved() {
  const saving = useKeeping(({ saving }) => saving);
  if (saving.kind !== "failed") return null;
  return (
    <section className="trouble told" role="alert" aria-label="Not saved">
      <p>
        <strong>
          {isKeptNothing(saving.failure) ? "Nothing is saved here now." : "The job is not saved."}
        </strong>{" "}
        {failureWords(saving.failure)}
      </p>
      <div className="tools">
        <Button className="button button-main" onPress={() => saveJobFile(useBench.getState().job)}>
          Save to a file
        </Button>
        <Button className="button" onPress={() => void trySavingAgain()}>
          Try again
        </Button>
      </div>
    </section>
  );
}

/** Whether the store takes nothing at all, whatever it is given. */
function isKeptNothing({ kind }: Failure): boolean {
  return kind === "no store" || kind === "newer program";
}

function Told() {
  const notice = useKeeping(({ notice }) => notice);
  const place = useRef<HTMLElement>(null);
  const before = useRef(notice);
  // The card that was deleted had the focus, then the notice: neither leaves it nowhere when it goes.
  useEffect(() => {
    if (notice?.kind === "deleted") takeLostFocus(place.current);
    if (notice === null && before.current !== null) takeLostFocus(document.getElementById("room-here"));
    before.current = notice;
  }, [notice]);
  if (notice === null) return null;
  return (
    <section
      ref={place}
      className="told told-plain"
      role="status"
      aria-label="About your jobs"
      // Not a place of its own to tab to: the focus is only led here.
      tabIndex={-1}
    >
      <p>{wordsOf(notice)}</p>
      <div className="tools">
        {answersTo(notice)}
        <Button className="button" onPress={() => tell(null)}>
          {closingWords(notice)}
        </Button>
      </div>
    </section>
  );
}

function wordsOf(notice: Notice): ReactNode {
  switch (notice.kind) {
    case "kept both":
      return (
        <>
          <strong>Another window changed “{notice.name}” as well.</strong> Both are kept: its job as it saved
          it, and yours as “{notice.copyName}”, which lies on this bench. With which do you go on?
        </>
      );
    case "kept though deleted":
      return (
        <>
          <strong>Another window deleted this job while you worked on it.</strong> Yours is kept as “
          {notice.copyName}”.
        </>
      );
    case "newer elsewhere":
      return (
        <>
          <strong>Another window has changed “{notice.name}”.</strong> Here lies the job as it was before.
          Change it here, and both are kept.
        </>
      );
    case "deleted elsewhere":
      return (
        <>
          <strong>Another window has deleted “{notice.name}”.</strong> Here it still lies on the bench.
        </>
      );
    case "deleted":
      return (
        <>
          <strong>“{notice.name}” is deleted.</strong> For 30 days it can be taken out again in Jobs, under
          This browser.
        </>
      );
    case "all saved":
      return (
        <>
          <strong>{notice.count === 1 ? "One job is" : `All ${notice.count} jobs are`} in one file.</strong>{" "}
          It was read back and every job is whole in it: “{notice.fileName}”, among your downloads. New job,
          File brings them back.
        </>
      );
    case "not all saved":
      return (
        <>
          <strong>The file with all jobs was not saved: read back, it did not match.</strong> Not whole in it:{" "}
          {notice.names.join(", ")}. Save these each to a file of their own, from their cards.
        </>
      );
    case "backup put back":
      return (
        <>
          <strong>The backup lies on the bench.</strong> What it replaced is among the backups now; Undo
          brings it back at once.
        </>
      );
  }
}

function answersTo(notice: Notice): ReactNode {
  switch (notice.kind) {
    case "kept both":
      return (
        <Button
          className="button"
          onPress={() => {
            tell(null);
            void openJob(notice.otherId);
          }}
        >
          Open the other window’s
        </Button>
      );
    case "newer elsewhere":
      return (
        <Button className="button button-main" onPress={() => void takeFromOtherWindow(notice.jobId)}>
          Show it as it is there
        </Button>
      );
    case "deleted elsewhere":
    case "deleted":
      return (
        <Button className="button button-main" onPress={() => void takeOutAgain(notice.jobId)}>
          Undo the delete
        </Button>
      );
    case "kept though deleted":
    case "backup put back":
    case "all saved":
    case "not all saved":
      return null;
  }
}

function closingWords(notice: Notice): string {
  switch (notice.kind) {
    case "kept both":
      return "Go on with mine";
    case "newer elsewhere":
      return "Leave it";
    default:
      return "Understood";
  }
}
