import { expect, test } from "vitest";
import { freeName, nameOfCopy } from "./free-name.ts";

test.each([
  ["Cornice", [], "Cornice"],
  ["Cornice", ["Cornice"], "Cornice 2"],
  ["Cornice", ["Cornice", "Cornice 2", "Cornice 3"], "Cornice 4"],
  ["Cornice 2", ["Cornice 2"], "Cornice 3"],
  ["", [], "Moulding"],
  ["1850", ["1850"], "1850 2"],
])("%j beside %j becomes %j", (wanted, taken, name) => {
  expect(freeName(wanted, new Set(taken))).toBe(name);
});

test("names stay within what a job file holds", () => {
  const long = "x".repeat(200);
  expect(freeName(long, new Set([long])).length).toBeLessThanOrEqual(200);
  expect(nameOfCopy(long, "14:32")).toHaveLength(200);
});
