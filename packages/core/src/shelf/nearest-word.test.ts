import { expect, test } from "vitest";
import { nearestWord } from "./nearest-word.ts";

const KNOWN = ["radius", "width", "widths", "skew", "id"];

test.each([
  ["raduis", "radius", "two neighbours swapped"],
  ["RADIUS", "radius", "capitals"],
  ["widt", "width", "one letter left out"],
  ["widthss", "widths", "one letter too many"],
  ["skow", "skew", "one letter changed"],
  ["ir", "id", "one of two letters changed"],
])("%s is meant for %s: %s", (written, meant) => {
  expect(nearestWord(written, KNOWN)).toBe(meant);
});

test.each(["colour", "", "w", "x".repeat(100_000)])("nothing is near %j", (written) => {
  expect(nearestWord(written.slice(0, 100_000), KNOWN)).toBeUndefined();
});
