/** Text from a maker's file, made fit for a sheet or a terminal. */

/**
 * Control characters, direction overrides, line ends and lone surrogates become one space; runs of blanks shrink to one.
 * A terminal would obey them and XML 1.0 refuses them; letters, fractions and marks of any script stay.
 */
export function printable(words: string): string {
  return words.replace(/[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029\uFFFE\uFFFF]+/gu, " ").replace(/ {2,}/g, " ");
}
