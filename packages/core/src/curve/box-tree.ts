/** Finds the boxes that overlap a box without trying all: a packed tree over boxes ordered along a Z-curve. */

/** Boxes in a leaf of the tree. */
const LEAF = 4;

/** Cells of the Z-curve along either axis, as a power of two: two of them fit into one whole number. */
const CURVE_BITS = 16;

/** Four numbers a box: least x, least y, greatest x, greatest y. */
export class BoxTree {
  private readonly boxes: Float64Array;
  /** Box numbers in the order of the curve. */
  private readonly order: Uint32Array;
  /** Nodes as a heap: node n has the children 2n and 2n + 1; leaves start at `leafStart`. */
  private readonly nodes: Float64Array;
  private readonly leafStart: number;

  constructor(boxes: Float64Array) {
    this.boxes = boxes;
    const count = boxes.length / 4;
    this.order = curveOrder(boxes);
    let leaves = 1;
    while (leaves * LEAF < count) leaves *= 2;
    this.leafStart = leaves;
    this.nodes = new Float64Array(8 * leaves);
    for (let node = 2 * leaves - 1; node >= 1; node--) this.measureNode(node, count);
  }

  private measureNode(node: number, count: number): void {
    let minX = Number.POSITIVE_INFINITY;
    let minY = Number.POSITIVE_INFINITY;
    let maxX = Number.NEGATIVE_INFINITY;
    let maxY = Number.NEGATIVE_INFINITY;
    const include = (from: Float64Array, at: number) => {
      minX = Math.min(minX, from[at] as number);
      minY = Math.min(minY, from[at + 1] as number);
      maxX = Math.max(maxX, from[at + 2] as number);
      maxY = Math.max(maxY, from[at + 3] as number);
    };
    if (node >= this.leafStart) {
      const start = (node - this.leafStart) * LEAF;
      const end = Math.min(count, start + LEAF);
      for (let i = start; i < end; i++) include(this.boxes, 4 * (this.order[i] as number));
    } else {
      include(this.nodes, 8 * node);
      include(this.nodes, 8 * node + 4);
    }
    this.nodes.set([minX, minY, maxX, maxY], 4 * node);
  }

  /** Visits the numbers of all boxes that overlap or touch a box grown by `slackMm`; stops when told `"enough"`. */
  visit(
    box: Float64Array,
    at: number,
    slackMm: number,
    visitor: (index: number) => "enough" | undefined,
  ): void {
    const minX = (box[at] as number) - slackMm;
    const minY = (box[at + 1] as number) - slackMm;
    const maxX = (box[at + 2] as number) + slackMm;
    const maxY = (box[at + 3] as number) + slackMm;
    const overlaps = (boxes: Float64Array, i: number) =>
      (boxes[i] as number) <= maxX &&
      (boxes[i + 2] as number) >= minX &&
      (boxes[i + 1] as number) <= maxY &&
      (boxes[i + 3] as number) >= minY;
    const waiting = [1];
    for (let node = waiting.pop(); node !== undefined; node = waiting.pop()) {
      if (!overlaps(this.nodes, 4 * node)) continue;
      if (node < this.leafStart) {
        waiting.push(2 * node + 1, 2 * node);
        continue;
      }
      const start = (node - this.leafStart) * LEAF;
      const end = Math.min(this.order.length, start + LEAF);
      for (let i = start; i < end; i++) {
        const index = this.order[i] as number;
        if (overlaps(this.boxes, 4 * index) && visitor(index) === "enough") return;
      }
    }
  }
}

/** Box numbers ordered by the places of their middles along a Z-curve (G. M. Morton, 1966, from memory). */
function curveOrder(boxes: Float64Array): Uint32Array {
  const count = boxes.length / 4;
  let minX = Number.POSITIVE_INFINITY;
  let minY = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  let maxY = Number.NEGATIVE_INFINITY;
  const middleX = (i: number) => ((boxes[4 * i] as number) + (boxes[4 * i + 2] as number)) / 2;
  const middleY = (i: number) => ((boxes[4 * i + 1] as number) + (boxes[4 * i + 3] as number)) / 2;
  for (let i = 0; i < count; i++) {
    minX = Math.min(minX, middleX(i));
    minY = Math.min(minY, middleY(i));
    maxX = Math.max(maxX, middleX(i));
    maxY = Math.max(maxY, middleY(i));
  }
  const cells = 2 ** CURVE_BITS - 1;
  const perX = maxX > minX ? cells / (maxX - minX) : 0;
  const perY = maxY > minY ? cells / (maxY - minY) : 0;
  const keys = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const place = spread((middleX(i) - minX) * perX) + 2 * spread((middleY(i) - minY) * perY);
    // Place and number in one key, so that the plain numeric sort of a typed array orders both.
    keys[i] = place * count + i;
  }
  keys.sort();
  return Uint32Array.from(keys, (key) => key % count);
}

/** Puts a zero between every two bits of a cell number. */
function spread(cell: number): number {
  let bits = cell & 0xffff;
  bits = (bits | (bits << 8)) & 0x00ff00ff;
  bits = (bits | (bits << 4)) & 0x0f0f0f0f;
  bits = (bits | (bits << 2)) & 0x33333333;
  bits = (bits | (bits << 1)) & 0x55555555;
  return bits;
}
