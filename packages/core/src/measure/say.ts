/**
 * Sentences for troubles: the command line, the sheets and the app all get them here, so that they say the same.
 * The catalogues stand by subject in `say/`; `TroubleCode` is the closed union of all their codes.
 */
import type { LengthUnit } from "./format.ts";
import { harmlessText } from "./harmless-text.ts";
import type { Entry } from "./say/catalogue.ts";
import { drawingTroubles } from "./say/drawing.ts";
import { fileTroubles } from "./say/file.ts";
import { fitTroubles } from "./say/fit.ts";
import { internalTroubles } from "./say/internal.ts";
import { lengthTroubles } from "./say/length.ts";
import { lengthsTroubles } from "./say/lengths.ts";
import { lightTroubles } from "./say/light.ts";
import { planTroubles } from "./say/plan.ts";
import { sectionTroubles } from "./say/section.ts";
import { sheetTroubles } from "./say/sheets.ts";
import { shelfTroubles } from "./say/shelf.ts";
import { stickTroubles } from "./say/stick.ts";
import { timberTroubles } from "./say/timber.ts";
import { writerFor } from "./say/writer.ts";
import { type Facts, type Trouble, trouble } from "./trouble.ts";

/** Every catalogue; a code stands in one only (a test holds that). */
export const CATALOGUES = [
  internalTroubles,
  lengthTroubles,
  sectionTroubles,
  shelfTroubles,
  drawingTroubles,
  planTroubles,
  fileTroubles,
  timberTroubles,
  fitTroubles,
  lengthsTroubles,
  stickTroubles,
  sheetTroubles,
  lightTroubles,
] as const;

type AllTroubles = typeof internalTroubles &
  typeof lengthTroubles &
  typeof sectionTroubles &
  typeof shelfTroubles &
  typeof drawingTroubles &
  typeof planTroubles &
  typeof fileTroubles &
  typeof timberTroubles &
  typeof fitTroubles &
  typeof lengthsTroubles &
  typeof stickTroubles &
  typeof sheetTroubles &
  typeof lightTroubles;

export type TroubleCode = keyof AllTroubles & string;

/** The facts that a code carries, as its example declares them. */
export type FactsOf<Code extends TroubleCode> = AllTroubles[Code] extends Entry<infer F> ? F : never;

const ENTRIES: ReadonlyMap<string, Entry<Facts>> = new Map(
  CATALOGUES.flatMap((entries) => Object.entries(entries) as [string, Entry<Facts>][]),
);

export const ALL_CODES: readonly TroubleCode[] = [...ENTRIES.keys()] as TroubleCode[];

/** A trouble whose code is in a catalogue and whose facts are all there: what the compiler can check, it checks. */
export function cataloguedTrouble<Code extends TroubleCode>(
  code: Code,
  where: string,
  facts: FactsOf<Code>,
): Trouble<Code> {
  return trouble(code, where, facts);
}

export interface SaidTrouble {
  /** What is wrong, with the value. */
  readonly sentence: string;
  /** What the reader can do about it. */
  readonly hint: string;
  /** The place in the file or plan, made harmless to show; empty if the whole input is meant. */
  readonly where: string;
}

/**
 * A trouble in words, measures in the reader's unit (`form: "plain"` for ASCII measures on a terminal).
 * A code without an entry is our own mistake and is said as one; a missing fact is written `?`. Facts of another
 * type than the example declares are a caller's bug (`cataloguedTrouble` does not let them through).
 */
export function sayTrouble(
  said: Trouble,
  options: { readonly unit: LengthUnit; readonly form?: "print" | "plain" },
): SaidTrouble {
  const entry = ENTRIES.get(said.code);
  const where = harmlessText(said.where);
  const write = writerFor(options.unit, options.form);
  if (entry === undefined) {
    const facts = { detail: `no sentence for the trouble “${harmlessText(said.code)}”` };
    return {
      sentence: internalTroubles.internal.sentence(facts, write),
      hint: internalTroubles.internal.hint(facts, write),
      where,
    };
  }
  const facts = { ...questionMarks(entry.example), ...said.facts };
  return { sentence: entry.sentence(facts, write), hint: entry.hint(facts, write), where };
}

/** A readable stand-in for each fact that an entry declares. */
function questionMarks(example: Facts): Facts {
  return Object.fromEntries(
    Object.entries(example).map(([key, value]) => [key, Array.isArray(value) ? ["?"] : "?"]),
  );
}

/** The example facts of a code: for the test that says every trouble aloud. */
export function exampleOf(code: TroubleCode): Facts {
  return ENTRIES.get(code)?.example ?? {};
}
