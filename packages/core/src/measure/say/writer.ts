/** What sentences are written with: measures in the reader's unit, foreign text made harmless. */
import { formatDeg, formatExactLength, formatThickness, type LengthUnit, writeLength } from "../format.ts";
import { INCH_MM, type InchDenominator } from "../fraction.ts";
import { harmlessText } from "../harmless-text.ts";
import { roundToEven } from "../rounding.ts";
import { SAME_POINT_MM } from "../tolerance.ts";

export interface Writer {
  /**
   * mm, in the reader's unit. Where a length under two steps of the rule would be told plainly wrong, millimetres come
   * with more decimals, inches in sixty-fourths, and what is less than half of one in thousandths ("6 thou"). A missing
   * number is written `?`.
   */
  length(lengthMm: number): string;
  /** mm of a shaving or a gap: to a thousandth of a millimetre, or in thousandths of an inch. */
  thickness(thicknessMm: number): string;
  /** mm², in mm² or square inches. */
  area(areaMm2: number): string;
  /** Degrees: whole ones, tenths under two degrees. */
  degrees(angleDeg: number): string;
  /** Text from a file or a keyboard: control and invisible characters out, cut at 80 characters. */
  text(text: string): string;
  /** `a`, `a and b`, `a, b and c`; each one as by `text`; past eight, "and 12 more". */
  list(texts: readonly string[]): string;
}

const LONGEST_LIST = 8;
const UNKNOWN = "?";

/** By how much of itself a small length may be rounded before decimals tell it better. */
const MOST_FALSIFIED_RATIO = 0.1;

/** Half of a sixty-fourth of an inch: less shows on no rule. */
const LEAST_ON_A_RULE_MM = INCH_MM / 128;

/**
 * The writer for a reader's unit; `plain` keeps measures in ASCII, for terminals. `inchStep` is the finest division of
 * the reader's rule, thirty-seconds unless given.
 */
export function writerFor(
  unit: LengthUnit,
  form: "print" | "plain" = "print",
  inchStep: InchDenominator = 32,
): Writer {
  return {
    length(lengthMm) {
      if (!Number.isFinite(lengthMm)) return UNKNOWN;
      const written = writeLength(lengthMm, { unit, form, denominator: inchStep });
      const isSmall = Math.abs(lengthMm) < 2 * written.stepMm;
      const isFalsified =
        Math.abs(written.errorMm) > Math.abs(lengthMm) * MOST_FALSIFIED_RATIO + SAME_POINT_MM;
      if (!isSmall || !isFalsified) return written.text;
      if (unit === "mm") return formatExactLength(lengthMm, { unit, form });
      return Math.abs(lengthMm) < LEAST_ON_A_RULE_MM
        ? formatThickness(lengthMm, { unit, form })
        : writeLength(lengthMm, { unit, form, denominator: 64 }).text;
    },
    thickness(thicknessMm) {
      return Number.isFinite(thicknessMm) ? formatThickness(thicknessMm, { unit, form }) : UNKNOWN;
    },
    area(areaMm2) {
      if (!Number.isFinite(areaMm2)) return UNKNOWN;
      return unit === "mm"
        ? areaText(areaMm2, 1, "mm", form)
        : areaText(areaMm2 / INCH_MM ** 2, 3, "in", form);
    },
    degrees(angleDeg) {
      if (!Number.isFinite(angleDeg)) return UNKNOWN;
      return formatDeg(angleDeg, { stepDeg: Math.abs(angleDeg) < 2 ? 0.1 : 1, form });
    },
    text: harmlessText,
    list(texts) {
      const shown = texts.slice(0, LONGEST_LIST).map(harmlessText);
      if (texts.length > LONGEST_LIST) return `${shown.join(", ")} and ${texts.length - LONGEST_LIST} more`;
      return shown.length < 2
        ? shown.join("")
        : `${shown.slice(0, -1).join(", ")} and ${shown[shown.length - 1]}`;
    },
  };
}

function areaText(area: number, places: number, unit: string, form: "print" | "plain"): string {
  const scale = 10 ** places;
  const rounded = roundToEven(area * scale, SAME_POINT_MM) / scale;
  return form === "plain" ? `${rounded} ${unit}2` : `${rounded}\u00a0${unit}²`;
}
