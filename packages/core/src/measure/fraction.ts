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
