import { describe, expect, test } from "vitest";
import { acosRad, asinRad, normaliseDeg, normaliseRad, toDeg, toRad, turnDeg } from "./angles.ts";
import { Bug } from "./trouble.ts";

describe("degrees and radians", () => {
  test("right angle, half turn and nought by hand", () => {
    expect(toRad(90)).toBe(Math.PI / 2);
    expect(toRad(-180)).toBe(-Math.PI);
    expect(toDeg(Math.PI)).toBe(180);
    expect(Object.is(toRad(-0), 0)).toBe(true);
  });

  test("there and back over the whole circle, quarter by quarter of a degree", () => {
    for (let quarter = -1440; quarter <= 1440; quarter++) {
      expect(toDeg(toRad(quarter / 4))).toBeCloseTo(quarter / 4, 12);
    }
  });

  test("what is no number is refused by name", () => {
    expect(() => toRad(Number.NaN)).toThrow(/angleDeg/);
    expect(() => toDeg(Number.POSITIVE_INFINITY)).toThrow(Bug);
  });
});

describe("the same direction in (−180, 180]", () => {
  test.each([
    [0, 0],
    [180, 180],
    [-180, 180],
    [181, -179],
    [-181, 179],
    [360, 0],
    [-360, 0],
    [540, 180],
    [-540, 180],
    [725, 5],
  ])("%d is %d", (angle, expected) => {
    expect(Object.is(normaliseDeg(angle), expected)).toBe(true);
  });

  test("in radians half a turn either way is +π", () => {
    expect(normaliseRad(-Math.PI)).toBe(Math.PI);
    expect(normaliseRad(Math.PI)).toBe(Math.PI);
    expect(normaliseRad(2 * Math.PI)).toBe(0);
    expect(normaliseRad(-1.5 * Math.PI)).toBeCloseTo(0.5 * Math.PI, 14);
  });

  test("the turn goes the shorter way", () => {
    expect(turnDeg(170, -170)).toBe(20);
    expect(turnDeg(-170, 170)).toBe(-20);
    expect(turnDeg(0, 180)).toBe(180);
  });
});

describe("arc sine and cosine of computed ratios", () => {
  test("a ratio past one by round-off is a right angle", () => {
    expect(asinRad(1 + 2 ** -52)).toBe(Math.PI / 2);
    expect(acosRad(-1 - 2 ** -52)).toBe(Math.PI);
  });

  test("a ratio that is plainly too great is a bug", () => {
    expect(() => asinRad(1.01)).toThrow(Bug);
    expect(() => acosRad(Number.NaN)).toThrow(Bug);
  });
});
