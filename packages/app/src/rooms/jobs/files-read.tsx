/** Files that were chosen or dropped: looked at first, kept when the maker says so; what is wrong with them is said. */
import { useRef, useState } from "react";
import { Button } from "react-aria-components";
import { TroubleWords } from "../../common/trouble-words.tsx";
import { keepJobs, keepNewJob } from "../../keeping/job-actions.ts";
import { LookAtJob } from "../../keeping/look-at-job.tsx";
import { type FileRemark, LARGEST_FILE_BYTES, type ReadFile, readFile } from "../../keeping/read-file.ts";
import { fromBench } from "./bench-shelf.ts";

/** More at once is a slip of the hand. */
const MOST_FILES = 50;

/** A file that was read, told apart from another of the same name. */
export interface FoundFile {
  readonly id: number;
  readonly file: ReadFile;
}

export interface FileReading {
  readonly read: readonly FoundFile[];
  readonly isReading: boolean;
  readonly readFiles: (files: readonly File[]) => Promise<void>;
  readonly forget: (id: number) => void;
}

export function useFileReading(): FileReading {
  const [read, setRead] = useState<readonly FoundFile[]>([]);
  const lastId = useRef(0);
  const [isReading, setIsReading] = useState(false);
  const readFiles = async (files: readonly File[]): Promise<void> => {
    setIsReading(true);
    const given = fromBench();
    for (const file of files.slice(0, MOST_FILES)) {
      const found = await readFile(file, given).catch(
        (): ReadFile => ({ kind: "cannot be opened", fileName: file.name }),
      );
      lastId.current += 1;
      const id = lastId.current;
      setRead((before) => [...before, { id, file: found }]);
    }
    setIsReading(false);
  };
  const forget = (id: number): void => setRead((before) => before.filter((other) => other.id !== id));
  return { read, isReading, readFiles, forget };
}

interface FilesReadProps {
  readonly read: readonly FoundFile[];
  readonly isReading: boolean;
  readonly onDone: (id: number) => void;
}

export function FilesRead({ read, isReading, onDone }: FilesReadProps) {
  return (
    <>
      {isReading ? (
        <p role="status" className="quiet">
          Reading the file…
        </p>
      ) : null}
      {read.map(({ id, file }) => (
        <section key={id} className="panel file-read" aria-label={file.fileName}>
          <h2>{file.fileName}</h2>
          {file.kind === "job" ? (
            <FoundJob file={file} isOnlyOne={read.length === 1} onDone={() => onDone(id)} />
          ) : (
            <>
              <Refused file={file} />
              <div className="tools">
                <Button className="button" onPress={() => onDone(id)}>
                  Leave it
                </Button>
              </div>
            </>
          )}
        </section>
      ))}
    </>
  );
}

interface FoundJobProps {
  readonly file: Extract<ReadFile, { readonly kind: "job" }>;
  readonly isOnlyOne: boolean;
  readonly onDone: () => void;
}

function FoundJob({ file, isOnlyOne, onDone }: FoundJobProps) {
  const keep = async (): Promise<void> => {
    if (!isOnlyOne) {
      await keepJobs([file.job]);
      onDone();
      return;
    }
    await keepNewJob(file.job);
    onDone();
    location.hash = "section";
  };
  return (
    <>
      <LookAtJob job={file.job} />
      <TroubleWords troubles={file.warnings} />
      {file.remarks.map((remark) => (
        <p key={remark.kind} className="quiet">
          {remarkWords(remark)}
        </p>
      ))}
      <div className="tools">
        <Button className="button button-main" onPress={() => void keep()}>
          {isOnlyOne ? "Keep and open" : "Keep"}
        </Button>
        <Button className="button" onPress={onDone}>
          Leave it
        </Button>
      </div>
    </>
  );
}

function remarkWords(remark: FileRemark): string {
  switch (remark.kind) {
    case "shelf from the bench":
      return `The job names a shelf in another file (“${remark.file}”), which a browser cannot open. It takes the shelf of the job on the bench instead.`;
    case "curves as arcs":
      return "Free curves of the drawing are taken as arcs of circles, within 0.05 mm, as planes cut them.";
  }
}

function Refused({ file }: { readonly file: Exclude<ReadFile, { readonly kind: "job" }> }) {
  switch (file.kind) {
    case "refused":
      return <TroubleWords troubles={file.troubles} />;
    case "no job file":
      return (
        <p className="trouble" role="alert">
          <strong>This is no job saved by Mouldwright.</strong> Choose the file that “Save to a file, the
          whole job” made, or a drawing of the section. A shelf is brought in under Shelf.
        </p>
      );
    case "too large":
      return (
        <p className="trouble" role="alert">
          <strong>The file has {Math.round(file.megabytes)} MB.</strong> A drawing of one section has far less
          than {LARGEST_FILE_BYTES / 1e6} MB: save the section alone, without pictures.
        </p>
      );
    case "cannot be opened":
      return (
        <p className="trouble" role="alert">
          <strong>The browser could not open the file.</strong> Look whether it is still there and no other
          program holds it, then choose it again.
        </p>
      );
  }
}
