/** A frame: what is sawn, how long, at which angle; and what its mitres do in winter. */

import type { Rail } from "mouldwright/making";
import { sameMm } from "mouldwright/measure";
import { useShownJob } from "../../bench/job-on-bench.ts";
import { DrawingView } from "../../common/drawing-view.tsx";
import { type LengthWords, sizesInWords, useLengthWords } from "../../common/length-words.ts";
import { TradeText } from "../../common/trade-text.tsx";
import { choicesOf } from "../../fitting/fit-choices.ts";
import type { FrameAnswer } from "../../fitting/frame-answer.ts";
import { Figure, Figures } from "./figures.tsx";
import { FitLayout } from "./fit-layout.tsx";
import { Cautions, Notes } from "./fit-notes.tsx";
import { FrameInputs } from "./frame-inputs.tsx";
import { sawDegrees } from "./saw-words.ts";
import { thickness } from "./stick-words.ts";

export function FramePage() {
  return (
    <FitLayout
      page="frame"
      inputs={<FrameInputs />}
      first={(answer) => <FrameWords answer={answer} />}
      more={(answer) => <MoreOfTheFrame answer={answer} />}
    />
  );
}

interface RailSort {
  readonly rail: Rail;
  readonly count: number;
}

/** Rails of one length and one mitre together, in their order. */
export function railSorts(rails: readonly Rail[]): readonly RailSort[] {
  const sorts: RailSort[] = [];
  for (const rail of rails) {
    const at = sorts.findIndex(
      (sort) =>
        sameMm(sort.rail.longMm, rail.longMm) &&
        sawDegrees(sort.rail.start.mitreDeg) === sawDegrees(rail.start.mitreDeg),
    );
    const known = sorts[at];
    if (known === undefined) sorts.push({ rail, count: 1 });
    else sorts[at] = { ...known, count: known.count + 1 };
  }
  return sorts;
}

function FrameWords({ answer }: { readonly answer: FrameAnswer }) {
  const words = useLengthWords();
  const { frame } = answer;
  const sorts = railSorts(frame.rails);
  return (
    <>
      <Figures>
        <Figure name="Saw, long point to long point" isWide>
          {sorts.map(({ rail, count }) => (
            <span key={rail.number} className="fit-buy">
              {count} {count === 1 ? "rail" : "rails"} of {words.length(rail.longMm)}
            </span>
          ))}
        </Figure>
        <Figure name={sorts.length > 1 || frame.rails.length > 2 ? "Mitre" : "Mitres"}>
          {[...new Set(frame.rails.map(({ start }) => sawDegrees(start.mitreDeg)))].join(", ")}
        </Figure>
        <Figure name="Sight">{boxWords(frame.outlines.sight, words)}</Figure>
        <Figure name="Outside">{boxWords(frame.outlines.outside, words)}</Figure>
        {frame.outlines.rebate === null ? null : (
          <Figure name="Rebate">{boxWords(frame.outlines.rebate, words)}</Figure>
        )}
        {frame.outlines.glass === null ? null : (
          <Figure name="Glass">{boxWords(frame.outlines.glass, words)}</Figure>
        )}
      </Figures>
      <p className="figures">
        <TradeText>
          {`The rail lies on its back; the long point is at the outside. Long points together ${words.length(frame.stickMm)}: the sticks for them are on the page Stick.`}
        </TradeText>
      </p>
    </>
  );
}

function MoreOfTheFrame({ answer }: { readonly answer: FrameAnswer }) {
  return (
    <>
      <div className="fit-picture">
        <DrawingView drawing={answer.picture} />
      </div>
      {answer.seasons === null ? (
        <p className="quiet">Choose a timber on the page Stick to see what its mitres do in winter.</p>
      ) : (
        <SeasonWords answer={answer} />
      )}
      <Notes warnings={answer.warnings} assumed={answer.assumed} />
      <Cautions cautions={answer.cautions} />
    </>
  );
}

function SeasonWords({ answer }: { readonly answer: FrameAnswer }) {
  const { unit } = useLengthWords();
  const { fittedPercent, driestPercent } = choicesOf(useShownJob());
  const { seasons } = answer;
  if (seasons === null) return null;
  const gap =
    seasons.opensAt === "nowhere"
      ? "the mitres stay closed"
      : `a mitre would gape by ${thickness(seasons.gapMm, unit)} at its ${seasons.opensAt}`;
  return (
    <p className="figures">
      {seasons.timber}, from {fittedPercent} to {driestPercent} % moisture: {gap}.
    </p>
  );
}

function boxWords(
  outline: readonly { readonly x: number; readonly y: number }[],
  words: LengthWords,
): string {
  const xs = outline.map(({ x }) => x);
  const ys = outline.map(({ y }) => y);
  return sizesInWords([Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys)], words);
}
