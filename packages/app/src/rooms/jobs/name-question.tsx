import { JOB_LIMITS } from "mouldwright/job";
import { cleanText } from "mouldwright/measure";
import { useState } from "react";
import { Button, Input, Label, TextArea, TextField } from "react-aria-components";
import { Question } from "../../common/question.tsx";
import { editJob } from "../../keeping/job-actions.ts";
import type { ReadableJob } from "../../keeping/record.ts";

interface Props {
  readonly kept: ReadableJob;
  readonly isOpen: boolean;
  readonly onClose: () => void;
}

export function NameQuestion({ kept, isOpen, onClose }: Props) {
  return (
    <Question title="Name and notes" isOpen={isOpen} onClose={onClose}>
      {isOpen ? <NameFields kept={kept} onClose={onClose} /> : null}
    </Question>
  );
}

function NameFields({ kept, onClose }: Omit<Props, "isOpen">) {
  const [name, setName] = useState(kept.job.name);
  const [notes, setNotes] = useState(kept.job.notes ?? "");
  const keep = (): void => {
    const cleaned = cleanText(name);
    void editJob(kept, "name and notes", (job) => {
      const named = cleaned === "" ? job.name : cleaned;
      if (named === job.name && notes === (job.notes ?? "")) return job;
      const { notes: _before, ...rest } = job;
      return { ...rest, name: named, ...(notes.trim() === "" ? {} : { notes }) };
    });
    onClose();
  };
  return (
    <form
      className="question-words"
      onSubmit={(event) => {
        event.preventDefault();
        keep();
      }}
    >
      <TextField
        className="field"
        value={name}
        onChange={setName}
        maxLength={JOB_LIMITS.mostNameCharacters}
        autoComplete="off"
      >
        <Label>Name</Label>
        <Input className="field-input" />
      </TextField>
      <TextField
        className="field"
        value={notes}
        onChange={setNotes}
        maxLength={JOB_LIMITS.mostNoteCharacters}
      >
        <Label>Notes: timber, hours, what to do otherwise next time</Label>
        <TextArea className="field-input" rows={6} />
      </TextField>
      <div className="tools">
        <Button type="submit" className="button button-main">
          Keep
        </Button>
        <Button className="button" onPress={onClose}>
          Leave it
        </Button>
      </div>
    </form>
  );
}
