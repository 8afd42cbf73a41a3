/**
 * How many letters must be changed, put in or left out to turn one word into the other (Levenshtein's distance),
 * computed row by row. The shelf has a like of it for file keys; a folder of the same floor cannot be asked.
 */
export function editCount(a: string, b: string): number {
  let row = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (const [index, letter] of [...a].entries()) {
    const next = [index + 1];
    for (const [column, other] of [...b].entries()) {
      const changed = (row[column] as number) + (letter === other ? 0 : 1);
      next.push(Math.min(changed, (row[column + 1] as number) + 1, (next[column] as number) + 1));
    }
    row = next;
  }
  return row[row.length - 1] as number;
}
