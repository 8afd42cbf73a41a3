import { expect, test } from "vitest";
import { entriesToAdd, filledEntry, newPlanesOf, withRadius, withSize } from "./new-planes.ts";

test("a pair gives a hollow and a round of one size", () => {
  const entries = entriesToAdd(withRadius(newPlanesOf("hollow"), 12, 11));
  expect(entries.map(({ kind, radius, width }) => [kind, radius, width])).toEqual([
    ["hollow", 12, 11],
    ["round", 12, 11],
  ]);
});

test("both hands give two planes", () => {
  const entries = entriesToAdd(withSize(newPlanesOf("snipe bill"), "hand", "both"));
  expect(entries.map(({ hand }) => hand)).toEqual(["left", "right"]);
});

test("width follows the radius until it is said by itself", () => {
  const first = withSize(newPlanesOf("hollow"), "radius", 12);
  expect(first.entry.width).toBe(12);
  const second = withSize(withSize(first, "width", 10), "radius", 15);
  expect(second.entry.width).toBe(10);
});

test("what is not said is filled in as the reader fills it in", () => {
  expect(filledEntry(newPlanesOf("moving fillister")).depth).toBe(20);
  expect(filledEntry(withSize(newPlanesOf("hollow"), "width", 100)).width).toBe(100);
});
