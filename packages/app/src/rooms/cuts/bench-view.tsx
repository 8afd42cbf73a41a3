/**
 * The page for the bench: read from two metres off, turned with one finger. Picture and the one distance are largest;
 * the screen is kept awake as long as it is open.
 */
import type { Plan } from "mouldwright/cutting";
import { useCallback, useMemo } from "react";
import { Button, Dialog, Modal, ModalOverlay } from "react-aria-components";
import { CutPicture } from "./cut-picture.tsx";
import { type CutWords, cutWords, type Rule } from "./cut-words.ts";
import { leaveFullScreen, useFullScreen } from "./full-screen.ts";
import { BackSign, OnSign, TickSign } from "./signs.tsx";
import { useSwipe, useTurningKeys } from "./turning.ts";
import { useScreenAwake } from "./wake-lock.ts";
import "./bench-view.css";

/** Lettering of the picture that is still read from two metres. */
const PICTURE = { leastLetterPx: 12.4, letterRatio: 0.027, mostHeightRatio: 0.5 } as const;

export interface BenchViewProps {
  readonly plan: Plan;
  readonly number: number;
  readonly rule: Rule;
  readonly done: ReadonlySet<number>;
  readonly onTurn: (number: number) => void;
  readonly onTick: (number: number, isDone: boolean) => void;
  readonly onLeave: () => void;
}

export function BenchView(props: BenchViewProps) {
  const { plan, number, rule, done, onTurn, onTick, onLeave } = props;
  const cuts = plan.cuts;
  const found = cuts.findIndex((one) => one.number === number);
  const at = Math.max(0, found);
  const cut = cuts[at];
  const { unit, inchStep } = rule;
  const words = useMemo(
    () => (cut === undefined ? null : cutWords(plan, cut, { unit, inchStep })),
    [plan, cut, unit, inchStep],
  );
  const turnToPlace = useCallback(
    (place: number) => {
      const to = cuts[Math.max(0, Math.min(place, cuts.length - 1))];
      if (to !== undefined) onTurn(to.number);
    },
    [cuts, onTurn],
  );
  const leave = useCallback(() => {
    leaveFullScreen();
    onLeave();
  }, [onLeave]);
  useFullScreen(leave);
  const awake = useScreenAwake();
  const swipe = useSwipe((step) => turnToPlace(at + step));
  if (cut === undefined || words === null) return null;
  const isLast = at === cuts.length - 1;
  const isDone = done.has(cut.number);
  const press = (): void => {
    if (!isDone) onTick(cut.number, true);
    if (isLast) leave();
    else turnToPlace(at + 1);
  };
  return (
    <ModalOverlay
      className="bench-overlay"
      isOpen
      onOpenChange={(isOpen) => {
        if (!isOpen) leave();
      }}
    >
      <Modal className="bench-modal">
        <Dialog className="bench" aria-label={`At the bench: cut ${cut.number} of ${cuts.length}`}>
          <BenchKeys at={at} count={cuts.length} turn={turnToPlace} />
          <div className="bench-top">
            <p className="bench-place figures" aria-live="polite">
              <strong>{cut.number}</strong> of {cuts.length}
              {isDone ? <TickSign /> : null}
            </p>
            {awake === "" ? null : (
              <p className="bench-awake" role="status">
                {awake}
              </p>
            )}
            <Button className="button bench-leave" onPress={leave}>
              Leave
            </Button>
          </div>
          <div className="bench-card" {...swipe}>
            <div className="bench-see">
              <h2 className="bench-plane">
                {words.plane}
                <span className="bench-held">{words.held}</span>
              </h2>
              <CutPicture plan={plan} number={cut.number} rule={rule} wish={PICTURE} />
            </div>
            <div className="bench-do">
              <BenchDistance words={words} />
              <p className="bench-says">{words.says}</p>
              <p className="bench-until">{words.doneWhen}</p>
            </div>
          </div>
          <div className="bench-foot">
            <Button
              className="button bench-back"
              aria-label="Cut before"
              isDisabled={at === 0}
              onPress={() => turnToPlace(at - 1)}
            >
              <BackSign />
            </Button>
            <Button className="button button-main bench-done" onPress={press}>
              {isLast ? "Done, finished" : isDone ? "Next" : "Done, next"}
            </Button>
            <Button
              className="button bench-back"
              aria-label="Next cut, this one not done"
              isDisabled={isLast}
              onPress={() => turnToPlace(at + 1)}
            >
              <OnSign />
            </Button>
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

interface BenchKeysProps {
  readonly at: number;
  readonly count: number;
  readonly turn: (place: number) => void;
}

/** The same keys as in the room; the room's own are out of reach while the bench view is open. */
function BenchKeys({ at, count, turn }: BenchKeysProps) {
  useTurningKeys(at, count, turn, { isInDialog: true });
  return null;
}

function BenchDistance({ words: { distance, further } }: { readonly words: CutWords }) {
  if (distance === null) return null;
  return (
    <div className="bench-distances figures">
      <p className="bench-distance">
        <strong>{distance.figure}</strong>
        <span>{distance.from}</span>
      </p>
      {further.map(({ figure, from }) => (
        <p key={`${figure} ${from}`} className="bench-further">
          <strong>{figure}</strong> {from}
        </p>
      ))}
    </div>
  );
}
