/**
 * The drawing model: what a sheet shows, as plain data in millimetres on paper. Writers (SVG, later PDF) only spell it.
 *
 * Frame: x to the right, y DOWN from the top left corner of the paper. Arcs keep the bulge of the plan file,
 * tan(sweep / 4), positive where the arc turns anticlockwise AS SEEN on the paper; angles of groups and text are
 * degrees, anticlockwise as seen. What would leave a circle of enlargement is cut off before it gets here; a writer
 * only cuts off at the straight sides of a group's `window`, so that every writer shows the same.
 */
import { type Colour, INK } from "./palette.ts";

export type PaperPoint = readonly [number, number];

/** A straight step, or an arc where `bulge` is given, to `to`. */
export interface PathStep {
  readonly to: PaperPoint;
  readonly bulge?: number;
}

export interface Path {
  readonly start: PaperPoint;
  readonly steps: readonly PathStep[];
  readonly closed: boolean;
}

/** Kinds of line by ISO 128-2: names of the standard, so a drawing office reads them as it is used to. */
export type LineKind = "continuous" | "dashed" | "long-dashed dotted" | "long-dashed double-dotted";

/** ISO 128 has wide and narrow as 2 : 1. "gauge" is the step between them, for gauge lines only; "hatch" is half of narrow. */
export type LineWeight = "wide" | "gauge" | "narrow" | "hatch";

/** Widths from the series of ISO 128-2 (0.13, 0.18, 0.25, 0.35, 0.5 …), mm. */
export const LINE_WIDTH_MM: Readonly<Record<LineWeight, number>> = {
  wide: 0.5,
  gauge: 0.35,
  narrow: 0.25,
  hatch: 0.13,
};

/** Dash, gap, dash … in mm. ISO 128-2 gives them as multiples of the width; at narrow these are 12, 3 and a short dot. */
export const DASHES_MM: Readonly<Record<LineKind, readonly number[]>> = {
  continuous: [],
  dashed: [2.4, 0.9],
  "long-dashed dotted": [6, 0.9, 0.5, 0.9],
  "long-dashed double-dotted": [6, 0.9, 0.5, 0.9, 0.5, 0.9],
};

export interface Stroke {
  readonly kind: "stroke";
  readonly path: Path;
  readonly line: LineKind;
  readonly weight: LineWeight;
  readonly colour: Colour;
}

/** Closed paths filled by the even-odd rule, without an outline. */
export interface Fill {
  readonly kind: "fill";
  readonly paths: readonly Path[];
  readonly colour: Colour;
}

export type TextAnchor = "start" | "middle" | "end";

/** One line of upright lettering. `at` is on the base line; `sizeMm` is the font's size (capitals are about 0.7 of it). */
export interface Text {
  readonly kind: "text";
  readonly at: PaperPoint;
  readonly text: string;
  readonly sizeMm: number;
  readonly anchor: TextAnchor;
  readonly turnDeg: number;
  readonly bold: boolean;
  readonly colour: Colour;
}

/** Items that belong together. Scaling a group scales its lines and lettering too. */
export interface Group {
  readonly kind: "group";
  /** What it is, for readers of the file and for tests: "wood", "waste", "plane", "gauge line", "dimension" … */
  readonly role: string;
  readonly moveMm: PaperPoint;
  readonly turnDeg: number;
  readonly scaleRatio: number;
  /** Nothing outside it is shown; in the group's own frame, before it is moved. */
  readonly window?: Window;
  readonly items: readonly Item[];
}

/** An upright rectangle of the paper. */
export interface Window {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export type Item = Stroke | Fill | Text | Group;

export interface Drawing {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Read out by a screen reader, shown as the file's title. */
  readonly title: string;
  readonly description: string;
  /** All items are stretched by so much, across and up, from the upper left corner: how a printer's error is cancelled. */
  readonly stretch?: Stretch;
  readonly items: readonly Item[];
}

export interface Stretch {
  readonly acrossRatio: number;
  readonly upRatio: number;
}

export function group(role: string, items: readonly Item[], moveMm: PaperPoint = [0, 0]): Group {
  return { kind: "group", role, moveMm, turnDeg: 0, scaleRatio: 1, items };
}

export interface StrokeLook {
  readonly line?: LineKind;
  readonly weight?: LineWeight;
  readonly colour?: Colour;
}

export function stroke(path: Path, look: StrokeLook = {}): Stroke {
  return {
    kind: "stroke",
    path,
    line: look.line ?? "continuous",
    weight: look.weight ?? "narrow",
    colour: look.colour ?? INK,
  };
}

export function fill(paths: readonly Path[], fillColour: Colour): Fill {
  return { kind: "fill", paths, colour: fillColour };
}

export interface TextLook {
  readonly sizeMm: number;
  readonly anchor?: TextAnchor;
  readonly bold?: boolean;
  readonly colour?: Colour;
}

export function text(at: PaperPoint, words: string, look: TextLook): Text {
  return {
    kind: "text",
    at,
    text: words,
    sizeMm: look.sizeMm,
    anchor: look.anchor ?? "start",
    turnDeg: 0,
    bold: look.bold ?? false,
    colour: look.colour ?? INK,
  };
}

export function openPath(points: readonly PaperPoint[]): Path {
  return { start: points[0] ?? [0, 0], steps: points.slice(1).map((to) => ({ to })), closed: false };
}

export function closedPath(points: readonly PaperPoint[]): Path {
  return { ...openPath(points), closed: true };
}

/** A full circle as two half circles: bulge 1 is the largest an arc of the model has. */
export function circlePath(centre: PaperPoint, radiusMm: number): Path {
  const right: PaperPoint = [centre[0] + radiusMm, centre[1]];
  const left: PaperPoint = [centre[0] - radiusMm, centre[1]];
  return {
    start: right,
    steps: [
      { to: left, bulge: 1 },
      { to: right, bulge: 1 },
    ],
    closed: true,
  };
}

/** Every item that is not a group, with the moves of its groups applied; groups that turn or scale are not opened. */
export function flatItems(
  items: readonly Item[],
  moveMm: PaperPoint = [0, 0],
): readonly Exclude<Item, Group>[] {
  return items.flatMap((item): readonly Exclude<Item, Group>[] => {
    if (item.kind !== "group") return [movedItem(item, moveMm)];
    return flatItems(item.items, [moveMm[0] + item.moveMm[0], moveMm[1] + item.moveMm[1]]);
  });
}

function movedItem(item: Exclude<Item, Group>, moveMm: PaperPoint): Exclude<Item, Group> {
  const moved = (point: PaperPoint): PaperPoint => [point[0] + moveMm[0], point[1] + moveMm[1]];
  const movedPath = (path: Path): Path => ({
    ...path,
    start: moved(path.start),
    steps: path.steps.map((step) => ({ ...step, to: moved(step.to) })),
  });
  switch (item.kind) {
    case "text":
      return { ...item, at: moved(item.at) };
    case "stroke":
      return { ...item, path: movedPath(item.path) };
    case "fill":
      return { ...item, paths: item.paths.map(movedPath) };
  }
}
