/** New work: from a classical form, from a file, or from the chart cabinet. */
import { useState } from "react";
import { Button, FileTrigger } from "react-aria-components";
import { useBench } from "../../bench/job-on-bench.ts";
import { Choice } from "../../common/choice.tsx";
import { lengthWordsOf, stickWords } from "../../common/length-words.ts";
import { SectionThumb } from "../../common/section-thumb.tsx";
import { keepNewJob } from "../../keeping/job-actions.ts";
import { exampleJobs } from "./example-jobs.ts";
import { FormChooser } from "./form-chooser.tsx";

const WAYS = [
  { value: "form", words: "Classical form" },
  { value: "file", words: "File" },
  { value: "cabinet", words: "Chart cabinet" },
] as const;

type Way = (typeof WAYS)[number]["value"];

export function NewJob({ onFiles }: { readonly onFiles: (files: readonly File[]) => Promise<void> }) {
  const [way, setWay] = useState<Way>("form");
  return (
    <div className="new-job">
      <Choice label="Begin with" value={way} options={WAYS} onChange={setWay} />
      {way === "form" ? <FormChooser /> : way === "file" ? <FromFile onFiles={onFiles} /> : <FromCabinet />}
    </div>
  );
}

const ACCEPTED = [".svg", ".dxf", ".json", ".txt", ".csv", ".zip"];

function FromFile({ onFiles }: { readonly onFiles: (files: readonly File[]) => Promise<void> }) {
  return (
    <section className="panel from-file" aria-label="From a file">
      <p>
        A drawing of the section (SVG or DXF, one closed outline, with the stick around it if you like), a
        list of measured points, a job saved here before, or the one file with all of them. Drop it anywhere
        on this page, or choose it:
      </p>
      <FileTrigger
        allowsMultiple
        acceptedFileTypes={ACCEPTED}
        onSelect={(files) => {
          if (files !== null) void onFiles([...files]);
        }}
      >
        <Button className="button button-main">Choose a file</Button>
      </FileTrigger>
      <p className="quiet">You look at it before it is kept. The file stays on this machine.</p>
    </section>
  );
}

function FromCabinet() {
  const [jobs] = useState(exampleJobs);
  const unit = useBench(({ job }) => job.unit);
  return (
    <>
      <p>
        Pieces of a chart cabinet for a harbour office, to try things on. Each is kept as a job of your own.
      </p>
      <ul className="job-list" aria-label="Pieces of the chart cabinet">
        {jobs.map((job) => {
          const words = lengthWordsOf({ ...job, unit: unit ?? job.unit });
          const keep = (): void => {
            void keepNewJob(job).then(() => {
              location.hash = "section";
            });
          };
          return (
            <li key={job.name} className="job-card">
              <Button className="job-open" onPress={keep}>
                <span className="job-picture">
                  <SectionThumb job={job} />
                </span>
                <span className="job-words">
                  <span className="job-card-name">{job.name}</span>
                  <span className="figures">{stickWords(words, job.stick)}</span>
                  <span className="quiet">Keep and open</span>
                </span>
              </Button>
            </li>
          );
        })}
      </ul>
    </>
  );
}
