/** A job that is not kept yet, to be looked at. */
import { type Job, sectionOfJob } from "mouldwright/job";
import { printable } from "mouldwright/measure";
import { lengthWordsOf, stickWords } from "../common/length-words.ts";
import { SectionThumb } from "../common/section-thumb.tsx";
import { TroubleWords } from "../common/trouble-words.tsx";
import "./look-at-job.css";

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
