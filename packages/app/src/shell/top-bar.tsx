import { Button } from "react-aria-components";
import { change, redo, undo, useBench, useHistory } from "../bench/job-on-bench.ts";
import { Choice } from "../common/choice.tsx";
import { SavedWords } from "../keeping/saved-words.tsx";
import { RedoIcon, UndoIcon } from "./room-icons.tsx";

const UNITS = [
  { value: "mm", words: "mm" },
  { value: "in", words: "in" },
] as const;

export function TopBar({ roomName }: { readonly roomName: string }) {
  const name = useBench((bench) => bench.job.name);
  const unit = useBench((bench) => bench.job.unit ?? "mm");
  const { undoes, redoes } = useHistory();
  return (
    <header className="top-bar">
      <div className="job-name">
        <p className="job-name-words">{name}</p>
        <div className="under-name">
          <p className="top-room">{roomName}</p>
          <SavedWords />
        </div>
      </div>
      <div className="top-tools">
        <Button
          className="icon-button"
          isDisabled={undoes === null}
          onPress={undo}
          aria-label={undoes === null ? "Undo" : `Undo: ${undoes}`}
        >
          <UndoIcon />
        </Button>
        <Button
          className="icon-button"
          isDisabled={redoes === null}
          onPress={redo}
          aria-label={redoes === null ? "Redo" : `Redo: ${redoes}`}
        >
          <RedoIcon />
        </Button>
        <Choice
          label="Unit"
          value={unit}
          options={UNITS}
          onChange={(next) =>
            change(next === "in" ? "inches" : "millimetres", (job) => ({ ...job, unit: next }))
          }
        />
      </div>
    </header>
  );
}
