/**
 * Drawings as pages of one PDF file. Millimetres are kept to a millionth of a point; lettering is text in embedded
 * fonts (only the letters used), so it can be searched and copied; lines are lines, never pictures. The same pages give
 * the same bytes, in Node and in a browser: no clock, no random number, one way to compress.
 */
import { bug } from "mouldwright/measure";
import {
  DASHES_MM,
  type Drawing,
  type Fill,
  type Group,
  type Item,
  LINE_WIDTH_MM,
  type PaperPoint,
  type Path,
  PRINT_PAPER_RGB,
  printable,
  printedWidthMm,
  rgbOf,
  type Stroke,
  type Text,
} from "mouldwright/sheets";
import PDFDocument from "pdfkit";
import { compressAlike, joined } from "./compress.ts";
import type { FontFiles } from "./fonts.ts";
import {
  groupPlacing,
  type Placing,
  POINTS_PER_MM,
  pagePlacing,
  placed,
  sizeRatio,
  stepsOf,
} from "./placing.ts";

export interface PdfWriting {
  readonly title: string;
  readonly fonts: FontFiles;
}

type Document = InstanceType<typeof PDFDocument>;

/** What the file is identified by needs some date; none is written into it. */
const NO_DATE = new Date(0);
const REGULAR = "regular";
const BOLD = "bold";

/**
 * The pages as the bytes of a PDF file. Throws `Bug` where there is no page or a page holds a number that is not
 * finite; rejects where the fonts are no fonts.
 */
export async function writePdf(pages: readonly Drawing[], writing: PdfWriting): Promise<Uint8Array> {
  if (pages.length === 0) return bug("a file of no pages", {});
  const document = new PDFDocument({
    autoFirstPage: false,
    compress: false,
    // The oldest the library knows: nothing newer is used, and it alone carries no second, dated description.
    pdfVersion: "1.3",
    lang: "en-GB",
    displayTitle: true,
    // No name: no standard font is looked for, which a browser would have to fetch.
    font: "",
    info: { Title: printable(writing.title).trim(), CreationDate: NO_DATE, Creator: "Mouldwright" },
  });
  compressAlike(document);
  // The library reads the date once more at the end; what does not count as a key is not written.
  Object.defineProperty(document.info, "CreationDate", { enumerable: false });
  const bytes = bytesOf(document);
  document.registerFont(REGULAR, writing.fonts.regular);
  document.registerFont(BOLD, writing.fonts.bold);
  for (const page of pages) {
    document.addPage({ size: [page.widthMm * POINTS_PER_MM, page.heightMm * POINTS_PER_MM], margin: 0 });
    const placing = pagePlacing(page.stretch ?? { acrossRatio: 1, upRatio: 1 });
    for (const item of page.items) writeItem(document, item, placing);
  }
  document.end();
  return bytes;
}

function bytesOf(document: Document): Promise<Uint8Array> {
  const chunks: Uint8Array[] = [];
  return new Promise((resolve, reject) => {
    document.on("data", (chunk: Uint8Array) => void chunks.push(chunk));
    document.on("end", () => resolve(joined(chunks)));
    document.on("error", reject);
  });
}

function writeItem(document: Document, item: Item, placing: Placing): void {
  switch (item.kind) {
    case "stroke":
      writeStroke(document, item, placing);
      break;
    case "fill":
      writeFill(document, item, placing);
      break;
    case "text":
      writeText(document, item, placing);
      break;
    case "group":
      writeGroup(document, item, placing);
      break;
  }
}

function writeGroup(document: Document, group: Group, outer: Placing): void {
  const inner = groupPlacing(outer, group);
  if (group.window === undefined) {
    for (const item of group.items) writeItem(document, item, inner);
    return;
  }
  const { minX, minY, maxX, maxY } = group.window;
  document.save();
  const corners: readonly PaperPoint[] = [
    [minX, minY],
    [maxX, minY],
    [maxX, maxY],
    [minX, maxY],
  ];
  corners.forEach((corner, index) => {
    const [x, y] = checked(placed(inner, corner));
    if (index === 0) document.moveTo(x, y);
    else document.lineTo(x, y);
  });
  document.closePath().clip();
  for (const item of group.items) writeItem(document, item, inner);
  document.restore();
}

function writeStroke(document: Document, { path, line, weight, colour }: Stroke, placing: Placing): void {
  const ratio = sizeRatio(placing);
  tracePath(document, path, placing);
  document
    .lineWidth(LINE_WIDTH_MM[weight] * ratio)
    .lineCap("butt")
    .lineJoin("round");
  const dashes = DASHES_MM[line].map((lengthMm) => lengthMm * ratio);
  // The library's own call takes a dash and a gap; a line of two kinds of dash needs four figures.
  document.addContent(`[${dashes.map((points) => points.toFixed(3)).join(" ")}] 0 d`);
  document.stroke(colourOf(colour));
}

function writeFill(document: Document, { paths, colour }: Fill, placing: Placing): void {
  for (const path of paths) tracePath(document, { ...path, closed: true }, placing);
  document.fill(colourOf(colour), "even-odd");
}

function colourOf(colour: Stroke["colour"]): [number, number, number] {
  const [red, green, blue] = rgbOf(colour, PRINT_PAPER_RGB);
  return [red, green, blue];
}

function tracePath(document: Document, path: Path, placing: Placing): void {
  document.moveTo(...checked(placed(placing, path.start)));
  for (const step of stepsOf(path)) {
    const to = checked(placed(placing, step.to));
    if (step.kind === "line") document.lineTo(...to);
    else {
      const [first, second] = step.by;
      document.bezierCurveTo(...checked(placed(placing, first)), ...checked(placed(placing, second)), ...to);
    }
  }
  if (path.closed) document.closePath();
}

/** Neither kerned nor joined: every letter is as wide as the table of widths says, and comes back as it was written. */
const PLAIN_LETTERS: Readonly<Record<string, boolean>> = Object.fromEntries(
  ["kern", "liga", "clig", "calt", "ccmp", "locl", "frac", "numr", "dnom", "mark", "mkmk"].map((name) => [
    name,
    false,
  ]),
);

function writeText(document: Document, item: Text, placing: Placing): void {
  const words = printable(item.text);
  if (words.trim() === "") return;
  const sizePt = item.sizeMm * sizeRatio(placing);
  const widthPt = printedWidthMm(words, sizePt, item.bold ? BOLD : REGULAR);
  const [x, y] = checked(placed(placing, item.at));
  const asideRatio = item.anchor === "start" ? 0 : item.anchor === "middle" ? 0.5 : 1;
  document.font(item.bold ? BOLD : REGULAR).fontSize(sizePt);
  document.fillColor(colourOf(item.colour));
  const turnDeg = item.turnDeg + turnOf(placing);
  if (turnDeg !== 0) document.save().rotate(-turnDeg, { origin: [x, y] });
  document.text(words, x - widthPt * asideRatio, y, {
    lineBreak: false,
    baseline: "alphabetic",
    ...lettersAsTheyAre(),
  });
  if (turnDeg !== 0) document.restore();
}

/** How far a frame is turned, degrees anticlockwise as seen. */
function turnOf({ a, b }: Placing): number {
  return b === 0 && a > 0 ? 0 : (-Math.atan2(b, a) * 180) / Math.PI;
}

/** The library hands this on to the font as it is, which takes names with a yes or no; its types know only names. */
function lettersAsTheyAre(): object {
  return { features: PLAIN_LETTERS };
}

function checked(point: PaperPoint): [number, number] {
  const [x, y] = point;
  if (!Number.isFinite(x) || !Number.isFinite(y)) bug("a page holds a number that is not finite", { x, y });
  return [x, y];
}
