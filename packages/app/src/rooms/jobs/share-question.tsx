import { type Job, writeJob } from "mouldwright/job";
import { useMemo, useRef, useState } from "react";
import { Button, Input, Label, TextField } from "react-aria-components";
import { Question } from "../../common/question.tsx";
import { fileNameOf } from "../../keeping/files.ts";
import { saveJobFile } from "../../keeping/job-files.ts";
import { packJob } from "../../keeping/link.ts";

interface Props {
  readonly job: Job;
  readonly isOpen: boolean;
  readonly onClose: () => void;
}

export function ShareQuestion({ job, isOpen, onClose }: Props) {
  return (
    <Question title={`Share “${job.name}”`} isOpen={isOpen} onClose={onClose}>
      {isOpen ? <Ways job={job} onClose={onClose} /> : null}
    </Question>
  );
}

function Ways({ job, onClose }: Omit<Props, "isOpen">) {
  const packed = useMemo(() => packJob(job), [job]);
  const file = useMemo(
    () => new File([writeJob(job)], fileNameOf(job.name, "json"), { type: "application/json" }),
    [job],
  );
  const canHandOver = typeof navigator.canShare === "function" && navigator.canShare({ files: [file] });
  return (
    <>
      <p>
        The whole job goes along: section, stick, shelf and notes. Whoever gets it looks at it first and keeps
        a copy.
      </p>
      {packed.kind === "link" ? (
        <LinkToCopy link={linkOf(packed.fragment)} name={job.name} />
      ) : (
        <p className="quiet">This job is too large for a link. Send it as a file.</p>
      )}
      <div className="tools">
        {canHandOver ? (
          <Button className="button" onPress={() => void handOver({ files: [file], title: job.name })}>
            Send the file
          </Button>
        ) : null}
        <Button className="button" onPress={() => saveJobFile(job)}>
          Save the file
        </Button>
        <Button className="button" onPress={onClose}>
          Done
        </Button>
      </div>
    </>
  );
}

function LinkToCopy({ link, name }: { readonly link: string; readonly name: string }) {
  const [said, setSaid] = useState("");
  const field = useRef<HTMLInputElement>(null);
  const copy = async (): Promise<void> => {
    try {
      await navigator.clipboard.writeText(link);
      setSaid("The link is copied.");
    } catch {
      // Not allowed, or not there where the page comes without encryption: the field can always be copied by hand.
      field.current?.focus();
      field.current?.select();
      setSaid(
        "This browser does not let the page copy. The link is marked: copy it with your keyboard or by a long press.",
      );
    }
  };
  return (
    <>
      <TextField className="field" value={link} isReadOnly>
        <Label>
          Link with the job in it, {link.length.toLocaleString("en-GB")} letters; no server holds it
        </Label>
        <Input ref={field} className="field-input" onFocus={(event) => event.target.select()} />
      </TextField>
      <div className="tools">
        <Button className="button button-main" onPress={() => void copy()}>
          Copy the link
        </Button>
        {typeof navigator.share === "function" ? (
          <Button className="button" onPress={() => void handOver({ url: link, title: name })}>
            Send the link
          </Button>
        ) : null}
      </div>
      <p role="status">{said}</p>
    </>
  );
}

function linkOf(fragment: string): string {
  const { origin, pathname } = location;
  return `${origin}${pathname}${fragment}`;
}

/** The system's own way of sending; when the maker closes it nothing has happened. */
async function handOver(what: ShareData): Promise<void> {
  try {
    await navigator.share(what);
  } catch {
    // Closed, or refused by the system: link and file stand beside it.
  }
}
