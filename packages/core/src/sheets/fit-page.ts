/** The page that every picture of fitting stands on: title, a sentence or two, headed pictures below each other. */
import type { LengthUnit } from "../measure/index.ts";
import { type Drawing, group, type Item, text } from "./drawing.ts";
import type { Box } from "./flat-path.ts";
import { LABEL_MM } from "./lettering.ts";
import { printable } from "./printable-text.ts";
import { shortened, wrapText } from "./text-width.ts";

export interface FitPictureOptions {
  readonly unit: LengthUnit;
  /** Where it is not to stand on a sheet. */
  readonly page?: FitPageWish | undefined;
}

export interface FitPageWish {
  /** On a narrow page pictures stand below each other. */
  readonly widthMm: number;
  /** `pictures`: title and notes are said elsewhere. */
  readonly shows: "all" | "pictures";
}

export const FIT_PAGE = { widthMm: 190, marginMm: 8, gapMm: 5 } as const;
const TITLE_MM = 5.6;
const NOTE_MM = 3.8;
const HEADING_MM = 4.2;
const LINE_RATIO = 1.3;
/** From one line of words to the next, mm, a little rounded up. */
const WORD_LINE_MM = 5.4;

/** A picture of a page: its heading and what draws it into the room that is left for it. */
export interface PagePanel {
  readonly heading: string;
  readonly draw: (box: Box) => readonly Item[];
}

/** Panels beside each other, all as high as said. */
export interface PageRow {
  readonly heightMm: number;
  readonly panels: readonly PagePanel[];
  /** Shares of the width; equal if left out. */
  readonly shares?: readonly number[] | undefined;
}

export interface PageWords {
  readonly title: string;
  /** Below the title: what was asked, and the figures that count. */
  readonly notes: readonly string[];
}

/** Below this pictures do not stand beside each other, mm. */
const NARROW_MM = 140;
/** Round pictures alone, mm. */
const BARE_MARGIN_MM = 1;

/** What a page has for its pictures across, mm. */
export function innerWidthMm({ page }: Pick<FitPictureOptions, "page">): number {
  return (page?.widthMm ?? FIT_PAGE.widthMm) - 2 * marginOf(page);
}

function marginOf(page: FitPageWish | undefined): number {
  return page?.shows === "pictures" ? BARE_MARGIN_MM : FIT_PAGE.marginMm;
}

/** As high as its rows need; nothing stands outside its panel. */
export function fitPage(
  { title, notes }: PageWords,
  wishedRows: readonly PageRow[],
  { page }: Pick<FitPictureOptions, "page"> = {},
): Drawing {
  const { gapMm } = FIT_PAGE;
  const widthMm = page?.widthMm ?? FIT_PAGE.widthMm;
  const marginMm = marginOf(page);
  const inner = widthMm - 2 * marginMm;
  const shown = printable(title).trim();
  const rows = widthMm < NARROW_MM ? wishedRows.flatMap(stacked) : wishedRows;
  const items: Item[] = [];
  let y = 0;
  if (page?.shows !== "pictures") {
    y = 12;
    const look = { sizeMm: TITLE_MM, bold: true };
    items.push(text([marginMm, y], shortened(shown, TITLE_MM, inner, "bold"), look));
    for (const line of notes.flatMap((note) => wrapText(printable(note), NOTE_MM, inner))) {
      y += NOTE_MM * LINE_RATIO + 0.6;
      items.push(text([marginMm, y], line, { sizeMm: NOTE_MM }));
    }
    y += gapMm;
  }
  for (const { heightMm, panels, shares } of rows) {
    const total = shares?.reduce((sum, share) => sum + share, 0) ?? panels.length;
    const room = inner - gapMm * (panels.length - 1);
    const wides = panels.map((_, index) => (room * (shares?.[index] ?? 1)) / total);
    const headings = panels.map(({ heading }, index) =>
      wrapText(heading, HEADING_MM, wides[index] ?? room, "bold"),
    );
    // Neighbours begin level, however long their headings are.
    const lines = Math.max(...headings.map((heading) => heading.length));
    let x = marginMm;
    for (const [index, panel] of panels.entries()) {
      const wide = wides[index] ?? room;
      const heading = headings[index] ?? [];
      const head = heading.map((line, place) =>
        text([x, y + HEADING_MM * (0.8 + place * LINE_RATIO)], line, { sizeMm: HEADING_MM, bold: true }),
      );
      const top = y + HEADING_MM * LINE_RATIO * lines + 1;
      const box = { minX: x, minY: top, maxX: x + wide, maxY: y + heightMm };
      items.push(group("panel", [...head, ...panel.draw(box)]));
      x += wide + gapMm;
    }
    y += heightMm + gapMm;
  }
  return { widthMm, heightMm: y + 1, title: shown, description: notes.join(" "), items };
}

/** The pictures of a row, each in a row of its own; what only kept a place open goes. */
function stacked({ heightMm, panels }: PageRow): readonly PageRow[] {
  return panels
    .filter(({ heading }) => heading !== "" || panels.length === 1)
    .map((panel) => ({ heightMm, panels: [panel] }));
}

/** Heading and lines over a whole page's width, mm: as high as `wordLines` then needs. */
export function wordsHeightMm(lines: readonly string[], options: FitPictureOptions): number {
  const roomMm = innerWidthMm(options);
  const count = lines.flatMap((line) => wrapText(printable(line), LABEL_MM, roomMm)).length;
  return 8 + WORD_LINE_MM * count;
}

/** Lines of words in a box, for what no line can show. */
export function wordLines(lines: readonly string[], box: Box): readonly Item[] {
  const sizeMm = LABEL_MM;
  return lines
    .flatMap((line) => wrapText(printable(line), sizeMm, box.maxX - box.minX))
    .map((line, index) => text([box.minX, box.minY + sizeMm * (0.9 + index * 1.4)], line, { sizeMm }));
}
