/** A job that a link brought: looked at first, kept as a copy only when the maker says so. */
import { useState } from "react";
import { Button } from "react-aria-components";
import { Question } from "../common/question.tsx";
import { TroubleWords } from "../common/trouble-words.tsx";
import { keepNewJob } from "./job-actions.ts";
import { type LinkTrouble, unpackJob } from "./link.ts";
import { LookAtJob } from "./look-at-job.tsx";

export interface ArrivedJobProps {
  /** The address's fragment, as it came. */
  readonly fragment: string;
  readonly onAnswered: () => void;
}

export function ArrivedJob({ fragment, onAnswered }: ArrivedJobProps) {
  const [arrived] = useState(() => unpackJob(fragment));
  const leave = (): void => {
    onAnswered();
    goOn("jobs");
  };
  if (arrived.kind === "trouble") {
    return (
      <Question title="The link brings no job" isOpen onClose={leave}>
        <LinkTroubleWords trouble={arrived.trouble} />
        <div className="tools">
          <Button className="button button-main" onPress={leave}>
            Leave it
          </Button>
        </div>
      </Question>
    );
  }
  const keep = (): void => {
    onAnswered();
    void keepNewJob(arrived.job).then(() => goOn("section"));
  };
  return (
    <Question title="Somebody sent you a job" isOpen onClose={leave}>
      <LookAtJob job={arrived.job} />
      <p className="quiet">Nothing of yours is changed. A copy is kept beside your own jobs.</p>
      <div className="tools">
        <Button className="button button-main" onPress={keep}>
          Keep a copy
        </Button>
        <Button className="button" onPress={leave}>
          Leave it
        </Button>
      </div>
    </Question>
  );
}

function LinkTroubleWords({ trouble }: { readonly trouble: LinkTrouble }) {
  switch (trouble.kind) {
    case "broken":
      return (
        <p>
          The link is damaged or was cut off on its way. Ask for it again, or for the job as a file, which no
          program shortens.
        </p>
      );
    case "too large":
      return <p>The link holds more than a job may. It is left unread. Ask for the job as a file.</p>;
    case "no job":
      return <TroubleWords troubles={trouble.troubles} />;
  }
}

/** The link's letters go out of the address, so that the way back does not bring the question again. */
function goOn(room: "jobs" | "section"): void {
  history.replaceState(null, "", `#${room}`);
  dispatchEvent(new HashChangeEvent("hashchange"));
}
