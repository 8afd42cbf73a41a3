import { formatFieldLength, sameMm } from "mouldwright/measure";
import { expect, test } from "vitest";
import { figureTyped, writeFigure } from "./figure.ts";
import { readLengthTyped } from "./read-length.ts";
import { readAgain } from "./typed-reading.ts";

function lengthAgain(typed: string, valueMm: number, unit: "mm" | "in" = "mm") {
  return readAgain(typed, formatFieldLength(valueMm, unit), {
    value: valueMm,
    read: (text) => readLengthTyped(text, unit, {}),
    isSame: sameMm,
  });
}

test("what the field says already changes nothing, however it is typed", () => {
  expect(lengthAgain("9.525", 9.525)).toEqual({ kind: "same" });
  expect(lengthAgain("3/8 in", 9.525)).toEqual({ kind: "same" });
  // The field says 8.467 mm of a third of an inch: to type that again means the third.
  expect(lengthAgain("8.467", 25.4 / 3)).toEqual({ kind: "same" });
  expect(lengthAgain("0.86614", 22, "in")).toEqual({ kind: "same" });
});

test("a thousandth more is another length", () => {
  expect(lengthAgain("9.526", 9.525)).toEqual({ kind: "new", value: 9.526 });
  expect(lengthAgain("9.5", 9.525)).toEqual({ kind: "new", value: 9.5 });
});

test("what cannot be read says why", () => {
  expect(lengthAgain("wide", 9.525)).toMatchObject({ kind: "none", says: expect.stringContaining("wide") });
});

test("a figure finer than it is shown stays when its rounding is typed again", () => {
  const value = 0.2 / 0.0254;
  const again = readAgain("7.874", writeFigure(value), {
    value,
    read: (text) => {
      const read = figureTyped(text);
      return read === null ? { ok: false, says: "none" } : { ok: true, value: read };
    },
    isSame: (one, other) => one === other,
  });
  expect(again).toEqual({ kind: "same" });
});
