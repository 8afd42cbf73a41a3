/** Blocks of a text page, one below the other, over as many pages as they need. */
import { closedPath, group, type Item, openPath, stroke, text } from "./drawing.ts";
import type { Box } from "./flat-path.ts";
import { printable } from "./printable-text.ts";
import { wrapText } from "./text-width.ts";

/** A piece of a page that is not torn apart. */
export interface Block {
  readonly heightMm: number;
  /** Stands on one page with the block after it, as a heading does. */
  readonly keepsNext?: boolean;
  /** Clear room above it, except at the top of a page. */
  readonly aboveMm?: number;
  /** Stands above it once more where it begins a page, as the head of a table does. */
  readonly head?: Block;
  readonly draw: (left: number, top: number) => readonly Item[];
}

/** The blocks as pages, each its items. A block higher than the page stands alone on one, cut off by nothing. */
export function flow(blocks: readonly Block[], body: Box): readonly (readonly Item[])[] {
  const pages: Item[][] = [];
  let y = body.maxY;
  blocks.forEach((block, index) => {
    const page = pages[pages.length - 1];
    const above = block.aboveMm ?? 0;
    if (page === undefined || y + above + neededMm(blocks, index) > body.maxY) {
      const head = page === undefined ? undefined : block.head;
      const top = body.minY + (head?.heightMm ?? 0);
      pages.push([...(head?.draw(body.minX, body.minY) ?? []), ...block.draw(body.minX, top)]);
      y = top + block.heightMm;
      return;
    }
    page.push(...block.draw(body.minX, y + above));
    y += above + block.heightMm;
  });
  return pages;
}

/** The block with those that it keeps with it. */
function neededMm(blocks: readonly Block[], index: number): number {
  const block = blocks[index];
  if (block === undefined) return 0;
  const next = blocks[index + 1];
  if (block.keepsNext !== true || next === undefined) return block.heightMm;
  return block.heightMm + (next.aboveMm ?? 0) + neededMm(blocks, index + 1);
}

/** Lettering of running text on a sheet, read in the hand or from the wall over the bench. */
export const TEXT_MM = 4;
export const LINE_RATIO = 1.34;
const HEADING_MM = 4.8;

export function heading(words: string): Block {
  return {
    heightMm: HEADING_MM * LINE_RATIO,
    aboveMm: 3.2,
    keepsNext: true,
    draw: (left, top) => [text([left, top + HEADING_MM], words, { sizeMm: HEADING_MM, bold: true })],
  };
}

export interface ParagraphLook {
  readonly sizeMm?: number;
  readonly indentMm?: number;
  /** Stands before the first line, in the indent. */
  readonly lead?: string;
  /** A box to tick instead of a lead. */
  readonly isTicked?: boolean;
  readonly bold?: boolean;
  readonly keepsNext?: boolean;
}

/** Words wrapped to a width; lines hang under the first. */
export function paragraph(words: string, widthMm: number, look: ParagraphLook = {}): Block {
  const { sizeMm = TEXT_MM, lead = "", isTicked = false, bold = false } = look;
  const indentMm = look.indentMm ?? (isTicked ? TICK_MM + 2 : 0);
  const lines = wrapText(printable(words).trim(), sizeMm, widthMm - indentMm, bold ? "bold" : "regular");
  return {
    heightMm: lines.length * sizeMm * LINE_RATIO,
    aboveMm: 0.8,
    ...(look.keepsNext === undefined ? {} : { keepsNext: look.keepsNext }),
    draw: (left, top) => [
      ...(lead === "" ? [] : [text([left, top + sizeMm], lead, { sizeMm, bold })]),
      ...(isTicked ? [tickBox(left, top + sizeMm)] : []),
      ...lines.map((line, index) =>
        text([left + indentMm, top + sizeMm + index * sizeMm * LINE_RATIO], line, { sizeMm, bold }),
      ),
    ],
  };
}

/** A name in bold with its words behind it, hanging under themselves. */
export function entry(name: string, words: string, widthMm: number, nameMm: number): Block {
  const body = paragraph(words, widthMm, { indentMm: nameMm });
  return {
    ...body,
    draw: (left, top) => [
      text([left, top + TEXT_MM], name, { sizeMm: TEXT_MM, bold: true }),
      ...body.draw(left, top),
    ],
  };
}

/** Paragraphs side by side in columns, row by row, each with a box to tick. */
export function tickList(entries: readonly string[], widthMm: number, columns: number): readonly Block[] {
  const columnMm = widthMm / columns;
  const rows: Block[] = [];
  for (let first = 0; first < entries.length; first += columns) {
    const cells = entries
      .slice(first, first + columns)
      .map((words) => paragraph(words, columnMm - 3, { isTicked: true }));
    rows.push({
      heightMm: Math.max(...cells.map((cell) => cell.heightMm)),
      aboveMm: 0.8,
      draw: (left, top) => cells.flatMap((cell, index) => cell.draw(left + index * columnMm, top)),
    });
  }
  return rows;
}

const TICK_MM = 3.6;

/** A box to tick, its foot on the base line. */
export function tickBox(left: number, baseY: number, sizeMm = TICK_MM): Item {
  return group("tick", [
    stroke(
      closedPath([
        [left, baseY - sizeMm + 0.3],
        [left + sizeMm, baseY - sizeMm + 0.3],
        [left + sizeMm, baseY + 0.3],
        [left, baseY + 0.3],
      ]),
    ),
  ]);
}

/** A column of a table: its heading, and how wide it is as a share of the whole. */
export interface Column {
  readonly heading: string;
  readonly share: number;
}

const CELL_MM = 3.8;
const ROW_GAP_MM = 1.1;

/** A table with a narrow line under its head and each row; words are wrapped in their cell. */
export function table(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  widthMm: number,
): readonly Block[] {
  const total = columns.reduce((sum, column) => sum + column.share, 0);
  const wides = columns.map((column) => (widthMm * column.share) / total);
  const lefts = wides.map((_, index) => wides.slice(0, index).reduce((sum, wide) => sum + wide, 0));
  const row = (cells: readonly string[], isHead: boolean): Block => {
    const wrapped = cells.map((cell, index) =>
      wrapText(printable(cell), CELL_MM, (wides[index] ?? widthMm) - 2, isHead ? "bold" : "regular"),
    );
    const linesCount = Math.max(1, ...wrapped.map((lines) => lines.length));
    const heightMm = linesCount * CELL_MM * LINE_RATIO + 2 * ROW_GAP_MM;
    return {
      heightMm,
      ...(isHead ? { keepsNext: true } : {}),
      draw: (left, top) => [
        ...wrapped.flatMap((lines, index) =>
          lines.map((line, place) =>
            text(
              [left + (lefts[index] ?? 0), top + ROW_GAP_MM + CELL_MM + place * CELL_MM * LINE_RATIO],
              line,
              { sizeMm: CELL_MM, bold: isHead },
            ),
          ),
        ),
        stroke(
          openPath([
            [left, top + heightMm],
            [left + widthMm, top + heightMm],
          ]),
          { weight: isHead ? "narrow" : "hatch" },
        ),
      ],
    };
  };
  const head = row(
    columns.map((column) => column.heading),
    true,
  );
  return [head, ...rows.map((cells, index) => ({ ...row(cells, false), ...(index === 0 ? {} : { head }) }))];
}
