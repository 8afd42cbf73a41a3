/** Tidying of polygons before and after a boolean, in grid lines. */

interface GridPoint {
  readonly x: number;
  readonly y: number;
}

/**
 * A polygon without level runs that turn straight back, which enclose nothing: on them the library, as of 2.0.1,
 * hangs or turns a ring round. Of three vertices on one level the middle one goes if it lies beyond the others;
 * of two edges that become one, the one that is not gone over twice gives the source.
 */
export function withoutLevelSpikes<P extends GridPoint>(
  path: P[],
  sources: Int32Array,
): { readonly path: P[]; readonly sources: Int32Array } {
  if (!hasTurnedBack(path)) return { path, sources };
  const kept = [...path];
  const keptSources = [...sources];
  // Each turn takes a vertex away, so this ends; taking one can make a spike of its neighbours.
  for (;;) {
    const at = kept.findIndex((_, i) => isTurnedBack(kept, i));
    if (at < 0) return { path: kept, sources: Int32Array.from(keptSources) };
    const before = at === 0 ? kept.length - 1 : at - 1;
    const [start, tip, end] = [kept[before], kept[at], kept[(at + 1) % kept.length]] as [P, P, P];
    const isBackPastStart = Math.abs(end.x - tip.x) > Math.abs(start.x - tip.x);
    if (isBackPastStart) keptSources[before] = keptSources[at] as number;
    kept.splice(at, 1);
    keptSources.splice(at, 1);
  }
}

function hasTurnedBack(path: readonly GridPoint[]): boolean {
  for (let i = 0; i < path.length; i++) if (isTurnedBack(path, i)) return true;
  return false;
}

function isTurnedBack(path: readonly GridPoint[], at: number): boolean {
  const count = path.length;
  const tip = path[at] as GridPoint;
  const end = path[at + 1 === count ? 0 : at + 1] as GridPoint;
  if (end.y !== tip.y) return false;
  const start = path[at === 0 ? count - 1 : at - 1] as GridPoint;
  return start.y === tip.y && (start.x - tip.x) * (end.x - tip.x) >= 0;
}

export interface GridRing {
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  readonly sources: Int32Array;
}

/** A vertex this near the line through its neighbours came from rounding to the grid, grid lines. */
const ON_LINE = 2;

/**
 * A polygon without edges shorter than `leastEdge`, without spikes that run out and straight back, and without
 * vertices in the middle of a straight run of one source. `sources[i]` belongs to the edge from vertex i, and of
 * two edges that become one the longer part's is kept. Gives nothing if fewer than three vertices are left.
 */
export function cleanRing(
  path: readonly GridPoint[],
  sources: Int32Array,
  leastEdge: number,
): GridRing | undefined {
  const run = RUN;
  run.begin(path.length, leastEdge * leastEdge);
  for (let i = 0; i < path.length; i++) {
    const vertex = path[i] as GridPoint;
    run.add(vertex.x, vertex.y, sources[i] as number);
  }
  run.close();
  return run.result();
}

/** The vertices kept so far; adding one may take back those before it. */
class Run {
  private xs = new Float64Array(0);
  private ys = new Float64Array(0);
  private sources = new Int32Array(0);
  private leastSquared = 0;
  private start = 0;
  private end = 0;

  /** Empties it for another polygon of at most so many vertices. */
  begin(capacity: number, leastSquared: number): void {
    this.start = 0;
    this.end = 0;
    this.leastSquared = leastSquared;
    if (this.xs.length >= capacity) return;
    this.xs = new Float64Array(2 * capacity);
    this.ys = new Float64Array(2 * capacity);
    this.sources = new Int32Array(2 * capacity);
  }

  add(x: number, y: number, source: number): void {
    for (;;) {
      const last = this.end - 1;
      if (last < this.start) break;
      if (this.isNear(last, x, y)) {
        this.sources[last] = source;
        return;
      }
      const before = last - 1;
      if (before < this.start) break;
      if (this.isNear(before, x, y)) {
        // Out to `last` and straight back.
        this.end = last;
        this.sources[before] = source;
        return;
      }
      if (this.isHair(before, last, x, y)) {
        // Out past (x, y) and back to it, or back past where it began: the part gone over twice encloses nothing.
        if (this.isFurtherBack(before, last, x, y)) this.sources[before] = this.sources[last] as number;
        this.end = last;
        continue;
      }
      if (!this.isStraightThrough(before, last, x, y)) break;
      this.end = last;
    }
    this.xs[this.end] = x;
    this.ys[this.end] = y;
    this.sources[this.end] = source;
    this.end++;
  }

  /** The same rules across the joint of last and first. */
  close(): void {
    for (;;) {
      const first = this.start;
      const last = this.end - 1;
      if (last - first < 2) return;
      const x = this.xs[first] as number;
      const y = this.ys[first] as number;
      if (this.isNear(last, x, y)) {
        // The first vertex keeps its own outgoing edge.
        this.end = last;
      } else if (this.isNear(last - 1, x, y)) {
        this.end = last - 1;
      } else if (this.isNear(last, this.xs[first + 1] as number, this.ys[first + 1] as number)) {
        this.sources[last] = this.sources[first + 1] as number;
        this.xs[first + 1] = this.xs[last] as number;
        this.ys[first + 1] = this.ys[last] as number;
        this.start = first + 1;
        this.end = last;
      } else if (this.isStraightThrough(last - 1, last, x, y)) {
        this.end = last;
      } else if (
        this.isStraightThrough(last, first, this.xs[first + 1] as number, this.ys[first + 1] as number)
      ) {
        this.start = first + 1;
      } else {
        return;
      }
    }
  }

  result(): GridRing | undefined {
    if (this.end - this.start < 3) return undefined;
    return {
      xs: this.xs.slice(this.start, this.end),
      ys: this.ys.slice(this.start, this.end),
      sources: this.sources.slice(this.start, this.end),
    };
  }

  private isNear(index: number, x: number, y: number): boolean {
    const dx = (this.xs[index] as number) - x;
    const dy = (this.ys[index] as number) - y;
    return dx * dx + dy * dy < this.leastSquared;
  }

  /** Is vertex `at` rounding noise on the way from vertex `before` to (x, y), within edges of one source? */
  /** Whether the way from `a` to `b` and on to (x, y) turns straight back, nearer to itself than the shortest edge. */
  private isHair(a: number, b: number, x: number, y: number): boolean {
    const outX = (this.xs[b] as number) - (this.xs[a] as number);
    const outY = (this.ys[b] as number) - (this.ys[a] as number);
    const backX = x - (this.xs[b] as number);
    const backY = y - (this.ys[b] as number);
    if (outX * backX + outY * backY >= 0) return false;
    const cross = outX * backY - outY * backX;
    const longer = Math.max(outX * outX + outY * outY, backX * backX + backY * backY);
    return cross * cross <= this.leastSquared * longer;
  }

  private isFurtherBack(a: number, b: number, x: number, y: number): boolean {
    const out =
      ((this.xs[b] as number) - (this.xs[a] as number)) ** 2 +
      ((this.ys[b] as number) - (this.ys[a] as number)) ** 2;
    return (x - (this.xs[b] as number)) ** 2 + (y - (this.ys[b] as number)) ** 2 > out;
  }

  private isStraightThrough(before: number, at: number, x: number, y: number): boolean {
    if (this.sources[before] !== this.sources[at]) return false;
    const ax = (this.xs[at] as number) - (this.xs[before] as number);
    const ay = (this.ys[at] as number) - (this.ys[before] as number);
    const bx = x - (this.xs[before] as number);
    const by = y - (this.ys[before] as number);
    const along = ax * bx + ay * by;
    const squared = bx * bx + by * by;
    if (along <= 0 || along >= squared) return false;
    const aside = ax * by - ay * bx;
    return aside * aside <= ON_LINE * ON_LINE * squared;
  }
}

/** One for all polygons, begun anew for each: tidying one never tidies another inside it. */
const RUN = new Run();
