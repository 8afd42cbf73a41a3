/** A strip above the room with the next hint, at the place where it is done; elsewhere the way there. */
import { useEffect } from "react";
import { Button } from "react-aria-components";
import { usePlan } from "../planner/plan-on-bench.ts";
import "./first-steps.css";
import { HINTS, type Hint, nextHint } from "./hints.ts";
import { closeHints, hintDone, showHints, useHints } from "./shown-hints.ts";

export function FirstSteps({ here }: { readonly here: string }) {
  useEffect(showHints, []);
  const state = useHints();
  const hint = nextHint(state);
  if (state.isClosed) return null;
  if (hint === null) {
    return (
      <section className="first-steps" aria-label="First steps">
        <p role="status">
          <strong>That is the whole way,</strong> from the drawing to the bench. New work begins in Jobs.
        </p>
        <Button className="button button-main" onPress={closeHints}>
          Close
        </Button>
      </section>
    );
  }
  return (
    <section className="first-steps" aria-label="First steps">
      <p role="status">
        <span className="first-steps-count figures">
          {state.done.length + 1} of {HINTS.length}
        </span>{" "}
        <strong>{hint.title}</strong>{" "}
        {hint.room === here ? <span className="first-steps-says">{hint.says}</span> : null}
      </p>
      {hint.room === here ? (
        hint.id === "answer" ? (
          <AnswerRead />
        ) : null
      ) : (
        <a className="button button-main" href={`#${hint.room}`}>
          Go to {hint.roomName}
        </a>
      )}
      <Button className="icon-button first-steps-leave" onPress={closeHints} aria-label="Leave the hints">
        <svg className="sign" viewBox="0 0 24 24" aria-hidden="true" focusable="false">
          <path d="M6 6l12 12M18 6L6 18" />
        </svg>
      </Button>
      <Steps at={hint} />
    </section>
  );
}

/** Reading leaves no trace: the maker says so. */
function AnswerRead() {
  const isThere = usePlan(({ computed }) => computed !== null);
  return (
    <Button className="button button-main" isDisabled={!isThere} onPress={() => hintDone("answer")}>
      {isThere ? "I have read it" : "The answer is coming…"}
    </Button>
  );
}

/** How far one has come: a line with four marks, for the eye alone. */
function Steps({ at }: { readonly at: Hint }) {
  const done = useHints((state) => state.done);
  return (
    <span className="first-steps-marks" aria-hidden="true">
      {HINTS.map(({ id }) => (
        <span
          key={id}
          className={
            done.includes(id) ? "first-steps-done" : id === at.id ? "first-steps-at" : "first-steps-open"
          }
        />
      ))}
    </span>
  );
}
