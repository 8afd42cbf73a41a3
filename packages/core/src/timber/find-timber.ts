/** Look-up of a timber by what a maker types. */
import {
  cataloguedTrouble,
  fine,
  harmlessText,
  type Outcome,
  refused,
  type TroubleCode,
} from "../measure/index.ts";
import { editCount } from "./edit-count.ts";
import { TIMBERS } from "./timbers.ts";
import type { Timber } from "./types.ts";

/** How many near names are offered. */
const OFFERED = 5;

/** Nobody types a longer name; beyond it the comparison would only cost time. */
const LONGEST_NAME = 80;

/**
 * The timber of that name, or the nearest names. The order of the words, capitals and punctuation do not matter
 * ("black cherry", "Cherry, black"). A name that leaves one timber open (or a genus) is taken with a warning that says
 * what was taken; one that leaves several open is refused with their names. The maker's own timbers come first.
 */
export function findTimber(asked: string, own: readonly Timber[] = []): Outcome<Timber, TroubleCode> {
  const wanted = wordsOf(asked.slice(0, LONGEST_NAME));
  const shown = harmlessText(asked);
  if (wanted.length === 0) return refused(cataloguedTrouble("timber-no-name", "timber", {}));
  const timbers = [...own, ...TIMBERS];
  const isExact = (timber: Timber) => spellings(timber).some((words) => sameWords(words, wanted));
  const exact = timbers.find(isExact);
  const holding = timbers.filter((timber) =>
    spellings(timber).some((words) => wanted.every((word) => words.includes(word))),
  );
  if (exact !== undefined) {
    const others = holding.filter((timber) => timber !== exact).map(({ name }) => name);
    if (!exact.isGenus || others.length === 0) return fine(exact);
    return fine(exact, [
      cataloguedTrouble("timber-genus", "timber", { asked: shown, taken: exact.name, others }),
    ]);
  }
  const [only, second] = holding;
  if (only !== undefined && second === undefined) {
    return fine(only, [cataloguedTrouble("timber-taken-as", "timber", { asked: shown, taken: only.name })]);
  }
  if (second !== undefined) {
    const names = holding.map(({ name }) => name);
    return refused(cataloguedTrouble("timber-several", "timber", { asked: shown, names }));
  }
  return refused(
    cataloguedTrouble("timber-unknown", "timber", { asked: shown, nearest: nearestNames(wanted, timbers) }),
  );
}

/** The names that lie nearest to the words asked for, best first. */
function nearestNames(wanted: readonly string[], timbers: readonly Timber[]): string[] {
  return timbers
    .map((timber) => ({
      name: timber.name,
      apart: Math.min(...spellings(timber).map((words) => apart(wanted, words))),
    }))
    .sort((a, b) => a.apart - b.apart || (a.name < b.name ? -1 : 1))
    .slice(0, OFFERED)
    .map(({ name }) => name);
}

/** How badly two sets of words differ, 0 (alike) to 1: each word against its nearest on the other side. */
function apart(a: readonly string[], b: readonly string[]): number {
  const oneWay = (from: readonly string[], to: readonly string[]) =>
    from.reduce((sum, word) => sum + Math.min(...to.map((other) => wordsApart(word, other))), 0) /
    from.length;
  return (oneWay(a, b) * 2 + oneWay(b, a)) / 3;
}

function wordsApart(a: string, b: string): number {
  return editCount(a, b) / Math.max(a.length, b.length);
}

/** All ways to write a timber: its name with and without the part in brackets, and its other names. */
function spellings(timber: Timber): readonly (readonly string[])[] {
  return [timber.name, ...timber.otherNames].flatMap((name) => [
    wordsOf(name),
    wordsOf(name.replace(/\([^)]*\)/g, " ")),
  ]);
}

function wordsOf(name: string): string[] {
  const plain = name.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  // One word in the tables, often two in speech.
  const joined = plain
    .replace(/\bred[\s-]+cedar\b/g, "redcedar")
    .replace(/\bold[\s-]+growth\b/g, "oldgrowth");
  return [...new Set(joined.split(/[^\p{L}\p{N}]+/u).filter((word) => word !== ""))];
}

function sameWords(a: readonly string[], b: readonly string[]): boolean {
  return a.length === b.length && a.every((word) => b.includes(word));
}
