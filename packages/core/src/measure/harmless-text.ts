/**
 * Text from a file or a keyboard as it may be shown: nothing in it can move the cursor, hide what follows, turn the
 * writing round or break a drawing's file. Letters, fractions and marks of any script stay.
 */

/**
 * What is never shown: control characters, line and paragraph separators, marks that turn the direction of writing,
 * characters of no width, private-use characters, halves of a pair, and the two that XML refuses.
 */
const UNPRINTABLE = "\\p{Cc}\\p{Cf}\\p{Cs}\\p{Co}\\u2028\\u2029\\uFFFE\\uFFFF";
const ONE_UNPRINTABLE = new RegExp(`[${UNPRINTABLE}]`, "gu");
const RUN_OF_UNPRINTABLE = new RegExp(`[${UNPRINTABLE}]+`, "gu");

/** Longest text that a sentence quotes, characters. */
const MOST_CHARACTERS = 80;
/** Room for what a message quotes from a file; more helps nobody find the place. */
const QUOTED_CHARACTERS = 40;

/** Text made safe to show on one line of a sentence; at most 80 characters. */
export function harmlessText(text: string): string {
  // Cut before anything else: what a file holds there may be megabytes long.
  const start = String(text).slice(0, 4 * MOST_CHARACTERS);
  return shortened(printable(start).replace(/\s+/g, " ").trim(), MOST_CHARACTERS);
}

/** Words of any length for a sheet or a terminal: what cannot be shown becomes one space, runs of blanks shrink to one. */
export function printable(words: string): string {
  return words.replace(RUN_OF_UNPRINTABLE, " ").replace(/ {2,}/g, " ");
}

/** A name as it is kept: unprintable characters, spaces at its ends and runs of spaces taken out. */
export function cleanText(text: string): string {
  return text.replace(/\s+/gu, " ").replace(ONE_UNPRINTABLE, "").trim();
}

/** Whether the text holds nothing that `cleanText` would take out for good. */
export function isPrintable(text: string): boolean {
  return text.search(ONE_UNPRINTABLE) === -1;
}

/** A short quotation of any value for a message; what cannot be printed becomes a replacement character. */
export function quoted(value: unknown): string {
  const start = plainText(value).slice(0, 4 * QUOTED_CHARACTERS);
  return shortened(start.replace(ONE_UNPRINTABLE, "\uFFFD"), QUOTED_CHARACTERS);
}

function plainText(value: unknown): string {
  if (typeof value === "string") return value;
  if (value === null || value === undefined) return "nothing";
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object") return "a group of keys";
  return typeof value === "number" || typeof value === "boolean" ? String(value) : `a ${typeof value}`;
}

function shortened(text: string, most: number): string {
  const characters = [...text];
  return characters.length <= most ? text : `${characters.slice(0, most - 1).join("")}…`;
}
