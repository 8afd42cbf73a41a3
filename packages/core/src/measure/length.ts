/** Lengths as people type them, read exactly and refused where they can be read in two ways. */
import { Fraction } from "fraction.js";
import type { LengthUnit } from "./format.ts";
import { INCH_MM } from "./fraction.ts";
import { cataloguedTrouble, type TroubleCode } from "./say.ts";
import { fine, type Outcome, refused } from "./trouble.ts";
import { inPlainCharacters } from "./typed-characters.ts";

/** The unit a length was typed in; feet count as inches. */
export type TypedUnit = "mm" | "cm" | "m" | "in";

export interface TypedLength {
  readonly mm: number;
  /** The text as it was typed, without the blanks around it. */
  readonly typed: string;
  readonly unit: TypedUnit;
}

export interface LengthReading {
  /** The unit of a number that stands without one. */
  readonly unit: LengthUnit;
  /** The place in the file that a trouble names; empty unless given. */
  readonly where?: string;
}

/** The longest length taken from a person or a file, mm: a kilometre of moulding. */
export const LONGEST_MM = 1_000_000;

const MOST_CHARACTERS = 100;

/**
 * Reads a length: `1 3/8"`, `1-3/8 in`, `1⅜″`, `3/4`, `9,5 mm`, `19mm`, `1.5cm`, `1½`, `2' 3 1/2"`, `.5`, `2.4 m`.
 *
 * A comma is a decimal comma, but `1,250` may mean a thousand and is refused with both readings. Nought is a length;
 * less is refused. "Light" and "full" are refused, since they do not say how far. A bare fraction under millimetres
 * is read and warned about. Reckoned in whole-number fractions up to one last division, so an inch size gives the
 * nearest double to its millimetres. Never throws, for any text.
 */
export function parseLength(text: string, reading: LengthReading): Outcome<TypedLength, TroubleCode> {
  const where = reading.where ?? "";
  if (text.length > MOST_CHARACTERS) {
    const facts = { characters: text.length, most: MOST_CHARACTERS };
    return refused(cataloguedTrouble("length-too-many-characters", where, facts));
  }
  const typed = text.trim();
  if (typed === "") return refused(cataloguedTrouble("length-missing", where, {}));
  if (/[\p{Cc}\p{Cf}]/u.test(typed)) {
    return refused(cataloguedTrouble("length-control-characters", where, { typed }));
  }
  const plain = inPlainCharacters(typed);
  if (plain.startsWith("-")) return refused(cataloguedTrouble("length-negative", where, { typed }));
  if (/(?:^|[^a-z])(?:light|full|bare)$/.test(plain)) {
    return refused(cataloguedTrouble("length-light-or-full", where, { typed }));
  }
  const request: Request = { typed, where, unit: reading.unit };
  const feetAndInches = FEET_AND_INCHES.exec(plain);
  return feetAndInches === null
    ? readOneMeasure(plain, request)
    : readFeetAndInches(feetAndInches[1] ?? "", feetAndInches[2] ?? "", request);
}

/**
 * Reads a length from a file, where it may be a number (in `reading.unit`) or a text (as by `parseLength`).
 * Refuses what is not finite, less than nought or too great.
 */
export function readLength(
  value: number | string,
  reading: LengthReading,
): Outcome<TypedLength, TroubleCode> {
  if (typeof value === "string") return parseLength(value, reading);
  const where = reading.where ?? "";
  const typed = `${value} ${reading.unit}`;
  if (!Number.isFinite(value)) {
    return refused(cataloguedTrouble("length-not-a-number", where, {}));
  }
  if (value < 0) return refused(cataloguedTrouble("length-negative", where, { typed }));
  const mm = reading.unit === "in" ? value * INCH_MM : value;
  if (mm > LONGEST_MM)
    return refused(cataloguedTrouble("length-too-great", where, { typed, mostMm: LONGEST_MM }));
  return fine({ mm: mm === 0 ? 0 : mm, typed, unit: reading.unit });
}

interface Request {
  readonly typed: string;
  readonly where: string;
  readonly unit: LengthUnit;
}

const FEET_AND_INCHES =
  /^([\d.,/ -]+?) ?(?:'|ft\.?|foot|feet)(?: ?-? ?([\d.,/ -]+?) ?(?:"|in\.?|inch|inches)?)?$/;
const ONE_MEASURE = /^([\d.,/ -]*\d)(?: ?-? ?([^\d\s/,-][^\d]*))?$/;
const MIXED_OR_FRACTION = /^(?:(\d+)(?: ?- ?| ))?(\d+) ?\/ ?(\d+)$/;
const DECIMAL = /^(\d*)(?:[.,](\d+))?$/;
const MAYBE_THOUSANDS = /^([1-9]\d{0,2}),(\d{3})$/;

/** One unit's name, and how many millimetres it is as a fraction. An inch is 127/5 mm exactly. */
const UNITS: readonly {
  readonly name: RegExp;
  readonly unit: TypedUnit;
  readonly mm: readonly [number, number];
}[] = [
  { name: /^(?:mm\.?|millimet(?:re|er)s?)$/, unit: "mm", mm: [1, 1] },
  { name: /^(?:cm\.?|centimet(?:re|er)s?)$/, unit: "cm", mm: [10, 1] },
  { name: /^(?:m|met(?:re|er)s?)$/, unit: "m", mm: [1000, 1] },
  { name: /^(?:"|in\.?|inch|inches)$/, unit: "in", mm: [127, 5] },
];
const FOOT_INCHES = 12;

function readOneMeasure(plain: string, request: Request): Outcome<TypedLength, TroubleCode> {
  const { typed, where } = request;
  const parts = ONE_MEASURE.exec(plain);
  if (parts === null) return refused(cataloguedTrouble("length-unreadable", where, { typed }));
  const [, figures = "", unitName] = parts;
  const unit = UNITS.find((known) =>
    unitName === undefined ? known.unit === request.unit : known.name.test(unitName),
  );
  if (unit === undefined) {
    return refused(cataloguedTrouble("length-unknown-unit", where, { typed, unit: unitName ?? "" }));
  }
  const figure = readFigure(figures, unit.unit, request);
  if (!figure.ok) return figure;
  const length = withinLimit(figure.value.mul(unit.mm[0], unit.mm[1]), unit.unit, request);
  if (!length.ok || unitName !== undefined || request.unit !== "mm" || !figures.includes("/")) return length;
  return fine(length.value, [
    cataloguedTrouble("length-fraction-of-millimetre", where, { typed, lengthMm: length.value.mm }),
  ]);
}

function readFeetAndInches(
  feet: string,
  inches: string,
  request: Request,
): Outcome<TypedLength, TroubleCode> {
  const wholeFeet = readFigure(feet.trim(), "ft", request);
  if (!wholeFeet.ok) return wholeFeet;
  const rest: Outcome<Fraction, TroubleCode> =
    inches === "" ? fine(new Fraction(0)) : readFigure(inches.trim(), "in", request);
  if (!rest.ok) return rest;
  return withinLimit(wholeFeet.value.mul(FOOT_INCHES).add(rest.value).mul(127, 5), "in", request);
}

function withinLimit(mm: Fraction, unit: TypedUnit, request: Request): Outcome<TypedLength, TroubleCode> {
  const { typed, where } = request;
  if (mm.gt(LONGEST_MM))
    return refused(cataloguedTrouble("length-too-great", where, { typed, mostMm: LONGEST_MM }));
  return fine({ mm: mm.valueOf(), typed, unit });
}

/** The figures of one measure without its unit: `1 3/8`, `3/4`, `9,5`, `.5`. `unitName` is for the two readings of a comma. */
function readFigure(figures: string, unitName: string, request: Request): Outcome<Fraction, TroubleCode> {
  const { typed, where } = request;
  const thousands = MAYBE_THOUSANDS.exec(figures);
  if (thousands !== null) {
    const [, before = "", after = ""] = thousands;
    const first = `${Number(`${before}.${after}`)} ${unitName}`;
    const second = `${before}${after} ${unitName}`;
    return refused(cataloguedTrouble("length-ambiguous-comma", where, { typed, first, second }));
  }
  const mixed = MIXED_OR_FRACTION.exec(figures);
  if (mixed !== null) {
    const [, whole, above = "", below = ""] = mixed;
    if (BigInt(below) === 0n) return refused(cataloguedTrouble("length-zero-denominator", where, { typed }));
    const part = new Fraction(BigInt(above), BigInt(below));
    if (whole === undefined) return fine(part);
    if (part.gte(1)) return refused(cataloguedTrouble("length-improper", where, { typed }));
    return fine(part.add(new Fraction(BigInt(whole), 1n)));
  }
  const decimal = figures === "" ? null : DECIMAL.exec(figures);
  if (decimal === null) return refused(cataloguedTrouble("length-unreadable", where, { typed }));
  const [, whole = "", decimals = ""] = decimal;
  return fine(new Fraction(BigInt(`${whole}${decimals}`), 10n ** BigInt(decimals.length)));
}
