/** The fewest sticks that hold all the pieces, and which ones. */
import { at, isPlainlyTooMuch, packInto, type StepBudget, sum } from "./packing.ts";

/** Room in each sound stretch of a stick, kerf included, largest first; and its whole length. In steps. */
export interface StickRoom {
  readonly room: readonly number[];
  readonly length: number;
}

export interface ChosenSticks {
  /** Indices of sticks, rising. */
  readonly sticks: readonly number[];
  /** For each piece, the index of its stick and of the stretch in that stick's `room`. */
  readonly places: readonly StretchPlace[];
}

export interface StretchPlace {
  readonly stick: number;
  readonly stretch: number;
}

export type Fewest =
  | { readonly kind: "found"; readonly chosen: ChosenSticks; readonly atLeast: number }
  /** Not even all sticks hold the pieces. */
  | { readonly kind: "too few" }
  /** The search gave up before it found room for all of them in all the sticks. */
  | { readonly kind: "not found" };

/** Sets of sticks looked at for one number of sticks before the search counts as unfinished. */
const MOST_SETS = 2000;

/** Part of the steps left that one number of sticks may use up, so that the next ones get their turn. */
const SHARE_FOR_ONE_COUNT = 0.5;

/**
 * Counts up from what the lengths alone demand. A stick is left out of a set only if every stick that could stand in
 * for it is in: so the fewest are found although few sets are tried. Exact while the budget lasts; after that
 * `atLeast` says which number was not shown to be too few.
 */
export function fewestSticks(
  sizes: readonly number[],
  sticks: readonly StickRoom[],
  budget: StepBudget,
): Fewest {
  const falling = [...sizes].sort((a, b) => b - a);
  let atLeast: number | null = null;
  for (let count = 1; count <= sticks.length; count++) {
    const ownBudget = { left: Math.ceil(budget.left * SHARE_FOR_ONE_COUNT) };
    const given = ownBudget.left;
    const { sets, isComplete } = leadingSets(sticks, count);
    let isSettled = isComplete;
    for (const set of sets) {
      if (isPlainlyTooMuch(falling, roomOf(set, sticks))) continue;
      const chosen = packSet(sizes, sticks, set, ownBudget);
      if (typeof chosen !== "string") return { kind: "found", chosen, atLeast: atLeast ?? count };
      if (chosen === "unknown") isSettled = false;
    }
    budget.left -= given - Math.max(0, ownBudget.left);
    if (!isSettled) atLeast ??= count;
  }
  return { kind: atLeast === null ? "too few" : "not found" };
}

export function packSet(
  sizes: readonly number[],
  sticks: readonly StickRoom[],
  set: readonly number[],
  budget: StepBudget,
): ChosenSticks | "impossible" | "unknown" {
  const stretches = stretchesOf(set, sticks);
  const packing = packInto(
    sizes,
    stretches.map((one) => one.room),
    budget,
  );
  if (packing.kind !== "packed") return packing.kind;
  return {
    sticks: [...set].sort((a, b) => a - b),
    places: packing.stretchOf.map((index) => at(stretches, index).place),
  };
}

export function stretchesOf(
  set: readonly number[],
  sticks: readonly StickRoom[],
): readonly { readonly room: number; readonly place: StretchPlace }[] {
  return set.flatMap((stick) =>
    at(sticks, stick).room.map((room, stretch) => ({ room, place: { stick, stretch } })),
  );
}

function roomOf(set: readonly number[], sticks: readonly StickRoom[]): number[] {
  return set.flatMap((stick) => at(sticks, stick).room);
}

/** Whatever fits into the second stick fits into the first, stretch by stretch. Alike ones: the earlier leads. */
function leads(sticks: readonly StickRoom[], first: number, second: number): boolean {
  const a = at(sticks, first).room;
  const b = at(sticks, second).room;
  if (b.some((room, index) => room > (a[index] ?? 0))) return false;
  const isAlike = a.length === b.length && sum(a) === sum(b);
  return !isAlike || first < second;
}

/** Sets of so many sticks in which no stick stands while one that leads it stays out. */
export function leadingSets(
  sticks: readonly StickRoom[],
  count: number,
): { readonly sets: readonly (readonly number[])[]; readonly isComplete: boolean } {
  // A leader holds at least as much, so it comes earlier in this order.
  const order = sticks
    .map((_, index) => index)
    .sort((a, b) => sum(at(sticks, b).room) - sum(at(sticks, a).room) || a - b);
  const leaders = order.map((stick) =>
    order.flatMap((other, place) => (other !== stick && leads(sticks, other, stick) ? [place] : [])),
  );
  const sets: number[][] = [];
  let isComplete = true;
  const grow = (next: number, taken: readonly number[]): void => {
    if (sets.length >= MOST_SETS) {
      isComplete = false;
      return;
    }
    if (taken.length === count) {
      sets.push(taken.map((place) => at(order, place)));
      return;
    }
    if (order.length - next < count - taken.length) return;
    if (at(leaders, next).every((leader) => taken.includes(leader))) grow(next + 1, [...taken, next]);
    grow(next + 1, taken);
  };
  grow(0, []);
  return { sets, isComplete };
}
