/** At the wood yard: width × thickness × length, timber, how many sticks, waste; below it what becomes of the stick. */

import { useShownJob } from "../../bench/job-on-bench.ts";
import { DrawingView } from "../../common/drawing-view.tsx";
import { sizesInWords, useLengthWords } from "../../common/length-words.ts";
import { TradeText } from "../../common/trade-text.tsx";
import { choicesOf } from "../../fitting/fit-choices.ts";
import type { StickPageAnswer, TimberAnswer } from "../../fitting/stick-answer.ts";
import { Figure, Figures } from "./figures.tsx";
import { FitLayout } from "./fit-layout.tsx";
import { Cautions, Notes } from "./fit-notes.tsx";
import { StickInputs } from "./stick-inputs.tsx";
import {
  boardWords,
  grainWords,
  holdingWords,
  movementWords,
  percentWords,
  sawingWords,
} from "./stick-words.ts";

export function StickPage() {
  return (
    <FitLayout
      page="stick"
      inputs={<StickInputs />}
      first={(answer) => <AtTheYard answer={answer} />}
      more={(answer) => <MoreOfTheStick answer={answer} />}
    />
  );
}

function AtTheYard({ answer }: { readonly answer: StickPageAnswer }) {
  const words = useLengthWords();
  const { stick, buys, shared, timber } = answer;
  const { buy, planed, finishedLengthMm, wasteRatio } = stick.stock;
  return (
    <>
      <Figures>
        <Figure name="Buy: width × thickness × length" isWide>
          {buys.map(({ lengthMm, count }) => (
            <span key={lengthMm} className="fit-buy">
              {count} {count === 1 ? "stick" : "sticks"}{" "}
              {sizesInWords([buy.widthMm, buy.thicknessMm, lengthMm], words)}
            </span>
          ))}
        </Figure>
        <Figure name="Timber">{timber?.timber.name ?? "not chosen"}</Figure>
        <Figure name="Becomes shavings">{percentWords(wasteRatio)}</Figure>
        {shared === null || shared.usedMm === 0 ? null : (
          <Figure name="Lost along the sticks">{percentWords(shared.wastedMm / shared.usedMm)}</Figure>
        )}
      </Figures>
      <p className="figures">
        {shared === null
          ? `Plane to ${sizesInWords([planed.widthMm, planed.thicknessMm, planed.lengthMm], words)}; finished length ${words.length(finishedLengthMm)}.`
          : `Plane to ${sizesInWords([planed.widthMm, planed.thicknessMm], words)}; the pieces are marked along the sticks below.`}
      </p>
      {stick.holding.canBeHeld ? null : (
        <div className="trouble">
          <p>{holdingWords(stick, words)}</p>
        </div>
      )}
      {answer.rod === null ? null : (
        <div className="fit-picture">
          <DrawingView drawing={answer.rod} label="The pieces along the sticks" />
        </div>
      )}
    </>
  );
}

function MoreOfTheStick({ answer }: { readonly answer: StickPageAnswer }) {
  const words = useLengthWords();
  const { stick, timber, built } = answer;
  return (
    <>
      <div className="fit-picture">
        <DrawingView drawing={answer.picture} />
      </div>
      {timber === null ? null : <TimberWords timber={timber} />}
      {built === null ? null : <BuiltUpWords answer={answer} />}
      <Notes warnings={answer.warnings} assumed={answer.assumed} />
      <Cautions cautions={answer.cautions} />
      <details className="fit-more">
        <summary>Holding, sticking board, grain</summary>
        <ul className="fit-lines figures">
          {sawingWords(stick, words).map((line) => (
            <li key={line}>{line}</li>
          ))}
          <li>{holdingWords(stick, words)}</li>
          <li>{boardWords(stick, words)}</li>
          <li>{grainWords(stick)}</li>
        </ul>
      </details>
    </>
  );
}

function TimberWords({ timber }: { readonly timber: TimberAnswer }) {
  const words = useLengthWords();
  const { fittedPercent, driestPercent, wettestPercent, sawn } = choicesOf(useShownJob());
  const { timber: own, drying, wetting } = timber;
  return (
    <section aria-label="How the timber moves">
      <h2>
        <TradeText>{`${own.name}, ${sawn} sawn`}</TradeText>
      </h2>
      <p className="figures">
        Fitted at {fittedPercent} % moisture. {movementWords(drying, driestPercent, words.unit)}{" "}
        {movementWords(wetting, wettestPercent, words.unit)} {own.note}
      </p>
      <details className="fit-more">
        <summary>Its movement drawn, and where the figures come from</summary>
        <p className="quiet">
          {drying.coefficients.source.where}; {drying.coefficients.source.standing}. Averages: one board may
          move a quarter more or less.
        </p>
        <div className="fit-picture">
          <DrawingView drawing={timber.picture} />
        </div>
      </details>
    </section>
  );
}

function BuiltUpWords({ answer }: { readonly answer: StickPageAnswer }) {
  const words = useLengthWords();
  const { built } = answer;
  if (built === null) return null;
  if (built.best.parts.length === 1) return <p>The timber at hand holds the section in one stick.</p>;
  return (
    <section aria-label="Built up">
      <h2>Built up of {built.best.parts.length} parts</h2>
      <ul className="fit-lines figures">
        {built.best.parts.map(({ number, buy, planed, work, sawnLying }) => (
          <li key={number}>
            Part {number}: buy {sizesInWords([buy.widthMm, buy.thicknessMm, buy.lengthMm], words)}, plane to{" "}
            {sizesInWords([planed.widthMm, planed.thicknessMm], words)}; {work}, sawn {sawnLying}.
          </li>
        ))}
        {built.best.joints.map((joint) => (
          <li key={`${joint.runs}${joint.hiddenBy}${joint.from.x}${joint.from.y}`}>
            A joint that runs {joint.runs}, hidden by a {joint.hiddenBy}.
          </li>
        ))}
      </ul>
    </section>
  );
}
