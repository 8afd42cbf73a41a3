/** What attributes of an SVG say: lengths with units, transforms, what is hidden. */
import { type Affine, after, IDENTITY, scaling, shifting, turning } from "./read-affine.ts";
import { readNumber, skipSpace } from "./svg-path-data.ts";

/** CSS absolute units, mm each. Source: W3C, CSS Values and Units Module Level 3, section 6.2 (96 px to the inch). */
const UNIT_MM: ReadonlyMap<string, number> = new Map([
  ["mm", 1],
  ["cm", 10],
  ["q", 0.25],
  ["in", 25.4],
  ["pt", 25.4 / 72],
  ["pc", 25.4 / 6],
  ["px", 25.4 / 96],
]);

export const PIXEL_MM = 25.4 / 96;

export interface SvgLength {
  readonly number: number;
  /** mm for one of the unit; null where none is written. */
  readonly unitMm: number | null;
}

/** A length as an attribute holds it; "relative" for %, null if it cannot be read. */
export function readLength(text: string): SvgLength | "relative" | null {
  const scanner = { data: text, at: 0 };
  skipSpace(scanner);
  const number = readNumber(scanner);
  if (number === null || !Number.isFinite(number)) return null;
  const unit = text.slice(scanner.at).trim().toLowerCase();
  if (unit === "") return { number, unitMm: null };
  if (unit === "%") return "relative";
  const unitMm = UNIT_MM.get(unit);
  return unitMm === undefined ? null : { number, unitMm };
}

/** Numbers parted by white space or commas; null if there is anything else. */
export function readNumberList(text: string): number[] | null {
  const scanner = { data: text, at: 0 };
  const numbers: number[] = [];
  while (skipSpace(scanner)) {
    if (numbers.length > 0 && text[scanner.at] === ",") {
      scanner.at++;
      skipSpace(scanner);
    }
    const number = readNumber(scanner);
    if (number === null) return null;
    numbers.push(number);
  }
  return numbers;
}

/** Characters of one transform attribute: a hundred thousand nested operations are no drawing. */
const LONGEST_TRANSFORM = 10_000;

/**
 * The map of a `transform` attribute; null if it cannot be read.
 * Source: W3C, Scalable Vector Graphics 1.1 (second edition), section 7.6.
 */
export function readTransform(text: string): Affine | null {
  if (text.length > LONGEST_TRANSFORM) return null;
  let map = IDENTITY;
  let rest = text.trim();
  while (rest !== "" && rest !== "none") {
    const open = rest.indexOf("(");
    const close = rest.indexOf(")");
    if (open < 0 || close < open) return null;
    const numbers = readNumberList(rest.slice(open + 1, close));
    const one = numbers === null ? null : operation(rest.slice(0, open).trim(), numbers);
    if (one === null) return null;
    map = after(map, one);
    rest = rest.slice(close + 1).trim();
    if (rest.startsWith(",")) rest = rest.slice(1).trim();
  }
  return Object.values(map).every(Number.isFinite) ? map : null;
}

function operation(name: string, n: readonly number[]): Affine | null {
  const radians = ((n[0] ?? 0) * Math.PI) / 180;
  switch (`${name} ${n.length}`) {
    case "matrix 6":
      return { a: n[0]!, b: n[1]!, c: n[2]!, d: n[3]!, e: n[4]!, f: n[5]! };
    case "translate 1":
      return shifting(n[0]!, 0);
    case "translate 2":
      return shifting(n[0]!, n[1]!);
    case "scale 1":
      return scaling(n[0]!, n[0]!);
    case "scale 2":
      return scaling(n[0]!, n[1]!);
    case "rotate 1":
      return turning(radians);
    case "rotate 3":
      return after(shifting(n[1]!, n[2]!), after(turning(radians), shifting(-n[1]!, -n[2]!)));
    case "skewX 1":
      return { ...IDENTITY, c: Math.tan(radians) };
    case "skewY 1":
      return { ...IDENTITY, b: Math.tan(radians) };
    default:
      return null;
  }
}

/** Declarations of a `style` attribute, names in lower case. */
export function readStyle(text: string | undefined): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const declaration of (text ?? "").split(";")) {
    const colon = declaration.indexOf(":");
    if (colon > 0) {
      found.set(
        declaration.slice(0, colon).trim().toLowerCase(),
        declaration
          .slice(colon + 1)
          .trim()
          .toLowerCase(),
      );
    }
  }
  return found;
}
