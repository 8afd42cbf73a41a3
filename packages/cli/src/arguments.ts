import { parseArgs } from "node:util";
import {
  cataloguedTrouble,
  fine,
  type LengthUnit,
  type Outcome,
  parseLength,
  refused,
} from "mouldwright/measure";
import { nearestWord } from "mouldwright/shelf";

/** An option a command knows: with a value (and how one is written), or without. */
export interface OptionKind {
  readonly value: boolean;
  readonly sample: string;
}

export type OptionKinds = Readonly<Record<string, OptionKind>>;

export interface Given {
  readonly names: readonly string[];
  readonly values: ReadonlyMap<string, string>;
  readonly flags: ReadonlySet<string>;
}

/** Known everywhere. */
const ALWAYS: OptionKinds = {
  help: { value: false, sample: "--help" },
  version: { value: false, sample: "--version" },
};

/**
 * The words after a command, sorted. Troubles: `option-unknown` (with the nearest known one), `option-needs-value`,
 * `option-takes-no-value`. The last of an option given twice counts.
 */
export function readArguments(words: readonly string[], kinds: OptionKinds): Outcome<Given> {
  const known: OptionKinds = { ...kinds, ...ALWAYS };
  const { tokens } = parseArgs({
    args: [...words],
    strict: false,
    allowPositionals: true,
    tokens: true,
    options: {
      ...Object.fromEntries(
        Object.entries(known).map(([name, kind]) => [
          name,
          { type: kind.value ? ("string" as const) : ("boolean" as const) },
        ]),
      ),
      help: { type: "boolean", short: "h" },
    },
  });
  const names: string[] = [];
  const values = new Map<string, string>();
  const flags = new Set<string>();
  for (const token of tokens) {
    if (token.kind === "positional") names.push(token.value);
    if (token.kind !== "option") continue;
    const kind = Object.hasOwn(known, token.name) ? known[token.name] : undefined;
    if (kind === undefined) {
      const options = Object.keys(known).map((name) => `--${name}`);
      const nearest = nearestWord(token.rawName, options) ?? "";
      return refused(
        cataloguedTrouble("option-unknown", "", { option: token.rawName, nearest, known: options }),
      );
    }
    if (!kind.value) {
      if (token.value !== undefined) {
        return refused(cataloguedTrouble("option-takes-no-value", "", { option: token.rawName }));
      }
      flags.add(token.name);
    } else {
      // `--at -3,0` is a value, `--shelf --json` a value forgotten.
      const forgotten = token.inlineValue !== true && /^-[^\d.]/.test(token.value ?? "");
      if (token.value === undefined || token.value === "" || forgotten) {
        return refused(
          cataloguedTrouble("option-needs-value", "", { option: token.rawName, sample: kind.sample }),
        );
      }
      values.set(token.name, token.value);
    }
  }
  return fine({ names, values, flags });
}

/** The one of `choices` an option says, `undefined` if it was not given. */
export function readChoice<Choice extends string>(
  given: Given,
  option: string,
  choices: readonly Choice[],
): Outcome<Choice | undefined> {
  const value = given.values.get(option);
  if (value === undefined) return fine(undefined);
  const choice = choices.find((one) => one === value);
  return choice === undefined ? wrongValue(option, value, choices.join(" or ")) : fine(choice);
}

/** `42x18`, `1 5/8 in x 3/4 in`: two lengths, mm, the first along the face. */
export function readSize(
  option: string,
  value: string,
  unit: LengthUnit,
): Outcome<{ readonly widthMm: number; readonly thicknessMm: number }> {
  const wanted = "width x thickness, such as 42x18 or 1 5/8 in x 3/4 in";
  const sides = value.split(/[x×*]/i);
  if (sides.length !== 2) return wrongValue(option, value, wanted);
  const width = parseLength(sides[0]!, { unit, where: `--${option}` });
  if (!width.ok) return width;
  const thickness = parseLength(sides[1]!, { unit, where: `--${option}` });
  if (!thickness.ok) return thickness;
  if (width.value.mm === 0 || thickness.value.mm === 0) return wrongValue(option, value, wanted);
  return fine({ widthMm: width.value.mm, thicknessMm: thickness.value.mm });
}

/** `0,0`, `-1.5,2`, `1/2 in, 0`: across from the gauge edge and up from the back, mm; either may be less than nought. */
export function readPlace(
  option: string,
  value: string,
  unit: LengthUnit,
): Outcome<{ readonly xMm: number; readonly yMm: number }> {
  const wanted = "two distances with a comma between, such as 0,0 or -1.5,2";
  const sides = value.split(/[,;]/);
  if (sides.length !== 2) return wrongValue(option, value, wanted);
  const places: number[] = [];
  for (const side of sides) {
    const below = side.trim().startsWith("-");
    const length = parseLength(side.trim().replace(/^-/, ""), { unit, where: `--${option}` });
    if (!length.ok) return length;
    places.push(below && length.value.mm !== 0 ? -length.value.mm : length.value.mm);
  }
  return fine({ xMm: places[0]!, yMm: places[1]! });
}

/** One length, mm. */
export function readLengthOption(option: string, value: string, unit: LengthUnit): Outcome<number> {
  const length = parseLength(value, { unit, where: `--${option}` });
  return length.ok ? fine(length.value.mm) : length;
}

export function wrongValue(option: string, value: string, wanted: string): ReturnType<typeof refused> {
  return refused(cataloguedTrouble("option-value-wrong", "", { option: `--${option}`, value, wanted }));
}
