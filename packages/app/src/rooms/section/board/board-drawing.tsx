/** The section in its stick as ISO 128 and 129-1 draw it: wood, waste, outline, joins, sizes. Weights 2 : 1, in pixels. */
import type { Section } from "mouldwright/section";
import { memo, useId, useMemo } from "react";
import type { LengthWords } from "../../../common/length-words.ts";
import type { PlacedPart } from "../chain/laid-chain.ts";
import type { BoardSize, BoardView } from "./board-view.ts";
import { JoinMarks } from "./join-marks.tsx";
import { ScaleBar } from "./scale-bar.tsx";
import { pathOfPieces, pathOfRing } from "./shape-path.ts";
import { SizesOnBoard } from "./sizes-on-board.tsx";

export interface BoardDrawingProps {
  readonly section: Section;
  readonly view: BoardView;
  readonly size: BoardSize;
  readonly words: LengthWords;
  /** Parts that make no section yet: drawn dashed over the last good one. */
  readonly tried: readonly PlacedPart[];
  readonly isEarlier: boolean;
}

export const BoardDrawing = memo(function BoardDrawing(props: BoardDrawingProps) {
  const { section, view, size, words, tried, isEarlier } = props;
  return (
    <g className={isEarlier ? "drawn earlier" : "drawn"}>
      <StickEnd section={section} view={view} />
      <SizesOnBoard section={section} view={view} size={size} words={words} />
      <JoinMarks section={section} view={view} />
      {tried.length === 0 ? null : (
        <g transform={matrixOf(view)}>
          {tried.map(({ index, pieces }) => (
            <path key={index} className="line tried" d={pathOfPieces(pieces, false)} />
          ))}
        </g>
      )}
      <ScaleBar view={view} size={size} words={words} />
    </g>
  );
});

/** Lines keep their weight however far the drawing is zoomed. */
function StickEnd({ section, view }: { readonly section: Section; readonly view: BoardView }) {
  const id = useId();
  const outline = useMemo(() => pathOfRing(section.outline), [section]);
  const stick = useMemo(() => pathOfRing(section.stick), [section.stick]);
  const rings = useMemo(() => growthRings(section.stick), [section.stick]);
  return (
    <>
      <defs>
        <clipPath id={`${id}-wood`}>
          <path d={outline} />
        </clipPath>
        <pattern
          id={`${id}-waste`}
          patternUnits="userSpaceOnUse"
          width={8}
          height={8}
          patternTransform={`scale(${1 / view.pxPerMm}) rotate(45)`}
        >
          <path className="waste-line" d="M0 0V8" />
        </pattern>
      </defs>
      <g transform={matrixOf(view)}>
        <path className="waste" d={stick + outline} fillRule="evenodd" />
        <path d={stick + outline} fillRule="evenodd" fill={`url(#${id}-waste)`} />
        <path className="wood" d={outline} />
        <g clipPath={`url(#${id}-wood)`}>
          <path className="line grain" d={rings} />
        </g>
        <path className="line dashed" d={stick} />
        <path className="line outline" d={outline} />
      </g>
    </>
  );
}

/**
 * Growth rings as one path, as wide apart as on the core's drawings of a stick that fills its sheet; a tree's middle below
 * and to the right.
 */
function growthRings(stick: Section["stick"]): string {
  const widthMm = Math.max(...stick.pieces.map(({ from }) => from.x));
  const heightMm = Math.max(...stick.pieces.map(({ from }) => from.y));
  const [x, y] = [0.68 * widthMm, -0.9 * heightMm - 0.3 * widthMm];
  const stepMm = Math.max(widthMm, heightMm) / 18;
  const farMm = Math.max(Math.hypot(x, heightMm - y), Math.hypot(widthMm - x, heightMm - y));
  const first = Math.floor(-y / stepMm);
  const count = Math.ceil(farMm / stepMm) - first;
  const radii = Array.from({ length: count }, (_, ring) => (first + ring) * stepMm);
  const upper = (r: number): string => `M${x - r} ${y}A${r} ${r} 0 0 0 ${x + r} ${y}`;
  return radii.flatMap((radiusMm) => [upper(radiusMm), upper(radiusMm + LATE_WOOD * stepMm)]).join("");
}

/** Late wood follows each ring after this share of the step. */
const LATE_WOOD = 0.28;

export function matrixOf({ pxPerMm, originX, originY }: BoardView): string {
  return `matrix(${pxPerMm} 0 0 ${-pxPerMm} ${originX} ${originY})`;
}
