/** The timber table: the rows of the books brought together by name. */
import { BENCH_NOTES } from "./bench-notes.ts";
import { COEFFICIENTS } from "./coefficient-table.ts";
import { HARDNESSES } from "./hardness-table.ts";
import { GENERA, SHRINKAGES } from "./shrinkage-table.ts";
import type { Timber } from "./types.ts";

/** Names that the trade uses for one timber of the table and for no other of it. */
const OTHER_NAMES: ReadonlyMap<string, readonly string[]> = new Map([
  ["Basswood, American", ["American linden"]],
  ["Cherry, black", ["American cherry"]],
  ["Lime (Tilia)", ["European lime", "linden"]],
  ["Mahogany, true (Swietenia macrophylla)", ["Honduras mahogany", "genuine mahogany", "American mahogany"]],
  ["Maple, sugar", ["hard maple", "rock maple"]],
  ["Oak, red, commercial", ["commercial red oak"]],
  ["Oak, white, commercial", ["commercial white oak"]],
  ["Pine, eastern white", ["yellow pine (Britain)", "Weymouth pine"]],
  ["Scots pine", ["Scotch pine", "European redwood"]],
  ["Walnut, black", ["American walnut"]],
  ["Walnut, European", ["English walnut"]],
  ["Yellow-poplar", ["tulip poplar", "American whitewood", "tulipwood (Britain)"]],
]);

/** Every timber of the tables, by name. */
export const TIMBERS: readonly Timber[] = [
  ...new Set([...SHRINKAGES.keys(), ...COEFFICIENTS.keys(), ...HARDNESSES.keys()]),
]
  .sort((a, b) => (a < b ? -1 : 1))
  .map((name) => ({
    name,
    otherNames: OTHER_NAMES.get(name) ?? [],
    isGenus: GENERA.has(name),
    shrinkage: SHRINKAGES.get(name) ?? null,
    coefficients: COEFFICIENTS.get(name) ?? null,
    hardness: HARDNESSES.get(name) ?? null,
    note: BENCH_NOTES.get(name) ?? "",
  }));
