import type { Point } from "./types.ts";

/** Half a unit in the last place of 1: the rounding of one operation. */
const ROUNDING = 2 ** -53;

/** Bound on the relative rounding of the plain determinant below: two differences, a product and a sum each side. */
const PLAIN_ERROR_RATIO = 4 * ROUNDING;

/** Splits a double into two halves of 26 bits, whose products are exact (Dekker 1971). */
const SPLITTER = 2 ** 27 + 1;

/**
 * On which side of the line from `a` to `b` the point `c` lies: 1 left, -1 right, 0 exactly on it.
 *
 * The sign is right for every finite input whose products neither overflow nor underflow (coordinates between
 * about 1e-140 and 1e140, or zero): where the plain determinant is too near zero to trust, it is computed
 * again without rounding. Swapping two arguments flips the sign, exactly.
 * Source: two-product of T. J. Dekker, "A floating-point technique for extending the available precision"
 * (Numerische Mathematik 18, 1971), and two-sum of D. E. Knuth (TAOCP 2, 4.2.2), both from memory; checked
 * against whole-number arithmetic in the tests.
 */
export function orientation(a: Point, b: Point, c: Point): 1 | 0 | -1 {
  const left = (a.x - c.x) * (b.y - c.y);
  const right = (a.y - c.y) * (b.x - c.x);
  const plain = left - right;
  if (Math.abs(plain) > PLAIN_ERROR_RATIO * (Math.abs(left) + Math.abs(right))) return plain > 0 ? 1 : -1;
  return exactOrientation(a, b, c);
}

/** Sign of ax·by − ay·bx + bx·cy − by·cx + cx·ay − cy·ax, each product and the sum without rounding. */
function exactOrientation(a: Point, b: Point, c: Point): 1 | 0 | -1 {
  const sum: number[] = [];
  addProduct(sum, a.x, b.y);
  addProduct(sum, -a.y, b.x);
  addProduct(sum, b.x, c.y);
  addProduct(sum, -b.y, c.x);
  addProduct(sum, c.x, a.y);
  addProduct(sum, -c.y, a.x);
  // The parts do not overlap and grow, so the last one that is not zero decides.
  for (let i = sum.length - 1; i >= 0; i--) {
    const part = sum[i] as number;
    if (part !== 0) return part > 0 ? 1 : -1;
  }
  return 0;
}

function addProduct(sum: number[], x: number, y: number): void {
  const product = x * y;
  const xBig = SPLITTER * x;
  const xHigh = xBig - (xBig - x);
  const xLow = x - xHigh;
  const yBig = SPLITTER * y;
  const yHigh = yBig - (yBig - y);
  const yLow = y - yHigh;
  const error = xLow * yLow - (product - xHigh * yHigh - xLow * yHigh - xHigh * yLow);
  addTerm(sum, error);
  addTerm(sum, product);
}

/** Adds one number to a sum kept as parts that do not overlap, smallest first. */
function addTerm(sum: number[], term: number): void {
  let carried = term;
  for (let i = 0; i < sum.length; i++) {
    const part = sum[i] as number;
    const total = carried + part;
    const added = total - carried;
    sum[i] = carried - (total - added) + (part - added);
    carried = total;
  }
  sum.push(carried);
}
