/** Lengths and angles as people read them: rounded to what a hand can set, for the eye only. */
import { requireFinite } from "./compare.ts";
import {
  INCH_MM,
  type InchDenominator,
  type InchFraction,
  nearestFraction,
  wholeFraction,
} from "./fraction.ts";
import { roundToEven } from "./rounding.ts";
import { SAME_POINT_DEG, SAME_POINT_MM } from "./tolerance.ts";

export type LengthUnit = "mm" | "in";

/**
 * How lengths are written. `stepMm` (0.1 unless given) counts for millimetres, `denominator` (32 unless given) for
 * inches. `sides: "none"` leaves out "light" and "full"; `form: "plain"` keeps to ASCII, for terminals and file names.
 */
export interface LengthFormat {
  readonly unit: LengthUnit;
  readonly stepMm?: 0.1 | 0.5;
  readonly denominator?: InchDenominator;
  readonly sides?: "light and full" | "none";
  readonly form?: "print" | "plain";
}

export interface WrittenLength {
  readonly text: string;
  /** What the text says (light and full apart) minus the length, mm: at most half a step either way. */
  readonly errorMm: number;
  /** The step it was rounded to, mm. */
  readonly stepMm: number;
  /** `light`: the length is a little less than the fraction says; `full`: a little more; only for inches. */
  readonly side: "light" | "full" | "none";
}

const DEFAULT_STEP_MM = 0.1;
const DEFAULT_DENOMINATOR = 32;

/** A length as text, e.g. `1⅜″`, `⁵⁄₁₆″ light`, `9.5 mm` (no-break space); plain: `1 3/8 in`, `9.5 mm`. */
export function formatLength(lengthMm: number, format: LengthFormat): string {
  return writeLength(lengthMm, format).text;
}

/** As `formatLength`, with the rounding error and the side beside the text. Throws a bug if the length is not finite. */
export function writeLength(lengthMm: number, format: LengthFormat): WrittenLength {
  requireFinite("lengthMm", lengthMm);
  return format.unit === "mm" ? writeMillimetres(lengthMm, format) : writeInches(lengthMm, format);
}

/**
 * The length to three decimals of a millimetre or four of an inch (0.0025 mm), trailing zeros dropped: the exact
 * value on demand, and for lengths too small for a rule. E.g. `9.525 mm`, `0.375″`.
 */
export function formatExactLength(lengthMm: number, format: Pick<LengthFormat, "unit" | "form">): string {
  requireFinite("lengthMm", lengthMm);
  const places = format.unit === "mm" ? 3 : 4;
  const unitMm = format.unit === "mm" ? 1 : INCH_MM;
  const stepMm = unitMm / 10 ** places;
  const steps = roundToEven(lengthMm / stepMm, SAME_POINT_MM / stepMm);
  return withUnit(decimal(steps / 10 ** places, places, format), format);
}

/**
 * The length as it stands in a field that it can be typed into: `parseLength` reads it back to within half a thousandth
 * of a millimetre. In millimetres with three decimals at most; in inches as the fraction that was typed (`1⅜″`, `⅓″`),
 * with four decimals where it is that many exactly (`0.1″`), and where it is neither with five (`0.86614″` for 22 mm).
 * Throws a bug if the length is not finite.
 */
export function formatFieldLength(lengthMm: number, unit: LengthUnit): string {
  if (unit === "mm") return formatExactLength(lengthMm, { unit });
  const onRule = wholeFraction(lengthMm, "rule");
  if (onRule !== null) return withUnit(fractionText(onRule, {}), { unit });
  const inches = lengthMm / INCH_MM;
  const short = decimal(inches, 4, {});
  if (Math.abs(Number(inches.toFixed(4)) - inches) * INCH_MM <= SAME_POINT_MM)
    return withUnit(short, { unit });
  const other = wholeFraction(lengthMm, "any");
  return withUnit(other === null ? decimal(inches, 5, {}) : fractionText(other, {}), { unit });
}

/**
 * A shaving or a gap: `0.15 mm`, or in thousandths of an inch as a feeler gauge has them, `6 thou`; plain: `0.006 in`.
 * What is less than half a thousandth and not nought is `under 1 thou`. Throws a bug if it is not finite.
 */
export function formatThickness(thicknessMm: number, format: Pick<LengthFormat, "unit" | "form">): string {
  if (format.unit === "mm" || format.form === "plain") return formatExactLength(thicknessMm, format);
  requireFinite("thicknessMm", thicknessMm);
  const thouMm = INCH_MM / 1000;
  const thou = roundToEven(thicknessMm / thouMm, SAME_POINT_MM / thouMm);
  if (thou === 0 && Math.abs(thicknessMm) > SAME_POINT_MM) return "under 1 thou";
  return `${decimal(thou, 0, format)}${NO_BREAK_SPACE}thou`;
}

/** Degrees as text: to 1° for a hand unless told otherwise, `22¼°` for a saw's quarters. Throws a bug if not finite. */
export function formatDeg(
  angleDeg: number,
  format: { readonly stepDeg?: 1 | 0.5 | 0.25 | 0.1 | 0.01; readonly form?: "print" | "plain" } = {},
): string {
  requireFinite("angleDeg", angleDeg);
  const stepDeg = format.stepDeg ?? 1;
  const roundedDeg = roundToEven(angleDeg / stepDeg, SAME_POINT_DEG / stepDeg) * stepDeg;
  if (format.form === "plain") return `${decimal(roundedDeg, 2, format)} deg`;
  if (stepDeg !== 0.25) return `${decimal(roundedDeg, 2, format)}°`;
  const quarters = Math.round((Math.abs(roundedDeg) % 1) * 4);
  const whole = Math.floor(Math.abs(roundedDeg));
  const digits = quarters === 0 ? `${whole}` : `${whole === 0 ? "" : whole}${vulgar(quarters, 4)}`;
  return `${roundedDeg < 0 ? MINUS : ""}${digits}°`;
}

const MINUS = "\u2212";
const NO_BREAK_SPACE = "\u00a0";
const FRACTION_SLASH = "\u2044";
const DOUBLE_PRIME = "\u2033";
const SUPERSCRIPTS = "⁰¹²³⁴⁵⁶⁷⁸⁹";
const SUBSCRIPTS = "₀₁₂₃₄₅₆₇₈₉";
const VULGAR: ReadonlyMap<string, string> = new Map([
  ["1/8", "⅛"],
  ["1/4", "¼"],
  ["2/4", "½"],
  ["3/8", "⅜"],
  ["1/2", "½"],
  ["5/8", "⅝"],
  ["3/4", "¾"],
  ["7/8", "⅞"],
]);

function writeMillimetres(lengthMm: number, format: LengthFormat): WrittenLength {
  const stepMm = format.stepMm ?? DEFAULT_STEP_MM;
  const roundedMm = roundToEven(lengthMm / stepMm, SAME_POINT_MM / stepMm) * stepMm;
  return {
    text: withUnit(decimal(roundedMm, 1, format), format),
    errorMm: roundedMm - lengthMm,
    stepMm,
    side: "none",
  };
}

function writeInches(lengthMm: number, format: LengthFormat): WrittenLength {
  const denominator = format.denominator ?? DEFAULT_DENOMINATOR;
  const fraction = nearestFraction(lengthMm, denominator);
  const stepMm = INCH_MM / denominator;
  const side = format.sides === "none" ? "none" : sideOf(fraction, stepMm);
  const text = withUnit(fractionText(fraction, format), format);
  return { text: side === "none" ? text : `${text} ${side}`, errorMm: fraction.errorMm, stepMm, side };
}

/** Beyond a third of a division the eye sees on which side of the line it lies. A bare nought has no sides to name. */
function sideOf(fraction: InchFraction, stepMm: number): "light" | "full" | "none" {
  if (fraction.sign === 0 || Math.abs(fraction.errorMm) <= stepMm / 3 + SAME_POINT_MM) return "none";
  return fraction.errorMm * fraction.sign > 0 ? "light" : "full";
}

function fractionText(fraction: InchFraction, format: Pick<LengthFormat, "form">): string {
  const { whole, numerator, denominator } = fraction;
  const isPlain = format.form === "plain";
  const minus = fraction.sign < 0 ? (isPlain ? "-" : MINUS) : "";
  if (numerator === 0) return `${minus}${whole}`;
  const part = isPlain ? `${numerator}/${denominator}` : vulgar(numerator, denominator);
  if (whole === 0) return `${minus}${part}`;
  return `${minus}${whole}${isPlain ? " " : ""}${part}`;
}

function vulgar(numerator: number, denominator: number): string {
  const ready = VULGAR.get(`${numerator}/${denominator}`);
  if (ready !== undefined) return ready;
  return `${digitsIn(numerator, SUPERSCRIPTS)}${FRACTION_SLASH}${digitsIn(denominator, SUBSCRIPTS)}`;
}

function digitsIn(value: number, digits: string): string {
  return [...String(value)].map((digit) => digits[Number(digit)]).join("");
}

/** At most `places` decimals, trailing zeros dropped, never "-0". */
function decimal(value: number, places: number, format: Pick<LengthFormat, "form">): string {
  const text = Math.abs(value).toFixed(places);
  const short = text.includes(".") ? text.replace(/\.?0+$/, "") : text;
  const isNegative = value < 0 && short !== "0";
  return isNegative ? `${format.form === "plain" ? "-" : MINUS}${short}` : short;
}

function withUnit(digits: string, format: Pick<LengthFormat, "unit" | "form">): string {
  if (format.form === "plain") return `${digits} ${format.unit}`;
  return format.unit === "mm" ? `${digits}${NO_BREAK_SPACE}mm` : `${digits}${DOUBLE_PRIME}`;
}
