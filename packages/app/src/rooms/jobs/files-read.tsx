/** Files that were chosen or dropped: looked at first, kept when the maker says so; what is wrong with them is said. */
import { type Job, sectionOfJob } from "mouldwright/job";
import { INCH_MM, type Trouble } from "mouldwright/measure";
import { useRef, useState } from "react";
import { Button } from "react-aria-components";
import { Choice } from "../../common/choice.tsx";
import { TroubleWords } from "../../common/trouble-words.tsx";
import { keepJobs, keepNewJob } from "../../keeping/job-actions.ts";
import { LookAtJob } from "../../keeping/look-at-job.tsx";
import {
  type FileRemark,
  isSizeInDoubt,
  LARGEST_FILE_BYTES,
  type ReadFile,
} from "../../keeping/read-file.ts";
import { type AnyFile, readAnyFile } from "../../keeping/read-packed.ts";
import { fromBench } from "./bench-shelf.ts";
import { PackedFound } from "./packed-found.tsx";

/** What one number of a drawing may be. */
export type Numbers = "as read" | "mm" | "in" | "px";

const NUMBERS_OPTIONS = [
  { value: "as read", words: "not sure" },
  { value: "mm", words: "mm" },
  { value: "in", words: "inches" },
  { value: "px", words: "pixels" },
] as const;

const NUMBER_MM: Readonly<Record<Numbers, number | undefined>> = {
  "as read": undefined,
  mm: 1,
  in: INCH_MM,
  px: INCH_MM / 96,
};

/** More at once is a slip of the hand. */
const MOST_FILES = 50;

/** A file that was read, told apart from another of the same name. */
export interface FoundFile {
  readonly id: number;
  readonly file: AnyFile;
  /** What the numbers of a drawing are, where the file leaves that open; null for a file that does not. */
  readonly numbers: Numbers | null;
}

export interface FileReading {
  readonly read: readonly FoundFile[];
  readonly isReading: boolean;
  readonly readFiles: (files: readonly File[]) => Promise<void>;
  readonly readWithNumbers: (id: number, numbers: Numbers) => Promise<void>;
  readonly forget: (id: number) => void;
}

export function useFileReading(): FileReading {
  const [read, setRead] = useState<readonly FoundFile[]>([]);
  const lastId = useRef(0);
  const [isReading, setIsReading] = useState(false);
  const chosen = useRef(new Map<number, File>());
  const readOne = (file: File, numberMm?: number): Promise<AnyFile> =>
    readAnyFile(file, fromBench(), { numberMm }).catch(
      (): AnyFile => ({ kind: "cannot be opened", fileName: file.name }),
    );
  const readFiles = async (files: readonly File[]): Promise<void> => {
    setIsReading(true);
    for (const file of files.slice(0, MOST_FILES)) {
      const found = await readOne(file);
      lastId.current += 1;
      const id = lastId.current;
      chosen.current.set(id, file);
      const numbers = found.kind !== "packed" && isSizeInDoubt(found) ? "as read" : null;
      setRead((before) => [...before, { id, file: found, numbers }]);
    }
    setIsReading(false);
  };
  const readWithNumbers = async (id: number, numbers: Numbers): Promise<void> => {
    const file = chosen.current.get(id);
    if (file === undefined) return;
    const found = await readOne(file, NUMBER_MM[numbers]);
    setRead((before) => before.map((one) => (one.id === id ? { id, file: found, numbers } : one)));
  };
  const forget = (id: number): void => {
    chosen.current.delete(id);
    setRead((before) => before.filter((other) => other.id !== id));
  };
  return { read, isReading, readFiles, readWithNumbers, forget };
}

interface FilesReadProps {
  readonly read: readonly FoundFile[];
  readonly isReading: boolean;
  readonly onNumbers: (id: number, numbers: Numbers) => void;
  readonly onDone: (id: number) => void;
}

export function FilesRead({ read, isReading, onNumbers, onDone }: FilesReadProps) {
  return (
    <>
      {isReading ? (
        <p role="status" className="quiet">
          Reading the file…
        </p>
      ) : null}
      {read.map(({ id, file, numbers }) => (
        <section key={id} className="panel file-read" aria-label={file.fileName}>
          <h2>{file.fileName}</h2>
          {numbers === null ? null : (
            <NumbersChoice numbers={numbers} onChange={(next) => onNumbers(id, next)} />
          )}
          {file.kind === "packed" ? (
            <PackedFound file={file} onDone={() => onDone(id)} />
          ) : file.kind === "job" ? (
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

interface NumbersChoiceProps {
  readonly numbers: Numbers;
  readonly onChange: (numbers: Numbers) => void;
}

/** The file does not say for certain how large it is drawn; who drew it knows. */
function NumbersChoice({ numbers, onChange }: NumbersChoiceProps) {
  return (
    <div className="field">
      <span className="field-label">The numbers in the drawing are</span>
      <Choice
        label="The numbers in the drawing are"
        value={numbers}
        options={NUMBERS_OPTIONS}
        onChange={onChange}
      />
      <span className="field-note">
        The stick’s size shows whether it is right. Pixels are 96 to the inch.
      </span>
    </div>
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
      <TroubleWords troubles={besideThoseOf(file.job, file.warnings)} />
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

/** What the reading says beside what is said of the job itself. */
function besideThoseOf(job: Job, warnings: readonly Trouble[]): readonly Trouble[] {
  const section = sectionOfJob(job);
  const said: readonly string[] = section.ok ? section.warnings.map(({ code }) => code) : [];
  return warnings.filter(({ code }) => !said.includes(code));
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
