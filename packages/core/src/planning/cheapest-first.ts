/** A queue that gives the cheapest entry first; of several that cost the same, the one `tie` puts first. */

export class CheapestFirst<T> {
  private readonly heap: T[] = [];
  private readonly costOf: (entry: T) => number;
  private readonly tie: (a: T, b: T) => number;

  constructor(costOf: (entry: T) => number, tie: (a: T, b: T) => number) {
    this.costOf = costOf;
    this.tie = tie;
  }

  add(entry: T): void {
    const { heap } = this;
    let at = heap.push(entry) - 1;
    while (at > 0) {
      const above = (at - 1) >> 1;
      if (!this.goesFirst(at, above)) break;
      this.swap(at, above);
      at = above;
    }
  }

  /** The cheapest entry, taken out; undefined where none is left. */
  take(): T | undefined {
    const { heap } = this;
    const first = heap[0];
    const last = heap.pop();
    if (first === undefined || last === undefined || heap.length === 0) return first;
    heap[0] = last;
    for (let at = 0; ; ) {
      let next = at;
      for (const below of [2 * at + 1, 2 * at + 2]) {
        if (below < heap.length && this.goesFirst(below, next)) next = below;
      }
      if (next === at) return first;
      this.swap(at, next);
      at = next;
    }
  }

  private goesFirst(one: number, other: number): boolean {
    const a = this.heap[one] as T;
    const b = this.heap[other] as T;
    const apart = this.costOf(a) - this.costOf(b);
    return apart === 0 ? this.tie(a, b) < 0 : apart < 0;
  }

  private swap(one: number, other: number): void {
    const kept = this.heap[one] as T;
    this.heap[one] = this.heap[other] as T;
    this.heap[other] = kept;
  }
}
