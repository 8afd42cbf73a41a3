/** Small dense systems of equations. */
import { DEPENDENT_RATIO } from "../measure/index.ts";

/**
 * Solves A x = b for a symmetric, positive semidefinite A (rows of numbers) by elimination with diagonal pivoting.
 * Dependent rows get 0: of several solutions one is taken. A and b are not changed.
 */
export function solveSymmetric(a: readonly (readonly number[])[], b: readonly number[]): number[] {
  const size = b.length;
  const rows = a.map((row) => [...row]);
  const rest = [...b];
  const solution = new Array<number>(size).fill(0);
  const order: number[] = [];
  const left = new Set(rows.keys());
  const largest = Math.max(0, ...rows.map((row, i) => row[i]!));
  while (left.size > 0) {
    let pivot = -1;
    for (const i of left) if (pivot < 0 || rows[i]![i]! > rows[pivot]![pivot]!) pivot = i;
    if (!(rows[pivot]![pivot]! > largest * DEPENDENT_RATIO)) break;
    left.delete(pivot);
    order.push(pivot);
    for (const i of left) {
      const factor = rows[i]![pivot]! / rows[pivot]![pivot]!;
      if (factor === 0) continue;
      for (const j of left) rows[i]![j]! -= factor * rows[pivot]![j]!;
      rest[i]! -= factor * rest[pivot]!;
    }
  }
  for (let k = order.length - 1; k >= 0; k--) {
    const pivot = order[k]!;
    let sum = rest[pivot]!;
    for (let m = k + 1; m < order.length; m++) sum -= rows[pivot]![order[m]!]! * solution[order[m]!]!;
    solution[pivot] = sum / rows[pivot]![pivot]!;
  }
  return solution;
}
