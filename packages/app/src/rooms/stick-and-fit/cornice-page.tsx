/** A run of cornice: its pieces in order with what is sawn at each end, the sticks they come out of, what goes up first. */

import type { CornicePiece, PieceEnd } from "mouldwright/making";
import { sayTrouble } from "mouldwright/measure";
import { DrawingView } from "../../common/drawing-view.tsx";
import { sizesInWords, useLengthWords } from "../../common/length-words.ts";
import { TradeText } from "../../common/trade-text.tsx";
import { TroubleWords } from "../../common/trouble-words.tsx";
import type { CorniceAnswer } from "../../fitting/cornice-answer.ts";
import { CorniceInputs } from "./cornice-inputs.tsx";
import { Figure, Figures } from "./figures.tsx";
import { FitLayout } from "./fit-layout.tsx";
import { Cautions, Notes } from "./fit-notes.tsx";
import { cutSentence, sawDegrees } from "./saw-words.ts";

const SPRING_SAID = {
  "bevel at that edge": "bevel at the wall",
  "bevel at the other edge": "bevel at the ceiling",
} as const;

export function CornicePage() {
  return (
    <FitLayout
      page="cornice"
      inputs={<CorniceInputs />}
      first={(answer) => <RunWords answer={answer} />}
      more={(answer) => <MoreOfTheRun answer={answer} />}
    />
  );
}

function RunWords({ answer }: { readonly answer: CorniceAnswer }) {
  const words = useLengthWords();
  const { length } = words;
  const { cornice, shared } = answer;
  const count = cornice.pieces.length;
  const sticks = shared?.sticksUsed.count ?? 0;
  return (
    <>
      <Figures>
        <Figure name="Pieces">{count}</Figure>
        {shared === null ? null : (
          <Figure name="Out of">
            {sticks} {sticks === 1 ? "stick" : "sticks"} of{" "}
            {stickLengths(
              shared.sticks.map((one) => one.lengthMm),
              length,
            )}
          </Figure>
        )}
        <Figure name="Comes out × high">{sizesInWords([answer.projectionMm, answer.heightMm], words)}</Figure>
        <Figure name="Goes up in this order">{cornice.fittingOrder.join(", ")}</Figure>
      </Figures>
      {answer.springIs === "no bevel" ? (
        <p>
          <TradeText>
            The section has no bevel at its back, so it is taken to stand flat against the wall. Say its
            spring if it leans.
          </TradeText>
        </p>
      ) : (
        <p className="figures">
          The back springs {sawDegrees(answer.springFromWallDeg)} from the wall
          {answer.springIs === "as said" ? "" : `, by its ${SPRING_SAID[answer.springIs]}`}.
        </p>
      )}
      {cornice.closingGapMm === null ? null : (
        <p className="figures">
          The run closes to within {length(cornice.closingGapMm)}: so far walls and corners, as measured,
          disagree.
        </p>
      )}
      <TroubleWords troubles={answer.sharingTroubles} />
      <ol className="fit-pieces">
        {cornice.pieces.map((piece) => (
          <Piece key={piece.number} piece={piece} />
        ))}
      </ol>
    </>
  );
}

function MoreOfTheRun({ answer }: { readonly answer: CorniceAnswer }) {
  return (
    <>
      <div className="fit-picture">
        <DrawingView drawing={answer.picture} label="The run from above, and its corners at the saw" />
      </div>
      {answer.rod === null ? null : (
        <div className="fit-picture">
          <h2>Along the sticks</h2>
          <DrawingView drawing={answer.rod} label="The pieces along the sticks" />
        </div>
      )}
      <Notes warnings={answer.warnings} assumed={answer.assumed} />
      <Cautions cautions={answer.cautions} />
    </>
  );
}

function stickLengths(lengthsMm: readonly number[], length: (mm: number) => string): string {
  return [...new Set(lengthsMm)].map(length).join(" and ");
}

function Piece({ piece }: { readonly piece: CornicePiece }) {
  const { length, unit } = useLengthWords();
  const name =
    piece.kind === "return" ? `Return ${piece.number}` : `Piece ${piece.number}, wall ${piece.wall}`;
  const why = sayTrouble(piece.why, { unit });
  return (
    <li>
      <strong>{name}</strong>
      <span className="figures">
        {" "}
        long points {length(piece.longMm)}; back {length(piece.backMm)}, front {length(piece.frontMm)}
      </span>
      <details>
        <summary>
          Left {piece.left.joint}, right {piece.right.joint}
        </summary>
        <p className="figures">Left: {endWords(piece.left)}</p>
        <p className="figures">Right: {endWords(piece.right)}</p>
        <p>
          {why.sentence} {why.hint}
        </p>
      </details>
    </li>
  );
}

function endWords(end: PieceEnd): string {
  if (end.joint === "square") return "a square cut.";
  if (end.joint === "against a wall") return "a square cut, against a wall.";
  const { laidFlat, corner } = end;
  const at = corner === null ? "" : `, ${corner.kind} corner of ${sawDegrees(corner.cornerDeg)}`;
  const first = end.joint === "scribed" ? "; saw this first, then follow the outline" : "";
  return `${end.joint}${at}${first}: mitre ${sawDegrees(laidFlat.mitreDeg)}, bevel ${sawDegrees(laidFlat.bevelDeg)}. ${cutSentence(laidFlat, "flat")}`;
}
