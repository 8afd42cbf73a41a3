/** Figures that are no lengths, as people type them: degrees, shares, counts. */
const VULGAR: Readonly<Record<string, string>> = {
  "¼": "1/4",
  "½": "1/2",
  "¾": "3/4",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
};
const FIGURE = /^([+-]?)(?:(\d+(?:[.,]\d+)?|[.,]\d+)(?: (\d+)\/(\d+))?|(\d+)\/(\d+))$/;
/** Longer than any figure a maker types. */
const MOST_CHARACTERS = 40;

/**
 * `22.5`, `22,5`, `22 1/2`, `22½`, `-5`, `+3` as a number; null for anything else. A sign of unit behind it is for the
 * caller to take off, who knows which may stand there. Never throws, for any text.
 */
export function readFigure(typed: string): number | null {
  if (typed.length > MOST_CHARACTERS) return null;
  const plain = typed
    .trim()
    .replace(/\u2212/g, "-")
    .replace(/[¼½¾⅛⅜⅝⅞]/g, (sign) => ` ${VULGAR[sign]}`)
    .replace(/ +/g, " ")
    .replace(/^([+-]?) /, "$1");
  const parts = FIGURE.exec(plain);
  if (parts === null) return null;
  const [, sign, whole, above, below, aloneAbove, aloneBelow] = parts;
  const number = (text: string | undefined): number => Number((text ?? "0").replace(",", "."));
  const bottom = number(below ?? aloneBelow ?? "1");
  if (bottom === 0) return null;
  const size = number(whole) + number(above ?? aloneAbove) / bottom;
  return size === 0 ? 0 : sign === "-" ? -size : size;
}
