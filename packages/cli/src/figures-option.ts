/** Options that hold several named figures at once: `--hand gauge=0.05,line=0.05`. */
import { fine, type LengthUnit, type Outcome, readFigure } from "mouldwright/measure";
import { nearestWord } from "mouldwright/shelf";
import { type Given, readLengthOption, wrongValue } from "./arguments.ts";

/** A figure by the word it is typed with. */
export interface FigureKey<Name extends string> {
  readonly word: string;
  readonly name: Name;
  /** A length is read in the unit that is talked in, a plain figure as it is. */
  readonly kind: "length" | "figure";
  readonly least: number;
  readonly most: number;
}

/** The figures an option says, by name; `undefined` if it was not given. Refused with the word that is wrong. */
export function readFigures<Name extends string>(
  given: Given,
  option: string,
  keys: readonly FigureKey<Name>[],
  unit: LengthUnit,
): Outcome<Partial<Record<Name, number>> | undefined> {
  const typed = given.values.get(option);
  if (typed === undefined) return fine(undefined);
  const said: Partial<Record<Name, number>> = {};
  // A decimal comma needs another mark between the figures.
  for (const one of typed.split(typed.includes(";") ? ";" : ",")) {
    const [word = "", value, ...more] = one.split("=").map((part) => part.trim());
    const key = keys.find((known) => known.word === word);
    if (key === undefined || value === undefined || more.length > 0) {
      return wrongValue(option, one.trim(), wantedWords(word, keys));
    }
    const figure = key.kind === "length" ? readLengthOption(option, value, unit) : plainFigure(value);
    if (!figure.ok) return figure;
    if (figure.value === null || figure.value < key.least || figure.value > key.most) {
      return wrongValue(option, one.trim(), `${word}= and a figure from ${key.least} to ${key.most}`);
    }
    said[key.name] = figure.value;
  }
  return fine(said);
}

function plainFigure(value: string): Outcome<number | null> {
  return fine(readFigure(value));
}

function wantedWords<Name extends string>(word: string, keys: readonly FigureKey<Name>[]): string {
  const words = keys.map((key) => key.word);
  const nearest = nearestWord(word, words);
  return nearest === undefined || nearest === word
    ? `figures such as ${words[0]}=1, of ${words.join(", ")}`
    : `${nearest}= and a figure`;
}
