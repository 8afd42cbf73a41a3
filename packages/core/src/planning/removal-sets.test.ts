import { describe, expect, test } from "vitest";
import { RemovalSets } from "./removal-sets.ts";

/** Removals of so many candidates, each its own bit, near those right beside it. */
function removalsInARow(count: number) {
  const bits = Array.from({ length: count }, (_, k) => 1n << BigInt(k));
  const near = bits.map((bit) => bit | (bit << 1n) | (bit >> 1n));
  return { bits, near, makers: [] };
}

describe("sets of removals by number", () => {
  const removals = removalsInARow(80);
  const sets = new RemovalSets(removals);

  test("one set, one number", () => {
    const odd = sets.numberOf(0b10101n);
    expect(sets.numberOf(0b10101n)).toBe(odd);
    expect(sets.numberOf(0b10100n)).not.toBe(odd);
    expect(sets.bitsOf(odd)).toBe(0b10101n);
  });

  test("grows by what a candidate takes, and not where it takes nothing more", () => {
    const set = sets.numberOf(0b101n);
    expect(sets.bitsOf(sets.grownBy(set, 1))).toBe(0b111n);
    expect(sets.grownBy(set, 2)).toBe(set);
    expect(sets.grownBy(set, 1)).toBe(sets.grownBy(set, 1));
  });

  test("only what lies near a candidate matters to it", () => {
    const set = sets.numberOf(0b1011n);
    expect(sets.bitsOf(sets.nearTo(set, 0))).toBe(0b11n);
    expect(sets.bitsOf(sets.nearTo(set, 40))).toBe(0n);
  });

  test("holds more sets than there was room for at first, and candidates past 64", () => {
    let set = sets.numberOf(0n);
    let bits = 0n;
    for (let step = 0; step < 2000; step++) {
      const k = (step * step + 7) % 80;
      bits = step % 50 === 0 ? 1n << BigInt(k) : bits | (1n << BigInt(k));
      set = step % 50 === 0 ? sets.numberOf(bits) : sets.grownBy(set, k);
      expect(sets.bitsOf(set)).toBe(bits);
      expect(sets.bitsOf(sets.nearTo(set, k))).toBe(bits & (removals.near[k] as bigint));
    }
  });
});
