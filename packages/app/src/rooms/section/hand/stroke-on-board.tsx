/** What the hand draws, and what is read of it, over the drawing. */
import type { Point } from "mouldwright/curve";
import { matrixOf } from "../board/board-drawing.tsx";
import { type BoardView, onBoard } from "../board/board-view.ts";
import { pathOfPieces } from "../board/shape-path.ts";
import type { ReadStroke } from "./hand-drawn.ts";
import type { Stroke } from "./use-hand-drawing.ts";

export interface StrokeOnBoardProps {
  readonly view: BoardView;
  /** Under the finger just now. */
  readonly points: readonly Point[];
  readonly stroke: Stroke | null;
  readonly read: ReadStroke | null;
}

export function StrokeOnBoard({ view, points, stroke, read }: StrokeOnBoardProps) {
  const shown = points.length > 0 ? points : (stroke?.points ?? []);
  const line = shown.map((at) => onBoard(view, at)).map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`);
  const isNew = points.length > 0;
  return (
    <>
      {line.length < 2 ? null : <path className="line stroke" d={`M${line.join("L")}`} />}
      {read === null || isNew ? null : (
        <>
          <g transform={matrixOf(view)}>
            <path className="line read" d={pathOfPieces(read.pieces, false)} />
          </g>
          {read.pieces.slice(1).map(({ from }) => {
            const { x, y } = onBoard(view, from);
            return <circle key={`${x} ${y}`} className="read-join" cx={x} cy={y} r={4} />;
          })}
        </>
      )}
    </>
  );
}
