import { describe, expect, test } from "vitest";
import type { LengthUnit } from "./format.ts";
import { parseLength, readLength } from "./length.ts";
import type { TroubleCode } from "./say.ts";
import { sayTrouble } from "./say.ts";

function readMm(text: string, unit: LengthUnit): number {
  const outcome = parseLength(text, { unit });
  if (!outcome.ok) throw new Error(`${text}: ${outcome.trouble.code}`);
  expect(outcome.warnings).toEqual([]);
  return outcome.value.mm;
}

function refusal(text: string, unit: LengthUnit = "mm"): TroubleCode | "read" {
  const outcome = parseLength(text, { unit });
  return outcome.ok ? "read" : outcome.trouble.code;
}

describe("lengths as people write them", () => {
  // One and three eighths of an inch are 34.925 mm: 1.375 × 25.4.
  test.each([
    '1 3/8"',
    "1-3/8 in",
    "1⅜″",
    "1 ⅜ in.",
    "1-⅜”",
    "1 3/8 inches",
    "1 3/8-inch",
    "11/8 IN",
    "1.375 in",
    "1 3⁄8″",
    "1³⁄₈″",
    "  1 3/8''  ",
    "1\u00a03/8 in",
  ])("%s is an inch and three eighths", (text) => {
    expect(readMm(text, "mm")).toBe(34.925);
  });

  test.each<[string, LengthUnit, number]>([
    ["3/4", "in", 19.05],
    ["1½", "in", 38.1],
    ["½", "in", 12.7],
    [".5", "in", 12.7],
    [".5", "mm", 0.5],
    ["9,5 mm", "in", 9.5],
    ["9,5", "mm", 9.5],
    ["0,250", "mm", 0.25],
    ["1,25", "mm", 1.25],
    ["1,2500", "mm", 1.25],
    ["1.250", "mm", 1.25],
    ["19mm", "in", 19],
    ["19 Millimetres", "in", 19],
    ["1.5cm", "in", 15],
    ["2.4 m", "in", 2400],
    ["0", "mm", 0],
    ["0 in", "mm", 0],
    ["1/3 in", "mm", 25.4 / 3],
    // 2 ft 3½ in are 27.5 in.
    ["2' 3 1/2\"", "mm", 698.5],
    ["2’3½″", "mm", 698.5],
    ["2 ft 3 1/2 in", "mm", 698.5],
    ["2'-3 1/2\"", "mm", 698.5],
    ["2 feet 3 1/2", "mm", 698.5],
    ["6'", "mm", 1828.8],
    ["2½ ft", "mm", 762],
    ["1000000", "mm", 1_000_000],
  ])("%s with %s as the unit is %d mm", (text, unit, expected) => {
    expect(readMm(text, unit)).toBe(expected);
  });

  test("what was typed and its unit are kept", () => {
    expect(parseLength(" 1.5cm ", { unit: "in" })).toEqual({
      ok: true,
      value: { mm: 15, typed: "1.5cm", unit: "cm" },
      warnings: [],
    });
  });

  test("a bare fraction under millimetres is read and warned about", () => {
    const outcome = parseLength("3/4", { unit: "mm", where: "stick.width" });
    if (!outcome.ok) throw new Error(outcome.trouble.code);
    expect(outcome.value.mm).toBe(0.75);
    expect(outcome.warnings.map((warning) => [warning.code, warning.where])).toEqual([
      ["length-fraction-of-millimetre", "stick.width"],
    ]);
    expect(parseLength("3/4 mm", { unit: "mm" })).toMatchObject({ ok: true, warnings: [] });
  });
});

describe("lengths that are refused", () => {
  test.each<[string, TroubleCode]>([
    ["", "length-missing"],
    ["   ", "length-missing"],
    ["-3 mm", "length-negative"],
    ["−⅜″", "length-negative"],
    ["- 3", "length-negative"],
    ["1e308", "length-unreadable"],
    ["NaN", "length-unreadable"],
    ["Infinity", "length-unreadable"],
    ["0x10", "length-unreadable"],
    ["in", "length-unreadable"],
    ["1 2 3", "length-unreadable"],
    ["1..5", "length-unreadable"],
    ["1.5/2", "length-unreadable"],
    ["1,375 5/1", "length-unreadable"],
    ["3 furlongs", "length-unknown-unit"],
    ["3/0 in", "length-zero-denominator"],
    ["1 0/0", "length-zero-denominator"],
    ["1 11/8 in", "length-improper"],
    ["1,250 mm", "length-ambiguous-comma"],
    ["1,250", "length-ambiguous-comma"],
    ["2' 1,250\"", "length-ambiguous-comma"],
    ["5/8 light", "length-light-or-full"],
    ["⅝″ full", "length-light-or-full"],
    ["1000001 mm", "length-too-great"],
    ["9".repeat(100), "length-too-great"],
    ["9".repeat(101), "length-too-many-characters"],
    ["19\u0000mm", "length-control-characters"],
    ["19\u001b[31mmm", "length-control-characters"],
    ["1\u200b9", "length-control-characters"],
  ])("%j: %s", (text, code) => {
    expect(refusal(text)).toBe(code);
  });

  test("a thousand's comma is said with both readings", () => {
    const outcome = parseLength("1,250 mm", { unit: "in" });
    if (outcome.ok) throw new Error("must be refused");
    const { sentence } = sayTrouble(outcome.trouble, { unit: "mm" });
    expect(sentence).toContain("1.25 mm");
    expect(sentence).toContain("1250 mm");
  });

  test("the place in the file is named", () => {
    const outcome = parseLength("wide", { unit: "mm", where: "planes[2].width" });
    expect(outcome).toMatchObject({ ok: false, trouble: { where: "planes[2].width" } });
  });
});

describe("lengths in files", () => {
  test("a number is in the file's unit", () => {
    expect(readLength(0.5, { unit: "in" })).toMatchObject({ ok: true, value: { mm: 12.7, unit: "in" } });
    expect(readLength(9.5, { unit: "mm" })).toMatchObject({ ok: true, value: { mm: 9.5 } });
    expect(readLength("1/2 in", { unit: "mm" })).toMatchObject({ ok: true, value: { mm: 12.7 } });
  });

  test("minus nought is nought", () => {
    const outcome = readLength(-0, { unit: "mm" });
    expect(outcome.ok && Object.is(outcome.value.mm, 0)).toBe(true);
  });

  test.each<[number, TroubleCode]>([
    [Number.NaN, "length-not-a-number"],
    [Number.POSITIVE_INFINITY, "length-not-a-number"],
    [-1, "length-negative"],
    [1e308, "length-too-great"],
  ])("%d: %s", (value, code) => {
    expect(readLength(value, { unit: "in" })).toMatchObject({ ok: false, trouble: { code } });
  });
});
