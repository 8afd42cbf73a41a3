/**
 * Figures at full size on pages: one below the other where they fit, each pieced together from several sheets where it
 * does not. Sheets of one figure overlap, carry the same registration marks in the overlap, and a map.
 */
import { cataloguedTrouble, fine, type Outcome, refused } from "../measure/index.ts";
import {
  closedPath,
  fill,
  flatItems,
  group,
  type Item,
  openPath,
  type PaperPoint,
  stroke,
  type Text,
  text,
  type Window,
} from "./drawing.ts";
import type { Box } from "./flat-path.ts";
import { type Block, flow } from "./flow.ts";
import { textBox } from "./labels.ts";
import { FAINT_INK } from "./palette.ts";
import { type PageContent, pageBody, type SheetKind, type SheetPaper } from "./sheet-frame.ts";
import { shortened } from "./text-width.ts";

/** Something drawn at full size, in a frame of its own: x to the right and y down from its upper left corner. */
export interface Figure {
  readonly heading: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly items: readonly Item[];
}

const HEADING_MM = 4.4;
const HEAD_ROOM_MM = 7.5;
const FIGURE_GAP_MM = 6;

/** Sheets pieced together beyond this many do not stay true: every seam adds its error. */
const MOST_SHEETS = 12;

/**
 * The figures as pages, in order. `notes` are blocks of words before the first figure. Trouble: `sheet-too-large`.
 */
export function fullSizePages(
  sheet: SheetKind,
  title: string,
  figures: readonly Figure[],
  sheetPaper: SheetPaper,
  notes: readonly Block[] = [],
): Outcome<readonly PageContent[]> {
  const body = pageBody(sheetPaper, true);
  const contents: PageContent[] = [];
  let waiting: Block[] = [...notes];
  const place = (): void => {
    contents.push(
      ...flow(waiting, body).map((items): PageContent => ({ sheet, title, isFullSize: true, items })),
    );
    waiting = [];
  };
  for (const figure of figures) {
    const fits =
      figure.widthMm <= body.maxX - body.minX && figure.heightMm + HEAD_ROOM_MM <= body.maxY - body.minY;
    if (fits) {
      waiting.push(figureBlock(figure, body));
      continue;
    }
    place();
    const tiles = tilesOf(figure, body, sheetPaper);
    if (!tiles.ok) return tiles;
    contents.push(...tiles.value.map((items): PageContent => ({ sheet, title, isFullSize: true, items })));
  }
  place();
  return fine(contents);
}

function figureBlock(figure: Figure, body: Box): Block {
  const aside = Math.max(0, (body.maxX - body.minX - figure.widthMm) / 2);
  // A figure without a heading goes on where the one before ended.
  const headMm = figure.heading === "" ? 0 : HEAD_ROOM_MM;
  return {
    heightMm: figure.heightMm + headMm,
    aboveMm: figure.heading === "" ? 1 : FIGURE_GAP_MM,
    draw: (left, top) => [
      ...(headMm === 0
        ? []
        : [
            text(
              [left, top + HEADING_MM],
              shortened(figure.heading, HEADING_MM, body.maxX - body.minX, "bold"),
              { sizeMm: HEADING_MM, bold: true },
            ),
          ]),
      group("figure", figure.items, [left + (headMm === 0 ? 0 : aside), top + headMm]),
    ],
  };
}

/** How far neighbouring sheets show the same, mm. */
export const OVERLAP_MM = 16;
const MAP_CELL_MM = { across: 7, up: 8 } as const;
const WORDS_MM = 3.8;

interface Grid {
  readonly columns: number;
  readonly rows: number;
  readonly windowMm: readonly [number, number];
}

function gridFor(figure: Figure, body: Box): Grid {
  const windowFor = (stripMm: number): readonly [number, number] => [
    body.maxX - body.minX,
    body.maxY - body.minY - stripMm,
  ];
  const count = (wholeMm: number, windowMm: number): number =>
    wholeMm <= windowMm ? 1 : Math.ceil((wholeMm - OVERLAP_MM) / (windowMm - OVERLAP_MM));
  // The map is as high as its rows, which leaves the less for the figure the more rows there are.
  let rows = 1;
  for (;;) {
    const windowMm = windowFor(stripMm(rows));
    const needed = count(figure.heightMm, windowMm[1]);
    if (needed <= rows || rows >= MOST_SHEETS) {
      return { columns: count(figure.widthMm, windowMm[0]), rows: Math.max(rows, needed), windowMm };
    }
    rows += 1;
  }
}

function stripMm(rows: number): number {
  return Math.max(HEAD_ROOM_MM + 2 * WORDS_MM + 4, rows * MAP_CELL_MM.up + 3);
}

function tilesOf(figure: Figure, body: Box, sheetPaper: SheetPaper): Outcome<readonly (readonly Item[])[]> {
  const grid = gridFor(figure, body);
  const { columns, rows, windowMm } = grid;
  if (columns * rows > MOST_SHEETS) {
    const facts = {
      widthMm: figure.widthMm,
      heightMm: figure.heightMm,
      paper: sheetPaper.paper.name,
      sheets: columns * rows,
      most: MOST_SHEETS,
    };
    return refused(cataloguedTrouble("sheet-too-large", "", facts));
  }
  const windows = windowsOf(grid);
  const lettering = settledTexts(figure.items, windows);
  const lines = withoutTexts(figure.items);
  const marks = registrationMarks(grid);
  return fine(
    windows.map((window, index) => {
      const shown = lettering.filter((item) => isWithin(textBox(item), window));
      const top = body.minY + stripMm(rows);
      return [
        ...mapItems(figure, grid, index, body),
        {
          ...group("figure", [...lines, ...marks, ...shown], [body.minX - window.minX, top - window.minY]),
          window,
        },
        stroke(
          closedPath([
            [body.minX, top],
            [body.minX + windowMm[0], top],
            [body.minX + windowMm[0], top + windowMm[1]],
            [body.minX, top + windowMm[1]],
          ]),
          { weight: "hatch", colour: FAINT_INK },
        ),
      ];
    }),
  );
}

/** What each sheet shows of the figure, row by row. */
function windowsOf({ columns, rows, windowMm: [widthMm, heightMm] }: Grid): readonly Window[] {
  return Array.from({ length: rows * columns }, (_, index): Window => {
    const minX = (index % columns) * (widthMm - OVERLAP_MM);
    const minY = Math.floor(index / columns) * (heightMm - OVERLAP_MM);
    return { minX, minY, maxX: minX + widthMm, maxY: minY + heightMm };
  });
}

function isWithin(box: Box, window: Window): boolean {
  return (
    box.minX >= window.minX && box.maxX <= window.maxX && box.minY >= window.minY && box.maxY <= window.maxY
  );
}

/** Every piece of lettering, moved where a seam would cut it on both of its sheets. */
function settledTexts(items: readonly Item[], windows: readonly Window[]): readonly Text[] {
  return flatItems(items)
    .filter((item): item is Text => item.kind === "text")
    .map((item) => {
      const box = textBox(item);
      if (windows.some((window) => isWithin(box, window))) return item;
      const moves = windows.map(
        (window): PaperPoint => [
          Math.max(0, window.minX - box.minX) - Math.max(0, box.maxX - window.maxX),
          Math.max(0, window.minY - box.minY) - Math.max(0, box.maxY - window.maxY),
        ],
      );
      const least = moves.reduce((kept, move) =>
        Math.hypot(move[0], move[1]) < Math.hypot(kept[0], kept[1]) ? move : kept,
      );
      return { ...item, at: [item.at[0] + least[0], item.at[1] + least[1]] as const };
    });
}

function withoutTexts(items: readonly Item[]): readonly Item[] {
  return items.flatMap((item): readonly Item[] => {
    if (item.kind === "text") return [];
    return item.kind === "group" ? [{ ...item, items: withoutTexts(item.items) }] : [item];
  });
}

const CROSS_MM = 4.5;

/** Crosses in the middle of every overlap, two to a seam, so that they tell turn as well as place. */
export function registrationMarks({ columns, rows, windowMm: [widthMm, heightMm] }: Grid): readonly Item[] {
  const stepX = widthMm - OVERLAP_MM;
  const stepY = heightMm - OVERLAP_MM;
  const places: PaperPoint[] = [];
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      for (const share of [0.25, 0.75]) {
        if (column + 1 < columns) {
          places.push([(column + 1) * stepX + OVERLAP_MM / 2, row * stepY + heightMm * share]);
        }
        if (row + 1 < rows) {
          places.push([column * stepX + widthMm * share, (row + 1) * stepY + OVERLAP_MM / 2]);
        }
      }
    }
  }
  return places.map(([x, y]) =>
    group("registration mark", [
      stroke(
        openPath([
          [x - CROSS_MM, y],
          [x + CROSS_MM, y],
        ]),
      ),
      stroke(
        openPath([
          [x, y - CROSS_MM],
          [x, y + CROSS_MM],
        ]),
      ),
    ]),
  );
}

/** Which sheet this is: words, and a small plan of all of them with this one dark. */
function mapItems(figure: Figure, { columns, rows }: Grid, index: number, body: Box): readonly Item[] {
  const mapLeft = body.maxX - columns * MAP_CELL_MM.across;
  const cells = Array.from({ length: rows * columns }, (_, cell): Item => {
    const left = mapLeft + (cell % columns) * MAP_CELL_MM.across;
    const top = body.minY + Math.floor(cell / columns) * MAP_CELL_MM.up;
    const outline = closedPath([
      [left, top],
      [left + MAP_CELL_MM.across, top],
      [left + MAP_CELL_MM.across, top + MAP_CELL_MM.up],
      [left, top + MAP_CELL_MM.up],
    ]);
    const inner = closedPath([
      [left + 0.8, top + 0.8],
      [left + MAP_CELL_MM.across - 0.8, top + 0.8],
      [left + MAP_CELL_MM.across - 0.8, top + MAP_CELL_MM.up - 0.8],
      [left + 0.8, top + MAP_CELL_MM.up - 0.8],
    ]);
    return group("map cell", [stroke(outline), ...(cell === index ? [fill([inner], FAINT_INK)] : [])]);
  });
  const words = [
    `Sheet ${index + 1} of ${rows * columns}, pieced together as the map shows.`,
    "Lay crosses on crosses; cut one sheet along its frame.",
  ];
  return [
    text(
      [body.minX, body.minY + HEADING_MM],
      shortened(figure.heading, HEADING_MM, mapLeft - body.minX - 3, "bold"),
      { sizeMm: HEADING_MM, bold: true },
    ),
    ...words.map((line, place) =>
      text([body.minX, body.minY + HEAD_ROOM_MM + WORDS_MM * (0.9 + place * 1.3)], line, {
        sizeMm: WORDS_MM,
      }),
    ),
    group("map", cells),
  ];
}
