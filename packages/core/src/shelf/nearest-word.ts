/** Which known word somebody meant. */

/** Longer words are no slip of a known one; comparing them would only cost time. */
const LONGEST_COMPARED = 40;

/**
 * The known word nearest to what was written, or `undefined` if none is near: at most a third of its letters, and
 * at least one, may have to be changed, added, left out or swapped with their neighbours. Upper and lower case count as the same; the first of
 * equally near words wins.
 */
export function nearestWord(written: string, known: readonly string[]): string | undefined {
  const wanted = written.toLowerCase();
  if (wanted.length > LONGEST_COMPARED) return undefined;
  let best: string | undefined;
  let bestSteps = Number.POSITIVE_INFINITY;
  for (const word of known) {
    const steps = stepsBetween(wanted, word.toLowerCase());
    if (steps < bestSteps && steps <= Math.max(1, Math.floor(word.length / 3))) {
      best = word;
      bestSteps = steps;
    }
  }
  return best;
}

/**
 * Least number of letters to change, add, leave out or swap with their neighbour (edit distance with swaps of
 * neighbours, one row at a time).
 */
function stepsBetween(a: string, b: string): number {
  let before: readonly number[] = [];
  let row: readonly number[] = Array.from({ length: b.length + 1 }, (_, index) => index);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++) {
      const change = row[j - 1]! + (a[i - 1] === b[j - 1] ? 0 : 1);
      const isSwap = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      const swap = isSwap ? before[j - 2]! + 1 : change;
      next.push(Math.min(change, swap, row[j]! + 1, next[j - 1]! + 1));
    }
    before = row;
    row = next;
  }
  return row[b.length]!;
}
