/**
 * Can these pieces be taken from these stretches at all? A depth-first search, exact unless it runs out of steps. One kerf is added to every piece and to every stretch, because n pieces need n − 1 kerfs.
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
  const found = plainFilling(falling, room) ?? new FillingSearch(falling, room, budget).run();
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

/** The largest first, each where it fits tightest; null if one stays over. Costs no steps. */
export function plainFilling(falling: readonly number[], room: readonly number[]): number[] | null {
  const left = [...room];
  const chosen: number[] = [];
  for (const size of falling) {
    const tightest = tightestFor(size, left);
    if (tightest === null) return null;
    left[tightest] = at(left, tightest) - size;
    chosen.push(tightest);
  }
  return chosen;
}

/** The stretch that leaves least beside a piece, the earlier of two alike; null if none has room. */
export function tightestFor(size: number, left: readonly number[]): number | null {
  let best: number | null = null;
  for (const [stretch, length] of left.entries()) {
    if (length >= size && (best === null || length < at(left, best))) best = stretch;
  }
  return best;
}

/**
 * Fills stretch after stretch, the shortest first, with every choice of pieces that leaves room for no other. What the
 * stretches have more than the pieces need may be wasted, and no more: that cuts most choices off early. Sound,
 * because a piece that would fit beside others in a stretch can always be moved there from a later one.
 */
class FillingSearch {
  private readonly falling: readonly number[];
  /** Stretches with room for the smallest piece at least, shortest first, by their index. */
  private readonly stretches: readonly number[];
  private readonly room: readonly number[];
  private readonly budget: StepBudget;
  private readonly isTaken: boolean[];
  private readonly chosen: number[];
  /** Pieces left, at each stretch, from which there was no way on. */
  private readonly failed = new Set<string>();

  constructor(falling: readonly number[], room: readonly number[], budget: StepBudget) {
    this.falling = falling;
    this.room = room;
    this.budget = budget;
    const smallest = at(falling, falling.length - 1);
    this.stretches = room
      .map((_, stretch) => stretch)
      .filter((stretch) => at(room, stretch) >= smallest)
      .sort((a, b) => at(room, a) - at(room, b) || a - b);
    this.isTaken = falling.map(() => false);
    this.chosen = falling.map(() => 0);
  }

  run(): readonly number[] | null | "unknown" {
    const spare = sum(this.stretches.map((stretch) => at(this.room, stretch))) - sum(this.falling);
    if (spare < 0) return null;
    if (this.fill(0, spare)) return this.chosen;
    return this.budget.left <= 0 ? "unknown" : null;
  }

  /** `spare`: how much may still be wasted. */
  private fill(place: number, spare: number): boolean {
    if (this.isTaken.every((taken) => taken)) return true;
    const stretch = this.stretches[place];
    if (stretch === undefined) return false;
    const key = `${place}:${this.isTaken.map((taken, piece) => (taken ? "" : at(this.falling, piece))).join()}`;
    if (this.failed.has(key)) return false;
    for (const { pieces, waste } of this.fillings(at(this.room, stretch), spare)) {
      for (const piece of pieces) {
        this.isTaken[piece] = true;
        this.chosen[piece] = stretch;
      }
      if (this.fill(place + 1, spare - waste)) return true;
      for (const piece of pieces) this.isTaken[piece] = false;
      if (this.budget.left <= 0) return false;
    }
    if (this.budget.left > 0) this.failed.add(key);
    return false;
  }

  /** All fillings of a stretch that no further piece fits into and that waste no more than `spare`; least waste first. */
  private fillings(room: number, spare: number): Filling[] {
    const left = this.falling.flatMap((_, piece) => (this.isTaken[piece] ? [] : [piece]));
    const rest = sumsFrom(left.map((piece) => at(this.falling, piece)));
    const found: Filling[] = [];
    const taken: number[] = [];
    // `skipped`: the smallest piece passed over so far; if it still fits at the end, the filling is not full.
    const grow = (next: number, roomLeft: number, skipped: number): void => {
      this.budget.left--;
      if (this.budget.left <= 0 || roomLeft - at(rest, next) > spare) return;
      if (next === left.length) {
        if (roomLeft < skipped) found.push({ pieces: [...taken], waste: roomLeft });
        return;
      }
      const piece = at(left, next);
      const size = at(this.falling, piece);
      if (size <= roomLeft) {
        taken.push(piece);
        grow(next + 1, roomLeft - size, skipped);
        taken.pop();
      }
      // Of pieces alike, passing one over passes all of them over: the others would give the same filling again.
      let after = next + 1;
      while (after < left.length && at(this.falling, at(left, after)) === size) after++;
      grow(after, roomLeft, size);
    };
    grow(0, room, Number.POSITIVE_INFINITY);
    return found.sort((a, b) => a.waste - b.waste);
  }
}

interface Filling {
  readonly pieces: readonly number[];
  readonly waste: number;
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
