import { expect, test } from "vitest";
import { areSameIrons, readIrons } from "./read-irons.ts";

test("widths are parted by semicolons, or by commas followed by a blank", () => {
  expect(readIrons("1/8; 3/16; 1/4", "in")).toEqual({ ok: true, value: [3.175, 4.7625, 6.35] });
  expect(readIrons("3, 6,5, 9", "mm")).toEqual({ ok: true, value: [3, 6.5, 9] });
});

test("none, and one that cannot be read, say so", () => {
  expect(readIrons(" ; ", "mm")).toEqual({ ok: false, says: "At least one iron here: type its width." });
  const broken = readIrons("3; wide", "mm");
  expect(broken.ok ? "" : broken.says).toContain("wide");
});

test("the same irons are the same", () => {
  expect(areSameIrons([3, 6], [3, 6])).toBe(true);
  expect(areSameIrons([3, 6], [3, 6, 9])).toBe(false);
  expect(areSameIrons([3, 6], [3, 6.001])).toBe(false);
});
