/** Jobs: the work there is, new work, and what this browser keeps. A file may be dropped anywhere here. */
import { type DragEvent, useState } from "react";
import { Button } from "react-aria-components";
import { useKeeping } from "../../keeping/kept-jobs.ts";
import { FilesRead, useFileReading } from "./files-read.tsx";
import { JobList } from "./job-list.tsx";
import "./jobs.css";
import { NewJob } from "./new-job.tsx";
import { saveAllJobs } from "./save-all.ts";
import { ThisBrowser } from "./this-browser.tsx";

export function Content() {
  const [isNew, setIsNew] = useState(false);
  const [isOver, setIsOver] = useState(false);
  const { read, isReading, readFiles, readWithNumbers, forget } = useFileReading();
  const count = useKeeping(({ jobs }) => jobs.filter(({ deletedAtMs }) => deletedAtMs === undefined).length);
  const onDrop = (event: DragEvent): void => {
    event.preventDefault();
    setIsOver(false);
    void readFiles([...event.dataTransfer.files]);
  };
  const onDragOver = (event: DragEvent): void => {
    event.preventDefault();
    setIsOver(true);
  };
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: dropping is a second way; the button beside it does the same.
    <div
      className={isOver ? "jobs jobs-drop" : "jobs"}
      onDragOver={onDragOver}
      onDragLeave={() => setIsOver(false)}
      onDrop={onDrop}
    >
      <header className="jobs-head">
        <h1>{isNew ? "New job" : "Jobs"}</h1>
        {isNew ? (
          <Button className="button" onPress={() => setIsNew(false)}>
            All jobs
          </Button>
        ) : (
          <div className="tools">
            <Button className="button button-main" onPress={() => setIsNew(true)}>
              New job
            </Button>
            <Button className="button" isDisabled={count === 0} onPress={() => void saveAllJobs()}>
              Save all to a file
            </Button>
          </div>
        )}
      </header>
      <FilesRead
        read={read}
        isReading={isReading}
        onNumbers={(id, numbers) => void readWithNumbers(id, numbers)}
        onDone={forget}
      />
      {isNew ? (
        <NewJob onFiles={readFiles} />
      ) : (
        <>
          <JobList onNew={() => setIsNew(true)} />
          <ThisBrowser />
        </>
      )}
    </div>
  );
}
