/**
 * Work done by the parts of the kernel that take most of the time, counted: no clock can be read here, and what is counted
 * comes to the same for the same input on every machine.
 *
 * A unit is about a fifth of a microsecond on the machine that the README's figures are from. Only what the count grows by between two moments says
 * anything.
 */
let counted = 0;

export function countWork(units: number): void {
  counted += units;
}

/** The count up to now. */
export function workCounted(): number {
  return counted;
}
