import { describe, expect, test } from "vitest";
import {
  formatDeg,
  formatExactLength,
  formatFieldLength,
  formatLength,
  type LengthFormat,
  writeLength,
} from "./format.ts";
import { nearestFraction } from "./fraction.ts";
import { Bug } from "./trouble.ts";

const inches = (count: number): number => count * 25.4;

describe("fractions of an inch", () => {
  test.each<[number, LengthFormat, string]>([
    [inches(1.375), { unit: "in" }, "1⅜″"],
    [inches(0.3125), { unit: "in" }, "⁵⁄₁₆″"],
    [inches(2 + 31 / 32), { unit: "in" }, "2³¹⁄₃₂″"],
    [inches(3), { unit: "in" }, "3″"],
    [0, { unit: "in" }, "0″"],
    [-0, { unit: "in" }, "0″"],
    [-0.01, { unit: "in" }, "0″"],
    [inches(-1.375), { unit: "in" }, "−1⅜″"],
    [inches(0.5), { unit: "in", form: "plain" }, "1/2 in"],
    [inches(1.375), { unit: "in", form: "plain" }, "1 3/8 in"],
    [inches(-1.375), { unit: "in", form: "plain" }, "-1 3/8 in"],
    [inches(63.9 / 64), { unit: "in", denominator: 16 }, "1″"],
  ])("%d mm with %o is %s", (lengthMm, format, expected) => {
    expect(formatLength(lengthMm, format)).toBe(expected);
  });

  test("light a little below the mark, full a little above, from a third of a division on", () => {
    const division = inches(1 / 32);
    const mark = inches(5 / 8);
    expect(formatLength(mark - 0.4 * division, { unit: "in" })).toBe("⅝″ light");
    expect(formatLength(mark + 0.4 * division, { unit: "in" })).toBe("⅝″ full");
    expect(formatLength(mark - 0.3 * division, { unit: "in" })).toBe("⅝″");
    expect(formatLength(mark + 0.3 * division, { unit: "in" })).toBe("⅝″");
    expect(formatLength(-mark + 0.4 * division, { unit: "in" })).toBe("−⅝″ light");
    expect(formatLength(mark - 0.4 * division, { unit: "in", sides: "none" })).toBe("⅝″");
  });

  test("the rounding error is what the text says minus the length", () => {
    const written = writeLength(10, { unit: "in", denominator: 16 });
    expect(written.errorMm).toBeCloseTo(9.525 - 10, 12);
    expect(written.stepMm).toBe(25.4 / 16);
  });

  test("a negative length carries its sign beside the size", () => {
    expect(nearestFraction(-9.525, 16)).toEqual({
      sign: -1,
      whole: 0,
      numerator: 3,
      denominator: 8,
      errorMm: expect.closeTo(0, 12),
    });
  });

  test("NaN is a bug", () => {
    expect(() => nearestFraction(Number.NaN, 16)).toThrow(Bug);
    expect(() => formatLength(Number.NaN, { unit: "mm" })).toThrow(Bug);
  });
});

describe("millimetres", () => {
  test.each<[number, LengthFormat, string]>([
    [9.5, { unit: "mm" }, "9.5\u00a0mm"],
    [9.96, { unit: "mm" }, "10\u00a0mm"],
    [0.25, { unit: "mm" }, "0.2\u00a0mm"],
    [0.35, { unit: "mm" }, "0.4\u00a0mm"],
    [-0.04, { unit: "mm" }, "0\u00a0mm"],
    [-3.2, { unit: "mm" }, "−3.2\u00a0mm"],
    [3.25, { unit: "mm", stepMm: 0.5 }, "3\u00a0mm"],
    [3.75, { unit: "mm", stepMm: 0.5 }, "4\u00a0mm"],
    [3.3, { unit: "mm", stepMm: 0.5, form: "plain" }, "3.5 mm"],
    [100, { unit: "mm", form: "plain" }, "100 mm"],
  ])("%d with %o is %s", (lengthMm, format, expected) => {
    expect(formatLength(lengthMm, format)).toBe(expected);
  });
});

describe("as it stands in a field", () => {
  test.each<[number, string]>([
    [9.525, "9.525\u00a0mm"],
    [9.5, "9.5\u00a0mm"],
    [12, "12\u00a0mm"],
    [-3.175, "−3.175\u00a0mm"],
    [inches(1 / 3), "8.467\u00a0mm"],
    [0, "0\u00a0mm"],
  ])("%d mm is %s", (lengthMm, expected) => {
    expect(formatFieldLength(lengthMm, "mm")).toBe(expected);
  });

  test.each<[number, string]>([
    [inches(1.375), "1⅜″"],
    [inches(3), "3″"],
    [0, "0″"],
    [inches(-0.375), "−⅜″"],
    [inches(17 / 64), "¹⁷⁄₆₄″"],
    [inches(2 + 1 / 128), "2¹⁄₁₂₈″"],
    [inches(0.1), "0.1″"],
    [inches(0.0625 + 0.0001), "0.0626″"],
    [inches(1 / 3), "¹⁄₃″"],
    [22, "0.86614″"],
    [-22, "−0.86614″"],
  ])("%d mm is %s in inches", (lengthMm, expected) => {
    expect(formatFieldLength(lengthMm, "in")).toBe(expected);
  });
});

describe("exact on demand", () => {
  test("three decimals of a millimetre, four of an inch", () => {
    expect(formatExactLength(9.525, { unit: "mm", form: "plain" })).toBe("9.525 mm");
    expect(formatExactLength(9.525, { unit: "in" })).toBe("0.375″");
    expect(formatExactLength(12, { unit: "mm", form: "plain" })).toBe("12 mm");
    expect(formatExactLength(-0.0001, { unit: "mm", form: "plain" })).toBe("0 mm");
  });
});

describe("degrees", () => {
  test("to one for a hand, ties to even, never minus nought", () => {
    expect(formatDeg(29.6)).toBe("30°");
    expect(formatDeg(2.5)).toBe("2°");
    expect(formatDeg(3.5)).toBe("4°");
    expect(formatDeg(-0.4)).toBe("0°");
    expect(formatDeg(-12)).toBe("−12°");
  });

  test("to a quarter for a saw", () => {
    expect(formatDeg(22.3, { stepDeg: 0.25 })).toBe("22¼°");
    expect(formatDeg(-22.5, { stepDeg: 0.25 })).toBe("−22½°");
    expect(formatDeg(0.75, { stepDeg: 0.25 })).toBe("¾°");
    expect(formatDeg(33.9, { stepDeg: 0.25 })).toBe("34°");
    expect(formatDeg(22.3, { stepDeg: 0.25, form: "plain" })).toBe("22.25 deg");
  });

  test("finer for screens", () => {
    expect(formatDeg(35.264, { stepDeg: 0.1 })).toBe("35.3°");
    expect(formatDeg(35.264, { stepDeg: 0.01 })).toBe("35.26°");
  });
});
