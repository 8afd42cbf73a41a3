/**
 * Of all ways to take the pieces from the stretches, the one that leaves most neighbours side by side.
 *
 * Pieces are gone through round the frame. Two neighbours in one stretch can always be marked one after the other, so
 * only the changes of stretch are counted; a closed run wholly in one stretch keeps one meeting open.
 */
import { at, type StepBudget, sumsFrom } from "./packing.ts";

/** Pieces `first` to `first + count - 1` follow each other; `meetings` says which of them meet. */
export interface MeetingRun {
  readonly first: number;
  readonly count: number;
  readonly ends: "closed" | "open" | "loose";
}

export interface Together {
  /** For each piece its stretch; null where no way with fewer apart than asked was found. */
  readonly stretchOf: readonly number[] | null;
  readonly apart: number;
  /** No way has fewer apart than this: `apart` itself where the search was finished. */
  readonly leastApart: number;
}

/** How many meetings a run has. A single piece meets nobody. */
export function meetingsOf({ count, ends }: MeetingRun): number {
  if (ends === "loose" || count < 2) return 0;
  return ends === "closed" ? count : count - 1;
}

/** Meetings whose pieces do not lie side by side. */
export function apartIn(stretchOf: readonly number[], runs: readonly MeetingRun[]): number {
  return runs.reduce((total, run) => {
    if (meetingsOf(run) === 0) return total;
    const own = stretchOf.slice(run.first, run.first + run.count);
    const changes = own.filter((stretch, index) => index > 0 && stretch !== own[index - 1]).length;
    return total + changes + closingApart(run, changes, own[0] === own.at(-1) ? "same" : "other");
  }, 0);
}

/** A closed run's last meeting: kept if it ends where it began and was elsewhere in between. */
function closingApart(run: MeetingRun, changes: number, endsIn: "same" | "other"): number {
  if (run.ends !== "closed") return 0;
  return changes > 0 && endsIn === "same" ? 0 : 1;
}

/**
 * A way with fewer than `below` apart, the fewest that there is. Exact while the budget lasts: then no way has fewer
 * apart than `leastApart`, which is `below` if nothing was found.
 */
export function mostTogether(
  sizes: readonly number[],
  room: readonly number[],
  runs: readonly MeetingRun[],
  below: number,
  budget: StepBudget,
): Together {
  const search = new TogetherSearch(sizes, room, runs, below, budget);
  search.run();
  const isFinished = budget.left > 0;
  return { ...search.best, leastApart: isFinished ? search.best.apart : search.enough };
}

class TogetherSearch {
  best: { readonly stretchOf: readonly number[] | null; readonly apart: number };
  private readonly left: number[];
  private readonly chosen: number[] = [];
  private readonly rest: readonly number[];
  private readonly runOf: readonly MeetingRun[];
  /** Runs that begin at this piece or later, and how many of those are closed. */
  private readonly startsFrom: readonly number[];
  private readonly closedFrom: readonly number[];
  private readonly seen = new Map<string, number>();
  private readonly sizes: readonly number[];
  private readonly budget: StepBudget;
  /** Fewer apart than this is impossible by lengths alone. */
  readonly enough: number;

  constructor(
    sizes: readonly number[],
    room: readonly number[],
    runs: readonly MeetingRun[],
    below: number,
    budget: StepBudget,
  ) {
    this.best = { stretchOf: null, apart: below };
    this.sizes = sizes;
    this.budget = budget;
    this.left = [...room];
    this.rest = sumsFrom(sizes);
    this.runOf = runs.flatMap((run) => new Array<MeetingRun>(run.count).fill(run));
    // A loose piece starts anew wherever it lies.
    const isFree = (index: number): boolean =>
      at(this.runOf, index).first === index || at(this.runOf, index).ends === "loose";
    this.startsFrom = sumsFrom(sizes.map((_, index) => (isFree(index) ? 1 : 0)));
    this.closedFrom = sumsFrom(
      sizes.map((_, index) => {
        const run = at(this.runOf, index);
        return run.first === index && run.ends === "closed" && run.count > 1 ? 1 : 0;
      }),
    );
    this.enough = this.leastMore(0);
  }

  run(): void {
    this.place(0, 0);
  }

  private isDone(): boolean {
    return this.budget.left <= 0 || this.best.apart <= this.enough;
  }

  private place(piece: number, apart: number): void {
    if (this.isDone()) return;
    if (piece === this.sizes.length) {
      if (apart < this.best.apart) this.best = { stretchOf: [...this.chosen], apart };
      return;
    }
    this.budget.left--;
    if (apart + this.leastMore(piece) >= this.best.apart) return;
    if (this.wasSeen(piece, apart)) return;
    const size = at(this.sizes, piece);
    for (const stretch of this.candidates(piece, size)) {
      this.left[stretch] = at(this.left, stretch) - size;
      this.chosen[piece] = stretch;
      this.place(piece + 1, apart + this.costOf(piece));
      this.left[stretch] = at(this.left, stretch) + size;
    }
    this.chosen.length = piece;
  }

  /** What the piece just placed breaks: the meeting with the one before, and, if it is the last, the closing one. */
  private costOf(piece: number): number {
    const run = at(this.runOf, piece);
    if (meetingsOf(run) === 0) return 0;
    const isChange = piece > run.first && this.chosen[piece] !== this.chosen[piece - 1];
    if (piece < run.first + run.count - 1) return isChange ? 1 : 0;
    const own = this.chosen.slice(run.first, piece + 1);
    const changes = own.filter((stretch, index) => index > 0 && stretch !== own[index - 1]).length;
    return (isChange ? 1 : 0) + closingApart(run, changes, own[0] === own.at(-1) ? "same" : "other");
  }

  /** The stretch of the piece before, then the others, the tightest first; of equally long ones only one. */
  private candidates(piece: number, size: number): number[] {
    const run = at(this.runOf, piece);
    const before = piece > run.first ? this.chosen[piece - 1] : undefined;
    const start = piece > run.first ? this.chosen[run.first] : undefined;
    const seen = new Set<number>();
    const others = this.left
      .map((length, stretch) => ({ length, stretch }))
      .filter(({ length, stretch }) => length >= size && stretch !== before)
      .sort((a, b) => a.length - b.length || a.stretch - b.stretch)
      .filter(({ length, stretch }) => stretch === start || (!seen.has(length) && seen.add(length)))
      .map(({ stretch }) => stretch);
    return before !== undefined && at(this.left, before) >= size ? [before, ...others] : others;
  }

  /**
   * At least so many more meetings stay open: the pieces to come fill the stretch at hand and then others, each of
   * which costs a change unless a run begins there anyway; and every closed run to come keeps one open.
   */
  private leastMore(piece: number): number {
    const here = piece > 0 ? this.chosen[piece - 1] : undefined;
    let missing = at(this.rest, piece) - (here === undefined ? 0 : at(this.left, here));
    let changes = 0;
    const others = this.left.filter((_, stretch) => stretch !== here).sort((a, b) => b - a);
    for (const length of others) {
      if (missing <= 0) break;
      missing -= length;
      changes++;
    }
    if (missing > 0) return Number.POSITIVE_INFINITY;
    return Math.max(changes - at(this.startsFrom, piece), at(this.closedFrom, piece));
  }

  /** Whether the same wood was left before, with as few apart. Stretches other than the two that matter are alike. */
  private wasSeen(piece: number, apart: number): boolean {
    const run = at(this.runOf, piece);
    const before = piece > run.first ? this.chosen[piece - 1] : undefined;
    const start = piece > run.first ? this.chosen[run.first] : undefined;
    const roomIn = (stretch: number | undefined) => (stretch === undefined ? -1 : at(this.left, stretch));
    const others = this.left
      .filter((_, stretch) => stretch !== before && stretch !== start)
      .sort((a, b) => a - b);
    const isUnbroken = this.chosen.slice(run.first, piece).every((stretch) => stretch === start);
    const key = `${piece}:${before === start ? "s" : "o"}${isUnbroken ? "u" : "b"}${roomIn(before)},${roomIn(start)}:${others.join(",")}`;
    const least = this.seen.get(key);
    if (least !== undefined && least <= apart) return true;
    this.seen.set(key, apart);
    return false;
  }
}
