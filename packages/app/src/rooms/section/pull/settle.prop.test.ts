import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type SettleRule, settledNumber, settledPoint } from "./settle.ts";

const number = fc.double({ min: -60, max: 60, noNaN: true });
const rule = fc.record({
  withinMm: fc.double({ min: 0.01, max: 3, noNaN: true }),
  fineMm: fc.constantFrom(0.1, 25.4 / 64),
  roundMm: fc.constantFrom(0.5, 25.4 / 16),
});
const draws = fc.array(fc.record({ value: number, says: fc.constant("shelf") }), { maxLength: 6 });
const point = fc.record({ x: number, y: number });
const drawPoints = fc.array(fc.record({ value: point, says: fc.constant("shelf") }), { maxLength: 4 });

describe("settling", () => {
  it("what has settled stays", () => {
    fc.assert(
      fc.property(number, draws, rule, (value, strong, settleRule) => {
        const once = settledNumber(value, strong, settleRule);
        const twice = settledNumber(once.value, strong, settleRule);
        expect(twice.value).toBeCloseTo(once.value, 4);
      }),
      { seed: 41, numRuns: 800 },
    );
  });

  it("what has settled stays, in the plane too", () => {
    fc.assert(
      fc.property(point, drawPoints, draws, point, rule, (value, strong, levels, from, settleRule) => {
        const settle = (at: typeof value) => settledPoint(at, () => strong, levels, from, settleRule).value;
        const once = settle(value);
        const twice = settle(once);
        expect(twice.x).toBeCloseTo(once.x, 4);
        expect(twice.y).toBeCloseTo(once.y, 4);
      }),
      { seed: 42, numRuns: 800 },
    );
  });

  it("a place on the shelf draws before a round size, and is named", () => {
    const near: SettleRule = { withinMm: 0.4, fineMm: 0.1, roundMm: 0.5 };
    const strong = [{ value: 9.525, says: "⅜ in hollow on the shelf" }];
    expect(settledNumber(9.6, strong, near)).toEqual(strong[0]);
    expect(settledNumber(12.31, strong, near).value).toBeCloseTo(12.5, 9);
    expect(settledNumber(12.31, strong, { ...near, withinMm: 0.05 }).value).toBeCloseTo(12.3, 9);
  });
});
