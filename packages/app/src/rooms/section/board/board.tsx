/** The drawing board: the section large in its stick, its handles, and what a pull settles on. */
import { nearestOnPiece, type Point } from "mouldwright/curve";
import { type KeyboardEvent, type ReactNode, useMemo, useRef } from "react";
import { useLengthWords } from "../../../common/length-words.ts";
import type { Verdict } from "../answer/verdicts.ts";
import { partsOfJob } from "../chain/chain-edits.ts";
import type { PlacedPart } from "../chain/laid-chain.ts";
import { StrokeOnBoard } from "../hand/stroke-on-board.tsx";
import type { HandDrawing } from "../hand/use-hand-drawing.ts";
import { useStroke } from "../hand/use-stroke.ts";
import { type Handle, handlesOf } from "../pull/handles.ts";
import { handlesOfPath } from "../pull/pull-vertex.ts";
import type { ShelfRadius } from "../pull/soles.ts";
import type { Drawn } from "../use-drawn.ts";
import { BoardDrawing } from "./board-drawing.tsx";
import { BoardHandles } from "./board-handles.tsx";
import { BoardTools, ZoomButtons } from "./board-tools.tsx";
import { onBoard, pannedBy } from "./board-view.ts";
import { JoinKey } from "./join-marks.tsx";
import { partLabels } from "./part-labels.ts";
import { PartNumbers } from "./part-numbers.tsx";
import { neededHeightPx, useBoardView } from "./use-board-view.ts";
import { useHandOnBoard } from "./use-hand-on-board.ts";
import { usePull } from "./use-pull.ts";

export interface BoardProps {
  readonly drawn: Drawn;
  /** The parts that are numbered: those of the chain, or of the plan where the section is a path. */
  readonly numbered: readonly PlacedPart[];
  readonly verdicts: readonly Verdict[];
  readonly radii: readonly ShelfRadius[];
  readonly selected: number | null;
  readonly onSelect: (index: number | null) => void;
  readonly hand: HandDrawing;
  /** Further tools beside the board's own. */
  readonly children?: ReactNode;
}

/** How near a part a finger must come to mean it, px. */
const TOUCH_PX = 22;
const NUMBERS_ABOVE_PX = 26;

export function Board(props: BoardProps) {
  const { drawn, numbered, verdicts, radii, selected, onSelect, hand: byHand, children } = props;
  const board = useRef<HTMLDivElement | null>(null);
  const words = useLengthWords();
  const lie = useBoardView(board, drawn.of.stick);
  const { view, size } = lie;
  const isPath = drawn.job.section.parts === undefined;
  const all = useMemo(
    () => (isPath ? handlesOfPath(drawn.job) : handlesOf(drawn.job, drawn.placed)),
    [isPath, drawn.job, drawn.placed],
  );
  const handles = selected === null || isPath ? all : all.filter((handle) => isOf(handle, selected));
  const wish = { handles, placed: drawn.placed, radii, view, words };
  const { pulled, handsOn } = usePull(board, wish);
  const hand = useHandOnBoard(board, lie.setView, (at) => onSelect(partAt(at, numbered, view)));
  const stroke = useStroke(board, view, (points) => byHand.draw({ points, pxPerMm: view.pxPerMm }));
  const labels = partLabels(numbered, view, {
    topPx: Math.max(18, onBoard(view, { x: 0, y: drawn.of.stick.thicknessMm }).y - NUMBERS_ABOVE_PX),
    leftPx: 16,
    rightPx: size.widthPx - 16,
  });
  const onKeyDown = (event: KeyboardEvent<Element>): void => {
    if (event.target !== event.currentTarget) return;
    const edit = viewKey(event.key, lie);
    if (edit === null) return;
    event.preventDefault();
    edit();
  };
  const placeWords = (handle: Handle): string =>
    `${words.length(handle.at.x)} from the gauge edge, ${words.length(handle.at.y)} up`;
  const { section } = drawn;
  return (
    <div className="board-frame">
      {/* biome-ignore lint/a11y/useSemanticElements: a drawing that takes keys, not a set of fields */}
      <div
        ref={board}
        className={`board${lie.isFitted ? "" : " zoomed"}${byHand.isOn ? " by-hand" : ""}`}
        style={{
          height: `clamp(var(--board-least), ${neededHeightPx(size, drawn.of.stick)}px, var(--board-most))`,
        }}
        role="group"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: keys zoom and move the drawing while it has the focus
        tabIndex={0}
        aria-label="Drawing board. Plus and minus zoom, arrow keys move the drawing, 0 fits it, 1 shows it full size"
        onKeyDown={onKeyDown}
      >
        {size.widthPx === 0 || section === null ? null : (
          <svg
            className="board-drawing"
            width={size.widthPx}
            height={size.heightPx}
            viewBox={`0 0 ${size.widthPx} ${size.heightPx}`}
            role="img"
            aria-label={describe(drawn, words.length)}
            {...(byHand.isOn ? stroke.hands : hand)}
          >
            <BoardDrawing
              section={section}
              view={view}
              size={size}
              words={words}
              tried={drawn.isEarlier ? drawn.placed : NONE}
              isEarlier={drawn.isEarlier}
            />
            <PartNumbers labels={labels} verdicts={verdicts} selected={selected} onSelect={onSelect} />
            {byHand.isOn ? (
              <StrokeOnBoard view={view} points={stroke.points} stroke={byHand.stroke} read={byHand.read} />
            ) : null}
          </svg>
        )}
        {size.widthPx === 0 || byHand.isOn ? null : (
          <BoardHandles
            handles={handles}
            view={view}
            size={size}
            pulledId={pulled?.handle.id ?? null}
            placeWords={placeWords}
            handsOn={handsOn}
          />
        )}
        <p className="board-says figures" aria-live="polite">
          {pulled === null ? null : (
            <>
              <strong>{pulled.handle.words}</strong> {pulled.says}
            </>
          )}
        </p>
        <ZoomButtons lie={lie} />
        {drawn.isEarlier ? (
          <p className="board-earlier">
            The last drawing that holds.{drawn.placed.length === 0 ? "" : " What was tried is dashed."}
          </p>
        ) : null}
      </div>
      <BoardTools lie={lie}>{children}</BoardTools>
      {section === null ? null : <JoinKey section={section} />}
    </div>
  );
}

const NONE: readonly PlacedPart[] = [];

/** With a part chosen, its own handles and the join before it. */
function isOf(handle: Handle, selected: number): boolean {
  if (handle.part === selected) return true;
  return handle.kind === "start" ? selected === 0 : handle.kind === "end" && handle.part === selected - 1;
}

function partAt(
  at: Point,
  numbered: readonly PlacedPart[],
  view: Parameters<typeof onBoard>[0],
): number | null {
  const place = { x: (at.x - view.originX) / view.pxPerMm, y: (view.originY - at.y) / view.pxPerMm };
  let best: number | null = null;
  let bestPx = TOUCH_PX;
  for (const { index, pieces } of numbered) {
    for (const piece of pieces) {
      const awayPx = nearestOnPiece(piece, place).distanceMm * view.pxPerMm;
      if (awayPx >= bestPx) continue;
      best = index;
      bestPx = awayPx;
    }
  }
  return best;
}

const PAN_PX = 40;
const ZOOM_RATIO = 1.25;

function viewKey(key: string, lie: ReturnType<typeof useBoardView>): (() => void) | null {
  const pan = (dx: number, dy: number) => () => lie.setView((view) => pannedBy(view, dx, dy));
  switch (key) {
    case "+":
    case "=":
      return () => lie.zoom(ZOOM_RATIO);
    case "-":
      return () => lie.zoom(1 / ZOOM_RATIO);
    case "0":
      return lie.fit;
    case "1":
      return lie.fullSize;
    case "ArrowLeft":
      return pan(PAN_PX, 0);
    case "ArrowRight":
      return pan(-PAN_PX, 0);
    case "ArrowUp":
      return pan(0, PAN_PX);
    case "ArrowDown":
      return pan(0, -PAN_PX);
    default:
      return null;
  }
}

function describe({ job, of, isEarlier }: Drawn, length: (lengthMm: number) => string): string {
  const { widthMm, thicknessMm } = of.stick;
  const names = partsOfJob(of).map((part) => part.name ?? part.kind);
  const chain = names.length === 0 ? "" : ` From the gauge edge: ${names.join(", ")}.`;
  const earlier = isEarlier ? " This is the last drawing that holds." : "";
  return `${job.name}: the section in a stick ${length(widthMm)} wide and ${length(thicknessMm)} thick.${chain}${earlier}`;
}
