import { describe, expect, test } from "vitest";
import {
  atLeastMm,
  atMostMm,
  exceedsMm,
  requireBetween,
  requireCount,
  requireFinite,
  requireNotNegative,
  requirePositive,
  sameMm,
} from "./compare.ts";
import { Bug } from "./trouble.ts";

describe("comparing lengths", () => {
  test("within the slack they are the same, beyond it they are not", () => {
    expect(sameMm(10, 10 + 0.9e-6)).toBe(true);
    expect(sameMm(10, 10 - 1.1e-6)).toBe(false);
    expect(sameMm(1, 1.25, 0.25)).toBe(true);
    expect(sameMm(1, 1.26, 0.25)).toBe(false);
  });

  test("a limit holds with its slack, the slack itself included", () => {
    expect(exceedsMm(1.25, 1, 0.25)).toBe(false);
    expect(exceedsMm(1.2501, 1, 0.25)).toBe(true);
    expect(atMostMm(1.25, 1, 0.25)).toBe(true);
    expect(atMostMm(1.2501, 1, 0.25)).toBe(false);
    expect(atLeastMm(0.75, 1, 0.25)).toBe(true);
    expect(atLeastMm(0.7499, 1, 0.25)).toBe(false);
  });

  test("NaN passes no limit", () => {
    expect(sameMm(Number.NaN, Number.NaN)).toBe(false);
    expect(exceedsMm(Number.NaN, 1)).toBe(false);
    expect(atMostMm(Number.NaN, 1)).toBe(false);
    expect(atLeastMm(Number.NaN, 1)).toBe(false);
  });
});

describe("demands on numbers", () => {
  test("give the value back", () => {
    expect(requireFinite("a", -2)).toBe(-2);
    expect(requirePositive("a", 1e-12)).toBe(1e-12);
    expect(requireNotNegative("a", 0)).toBe(0);
    expect(requireBetween("a", 3, 3, 4)).toBe(3);
    expect(requireCount("a", 7)).toBe(7);
  });

  test.each<[string, () => number]>([
    ["NaN", () => requireFinite("widthMm", Number.NaN)],
    ["infinity", () => requirePositive("widthMm", Number.POSITIVE_INFINITY)],
    ["nought", () => requirePositive("widthMm", 0)],
    ["less than nought", () => requireNotNegative("widthMm", -1e-12)],
    ["below the range", () => requireBetween("widthMm", 2.99, 3, 4)],
    ["above the range", () => requireBetween("widthMm", 4.01, 3, 4)],
    ["part of one", () => requireCount("widthMm", 1.5)],
  ])("%s is refused by the value's name", (_case, demand) => {
    expect(demand).toThrow(Bug);
    expect(demand).toThrow(/widthMm/);
  });
});
