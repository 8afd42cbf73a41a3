/** How wide a line of lettering is, so that labels can be placed before any font is at hand. */
import { letterWidthRatio } from "./sheet-font-widths.ts";

/**
 * Widths in thousandths of the font's size, from the metrics published with Helvetica (Adobe Font Metrics; written
 * down from memory). Arial and Liberation Sans have the same; a fallback font may be wider, hence the slack.
 */
const WIDTHS: readonly (readonly [string, number])[] = [
  ["ijl'|", 222],
  [" \u00a0ftI.,:;/!·’", 278],
  ["⁄", 167],
  ["-()r°″′", 333],
  ["⁰¹²³⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉", 400],
  ["ckszJvxy", 500],
  ["abdeghnopqu0123456789L?_#$¼½¾–", 556],
  ["=+<>±×~", 584],
  ["FTZ", 611],
  ["ABEKPSVXY&", 667],
  ["CDHNRUw", 722],
  ["GOQ", 778],
  ["mM", 833],
  ["W", 944],
  ["—@%", 1000],
];

const WIDTH_OF: ReadonlyMap<string, number> = new Map(
  WIDTHS.flatMap(([letters, width]) => [...letters].map((letter): [string, number] => [letter, width])),
);

const FRACTIONS = "¼½¾⅛⅜⅝⅞⅓⅔";
const FRACTION_WIDTH = 834;
const UNKNOWN_WIDTH = 834;
const BOLD_RATIO = 1.08;
/** Slack for a fallback font. */
const FALLBACK_RATIO = 1.06;

/**
 * Width of one line at a font size, mm, on the safe side: it fits in the font of printed sheets, whose widths are
 * known to the letter, and in what a screen shows for Helvetica.
 */
export function textWidthMm(words: string, sizeMm: number, weight: "regular" | "bold" = "regular"): number {
  let thousandths = 0;
  for (const letter of words) {
    thousandths += FRACTIONS.includes(letter) ? FRACTION_WIDTH : (WIDTH_OF.get(letter) ?? UNKNOWN_WIDTH);
  }
  const onScreenMm = (thousandths / 1000) * sizeMm * FALLBACK_RATIO * (weight === "bold" ? BOLD_RATIO : 1);
  return Math.max(onScreenMm, printedWidthMm(words, sizeMm, weight));
}

/** Width of one line in the font of printed sheets, mm; exact for the letters of `KNOWN_LETTERS`. */
export function printedWidthMm(words: string, sizeMm: number, weight: "regular" | "bold"): number {
  let ratio = 0;
  for (const letter of words) {
    ratio += letterWidthRatio(letter.codePointAt(0) ?? 0, weight) ?? UNKNOWN_WIDTH / 1000;
  }
  return ratio * sizeMm;
}

/** Breaks text into lines no wider than `widthMm`; a word that is itself too long is cut with an ellipsis. */
export function wrapText(
  words: string,
  sizeMm: number,
  widthMm: number,
  weight: "regular" | "bold" = "regular",
): readonly string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of words.split(" ").filter((part) => part !== "")) {
    const longer = line === "" ? word : `${line} ${word}`;
    if (textWidthMm(longer, sizeMm, weight) <= widthMm) {
      line = longer;
      continue;
    }
    if (line !== "") lines.push(line);
    line = shortened(word, sizeMm, widthMm, weight);
  }
  if (line !== "") lines.push(line);
  return lines;
}

/** The text, cut with an ellipsis where it is wider than `widthMm`. */
export function shortened(
  words: string,
  sizeMm: number,
  widthMm: number,
  weight: "regular" | "bold" = "regular",
): string {
  if (textWidthMm(words, sizeMm, weight) <= widthMm) return words;
  let letters = [...words];
  while (letters.length > 0 && textWidthMm(`${letters.join("").trimEnd()}…`, sizeMm, weight) > widthMm) {
    letters = letters.slice(0, -1);
  }
  return `${letters.join("").trimEnd()}…`;
}

/** As `wrapText`, but never more than so many lines: the last one is cut with an ellipsis. */
export function wrapTextTo(
  linesCount: number,
  words: string,
  sizeMm: number,
  widthMm: number,
): readonly string[] {
  const lines = wrapText(words, sizeMm, widthMm);
  if (lines.length <= linesCount) return lines;
  const kept = lines.slice(0, linesCount - 1);
  return [...kept, shortened(lines.slice(linesCount - 1).join(" "), sizeMm, widthMm)];
}
