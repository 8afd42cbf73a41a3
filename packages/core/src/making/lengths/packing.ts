/**
 * Can these pieces be taken from these stretches at all? A depth-first search over pieces by falling size, exact unless
 * it runs out of steps. One kerf is added to every piece and to every stretch, because n pieces need n − 1 kerfs.
 */

/** Steps that several searches share; when none is left, the answer is "unknown". */
export interface StepBudget {
  left: number;
}

export type Packing =
  /** `stretchOf[i]`: index of the stretch that size i goes into. */
  | { readonly kind: "packed"; readonly stretchOf: readonly number[] }
  | { readonly kind: "impossible" }
  | { readonly kind: "unknown" };

const IMPOSSIBLE: Packing = { kind: "impossible" };

/** `sizes` and `room` in whole steps, kerf included. */
export function packInto(sizes: readonly number[], room: readonly number[], budget: StepBudget): Packing {
  const order = sizes.map((_, index) => index).sort((a, b) => at(sizes, b) - at(sizes, a) || a - b);
  const falling = order.map((index) => at(sizes, index));
  if (isPlainlyTooMuch(falling, room)) return IMPOSSIBLE;
  const found = new PackingSearch(falling, room, budget).run();
  if (found === "unknown") return { kind: "unknown" };
  if (found === null) return IMPOSSIBLE;
  const stretchOf = new Array<number>(sizes.length).fill(0);
  for (const [place, index] of order.entries()) stretchOf[index] = at(found, place);
  return { kind: "packed", stretchOf };
}

/**
 * Bounds that need no search: all together too long; or, for some size s, more pieces of at least s than pieces of s
 * could be taken from the stretches.
 */
export function isPlainlyTooMuch(falling: readonly number[], room: readonly number[]): boolean {
  if (sum(falling) > sum(room)) return true;
  return falling.some((size, index) => {
    const places = room.reduce((count, length) => count + Math.floor(length / size), 0);
    return places < index + 1;
  });
}

class PackingSearch {
  private readonly left: number[];
  private readonly chosen: number[] = [];
  /** Room left, in order of size, from which the pieces from this one on could not be placed. */
  private readonly failed = new Set<string>();
  private readonly rest: readonly number[];
  private readonly falling: readonly number[];
  private readonly budget: StepBudget;

  constructor(falling: readonly number[], room: readonly number[], budget: StepBudget) {
    this.falling = falling;
    this.budget = budget;
    this.left = [...room];
    this.rest = sumsFrom(falling);
  }

  run(): readonly number[] | null | "unknown" {
    const isFound = this.place(0);
    if (isFound) return this.chosen;
    return this.budget.left <= 0 ? "unknown" : null;
  }

  private place(piece: number): boolean {
    if (piece === this.falling.length) return true;
    this.budget.left--;
    if (this.budget.left <= 0) return false;
    if (this.usefulRoom() < at(this.rest, piece)) return false;
    const key = `${piece}:${[...this.left].sort((a, b) => a - b).join(",")}`;
    if (this.failed.has(key)) return false;
    const size = at(this.falling, piece);
    for (const stretch of this.tightestFirst(size)) {
      this.left[stretch] = at(this.left, stretch) - size;
      this.chosen[piece] = stretch;
      if (this.place(piece + 1)) return true;
      this.left[stretch] = at(this.left, stretch) + size;
    }
    if (this.budget.left > 0) this.failed.add(key);
    return false;
  }

  /** Room that the smallest piece still to come could use. */
  private usefulRoom(): number {
    const smallest = at(this.falling, this.falling.length - 1);
    return this.left.reduce((total, length) => (length >= smallest ? total + length : total), 0);
  }

  /** Stretches with room for a piece, the tightest first, one of each length left: the others are the same again. */
  private tightestFirst(size: number): number[] {
    const seen = new Set<number>();
    return this.left
      .map((length, stretch) => ({ length, stretch }))
      .filter(({ length }) => length >= size)
      .sort((a, b) => a.length - b.length || a.stretch - b.stretch)
      .filter(({ length }) => !seen.has(length) && seen.add(length))
      .map(({ stretch }) => stretch);
  }
}

/** `sumsFrom(x)[i]` = x[i] + x[i + 1] + …, with a 0 at the end. */
export function sumsFrom(lengths: readonly number[]): number[] {
  const sums = new Array<number>(lengths.length + 1).fill(0);
  for (let i = lengths.length - 1; i >= 0; i--) sums[i] = at(sums, i + 1) + at(lengths, i);
  return sums;
}

export function sum(lengths: readonly number[]): number {
  return lengths.reduce((total, length) => total + length, 0);
}

export function at<T>(list: readonly T[], index: number): T {
  return list[index] as T;
}
