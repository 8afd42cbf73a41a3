/** How large it is drawn: a bar of a round length. */
import type { LengthWords } from "../../../common/length-words.ts";
import { type BoardSize, type BoardView, scaleBarMm } from "./board-view.ts";

export interface ScaleBarProps {
  readonly view: BoardView;
  readonly size: BoardSize;
  readonly words: LengthWords;
}

export function ScaleBar({ view, size, words }: ScaleBarProps) {
  const lengthMm = scaleBarMm(view.pxPerMm, Math.min(140, size.widthPx / 3.5), words.unit);
  const widthPx = lengthMm * view.pxPerMm;
  const [x, y] = [14, size.heightPx - 14];
  return (
    <g className="scale-bar">
      <rect
        className="on-board"
        x={x - 6}
        y={y - 12}
        width={widthPx + 26 + 7 * words.length(lengthMm).length}
        height={20}
      />
      <path
        className="line"
        d={`M${x} ${y - 5}V${y + 3}M${x + widthPx} ${y - 5}V${y + 3}M${x} ${y}H${x + widthPx}`}
      />
      <text className="figure" x={x + widthPx + 7} y={y + 4}>
        {words.length(lengthMm)}
      </text>
    </g>
  );
}
