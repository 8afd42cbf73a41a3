import { describe, expect, test } from "vitest";
import { figureTyped, writeFigure } from "./figure.ts";

describe("figures as they are typed", () => {
  test.each([
    ["22.5", 22.5],
    ["22,5°", 22.5],
    ["22 1/2", 22.5],
    ["22½", 22.5],
    ["½", 0.5],
    ["3/4", 0.75],
    ["-5", -5],
    ["\u22125 °C", -5],
    [" 12 % ", 12],
    [".5", 0.5],
    ["0", 0],
  ])("%s", (typed, value) => {
    expect(figureTyped(typed)).toBe(value);
  });

  test.each(["", "about 5", "1/0", "5 mm", "1e3", "5 5", "9".repeat(41)])("none: %s", (typed) => {
    expect(figureTyped(typed)).toBeNull();
  });

  test("written as it can be typed again", () => {
    expect(writeFigure(-22.5004)).toBe("\u221222.5");
    expect(figureTyped(writeFigure(-22.125))).toBe(-22.125);
  });
});
