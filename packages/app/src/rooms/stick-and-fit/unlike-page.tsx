/** Two unlike mouldings at one corner: how the saw is set for each, and where their mitre runs. */
import { useState } from "react";
import { change, useShownJob } from "../../bench/job-on-bench.ts";
import { Choice } from "../../common/choice.tsx";
import { DrawingView } from "../../common/drawing-view.tsx";
import { FigureField } from "../../common/figure-field.tsx";
import { LengthField } from "../../common/length-field.tsx";
import { type LengthWords, useLengthWords } from "../../common/length-words.ts";
import { TradeText } from "../../common/trade-text.tsx";
import { choicesOf, type Fit, withFit } from "../../fitting/fit-choices.ts";
import type { MouldingSize, UnlikeAnswer } from "../../fitting/unlike-answer.ts";
import { CornerInputs } from "./corner-inputs.tsx";
import { Figure, Figures } from "./figures.tsx";
import { FitLayout } from "./fit-layout.tsx";
import { Cautions, Notes } from "./fit-notes.tsx";
import { cutSentence, sawDegrees } from "./saw-words.ts";

const PIECES = [
  { value: "first", words: "This moulding" },
  { value: "second", words: "The other" },
] as const;

export function UnlikePage() {
  return (
    <FitLayout
      page="unlike"
      inputs={<UnlikeInputs />}
      first={(answer) => <AtTheSaw answer={answer} />}
      more={(answer) => <MoreOfTheMitre answer={answer} />}
    />
  );
}

function AtTheSaw({ answer: { mitre, own, other, picture, cautions } }: { readonly answer: UnlikeAnswer }) {
  const [which, setWhich] = useState<"first" | "second">("first");
  const words = useLengthWords();
  const cut = mitre[which];
  return (
    <>
      <div className="fit-choices">
        <Choice label="Which moulding" value={which} options={PIECES} onChange={setWhich} />
      </div>
      <Figures>
        <Figure name="Mitre">{sawDegrees(cut.mitreDeg)}</Figure>
        <Figure name="Bevel">{sawDegrees(cut.bevelDeg)}</Figure>
      </Figures>
      <p className="fit-says">{cutSentence(cut, "flat")}</p>
      <p className="figures">
        <TradeText>{lineWords(mitre, words)}</TradeText>
      </p>
      <p className="figures quiet">
        This one, on the left, {sizeWords(own, words)}; the other {sizeWords(other, words)}.
      </p>
      <div className="fit-picture">
        <DrawingView drawing={picture} />
      </div>
      <Cautions cautions={cautions} />
    </>
  );
}

function lineWords(
  { corner, fromFirstWallDeg, line, mostOffChordMm }: UnlikeAnswer["mitre"],
  words: LengthWords,
) {
  const leaves = `The mitre leaves this wall at ${sawDegrees(fromFirstWallDeg)}, where ${sawDegrees(corner.cornerDeg / 2)} would be half the corner.`;
  return line === "straight"
    ? leaves
    : `${leaves} It bends up to ${words.length(mostOffChordMm)}: saw outside of it, then pare to the points below.`;
}

function sizeWords(
  { projectionMm, heightMm, springFromWallDeg }: MouldingSize,
  { length }: LengthWords,
): string {
  return `comes out ${length(projectionMm)} and is ${length(heightMm)} high, spring ${sawDegrees(springFromWallDeg)}`;
}

function MoreOfTheMitre({ answer }: { readonly answer: UnlikeAnswer }) {
  const { length } = useLengthWords();
  const { line, points } = answer.mitre;
  return (
    <>
      <Notes warnings={answer.warnings} assumed={answer.assumed} />
      {line === "straight" ? null : (
        <details className="fit-more">
          <summary>Points to pare to, from the foot up</summary>
          <table className="fit-table figures">
            <thead>
              <tr>
                <th scope="col">High</th>
                <th scope="col">From this wall</th>
                <th scope="col">From the other</th>
              </tr>
            </thead>
            <tbody>
              {thinned(points).map((point) => (
                <tr key={`${point.heightMm} ${point.fromFirstWallMm} ${point.fromSecondWallMm}`}>
                  <td>{length(point.heightMm)}</td>
                  <td>{length(point.fromFirstWallMm)}</td>
                  <td>{length(point.fromSecondWallMm)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </details>
      )}
    </>
  );
}

/** More than a hand marks is no help: every so many, the ends among them. */
function thinned<Point>(points: readonly Point[]): readonly Point[] {
  const step = Math.max(1, Math.ceil((points.length - 1) / MOST_POINTS));
  return points.filter((_, index) => index % step === 0 || index === points.length - 1);
}

const MOST_POINTS = 16;

function UnlikeInputs() {
  const { unlike } = choicesOf(useShownJob());
  const set = (what: string, part: Partial<NonNullable<Fit["unlike"]>>): void =>
    change(what, (job) => withFit(job, "unlike", part));
  return (
    <>
      <fieldset className="stock">
        <legend>The other moulding, on the right</legend>
        <div className="fit-fields">
          <LengthField
            label="Comes out"
            valueMm={unlike.projectionMm}
            leastMm={1}
            mostMm={1000}
            onChange={(projectionMm) => set("how far the other comes out", { projectionMm })}
          />
          {unlike.heightMm === null ? null : (
            <LengthField
              label="Height"
              valueMm={unlike.heightMm}
              leastMm={1}
              mostMm={1000}
              onChange={(heightMm) => set("the other’s height", { heightMm })}
            />
          )}
          <FigureField
            label="Its spring from the wall"
            unit="°"
            value={unlike.springFromWallDeg}
            least={0}
            most={90}
            placeholder="as this one’s"
            onChange={(springFromWallDeg) => set("the other’s spring", { springFromWallDeg })}
            onEmpty={() => set("the other’s spring as this one’s", { springFromWallDeg: undefined })}
          />
        </div>
        <Choice
          label="Height of the other"
          value={unlike.heightMm === null ? "same" : "own"}
          options={HEIGHTS}
          onChange={(next) =>
            set(next === "same" ? "as high as this one" : "a height of its own", {
              heightMm: next === "same" ? undefined : 50,
            })
          }
        />
      </fieldset>
      <CornerInputs />
    </>
  );
}

const HEIGHTS = [
  { value: "same", words: "As high as this one" },
  { value: "own", words: "Its own height" },
] as const;
