/**
 * Sets of removals, numbered as they come up: a search over orders meets the same sets again and again, and looks up what
 * they grow to in place of reckoning it.
 */
import type { Removals } from "./order-removals.ts";

const UNKNOWN = -1;
/** Sets that there is room for before the tables are made larger. */
const FIRST_SETS = 256;

export class RemovalSets {
  private readonly removals: Removals;
  private readonly width: number;
  private readonly numbers = new Map<bigint, number>();
  private readonly members: bigint[] = [];
  /** For each set and candidate the set that it grows to, and the one of what is near to it. */
  private grown: Int32Array;
  private nearby: Int32Array;

  constructor(removals: Removals) {
    this.removals = removals;
    this.width = removals.bits.length;
    this.grown = new Int32Array(FIRST_SETS * this.width).fill(UNKNOWN);
    this.nearby = new Int32Array(FIRST_SETS * this.width).fill(UNKNOWN);
  }

  /** The number of the set with these bits; sets are numbered from 0 on. */
  numberOf(bits: bigint): number {
    const known = this.numbers.get(bits);
    if (known !== undefined) return known;
    const number = this.members.length;
    this.numbers.set(bits, number);
    this.members.push(bits);
    if ((number + 1) * this.width > this.grown.length) {
      this.grown = twiceAsLong(this.grown);
      this.nearby = twiceAsLong(this.nearby);
    }
    return number;
  }

  bitsOf(number: number): bigint {
    return this.members[number] as bigint;
  }

  /** The set once candidate `k` is cut as well; the set itself where it takes nothing more. */
  grownBy(number: number, k: number): number {
    const at = number * this.width + k;
    const known = this.grown[at] as number;
    if (known !== UNKNOWN) return known;
    const grown = this.numberOf(this.bitsOf(number) | (this.removals.bits[k] as bigint));
    this.grown[at] = grown;
    return grown;
  }

  /** Those of the set that lie near enough to candidate `k` to matter to it. */
  nearTo(number: number, k: number): number {
    const at = number * this.width + k;
    const known = this.nearby[at] as number;
    if (known !== UNKNOWN) return known;
    const near = this.numberOf(this.bitsOf(number) & (this.removals.near[k] as bigint));
    this.nearby[at] = near;
    return near;
  }
}

function twiceAsLong(table: Int32Array): Int32Array {
  const longer = new Int32Array(table.length * 2).fill(UNKNOWN, table.length);
  longer.set(table);
  return longer;
}
