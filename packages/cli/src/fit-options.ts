/** Values of the fitting commands' options: angles, percentages, temperatures, counts and lengths as makers type them. */
import {
  cataloguedTrouble,
  fine,
  type LengthUnit,
  type Outcome,
  readFigure,
  refused,
} from "mouldwright/measure";
import { type Given, readLengthOption, readSize, wrongValue } from "./arguments.ts";

interface FigureKind {
  /** What may stand after the figure. */
  readonly units: RegExp;
  readonly wanted: string;
}

const ANGLE: FigureKind = {
  units: /\s*(?:°|deg|degrees?)$/i,
  wanted: "an angle in degrees, such as 38 or 22.5",
};
const PERCENT: FigureKind = { units: /\s*(?:%|percent)$/i, wanted: "a percentage, such as 12" };
const COUNT: FigureKind = { units: /$^/, wanted: "a whole number, such as 2" };

function readFigureOption(given: Given, option: string, kind: FigureKind): Outcome<number | undefined> {
  const typed = given.values.get(option);
  if (typed === undefined) return fine(undefined);
  const figure = readFigure(typed.trim().replace(kind.units, ""));
  return figure === null ? wrongValue(option, typed, kind.wanted) : fine(figure);
}

/** Degrees; whether such an angle can be is for the question to say. */
export function readAngle(given: Given, option: string): Outcome<number | undefined> {
  return readFigureOption(given, option, ANGLE);
}

export function readPercent(given: Given, option: string): Outcome<number | undefined> {
  return readFigureOption(given, option, PERCENT);
}

export function readCount(given: Given, option: string): Outcome<number | undefined> {
  const count = readFigureOption(given, option, COUNT);
  if (!count.ok || count.value === undefined || Number.isInteger(count.value)) return count;
  return wrongValue(option, given.values.get(option) ?? "", COUNT.wanted);
}

/** °C unless an F says otherwise: `21`, `-5`, `21 °C`, `70F`. */
export function readTemperature(
  given: Given,
  option: string,
): Outcome<{ readonly celsius: number } | { readonly fahrenheit: number } | undefined> {
  const typed = given.values.get(option);
  if (typed === undefined) return fine(undefined);
  const isFahrenheit = /f$/i.test(typed.trim());
  const figure = readFigure(typed.trim().replace(/\s*°?\s*[cf]?$/i, ""));
  if (figure === null) return wrongValue(option, typed, "a temperature, such as 21, -5 or 70F");
  return fine(isFahrenheit ? { fahrenheit: figure } : { celsius: figure });
}

/** One length, mm; `undefined` if it was not given. */
export function readLengthIf(given: Given, option: string, unit: LengthUnit): Outcome<number | undefined> {
  const typed = given.values.get(option);
  return typed === undefined ? fine(undefined) : readLengthOption(option, typed, unit);
}

/** Two lengths, mm; `undefined` if they were not given. */
export function readSizeIf(
  given: Given,
  option: string,
  unit: LengthUnit,
): Outcome<{ readonly widthMm: number; readonly thicknessMm: number } | undefined> {
  const typed = given.values.get(option);
  return typed === undefined ? fine(undefined) : readSize(option, typed, unit);
}

/** The refusal of an option that a question cannot do without. */
export function missing(option: string, sample: string): ReturnType<typeof refused> {
  return refused(
    cataloguedTrouble("option-missing", "", { option: `--${option}`, sample: `--${option} ${sample}` }),
  );
}

/** Refuses a thing that is said in two ways at once; null where at most one of the options stands there. */
export function saidTwice({ values }: Given, options: readonly string[]): ReturnType<typeof refused> | null {
  const [first, second] = options.filter((option) => values.has(option));
  if (first === undefined || second === undefined) return null;
  return wrongValue(second, values.get(second) ?? "", `it alone: --${first} says the same in another way`);
}

/** The first refusal among outcomes, or null. */
export function firstRefusal(
  outcomes: readonly Outcome<unknown>[],
): (Outcome<unknown> & { readonly ok: false }) | null {
  for (const outcome of outcomes) if (!outcome.ok) return outcome;
  return null;
}

/** The one name that must not be there, as a refusal; null where no name was given. */
export function nameTooMany(given: Given): ReturnType<typeof refused> | null {
  const [first] = given.names;
  return first === undefined ? null : refused(cataloguedTrouble("argument-too-many", "", { first }));
}
