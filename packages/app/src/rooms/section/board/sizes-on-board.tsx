/** Running dimensions from the gauge edge and the back, and the radii of the curves (ISO 129-1). */
import type { Section } from "mouldwright/section";
import { memo } from "react";
import type { LengthWords } from "../../../common/length-words.ts";
import { type BoardSize, type BoardView, onBoard } from "./board-view.ts";
import { type DimensionRow, FIGURE_PX, heightRow, radiiOf, widthOf, widthRow } from "./dimensions.ts";

export interface SizesOnBoardProps {
  readonly section: Section;
  readonly view: BoardView;
  readonly size: BoardSize;
  readonly words: LengthWords;
}

/** How far from the wood the dimension line stands, and its figures from that, px. */
const LINE_OFF_PX = 16;
const ROW_OFF_PX = 20;

export const SizesOnBoard = memo(function SizesOnBoard({ section, view, size, words }: SizesOnBoardProps) {
  // On a drawing the unit stands once, not at every figure.
  const short = (lengthMm: number): string => words.bare(lengthMm).replace(/\s*mm$/, "");
  const wish = { section, view, words: short };
  const right = Math.max(...section.stick.pieces.map(({ from }) => from.x));
  const lineY = view.originY + LINE_OFF_PX;
  const rightPx = onBoard(view, { x: right, y: 0 }).x;
  const top = Math.max(...section.stick.pieces.map(({ from }) => from.y));
  const upPx = Math.min(size.heightPx, top * view.pxPerMm + 2 * FIGURE_PX);
  return (
    <g className="sizes">
      <AcrossRow row={widthRow(wish, Math.min(size.widthPx, rightPx - view.originX + 60))} lineY={lineY} />
      <UpRow row={heightRow(wish, "left", upPx)} lineX={view.originX - LINE_OFF_PX} away={-1} />
      <UpRow row={heightRow(wish, "right", upPx)} lineX={rightPx + LINE_OFF_PX} away={1} />
      <Radii section={section} view={view} words={short} />
    </g>
  );
});

/** All lines of a row are one path, and all its arrows: a pull draws them anew with every frame. */
function AcrossRow({ row, lineY }: { readonly row: DimensionRow; readonly lineY: number }) {
  const last = row.values.at(-1);
  if (last === undefined) return null;
  const extensions = row.values.map(({ linePx, from }) => `M${linePx} ${from.y + 3}V${lineY + 3}`);
  const knees = row.values.map(
    ({ linePx, rowPx }) => `M${linePx} ${lineY}L${rowPx} ${lineY + ROW_OFF_PX - 6}V${lineY + ROW_OFF_PX - 2}`,
  );
  const arrows = row.values.map(({ linePx }) => `M${linePx} ${lineY}l-8 -2.6v5.2z`);
  return (
    <>
      <circle className="line" cx={row.originPx} cy={lineY} r={3} />
      <path className="line faint" d={extensions.join("")} />
      <path className="line" d={`M${row.originPx} ${lineY}H${last.linePx}${knees.join("")}`} />
      <path className="arrow" d={arrows.join("")} />
      {row.values.map(({ words, rowPx }, index) => (
        <text
          // biome-ignore lint/suspicious/noArrayIndexKey: figures are known by their place in the row
          key={index}
          className="figure"
          x={rowPx}
          y={lineY + ROW_OFF_PX + FIGURE_PX - 3}
          textAnchor="middle"
        >
          {words}
        </text>
      ))}
    </>
  );
}

interface UpRowProps {
  readonly row: DimensionRow;
  readonly lineX: number;
  readonly away: 1 | -1;
}

function UpRow({ row, lineX, away }: UpRowProps) {
  const last = row.values.at(-1);
  if (last === undefined) return null;
  const extensions = row.values.map(
    ({ linePx, from }) => `M${from.x + away * 3} ${linePx}H${lineX + away * 3}`,
  );
  const knees = row.values.map(
    ({ linePx, rowPx }) => `M${lineX} ${linePx}L${lineX + away * 8} ${rowPx}H${lineX + away * 11}`,
  );
  const arrows = row.values.map(({ linePx }) => `M${lineX} ${linePx}l-2.6 8h5.2z`);
  return (
    <>
      <circle className="line" cx={lineX} cy={row.originPx} r={3} />
      <path className="line faint" d={extensions.join("")} />
      <path className="line" d={`M${lineX} ${row.originPx}V${last.linePx}${knees.join("")}`} />
      <path className="arrow" d={arrows.join("")} />
      {row.values.map(({ words, rowPx }, index) => (
        <text
          // biome-ignore lint/suspicious/noArrayIndexKey: figures are known by their place in the row
          key={index}
          className="figure"
          x={lineX + away * 14}
          y={rowPx + FIGURE_PX * 0.36}
          textAnchor={away === 1 ? "start" : "end"}
        >
          {words}
        </text>
      ))}
    </>
  );
}

/** Each radius in the wood under its arc, where there is room; the arrow points at the arc. */
function Radii(props: {
  readonly section: Section;
  readonly view: BoardView;
  readonly words: (lengthMm: number) => string;
}) {
  const { section, view, words } = props;
  const placed: { readonly x: number; readonly y: number; readonly halfPx: number }[] = [];
  return radiiOf(section, words).flatMap(({ middle, words: said }) => {
    const at = onBoard(view, { x: middle[0], y: middle[1] });
    const halfPx = widthOf(said) / 2;
    const spot = [30, 48, 66, 84]
      .map((downPx) => ({ x: at.x, y: at.y + downPx, halfPx }))
      .find(
        (wish) =>
          wish.y < view.originY - 6 &&
          placed.every(
            (other) =>
              Math.abs(other.y - wish.y) > FIGURE_PX * 1.3 ||
              Math.abs(other.x - wish.x) > other.halfPx + wish.halfPx,
          ),
      );
    if (spot === undefined) return [];
    placed.push(spot);
    return [
      <g key={`${said} ${middle[0]} ${middle[1]}`}>
        <path className="line" d={`M${at.x} ${at.y + 1}V${spot.y - FIGURE_PX * 0.85}`} />
        <path className="arrow" d={`M${at.x} ${at.y + 1}l-2.6 8h5.2z`} />
        <text className="figure on-wood" x={spot.x} y={spot.y} textAnchor="middle">
          {said}
        </text>
      </g>,
    ];
  });
}
