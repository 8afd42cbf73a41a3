/** Text from a file as it may be shown: nothing in it can move the cursor, hide what follows or turn the writing round. */

/**
 * What is never shown: control characters, line and paragraph separators, marks that turn the direction of writing,
 * characters of no width, private-use characters and halves of a pair.
 */
const UNPRINTABLE = /[\p{Cc}\p{Cf}\p{Cs}\p{Co}\u2028\u2029]/gu;

/** Room for what a message quotes from a file; more helps nobody find the place. */
const QUOTED_CHARACTERS = 40;

/** The text without unprintable characters, spaces at its ends and runs of spaces removed. */
export function cleanText(text: string): string {
  return text.replace(/\s+/gu, " ").replace(UNPRINTABLE, "").trim();
}

/** Whether the text holds something that `cleanText` would take out for good. */
export function isPrintable(text: string): boolean {
  return text.search(UNPRINTABLE) === -1;
}

/** A short quotation of any value for a message; what cannot be printed becomes a replacement character. */
export function quoted(value: unknown): string {
  // Cut before anything else: what a file holds there may be megabytes long.
  const start = plainText(value).slice(0, 4 * QUOTED_CHARACTERS);
  return shorten(start.replace(UNPRINTABLE, "\uFFFD"));
}

function plainText(value: unknown): string {
  if (typeof value === "string") return value;
  if (value === null || value === undefined) return "nothing";
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object") return "a group of keys";
  return typeof value === "number" || typeof value === "boolean" ? String(value) : `a ${typeof value}`;
}

function shorten(text: string): string {
  const characters = [...text];
  if (characters.length <= QUOTED_CHARACTERS) return text;
  return `${characters.slice(0, QUOTED_CHARACTERS - 1).join("")}…`;
}
