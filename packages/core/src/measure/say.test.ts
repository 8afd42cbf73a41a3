import { describe, expect, test } from "vitest";
import { writerFor } from "./say/writer.ts";
import { ALL_CODES, CATALOGUES, exampleOf, sayTrouble } from "./say.ts";
import { trouble } from "./trouble.ts";

const UNSAYABLE = /undefined|NaN|\[object/;

describe.each(ALL_CODES)("%s", (code) => {
  test.each(["mm", "in"] as const)("has a sentence and a hint for its example, in %s", (unit) => {
    const said = sayTrouble(trouble(code, "planes[2].radius", exampleOf(code)), { unit });
    for (const text of [said.sentence, said.hint]) {
      expect(text.trim()).not.toBe("");
      expect(text).not.toMatch(UNSAYABLE);
      expect(text).toMatch(/[.?]$/);
    }
    expect(said.where).toBe("planes[2].radius");
  });

  test("can be said even when every fact is missing", () => {
    const said = sayTrouble(trouble(code, ""), { unit: "in" });
    expect(`${said.sentence} ${said.hint}`).not.toMatch(UNSAYABLE);
  });
});

test("every code stands in one catalogue only and is spelt in small letters", () => {
  const codes = CATALOGUES.flatMap((entries) => Object.keys(entries));
  expect(new Set(codes).size).toBe(codes.length);
  expect(codes.filter((code) => !/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/.test(code))).toEqual([]);
});

test("a measure's fact ends in its unit and is a number", () => {
  for (const code of ALL_CODES) {
    for (const [key, value] of Object.entries(exampleOf(code))) {
      if (/(Mm|Mm2|Deg)$/.test(key)) expect(typeof value, `${code}: ${key}`).toBe("number");
    }
  }
});

test("a code without an entry is said as our own mistake", () => {
  const said = sayTrouble(trouble("no-such-code", ""), { unit: "mm" });
  expect(said.sentence).toContain("no-such-code");
  expect(said.hint).not.toBe("");
});

describe("the writer", () => {
  test("measures come in the reader's unit", () => {
    expect(writerFor("mm").length(9.525)).toBe("9.5\u00a0mm");
    expect(writerFor("in").length(9.525)).toBe("⅜″");
    expect(writerFor("in", "plain").length(9.525)).toBe("3/8 in");
    expect(writerFor("mm", "plain").area(12.34)).toBe("12.3 mm2");
    expect(writerFor("in").area(645.16)).toBe("1\u00a0in²");
  });

  test("lengths too small for the rule come in finer steps, unless a mark says them", () => {
    expect(writerFor("in").length(25.4 / 32)).toBe("¹⁄₃₂″");
    expect(writerFor("mm", "plain").length(0.1)).toBe("0.1 mm");
    expect(writerFor("mm", "plain").length(0.15)).toBe("0.15 mm");
    // 1.0937 mm: 1.38 thirty-seconds, 2.76 sixty-fourths.
    expect(writerFor("in", "plain").length(25.4 / 32 + 0.3)).toBe("3/64 in");
    expect(writerFor("mm", "plain").length(0.013)).toBe("0.013 mm");
    expect(writerFor("in", "plain").length(0.254)).toBe("1/64 in light");
    expect(writerFor("in").length(0.0502 * 25.4)).toBe("³⁄₆₄″");
    expect(writerFor("in").length(0.15)).toBe("6\u00a0thou");
    expect(writerFor("in").length(0.005)).toBe("under 1 thou");
    expect(writerFor("in").length(0)).toBe("0″");
    expect(writerFor("in", "plain").length(0.15)).toBe("0.0059 in");
    expect(writerFor("mm", "plain").length(0)).toBe("0 mm");
  });

  test("a rule divided in sixty-fourths tells more, light and full from a third of one on", () => {
    const fine = writerFor("in", "print", 64);
    expect(fine.length(13.49375)).toBe("¹⁷⁄₃₂″");
    expect(fine.length(13.9)).toBe("³⁵⁄₆₄″");
    expect(fine.length(14.05)).toBe("³⁵⁄₆₄″ full");
    expect(writerFor("in").length(14.05)).toBe("⁹⁄₁₆″");
  });

  test("a thickness is told by the shaving", () => {
    expect(writerFor("in").thickness(0.3)).toBe("12\u00a0thou");
    expect(writerFor("mm").thickness(0.3)).toBe("0.3\u00a0mm");
    expect(writerFor("in", "plain").thickness(0.3)).toBe("0.0118 in");
    expect(writerFor("in").thickness(Number.NaN)).toBe("?");
  });

  test("degrees are whole, tenths when small", () => {
    expect(writerFor("mm").degrees(29.6)).toBe("30°");
    expect(writerFor("mm").degrees(0.5)).toBe("0.5°");
  });

  test("foreign text loses its control and invisible characters and is cut at 80 characters", () => {
    const write = writerFor("mm");
    expect(write.text("a\u0000b\u001b[31mc\u202ed\ne")).toBe("a b [31mc d e");
    expect([...write.text("é".repeat(500))]).toHaveLength(80);
    expect(write.text("\ud800x")).toBe("x");
  });

  test("lists are joined as in speech and cut at eight", () => {
    const write = writerFor("mm");
    expect(write.list([])).toBe("");
    expect(write.list(["a"])).toBe("a");
    expect(write.list(["a", "b"])).toBe("a and b");
    expect(write.list(["a", "b", "c"])).toBe("a, b and c");
    expect(write.list([..."abcdefghijkl"])).toBe("a, b, c, d, e, f, g, h and 4 more");
  });
});

test.each(["noise-sides", "noise-ends", "noise-tangency"] as const)(
  "%s: what is next to nothing is never told as nothing",
  (code) => {
    const said = sayTrouble(trouble(code, "section", { places: 1, farthestMm: 0.00002 }), { unit: "mm" });
    expect(JSON.stringify(said)).toContain("0.001");
  },
);
