import { expect, test } from "vitest";
import { readFigure } from "./figure.ts";

test.each([
  ["22.5", 22.5],
  ["22,5", 22.5],
  ["22 1/2", 22.5],
  ["22½", 22.5],
  ["½", 0.5],
  ["3/4", 0.75],
  ["-5", -5],
  ["\u22125", -5],
  ["+3", 3],
  [" 12 ", 12],
  [".5", 0.5],
  ["-0", 0],
])("a figure: %s", (typed, value) => {
  expect(readFigure(typed)).toBe(value);
});

test.each(["", "about 5", "1/0", "5 mm", "1e3", "5 5", "--5", "9".repeat(41)])("none: %s", (typed) => {
  expect(readFigure(typed)).toBeNull();
});
