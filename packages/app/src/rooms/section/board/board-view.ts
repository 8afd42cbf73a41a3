/** How the section lies on the board: millimetres of the stick to pixels of the screen and back. */
import type { Point } from "mouldwright/curve";

export interface BoardView {
  readonly pxPerMm: number;
  /** Where the stick's lower left corner stands, px from the board's upper left. */
  readonly originX: number;
  readonly originY: number;
}

export interface BoardSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

export interface Margins {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface StickSize {
  readonly widthMm: number;
  readonly thicknessMm: number;
}

/** A millimetre of the standard's pixel: 96 to the inch. What a screen makes of it differs. */
export const FULL_SIZE_PX_PER_MM = 96 / 25.4;

const LEAST_PX_PER_MM = 0.5;
const MOST_PX_PER_MM = 400;

/** The whole stick as large as the margins leave room for, in the middle. */
export function fittedView(size: BoardSize, stick: StickSize, margins: Margins): BoardView {
  const roomX = Math.max(1, size.widthPx - margins.left - margins.right);
  const roomY = Math.max(1, size.heightPx - margins.top - margins.bottom);
  const pxPerMm = held(Math.min(roomX / stick.widthMm, roomY / stick.thicknessMm));
  return {
    pxPerMm,
    originX: margins.left + (roomX - stick.widthMm * pxPerMm) / 2,
    originY: size.heightPx - margins.bottom - (roomY - stick.thicknessMm * pxPerMm) / 2,
  };
}

/** Full size, the middle of the board staying where it is. */
export function fullSizeView(view: BoardView, size: BoardSize): BoardView {
  return zoomedAbout(view, { x: size.widthPx / 2, y: size.heightPx / 2 }, FULL_SIZE_PX_PER_MM / view.pxPerMm);
}

/** Larger or smaller about a point of the board, px, which stays where it is. */
export function zoomedAbout(view: BoardView, at: Point, ratio: number): BoardView {
  const pxPerMm = held(view.pxPerMm * ratio);
  const by = pxPerMm / view.pxPerMm;
  return {
    pxPerMm,
    originX: at.x + (view.originX - at.x) * by,
    originY: at.y + (view.originY - at.y) * by,
  };
}

export function pannedBy(view: BoardView, dx: number, dy: number): BoardView {
  return { ...view, originX: view.originX + dx, originY: view.originY + dy };
}

/** Two fingers: what lay between them stays between them. */
export function pinchedTo(
  view: BoardView,
  from: readonly [Point, Point],
  to: readonly [Point, Point],
): BoardView {
  const apart = ([one, other]: readonly [Point, Point]): number =>
    Math.hypot(one.x - other.x, one.y - other.y);
  const middle = ([one, other]: readonly [Point, Point]): Point => ({
    x: (one.x + other.x) / 2,
    y: (one.y + other.y) / 2,
  });
  const [was, is] = [middle(from), middle(to)];
  const ratio = apart(from) < 1 ? 1 : apart(to) / apart(from);
  return pannedBy(zoomedAbout(view, was, ratio), is.x - was.x, is.y - was.y);
}

export function onBoard(view: BoardView, { x, y }: Point): Point {
  return { x: view.originX + x * view.pxPerMm, y: view.originY - y * view.pxPerMm };
}

export function onStick(view: BoardView, { x, y }: Point): Point {
  return { x: (x - view.originX) / view.pxPerMm, y: (view.originY - y) / view.pxPerMm };
}

/** The largest round length whose bar is no longer than `mostPx`: 1, 2, 5, 10 … mm, or ⅛, ¼, ½, 1 … inch. */
export function scaleBarMm(pxPerMm: number, mostPx: number, unit: "mm" | "in"): number {
  const steps = unit === "mm" ? MM_BARS : INCH_BARS;
  return steps.findLast((lengthMm) => lengthMm * pxPerMm <= mostPx) ?? (steps[0] as number);
}

const MM_BARS = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50, 100, 200];
const INCH_BARS = [1 / 64, 1 / 32, 1 / 16, 1 / 8, 1 / 4, 1 / 2, 1, 2, 4, 8].map((inches) => inches * 25.4);

function held(pxPerMm: number): number {
  return Math.max(LEAST_PX_PER_MM, Math.min(MOST_PX_PER_MM, pxPerMm));
}
