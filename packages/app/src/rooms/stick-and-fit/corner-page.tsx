/** At the saw: which angle on which scale, which way round; the piece as it lies on the table. */

import { formatDeg } from "mouldwright/measure";
import { useState } from "react";
import { Choice } from "../../common/choice.tsx";
import { DrawingView } from "../../common/drawing-view.tsx";
import { useLengthWords } from "../../common/length-words.ts";
import { TradeText } from "../../common/trade-text.tsx";
import type { CornerAnswer, PieceAtSaw } from "../../fitting/corner-answer.ts";
import { CornerInputs } from "./corner-inputs.tsx";
import { Figure, Figures } from "./figures.tsx";
import { FitLayout } from "./fit-layout.tsx";
import { Cautions, Notes } from "./fit-notes.tsx";
import { cutSentence, longPointSentence, sawDegrees } from "./saw-words.ts";

const PIECES = [
  { value: "left", words: "Left-hand piece" },
  { value: "right", words: "Right-hand piece" },
] as const;
const LIES = [
  { value: "flat", words: "Laid flat" },
  { value: "held", words: "Held at its spring" },
] as const;

export function CornerPage() {
  return (
    <FitLayout
      page="corner"
      inputs={<CornerInputs />}
      first={(answer) => <AtTheSaw answer={answer} />}
      more={(answer) => <MoreOfTheCorner answer={answer} />}
    />
  );
}

function AtTheSaw({ answer }: { readonly answer: CornerAnswer }) {
  const [side, setSide] = useState<"left" | "right">("left");
  const [lie, setLie] = useState<"flat" | "held">("flat");
  const piece = answer[side];
  const cut = lie === "flat" ? piece.flat : piece.held;
  return (
    <>
      <div className="fit-choices">
        <Choice label="Which piece" value={side} options={PIECES} onChange={setSide} />
        <Choice label="How it lies in the saw" value={lie} options={LIES} onChange={setLie} />
      </div>
      <Figures>
        <Figure name="Mitre">{sawDegrees(cut.mitreDeg)}</Figure>
        <Figure name="Bevel">{sawDegrees(cut.bevelDeg)}</Figure>
      </Figures>
      <p className="fit-says">{cutSentence(cut, lie)}</p>
      <LongPointWords piece={piece} />
      {lie === "flat" ? (
        <div className="fit-picture fit-at-saw">
          <DrawingView drawing={piece.picture} />
        </div>
      ) : null}
      <Cautions cautions={answer.cautions} />
    </>
  );
}

function MoreOfTheCorner({ answer }: { readonly answer: CornerAnswer }) {
  return (
    <>
      <Notes warnings={answer.warnings} assumed={answer.assumed} />
      <details className="fit-more">
        <summary>Spring, corner, both pieces and the shooting board</summary>
        <p className="figures">
          Set to the nearest quarter of a degree. Exactly: mitre{" "}
          {formatDeg(answer.mitre.laidFlat.mitreDeg, { stepDeg: 0.01 })}, bevel{" "}
          {formatDeg(answer.mitre.laidFlat.bevelDeg, { stepDeg: 0.01 })} laid flat. To trim on a shooting
          board: fence at {sawDegrees(answer.mitre.shootingBoard.fenceDeg)} to the plane’s run, bed tipped by{" "}
          {sawDegrees(answer.mitre.shootingBoard.liftDeg)}.
        </p>
        <div className="fit-picture">
          <DrawingView drawing={answer.all} />
        </div>
      </details>
    </>
  );
}

function LongPointWords({ piece }: { readonly piece: PieceAtSaw }) {
  const { length } = useLengthWords();
  return (
    <p className="figures">
      <TradeText>{longPointSentence(piece.long, length)}</TradeText>
    </p>
  );
}
