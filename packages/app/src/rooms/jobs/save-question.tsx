import type { Job } from "mouldwright/job";
import type { Trouble } from "mouldwright/measure";
import { useState } from "react";
import { Button } from "react-aria-components";
import { Question } from "../../common/question.tsx";
import { TroubleWords } from "../../common/trouble-words.tsx";
import { saveFile } from "../../keeping/files.ts";
import { type JobFileKind, jobFile } from "../../keeping/job-files.ts";

interface Props {
  readonly job: Job;
  readonly isOpen: boolean;
  readonly onClose: () => void;
}

const KINDS: readonly { readonly kind: JobFileKind; readonly words: string; readonly says: string }[] = [
  {
    kind: "job",
    words: "The whole job",
    says: "Section, stick, shelf and notes: can be opened here again, on any machine.",
  },
  { kind: "svg", words: "The section as SVG", says: "For drawing programs, at full size." },
  { kind: "dxf", words: "The section as DXF", says: "For drawing offices and machines, in millimetres." },
];

export function SaveQuestion({ job, isOpen, onClose }: Props) {
  const [troubles, setTroubles] = useState<readonly Trouble[]>([]);
  const save = (kind: JobFileKind): void => {
    const file = jobFile(job, kind);
    if (!file.ok) {
      setTroubles([file.trouble, ...(file.more ?? [])]);
      return;
    }
    saveFile(file.value.fileName, file.value.text, file.value.type);
    onClose();
  };
  return (
    <Question title="Save to a file" isOpen={isOpen} onClose={onClose}>
      <ul className="file-kinds">
        {KINDS.map(({ kind, words, says }) => (
          <li key={kind}>
            <Button className={kind === "job" ? "button button-main" : "button"} onPress={() => save(kind)}>
              {words}
            </Button>
            <span className="quiet">{says}</span>
          </li>
        ))}
      </ul>
      <TroubleWords troubles={troubles} />
      <div className="tools">
        <Button className="button" onPress={onClose}>
          Leave it
        </Button>
      </div>
    </Question>
  );
}
