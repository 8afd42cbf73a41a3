/** Lengths as fractions of an inch, the way a rule is divided. */
import { Fraction } from "fraction.js";
import { requireFinite } from "./compare.ts";
import { roundToEven } from "./rounding.ts";
import { SAME_POINT_MM } from "./tolerance.ts";

/** One inch, by the international agreement of 1959. Exact. */
export const INCH_MM = 25.4;

/** How finely a rule is divided: sixteenths, thirty-seconds, sixty-fourths of an inch. */
export type InchDenominator = 16 | 32 | 64;

export interface InchFraction {
  /** -1 below zero, 0 if the fraction itself is zero. The other numbers are of its size without the sign. */
  readonly sign: -1 | 0 | 1;
  readonly whole: number;
  /** In lowest terms; numerator 0 over denominator 1 where nothing is left beside the whole. */
  readonly numerator: number;
  readonly denominator: number;
  /** What the fraction says minus what was asked, mm: at most half a division either way. */
  readonly errorMm: number;
}

/**
 * The fraction of an inch nearest to a length in mm, in lowest terms. Ties go to the even division (`rounding.ts`).
 * For people only: never compute on with the result. Throws a bug if the length is not finite.
 */
export function nearestFraction(lengthMm: number, denominator: InchDenominator): InchFraction {
  requireFinite("lengthMm", lengthMm);
  const divisionMm = INCH_MM / denominator;
  const divisions = roundToEven(Math.abs(lengthMm) / divisionMm, SAME_POINT_MM / divisionMm);
  const whole = Math.floor(divisions / denominator);
  const rest = new Fraction(divisions - whole * denominator, denominator);
  const sign = divisions === 0 ? 0 : lengthMm < 0 ? -1 : 1;
  const errorMm = sign * divisions * divisionMm - lengthMm;
  return {
    sign,
    whole,
    numerator: Number(rest.n),
    denominator: Number(rest.d),
    errorMm: errorMm === 0 ? 0 : errorMm,
  };
}

/** How finely a rule may be divided before a length is rather written with decimals: halves to hundred-and-twenty-eighths. */
const BINARY_DENOMINATORS: readonly number[] = [1, 2, 4, 8, 16, 32, 64, 128];
const OTHER_DENOMINATORS: readonly number[] = Array.from({ length: 64 }, (_, index) => index + 1);

/**
 * The fraction of an inch that a length in mm is, in lowest terms; null where it is none. Divisions of a rule come
 * first (`"rule"`: halves, quarters … hundred-and-twenty-eighths); `"any"` takes every denominator up to 64, for thirds
 * and the like. Throws a bug if the length is not finite.
 */
export function wholeFraction(lengthMm: number, of: "rule" | "any"): InchFraction | null {
  requireFinite("lengthMm", lengthMm);
  const inches = Math.abs(lengthMm) / INCH_MM;
  for (const denominator of of === "rule" ? BINARY_DENOMINATORS : OTHER_DENOMINATORS) {
    const divisions = Math.round(inches * denominator);
    const errorMm = (divisions / denominator) * INCH_MM - Math.abs(lengthMm);
    if (Math.abs(errorMm) > SAME_POINT_MM) continue;
    const whole = Math.floor(divisions / denominator);
    const numerator = divisions - whole * denominator;
    const sign = divisions === 0 ? 0 : lengthMm < 0 ? -1 : 1;
    return {
      sign,
      whole,
      numerator,
      denominator: numerator === 0 ? 1 : denominator,
      errorMm: errorMm === 0 ? 0 : sign * errorMm,
    };
  }
  return null;
}
