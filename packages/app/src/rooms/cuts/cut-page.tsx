/** One cut as a page: plane, how it is held, picture, the one distance, the sentence, the sign that it is done. */

import type { Plan, PlanCut } from "mouldwright/cutting";
import { useMemo } from "react";
import { Checkbox } from "react-aria-components";
import { TradeText } from "../../common/trade-text.tsx";
import { CutPicture } from "./cut-picture.tsx";
import { type CutWords, cutWords, type Distance, type Rule } from "./cut-words.ts";
import { TickSign } from "./signs.tsx";

const PICTURE = { leastLetterPx: 12.4, letterRatio: 0, mostHeightRatio: 0.44 } as const;

export interface CutPageProps {
  readonly plan: Plan;
  readonly cut: PlanCut;
  readonly rule: Rule;
  readonly isDone: boolean;
  /** Null for a cut that lies behind the plan: it is made, and what came of it is told otherwise. */
  readonly onTick: ((isDone: boolean) => void) | null;
}

export function CutPage({ plan, cut, rule, isDone, onTick }: CutPageProps) {
  const { unit, inchStep } = rule;
  const words = useMemo(() => cutWords(plan, cut, { unit, inchStep }), [plan, cut, unit, inchStep]);
  return (
    <article className="cut-page" aria-label={`Cut ${cut.number} of ${plan.cuts.length}`}>
      <header className="cut-head">
        <span className="cut-number figures" aria-hidden="true">
          {cut.number}
        </span>
        <div>
          <h2 className="cut-plane">{words.plane}</h2>
          <p className="cut-held">
            {words.held}
            {words.work === "" ? null : <span className="quiet"> · {words.work}</span>}
          </p>
        </div>
      </header>
      <CutPicture plan={plan} number={cut.number} rule={rule} wish={PICTURE} />
      <div className="cut-do">
        <DistanceWords words={words} />
        <p className="cut-says">
          <TradeText>{words.says}</TradeText>
        </p>
        {onTick === null ? (
          <p className="cut-made">
            <TickSign /> Made, before the plan that is on show now.
          </p>
        ) : (
          <TickBox words={words} isDone={isDone} onTick={onTick} />
        )}
      </div>
      <Further words={words} />
    </article>
  );
}

function DistanceWords({ words: { distance, further } }: { readonly words: CutWords }) {
  if (distance === null) return null;
  return (
    <div className="cut-distances figures">
      <p className="cut-distance">
        <strong>{distance.figure}</strong> {distance.from}
      </p>
      {further.length === 0 ? null : (
        <p className="cut-further">
          {further.map((one) => (
            <span key={keyOf(one)}>
              <strong>{one.figure}</strong> {one.from}
            </span>
          ))}
        </p>
      )}
    </div>
  );
}

function keyOf({ figure, from }: Distance): string {
  return `${figure} ${from}`;
}

interface TickBoxProps {
  readonly words: CutWords;
  readonly isDone: boolean;
  readonly onTick: (isDone: boolean) => void;
}

/** The sign that it is done, behind a box to tick. */
export function TickBox({ words, isDone, onTick }: TickBoxProps) {
  return (
    <Checkbox className="tick-box" isSelected={isDone} onChange={onTick}>
      <span className="tick-square" aria-hidden="true">
        {isDone ? <TickSign /> : null}
      </span>
      <span>
        <span className="only-read">Cut {words.number}. </span>
        {words.doneWhen}
      </span>
    </Checkbox>
  );
}

function Further({ words }: { readonly words: CutWords }) {
  return (
    <div className="cut-more">
      {words.scribe.length === 0 ? null : (
        <section>
          <h3>Scribe before it</h3>
          <ul className="plain-list figures">
            {words.scribe.map((mark) => (
              <li key={mark}>{mark}.</li>
            ))}
          </ul>
        </section>
      )}
      <section>
        <h3>Strokes</h3>
        <p className="figures">{words.strokes}</p>
      </section>
      <section>
        <h3>Why</h3>
        <p>
          {words.reason} <em>{words.otherwise}</em>
        </p>
      </section>
      <section className="cut-care">
        <h3>Take care</h3>
        <ul className="plain-list">
          {words.cautions.map((caution) => (
            <li key={caution}>
              <TradeText>{caution}</TradeText>
            </li>
          ))}
        </ul>
      </section>
    </div>
  );
}
