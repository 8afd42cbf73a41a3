/**
 * Errors of first order: a place is out by a sum of independent small errors, each with its own name. What two places
 * have in common (one setting of the gauge, one plane's width, the foot both stand on) then cancels or adds up by
 * itself when their difference is taken.
 */

/** By the error's name: how far the place is out when that error is at its 95 % mark, mm, with its sign. */
export type Spread = ReadonlyMap<string, number>;

export const NO_SPREAD: Spread = new Map();

export function spreadOf(name: string, errorMm: number): Spread {
  return new Map([[name, errorMm]]);
}

/** The sum of places' errors; `minus` takes one away. */
export function together(...spreads: readonly Spread[]): Spread {
  const sum = new Map<string, number>();
  for (const spread of spreads)
    for (const [name, errorMm] of spread) sum.set(name, (sum.get(name) ?? 0) + errorMm);
  return sum;
}

/** How far the first place stands out from the second, both as they came out. */
export function apart(one: Spread, other: Spread): Spread {
  const difference = new Map(one);
  for (const [name, errorMm] of other) difference.set(name, (difference.get(name) ?? 0) - errorMm);
  return difference;
}

/** What the whole keeps within 95 times in 100, mm: independent errors add as the root of the sum of their squares. */
export function spreadMm(spread: Spread): number {
  let squares = 0;
  for (const errorMm of spread.values()) squares += errorMm * errorMm;
  return Math.sqrt(squares);
}
