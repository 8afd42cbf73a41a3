/**
 * How a catalogue of sentences is written. One entry for each trouble code:
 *
 *   export const shelfTroubles = catalogue({
 *     "plane-too-wide": {
 *       example: { name: "⅜ in hollow", widthMm: 30, mostMm: 24 },
 *       sentence: (facts, write) => `${write.text(facts.name)} is ${write.length(facts.widthMm)} wide, …`,
 *       hint: (facts, write) => `Measure it again, or give a radius of at least ${write.length(facts.mostMm)}.`,
 *     },
 *   });
 *
 * `example` says which facts the code carries (their types come from it) and is what the test says aloud. The
 * sentence says what is wrong and with which value; the hint names something the reader can do. Both are whole
 * sentences for a maker. Text from a file goes through `write.text`, measures through `write.length` and so on.
 */
import type { Facts } from "../trouble.ts";
import type { Writer } from "./writer.ts";

export interface Entry<F extends Facts> {
  readonly example: F;
  sentence(facts: F, write: Writer): string;
  hint(facts: F, write: Writer): string;
}

/** Checks the entries' types and gives them back as they are. */
export function catalogue<Known extends Record<string, Facts>>(
  entries: {
    readonly [Code in keyof Known]: Entry<Known[Code]>;
  },
): { readonly [Code in keyof Known]: Entry<Known[Code]> } {
  return entries;
}
