/** A job that a link brought: looked at first, kept as a copy only when the maker says so. */
import { type Job, sectionOfJob } from "mouldwright/job";
import { printable } from "mouldwright/measure";
import { useEffect, useState } from "react";
import { Button } from "react-aria-components";
import { lengthWordsOf, stickWords } from "../common/length-words.ts";
import { Question } from "../common/question.tsx";
import { SectionThumb } from "../common/section-thumb.tsx";
import { TroubleWords } from "../common/trouble-words.tsx";
import { keepNewJob } from "./job-actions.ts";
import { bringsJob, type LinkTrouble, type Unpacked, unpackJob } from "./link.ts";

export function ArrivedJob() {
  const [arrived, setArrived] = useState<Unpacked | null>(null);
  useEffect(() => {
    const look = (): void => {
      if (bringsJob(location.hash)) setArrived(unpackJob(location.hash));
    };
    look();
    addEventListener("hashchange", look);
    return () => removeEventListener("hashchange", look);
  }, []);
  const leave = (): void => {
    setArrived(null);
    goOn("jobs");
  };
  if (arrived === null) return null;
  if (arrived.kind === "trouble") {
    return (
      <Question title="The link brings no job" isOpen onClose={leave}>
        <LinkTroubleWords trouble={arrived.trouble} />
        <div className="tools">
          <Button className="button button-main" onPress={leave}>
            Leave it
          </Button>
        </div>
      </Question>
    );
  }
  const keep = (): void => {
    const { job } = arrived;
    setArrived(null);
    void keepNewJob(job).then(() => goOn("section"));
  };
  return (
    <Question title="Somebody sent you a job" isOpen onClose={leave}>
      <LookAtJob job={arrived.job} />
      <p className="quiet">Nothing of yours is changed. A copy is kept beside your own jobs.</p>
      <div className="tools">
        <Button className="button button-main" onPress={keep}>
          Keep a copy
        </Button>
        <Button className="button" onPress={leave}>
          Leave it
        </Button>
      </div>
    </Question>
  );
}

/** Picture, name and sizes of a job that is not kept yet. */
export function LookAtJob({ job }: { readonly job: Job }) {
  const words = lengthWordsOf(job);
  const section = sectionOfJob(job);
  const planes = job.shelf !== undefined && "planes" in job.shelf ? job.shelf.planes.length : 0;
  return (
    <>
      <div className="arrived">
        <div className="arrived-picture">
          <SectionThumb job={job} label="Its section" />
        </div>
        <dl>
          <dt>Name</dt>
          <dd>{printable(job.name).trim() === "" ? "none" : printable(job.name)}</dd>
          <dt>Stick</dt>
          <dd className="figures">{stickWords(words, job.stick)}</dd>
          <dt>Shelf</dt>
          <dd>{planes === 0 ? "none of its own" : `${planes} planes`}</dd>
        </dl>
      </div>
      {job.notes === undefined || job.notes.trim() === "" ? null : (
        <p className="arrived-notes">{job.notes.split("\n").map(printable).join("\n")}</p>
      )}
      {section.ok ? (
        <TroubleWords troubles={section.warnings} />
      ) : (
        <TroubleWords troubles={[section.trouble, ...(section.more ?? [])]} />
      )}
    </>
  );
}

function LinkTroubleWords({ trouble }: { readonly trouble: LinkTrouble }) {
  switch (trouble.kind) {
    case "broken":
      return (
        <p>
          The link is damaged or was cut off on its way. Ask for it again, or for the job as a file, which no
          program shortens.
        </p>
      );
    case "too large":
      return <p>The link holds more than a job may. It is left unread. Ask for the job as a file.</p>;
    case "no job":
      return <TroubleWords troubles={trouble.troubles} />;
  }
}

/** The link's letters go out of the address, so that the way back does not bring the question again. */
function goOn(room: "jobs" | "section"): void {
  history.replaceState(null, "", `#${room}`);
  dispatchEvent(new HashChangeEvent("hashchange"));
}
