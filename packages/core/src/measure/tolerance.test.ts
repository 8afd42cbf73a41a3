import { expect, test } from "vitest";
import {
  DEFAULT_TOLERANCE_MM,
  DRAWING_NOISE_MM,
  FLATTEN_MM,
  LADDER_MM,
  LEAST_TOLERANCE_MM,
  OVERCUT_MM,
  SAME_POINT_MM,
  SEARCH_FLATTEN_MM,
} from "./tolerance.ts";

test("every rung of the ladder is at least 20 times the one below, the rounding of 10 m below them all", () => {
  const rungs = [10_000 * Number.EPSILON, ...LADDER_MM];
  for (let rung = 1; rung < rungs.length; rung++) {
    // A factor of exactly 20 must not fail by the division's last bit.
    expect(rungs[rung]! / rungs[rung - 1]!).toBeGreaterThanOrEqual(20 * (1 - 4 * Number.EPSILON));
  }
});

test("the ladder holds the tolerances it names, in order", () => {
  expect(LADDER_MM).toEqual([SAME_POINT_MM, FLATTEN_MM, OVERCUT_MM, DEFAULT_TOLERANCE_MM]);
  expect(DRAWING_NOISE_MM).toBe(OVERCUT_MM);
});

test("the two lengths that are no rungs stand where the file says", () => {
  expect(SEARCH_FLATTEN_MM).toBeGreaterThan(FLATTEN_MM);
  expect(SEARCH_FLATTEN_MM).toBeLessThan(OVERCUT_MM);
  expect(LEAST_TOLERANCE_MM).toBeGreaterThanOrEqual(2 * OVERCUT_MM);
  expect(LEAST_TOLERANCE_MM).toBeGreaterThanOrEqual(20 * FLATTEN_MM);
  expect(LEAST_TOLERANCE_MM).toBeLessThan(DEFAULT_TOLERANCE_MM);
});
