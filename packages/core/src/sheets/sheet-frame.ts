/**
 * The frame of every printed page: job and sheet in the head, page number in the foot, and on full-size pages the
 * check bars. What a page shows is laid out in the millimetres that come out of the printer: a sheet that is corrected
 * is laid out on the paper as its printer will make it, and stretched whole.
 */
import { checkBars } from "./check-bars.ts";
import { type Drawing, group, type Item, openPath, type Stretch, stroke, text } from "./drawing.ts";
import type { Box } from "./flat-path.ts";
import { CHECK_MM, type Paper, type PrinterMade } from "./paper.ts";
import { printable } from "./printable-text.ts";
import { shortened, textWidthMm } from "./text-width.ts";

/** The kinds of sheet, by the word that asks for them. */
export const SHEET_KINDS = ["bench", "ends", "story", "planes", "fit", "lesson"] as const;
export type SheetKind = (typeof SHEET_KINDS)[number];

/** A page without its frame. */
export interface PageContent {
  readonly sheet: SheetKind;
  /** What the page is, e.g. "End templates". */
  readonly title: string;
  /** Whether its lengths are those of the wood, so that the paper has to be checked. */
  readonly isFullSize: boolean;
  readonly items: readonly Item[];
}

/** A finished page: a drawing as large as the paper. */
export interface Page extends Drawing {
  readonly sheet: SheetKind;
  readonly isFullSize: boolean;
}

export interface SheetPaper {
  readonly paper: Paper;
  readonly made: PrinterMade;
  readonly stretch: Stretch;
}

/** No printer prints to the edge of its paper. */
const MARGIN_MM = 10;
const HEAD_MM = 9;
const FOOT_MM = 6;
const HEAD_LETTERING_MM = 4.2;
const FOOT_LETTERING_MM = 3.5;
const GAP_MM = 3;
/** Room of the check bars beside and below what they check. */
const BAR_SIDE_MM = 15;
const BAR_FOOT_MM = 21;

/** The paper as it comes out, in true millimetres. */
export function printedSizeMm({ paper, stretch }: SheetPaper): {
  readonly widthMm: number;
  readonly heightMm: number;
} {
  return { widthMm: paper.widthMm / stretch.acrossRatio, heightMm: paper.heightMm / stretch.upRatio };
}

/** The room for what a page shows. */
export function pageBody(sheetPaper: SheetPaper, isFullSize: boolean): Box {
  const { widthMm, heightMm } = printedSizeMm(sheetPaper);
  return {
    minX: MARGIN_MM + (isFullSize ? BAR_SIDE_MM : 0),
    minY: MARGIN_MM + HEAD_MM,
    maxX: widthMm - MARGIN_MM,
    maxY: heightMm - MARGIN_MM - FOOT_MM - (isFullSize ? BAR_FOOT_MM : 0),
  };
}

export interface SetWords {
  /** The job's name. */
  readonly name: string;
  /** Printed as it is given; nothing is printed if left out. */
  readonly date: string | undefined;
}

/** The pages with their frames, numbered in the order given. */
export function framedPages(
  contents: readonly PageContent[],
  sheetPaper: SheetPaper,
  words: SetWords,
): readonly Page[] {
  return contents.map((content, index) => {
    const { paper, stretch } = sheetPaper;
    const items = [
      ...headItems(content, sheetPaper, words),
      group("content", content.items),
      ...(content.isFullSize ? checkBars(barRoom(sheetPaper), barWords(sheetPaper.made)) : []),
      ...footItems(sheetPaper, words, `Page ${index + 1} of ${contents.length}`),
    ];
    return {
      sheet: content.sheet,
      isFullSize: content.isFullSize,
      widthMm: paper.widthMm,
      heightMm: paper.heightMm,
      title: `${shownName(words)}: ${content.title}`,
      description: `Page ${index + 1} of ${contents.length}, ${paper.name}`,
      stretch,
      items,
    };
  });
}

function shownName({ name }: SetWords): string {
  return printable(name).trim() || "Moulding";
}

function headItems(content: PageContent, sheetPaper: SheetPaper, words: SetWords): readonly Item[] {
  const { widthMm } = printedSizeMm(sheetPaper);
  const right = widthMm - MARGIN_MM;
  const titleMm = textWidthMm(content.title, HEAD_LETTERING_MM, "bold");
  const room = right - MARGIN_MM - titleMm - GAP_MM * 2;
  const baseY = MARGIN_MM + 3.6;
  const name = shortened(shownName(words), HEAD_LETTERING_MM, room);
  return [
    text([MARGIN_MM, baseY], content.title, { sizeMm: HEAD_LETTERING_MM, bold: true }),
    text([right, baseY], name, { sizeMm: HEAD_LETTERING_MM, anchor: "end" }),
    stroke(
      openPath([
        [MARGIN_MM, baseY + 2],
        [right, baseY + 2],
      ]),
    ),
  ];
}

function footItems(sheetPaper: SheetPaper, { date }: SetWords, numbered: string): readonly Item[] {
  const { widthMm, heightMm } = printedSizeMm(sheetPaper);
  const baseY = heightMm - MARGIN_MM;
  const right = widthMm - MARGIN_MM;
  const look = { sizeMm: FOOT_LETTERING_MM } as const;
  const left = [sheetPaper.paper.name, printable(date ?? "").trim()].filter((part) => part !== "").join(", ");
  const room = right - MARGIN_MM - textWidthMm(numbered, FOOT_LETTERING_MM) - GAP_MM;
  return [
    text([MARGIN_MM, baseY], shortened(left, FOOT_LETTERING_MM, room), look),
    text([right, baseY], numbered, { ...look, anchor: "end" }),
  ];
}

/** The corner where both bars begin, and the room they may reach into. */
function barRoom(sheetPaper: SheetPaper): Box {
  const { widthMm, heightMm } = printedSizeMm(sheetPaper);
  return {
    minX: MARGIN_MM,
    minY: MARGIN_MM + HEAD_MM,
    maxX: widthMm - MARGIN_MM,
    maxY: heightMm - MARGIN_MM - FOOT_MM,
  };
}

function barWords({ acrossMm, upMm }: PrinterMade): readonly string[] {
  if (acrossMm === CHECK_MM && upMm === CHECK_MM) {
    return [
      "Full size: print at 100 %, measure this bar. If 0 to 100 is not 100 mm, across",
      "and up, have the sheet made again with what you measured.",
    ];
  }
  return [
    `Corrected for a printer that makes ${tenths(acrossMm)} mm across and ${tenths(upMm)} mm up of 100 mm.`,
    "Print at 100 %, measure this bar: 0 to 100 must now be 100 mm.",
  ];
}

function tenths(lengthMm: number): string {
  return String(Math.round(lengthMm * 100) / 100);
}
