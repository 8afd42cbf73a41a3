/** What is measured on the drawing: running dimensions from the gauge edge and the back, and radii. ISO 129-1. */
import type { Point } from "mouldwright/curve";
import type { Section } from "mouldwright/section";
import { type ArcMiddle, arcMiddles, spread, turningPoints } from "mouldwright/sheets";
import { type BoardView, onBoard } from "./board-view.ts";
import { plainVertices } from "./shape-path.ts";

/** A letter of the drawing's figures is about so wide, px at its height of 12.5 px. */
export const FIGURE_PX = 12.5;
const LETTER_PX = 7;
const GAP_PX = 7;

export interface Dimension {
  readonly words: string;
  /** Where it is measured, along the dimension line, px. */
  readonly linePx: number;
  /** Where its figure stands, along the line, px: aside where figures would lie on each other. */
  readonly rowPx: number;
  /** Where the extension line starts, px: the nearest point that has this value. */
  readonly from: Point;
}

export interface DimensionRow {
  readonly originPx: number;
  readonly values: readonly Dimension[];
}

/** Two values nearer than this are written once, mm. */
const ONE_VALUE_MM = 0.05;

export interface DimensionWish {
  readonly section: Section;
  readonly view: BoardView;
  readonly words: (lengthMm: number) => string;
}

/** From the gauge edge along the back's side of the drawing; `mostPx`: no more than there is room for. */
export function widthRow({ section, view, words }: DimensionWish, mostPx: number): DimensionRow {
  const points = pointsOf(section);
  const values = distinct(points.map(({ x }) => x)).filter((x) => x > ONE_VALUE_MM);
  const kept = thinned(values, (value) => widthOf(words(value)), mostPx);
  const lines = kept.map((x) => onBoard(view, { x, y: 0 }).x);
  const rows = spread(
    lines,
    kept.map((x) => widthOf(words(x))),
  );
  return {
    originPx: view.originX,
    values: kept.map((x, index) => ({
      words: words(x),
      linePx: lines[index] as number,
      rowPx: rows[index] as number,
      from: onBoard(view, { x, y: lowestAt(points, x) }),
    })),
  };
}

/** Heights from the back, on the side that they are nearer to. */
export function heightRow(
  { section, view, words }: DimensionWish,
  side: "left" | "right",
  mostPx: number,
): DimensionRow {
  const all = pointsOf(section);
  const middle = Math.max(...all.map(({ x }) => x)) / 2;
  const points = all.filter(({ x }) => (side === "left" ? x < middle : x >= middle));
  const values = distinct(points.map(({ y }) => y)).filter((y) => y > ONE_VALUE_MM);
  const rowPx = FIGURE_PX * 1.25;
  const kept = thinned(values, () => rowPx, mostPx);
  const lines = kept.map((y) => onBoard(view, { x: 0, y }).y);
  // Upwards the values run against the screen's y: spread along -y.
  const rows = spread(
    lines.map((y) => -y),
    kept.map(() => rowPx),
  );
  return {
    originPx: view.originY,
    values: kept.map((y, index) => ({
      words: words(y),
      linePx: lines[index] as number,
      rowPx: -(rows[index] as number),
      from: onBoard(view, { x: outermostAt(points, y, side), y }),
    })),
  };
}

export interface RadiusLabel extends ArcMiddle {
  readonly words: string;
}

/** Each arc's radius once; alike ones in a row are said with their number. */
export function radiiOf(section: Section, words: (lengthMm: number) => string): readonly RadiusLabel[] {
  const arcs = arcMiddles(plainVertices(section));
  const said = arcs.map((arc) => ({ ...arc, words: `R ${words(arc.radiusMm)}` }));
  return said.flatMap((arc, index) => {
    const alike = said.filter((other) => other.words === arc.words);
    if (alike.length <= 2) return [arc];
    const isFirst = said.findIndex((other) => other.words === arc.words) === index;
    return isFirst ? [{ ...arc, words: `${alike.length} × ${arc.words}` }] : [];
  });
}

export function widthOf(words: string): number {
  return words.length * LETTER_PX + GAP_PX;
}

function pointsOf(section: Section): readonly Point[] {
  return turningPoints(plainVertices(section)).map(([x, y]) => ({ x, y }));
}

function distinct(values: readonly number[]): readonly number[] {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted.filter(
    (value, index) => index === 0 || value - (sorted[index - 1] as number) >= ONE_VALUE_MM,
  );
}

/** Leaves out the value that stands nearest to its neighbour until the rest has room; the last is the whole size. */
function thinned(
  values: readonly number[],
  sizeOf: (value: number) => number,
  mostPx: number,
): readonly number[] {
  let kept = values;
  const neededPx = (all: readonly number[]): number => all.reduce((sum, value) => sum + sizeOf(value), 0);
  while (kept.length > 1 && neededPx(kept) > mostPx) {
    const gaps = kept.map((value, index) =>
      index === kept.length - 1 ? Number.POSITIVE_INFINITY : (kept[index + 1] as number) - value,
    );
    kept = kept.toSpliced(gaps.indexOf(Math.min(...gaps)), 1);
  }
  return kept;
}

function lowestAt(points: readonly Point[], x: number): number {
  const there = points.filter((point) => Math.abs(point.x - x) < ONE_VALUE_MM).map(({ y }) => y);
  return Math.min(...there);
}

function outermostAt(points: readonly Point[], y: number, side: "left" | "right"): number {
  const there = points.filter((point) => Math.abs(point.y - y) < ONE_VALUE_MM).map(({ x }) => x);
  return side === "left" ? Math.min(...there) : Math.max(...there);
}
