import { expect, test } from "vitest";
import { roundToEven } from "./rounding.ts";

test.each([
  [0.5, 0],
  [1.5, 2],
  [2.5, 2],
  [3.5, 4],
  [-0.5, 0],
  [-1.5, -2],
  [-2.5, -2],
  [0.49, 0],
  [0.51, 1],
  [-0.49, 0],
  [-0.51, -1],
  [7, 7],
])("%d steps round to %d", (steps, expected) => {
  expect(Object.is(roundToEven(steps, 1e-9), expected)).toBe(true);
});

test("a hair beside the tie is still a tie, more than the slack is not", () => {
  expect(roundToEven(2.5 + 0.5e-9, 1e-9)).toBe(2);
  expect(roundToEven(2.5 + 2e-9, 1e-9)).toBe(3);
  expect(roundToEven(3.5 - 0.5e-9, 1e-9)).toBe(4);
  expect(roundToEven(3.5 - 2e-9, 1e-9)).toBe(3);
});
