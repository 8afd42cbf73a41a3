/** What was found in a packed file: its jobs by name, to be kept all at once; and what could not be read in it. */

import { Button } from "react-aria-components";
import { TroubleWords } from "../../common/trouble-words.tsx";
import { keepJobs } from "../../keeping/job-actions.ts";
import type { ReadFile } from "../../keeping/read-file.ts";
import type { PackedFile } from "../../keeping/read-packed.ts";

export function PackedFound({ file, onDone }: { readonly file: PackedFile; readonly onDone: () => void }) {
  const jobs = file.files.flatMap((one) => (one.kind === "job" ? [one.job] : []));
  const others = file.files.filter((one) => one.kind !== "job");
  const keep = async (): Promise<void> => {
    await keepJobs(jobs);
    onDone();
  };
  return (
    <>
      <p>
        {jobs.length === 0
          ? "There is no job in it."
          : `${jobs.length === 1 ? "One job is" : `${jobs.length} jobs are`} in it:`}
      </p>
      <ul className="packed-names" aria-label="Jobs in the file">
        {jobs.map((job, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: jobs of one name may stand in one file; the list never changes.
          <li key={index}>{job.name}</li>
        ))}
      </ul>
      {others.map((one) => (
        <div key={one.fileName}>
          <p className="quiet">Left out: {one.fileName}, which is no job that can be read here.</p>
          <TroubleWords troubles={troublesOf(one)} />
        </div>
      ))}
      {file.leftOut === 0 ? null : (
        <p className="trouble" role="alert">
          <strong>{file.leftOut} files in it are too large or too many to be opened.</strong> Unpack the file
          and choose them one by one.
        </p>
      )}
      <div className="tools">
        {jobs.length === 0 ? null : (
          <Button className="button button-main" onPress={() => void keep()}>
            {jobs.length === 1 ? "Keep it" : `Keep all ${jobs.length}`}
          </Button>
        )}
        <Button className="button" onPress={onDone}>
          Leave it
        </Button>
      </div>
    </>
  );
}

function troublesOf(file: ReadFile) {
  return file.kind === "refused" ? file.troubles : [];
}
