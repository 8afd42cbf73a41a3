/**
 * A drawing as SVG 1.1: the same drawing gives the same text, byte for byte. No ids, no scripts, no style sheet, no
 * reference to anything outside; numbers to 3 decimals; a paper of its own under it, so it reads on light and dark pages.
 */
import { bug } from "../measure/index.ts";
import {
  DASHES_MM,
  type Drawing,
  type Fill,
  type Group,
  type Item,
  LINE_WIDTH_MM,
  type PaperPoint,
  type Path,
  type Stroke,
  type Text,
} from "./drawing.ts";
import { type Colour, PAPER_RGB, type Rgb, rgbOf } from "./palette.ts";
import { printable } from "./printable-text.ts";

/** Widths in `text-width.ts` are those of the first three; any sans-serif will do. */
const FONT_FAMILY = "Helvetica, Arial, Liberation Sans, sans-serif";

export interface SvgOptions {
  /** Without an XML declaration, to stand inside a page. */
  readonly inPage?: boolean;
}

/** Throws `Bug` when the drawing holds a number that is not finite. */
export function writeSvg(drawing: Drawing, options: SvgOptions = {}): string {
  const width = number(drawing.widthMm);
  const height = number(drawing.heightMm);
  const head = options.inPage === true ? "" : '<?xml version="1.0" encoding="UTF-8"?>\n';
  return [
    `${head}<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img">`,
    `<title>${escaped(drawing.title)}</title>`,
    `<desc>${escaped(drawing.description)}</desc>`,
    `<rect width="${width}" height="${height}" fill="${hex(PAPER_RGB)}"/>`,
    `<g fill="none" stroke-linecap="butt" stroke-linejoin="round" font-family="${FONT_FAMILY}">`,
    ...drawing.items.flatMap((item) => itemLines(item, "")),
    "</g>",
    "</svg>",
    "",
  ].join("\n");
}

function itemLines(item: Item, indent: string): readonly string[] {
  switch (item.kind) {
    case "stroke":
      return [indent + strokeElement(item)];
    case "fill":
      return [indent + fillElement(item)];
    case "text":
      return [indent + textElement(item)];
    case "group":
      return [
        `${indent}<g data-role="${escaped(item.role)}"${transformOf(item)}>`,
        ...item.items.flatMap((inner) => itemLines(inner, `${indent} `)),
        `${indent}</g>`,
      ];
  }
}

function transformOf(item: Group): string {
  const parts: string[] = [];
  if (item.moveMm[0] !== 0 || item.moveMm[1] !== 0) parts.push(`translate(${pair(item.moveMm)})`);
  if (item.turnDeg !== 0) parts.push(`rotate(${number(-item.turnDeg)})`);
  if (item.scaleRatio !== 1) parts.push(`scale(${number(item.scaleRatio)})`);
  return parts.length === 0 ? "" : ` transform="${parts.join(" ")}"`;
}

function strokeElement(item: Stroke): string {
  const dashes = DASHES_MM[item.line];
  const dash = dashes.length === 0 ? "" : ` stroke-dasharray="${dashes.map(number).join(" ")}"`;
  return `<path d="${pathData(item.path)}" stroke="${colourHex(item.colour)}" stroke-width="${number(LINE_WIDTH_MM[item.weight])}"${dash}/>`;
}

function fillElement(item: Fill): string {
  return `<path d="${item.paths.map(pathData).join(" ")}" fill="${colourHex(item.colour)}" fill-rule="evenodd"/>`;
}

function textElement(item: Text): string {
  const anchor = item.anchor === "start" ? "" : ` text-anchor="${item.anchor}"`;
  const weight = item.bold ? ' font-weight="bold"' : "";
  const turn = item.turnDeg === 0 ? "" : ` transform="rotate(${number(-item.turnDeg)} ${pair(item.at)})"`;
  return `<text x="${number(item.at[0])}" y="${number(item.at[1])}" font-size="${number(item.sizeMm)}" fill="${colourHex(item.colour)}"${anchor}${weight}${turn}>${escaped(item.text)}</text>`;
}

function pathData(path: Path): string {
  let data = `M${pair(path.start)}`;
  let from = path.start;
  for (const step of path.steps) {
    data += stepData(from, step.to, step.bulge ?? 0);
    from = step.to;
  }
  return path.closed ? `${data}Z` : data;
}

/** SVG's sweep flag 1 turns clockwise as seen; a bulge is positive anticlockwise. Bulges past a half circle are not made. */
function stepData(from: PaperPoint, to: PaperPoint, bulge: number): string {
  if (bulge === 0) return `L${pair(to)}`;
  const chordMm = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const radiusMm = (chordMm * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  const radius = number(radiusMm);
  return `A${radius} ${radius} 0 ${Math.abs(bulge) > 1 ? 1 : 0} ${bulge > 0 ? 0 : 1} ${pair(to)}`;
}

function pair(point: PaperPoint): string {
  return `${number(point[0])} ${number(point[1])}`;
}

/** At most 3 decimals, no trailing zeros, no "-0". */
function number(value: number): string {
  if (!Number.isFinite(value)) bug("a drawing holds a number that is not finite", { value: String(value) });
  const rounded = Math.round(value * 1000) / 1000;
  return String(rounded === 0 ? 0 : rounded);
}

function colourHex(wanted: Colour): string {
  return hex(rgbOf(wanted));
}

function hex(rgb: Rgb): string {
  return `#${rgb.map((channel) => channel.toString(16).padStart(2, "0")).join("")}`;
}

function escaped(words: string): string {
  return printable(words)
    .replace(/&/g, "&amp;")
    .replace(/</g, "&lt;")
    .replace(/>/g, "&gt;")
    .replace(/"/g, "&quot;")
    .replace(/'/g, "&#39;");
}
