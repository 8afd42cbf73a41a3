/** Finds out which input edge an edge of a boolean's answer lies on, and so which curve it came from. */

interface NumberedPoint {
  readonly x: number;
  readonly y: number;
  z?: number;
}

/** The library rounds crossings, and moves them a little where they fold over, grid lines. */
const ROUNDING_LINES = 3;

/**
 * All input vertices of one boolean, numbered from 1; edge n runs from vertex n to the next of its ring.
 * Crossings that the library reports get numbers below 0.
 *
 * Numbers on points are hints: the library hands on one number where several vertices coincide, and none for some
 * points it makes itself. So the edges that meet at a vertex are looked up by place, and each is held against the
 * answer's edge before it is believed.
 */
export class EdgeBook {
  private xs = new Float64Array(0);
  private ys = new Float64Array(0);
  private sources = new Int32Array(0);
  private next = new Int32Array(0);
  private before = new Int32Array(0);
  /** Vertices entered, and the number 0 that none has. */
  private count = 1;
  /** Four vertices of each crossing: the ends of the two edges that cross. */
  private readonly crossings: number[] = [];
  /** Hash table of places: the first vertex of each, then others of the same slot by `sameSlot`. */
  private slots = new Int32Array(0);
  private sameSlot = new Int32Array(0);
  /** How many slots this boolean's table has; 0 until it is built. */
  private slotCount = 0;
  private hasOneSource = true;

  /** Empties the book for another boolean, of at most so many vertices. Making room anew for each would cost more than the look-ups. */
  begin(capacity: number): void {
    this.count = 1;
    this.crossings.length = 0;
    this.slotCount = 0;
    this.hasOneSource = true;
    if (this.xs.length > capacity) return;
    const room = 2 * (capacity + 1);
    this.xs = new Float64Array(room);
    this.ys = new Float64Array(room);
    this.sources = new Int32Array(room);
    this.next = new Int32Array(room);
    this.before = new Int32Array(room);
    this.sameSlot = new Int32Array(room);
  }

  /** Enters a ring and writes its vertices' numbers on its points. `sources[i]` belongs to the edge from point i. */
  addRing(path: readonly NumberedPoint[], sources: Int32Array): void {
    const first = this.count;
    const last = first + path.length - 1;
    for (let i = 0; i < path.length; i++) {
      const point = path[i] as NumberedPoint;
      const number = first + i;
      const source = sources[i] as number;
      point.z = number;
      this.xs[number] = point.x;
      this.ys[number] = point.y;
      this.sources[number] = source;
      this.next[number] = number === last ? first : number + 1;
      this.before[number] = number === first ? last : number - 1;
      if (source !== this.sources[1]) this.hasOneSource = false;
    }
    this.count = last + 1;
  }

  /** Notes that two edges cross and gives the number for the point where they do. */
  addCrossing(bottom1: number, top1: number, bottom2: number, top2: number): number {
    this.crossings.push(bottom1, top1, bottom2, top2);
    return -(this.crossings.length / 4);
  }

  /**
   * The source of the input edge that the edge from `start` to `end` lies on. Where several coincide: the first
   * added (the subject before the clip) that has a source at all.
   */
  sourceOf(start: NumberedPoint, end: NumberedPoint): number {
    if (this.hasOneSource) return this.sources[1] as number;
    const search = { start, end, edge: 0 };
    this.searchNear(start, search);
    this.searchNear(end, search);
    if (search.edge === 0) return this.sources[this.nearestEdge(start, end)] as number;
    return this.sources[search.edge] as number;
  }

  private searchNear(point: NumberedPoint, search: Search): void {
    this.searchAt(point.x, point.y, search);
    const number = point.z ?? 0;
    if (number >= 0) return;
    const base = -4 * (number + 1);
    for (let i = base; i < base + 4; i++) {
      const vertex = this.crossings[i] as number;
      if (vertex > 0) this.searchAt(this.xs[vertex] as number, this.ys[vertex] as number, search);
    }
  }

  /** Offers every edge that starts or ends at a place. */
  private searchAt(x: number, y: number, search: Search): void {
    if (this.slotCount === 0) this.buildSlots();
    let vertex = this.slots[slotOf(x, y, this.slotCount)] as number;
    while (vertex !== 0) {
      if (this.xs[vertex] === x && this.ys[vertex] === y) {
        this.offer(vertex, search);
        this.offer(this.before[vertex] as number, search);
      }
      vertex = this.sameSlot[vertex] as number;
    }
  }

  private offer(edge: number, search: Search): void {
    if (edge === search.edge) return;
    if (search.edge !== 0) {
      const isSourced = this.sources[edge] !== 0;
      const wasSourced = this.sources[search.edge] !== 0;
      if (isSourced === wasSourced ? edge > search.edge : wasSourced) return;
    }
    if (this.isOn(edge, search.start) && this.isOn(edge, search.end)) search.edge = edge;
  }

  /** Does a point lie on an edge, rounding allowed? */
  private isOn(edge: number, p: NumberedPoint): boolean {
    const end = this.next[edge] as number;
    const fromX = this.xs[edge] as number;
    const fromY = this.ys[edge] as number;
    const dx = (this.xs[end] as number) - fromX;
    const dy = (this.ys[end] as number) - fromY;
    const px = p.x - fromX;
    const py = p.y - fromY;
    const squared = dx * dx + dy * dy;
    const slack = ROUNDING_LINES * Math.sqrt(squared);
    const along = px * dx + py * dy;
    if (along < -slack || along > squared + slack) return false;
    return Math.abs(px * dy - py * dx) <= slack;
  }

  /** Last resort, for edges that the library has put together from several: the edge nearest to the middle. */
  private nearestEdge(start: NumberedPoint, end: NumberedPoint): number {
    const x = (start.x + end.x) / 2;
    const y = (start.y + end.y) / 2;
    let best = 1;
    let bestSquared = Number.POSITIVE_INFINITY;
    for (let edge = 1; edge < this.count; edge++) {
      const squared = this.squaredDistance(edge, x, y);
      if (squared < bestSquared) {
        best = edge;
        bestSquared = squared;
      }
    }
    return best;
  }

  private squaredDistance(edge: number, x: number, y: number): number {
    const end = this.next[edge] as number;
    const fromX = this.xs[edge] as number;
    const fromY = this.ys[edge] as number;
    const dx = (this.xs[end] as number) - fromX;
    const dy = (this.ys[end] as number) - fromY;
    const squared = dx * dx + dy * dy;
    const t = squared === 0 ? 0 : Math.max(0, Math.min(1, ((x - fromX) * dx + (y - fromY) * dy) / squared));
    return (x - fromX - t * dx) ** 2 + (y - fromY - t * dy) ** 2;
  }

  private buildSlots(): void {
    const count = this.count;
    let size = 16;
    while (size < 2 * count) size *= 2;
    if (this.slots.length < size) this.slots = new Int32Array(size);
    else this.slots.fill(0, 0, size);
    this.slotCount = size;
    for (let vertex = count - 1; vertex >= 1; vertex--) {
      const slot = slotOf(this.xs[vertex] as number, this.ys[vertex] as number, size);
      this.sameSlot[vertex] = this.slots[slot] as number;
      this.slots[slot] = vertex;
    }
  }
}

interface Search {
  readonly start: NumberedPoint;
  readonly end: NumberedPoint;
  /** The best edge found so far, 0 if none. */
  edge: number;
}

/** Odd multipliers spread neighbouring grid lines over the table (Knuth, TAOCP 3, 6.4). */
function slotOf(x: number, y: number, size: number): number {
  // Coordinates pass 32 bits: fold the high part in before the multiplication cuts it off.
  const xFold = (x | 0) ^ Math.floor(x / 2 ** 32);
  const yFold = (y | 0) ^ Math.floor(y / 2 ** 32);
  const mixed = Math.imul(xFold, 0x9e3779b1) ^ Math.imul(yFold, 0x85ebca6b);
  return (mixed ^ (mixed >>> 15)) & (size - 1);
}
