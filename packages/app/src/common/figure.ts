/** Figures as people type them: `22.5`, `22,5`, `22 1/2`, `22½`, `-5`, with or without their sign of unit. */
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
const UNITS = /\s*(?:°|deg|degrees?|%|percent|°\s*[cf]|[cf])$/i;
const MOST_CHARACTERS = 40;

/** The figure; null for anything that is none. */
export function readFigure(typed: string): number | null {
  if (typed.length > MOST_CHARACTERS) return null;
  const plain = typed
    .trim()
    .replace(UNITS, "")
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

/** As it stands in a field: three decimals at most, a true minus. */
export function writeFigure(value: number): string {
  return String(Number(value.toFixed(3))).replace("-", "\u2212");
}
