/** Whether a figure has doubled against its stored ratio: the decision of the gate, apart from all measuring. */

/** A figure as a multiple of the yardstick run beside it. */
export interface Ratio {
  readonly name: string;
  readonly yardsticks: number;
}

export type Verdict =
  | { readonly name: string; readonly kind: "held"; readonly before: number; readonly now: number }
  /** Over the limit, then under it when it was measured again: the machine was busy. */
  | { readonly name: string; readonly kind: "recovered"; readonly before: number; readonly now: number }
  | { readonly name: string; readonly kind: "doubled"; readonly before: number; readonly now: number }
  /** Nothing is stored under this name, or nothing that can be divided by. */
  | { readonly name: string; readonly kind: "new"; readonly now: number }
  /** Stored, and measured no longer. */
  | { readonly name: string; readonly kind: "gone"; readonly before: number };

/** No noise of a busy machine explains away more than this, when time beside the yardstick is measured. */
export const DOUBLED = 2;

export function hasDoubled(before: number, now: number): boolean {
  // What is no number, for instance because nothing was measured, must not pass for quick.
  return !(now <= DOUBLED * before);
}

/** Names of the figures that have to be measured again before they may be called doubled. */
export function doubtful(stored: readonly Ratio[], measured: readonly Ratio[]): readonly string[] {
  return measured.flatMap(({ name, yardsticks }) => {
    const before = storedUnder(stored, name);
    return before !== undefined && hasDoubled(before, yardsticks) ? [name] : [];
  });
}

/** Every figure's verdict; of one measured twice the lower time counts. */
export function verdicts(
  stored: readonly Ratio[],
  measured: readonly Ratio[],
  again: readonly Ratio[],
): readonly Verdict[] {
  const judged = measured.map(({ name, yardsticks: first }): Verdict => {
    const before = storedUnder(stored, name);
    if (before === undefined) return { name, kind: "new", now: first };
    if (!hasDoubled(before, first)) return { name, kind: "held", before, now: first };
    const second = again.find((one) => one.name === name)?.yardsticks;
    const now = second === undefined || second > first ? first : second;
    return { name, kind: hasDoubled(before, now) ? "doubled" : "recovered", before, now };
  });
  const gone = stored
    .filter(({ name }) => !measured.some((one) => one.name === name))
    .map(({ name, yardsticks }): Verdict => ({ name, kind: "gone", before: yardsticks }));
  return [...judged, ...gone];
}

export function isPassed(judged: readonly Verdict[]): boolean {
  return judged.every(({ kind }) => kind !== "doubled");
}

function storedUnder(stored: readonly Ratio[], name: string): number | undefined {
  const yardsticks = stored.find((one) => one.name === name)?.yardsticks;
  return yardsticks !== undefined && yardsticks > 0 ? yardsticks : undefined;
}
