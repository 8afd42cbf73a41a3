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
  type Window,
} from "./drawing.ts";
import { escapedText } from "./escaped-text.ts";
import { type Colour, PAPER_RGB, type Rgb, rgbOf } from "./palette.ts";

/** Widths in `text-width.ts` are those of the first three; any sans-serif will do. */
const FONT_FAMILY = "Helvetica, Arial, Liberation Sans, sans-serif";

export interface SvgOptions {
  /** Without an XML declaration, to stand inside a page. */
  readonly inPage?: boolean;
  /** The paper under the drawing; the screen's warm one if left out. */
  readonly paper?: Rgb;
}

/** Throws `Bug` when the drawing holds a number that is not finite. */
export function writeSvg(drawing: Drawing, options: SvgOptions = {}): string {
  const width = number(drawing.widthMm);
  const height = number(drawing.heightMm);
  const head = options.inPage === true ? "" : '<?xml version="1.0" encoding="UTF-8"?>\n';
  const paper = options.paper ?? PAPER_RGB;
  const { acrossRatio, upRatio } = drawing.stretch ?? { acrossRatio: 1, upRatio: 1 };
  const stretch =
    acrossRatio === 1 && upRatio === 1
      ? ""
      : ` transform="scale(${ratioNumber(acrossRatio)} ${ratioNumber(upRatio)})"`;
  return [
    `${head}<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}" role="img">`,
    `<title>${escapedText(drawing.title)}</title>`,
    `<desc>${escapedText(drawing.description)}</desc>`,
    `<rect width="${width}" height="${height}" fill="${hex(paper)}"/>`,
    `<g fill="none" stroke-linecap="butt" stroke-linejoin="round" font-family="${FONT_FAMILY}"${stretch}>`,
    ...drawing.items.flatMap((item) => itemLines(item, "", paper)),
    "</g>",
    "</svg>",
    "",
  ].join("\n");
}

function itemLines(item: Item, indent: string, paper: Rgb): readonly string[] {
  switch (item.kind) {
    case "stroke":
      return [indent + strokeElement(item, paper)];
    case "fill":
      return [indent + fillElement(item, paper)];
    case "text":
      return [indent + textElement(item, paper)];
    case "group": {
      const [open, close] = windowElements(item.window);
      return [
        `${indent}<g data-role="${escapedText(item.role)}"${transformOf(item)}>${open}`,
        ...item.items.flatMap((inner) => itemLines(inner, `${indent} `, paper)),
        `${indent}${close}</g>`,
      ];
    }
  }
}

/** An inner page of SVG shows nothing outside itself, which needs no id to refer to. */
function windowElements(window: Window | undefined): readonly [string, string] {
  if (window === undefined) return ["", ""];
  const place = `x="${number(window.minX)}" y="${number(window.minY)}"`;
  const size = [number(window.maxX - window.minX), number(window.maxY - window.minY)];
  const view = `${number(window.minX)} ${number(window.minY)} ${size.join(" ")}`;
  return [`<svg ${place} width="${size[0]}" height="${size[1]}" viewBox="${view}">`, "</svg>"];
}

function transformOf(item: Group): string {
  const parts: string[] = [];
  if (item.moveMm[0] !== 0 || item.moveMm[1] !== 0) parts.push(`translate(${pair(item.moveMm)})`);
  if (item.turnDeg !== 0) parts.push(`rotate(${number(-item.turnDeg)})`);
  if (item.scaleRatio !== 1) parts.push(`scale(${number(item.scaleRatio)})`);
  return parts.length === 0 ? "" : ` transform="${parts.join(" ")}"`;
}

function strokeElement(item: Stroke, paper: Rgb): string {
  const dashes = DASHES_MM[item.line];
  const dash = dashes.length === 0 ? "" : ` stroke-dasharray="${dashes.map(number).join(" ")}"`;
  return `<path d="${pathData(item.path)}" stroke="${colourHex(item.colour, paper)}" stroke-width="${number(LINE_WIDTH_MM[item.weight])}"${dash}/>`;
}

function fillElement(item: Fill, paper: Rgb): string {
  return `<path d="${item.paths.map(pathData).join(" ")}" fill="${colourHex(item.colour, paper)}" fill-rule="evenodd"/>`;
}

function textElement(item: Text, paper: Rgb): string {
  const anchor = item.anchor === "start" ? "" : ` text-anchor="${item.anchor}"`;
  const weight = item.bold ? ' font-weight="bold"' : "";
  const turn = item.turnDeg === 0 ? "" : ` transform="rotate(${number(-item.turnDeg)} ${pair(item.at)})"`;
  return `<text x="${number(item.at[0])}" y="${number(item.at[1])}" font-size="${number(item.sizeMm)}" fill="${colourHex(item.colour, paper)}"${anchor}${weight}${turn}>${escapedText(item.text)}</text>`;
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

/** A ratio needs more decimals than a length: 7 keep 1 m to a ten-thousandth of a millimetre. */
function ratioNumber(value: number): string {
  return String(Math.round(value * 1e7) / 1e7);
}

function colourHex(wanted: Colour, paper: Rgb): string {
  return hex(rgbOf(wanted, paper));
}

function hex(rgb: Rgb): string {
  return `#${rgb.map((channel) => channel.toString(16).padStart(2, "0")).join("")}`;
}
