import { describe, expect, test } from "vitest";
import { cleanText, harmlessText, isPrintable, printable, quoted } from "./harmless-text.ts";

/** Turns the writing round, clears a terminal, ends a line, hides, and breaks an XML file. */
const HOSTILE = ["\u202e", "\u001b[2J", "\r\n", "\u200b", "\uFFFE", "\uD800", "\uE000", "\u2028"];

describe("whatever is shown", () => {
  test.each(HOSTILE)("%j comes through nowhere", (hostile) => {
    const text = `⅝ in${hostile}round`;
    expect(isPrintable(text)).toBe(false);
    for (const shown of [harmlessText(text), printable(text), cleanText(text), quoted(text)]) {
      expect(isPrintable(shown)).toBe(true);
      expect(shown).toContain("⅝ in");
      expect(shown).toContain("round");
    }
  });

  test("letters, fractions and marks of any script stay as they are", () => {
    const text = "Großer Rundhobel ⅝″, 丸鉋, éé – “α”";
    expect(isPrintable(text)).toBe(true);
    for (const same of [harmlessText, printable, cleanText, quoted]) expect(same(text)).toBe(text);
  });
});

test("a sentence quotes 80 characters at most, a message 40; neither cuts a pair in two", () => {
  expect([...harmlessText("🪵".repeat(100))]).toHaveLength(80);
  expect(harmlessText("x".repeat(81))).toBe(`${"x".repeat(79)}…`);
  expect([...quoted("🪵".repeat(50))]).toHaveLength(40);
  expect(printable("x".repeat(500))).toHaveLength(500);
});

test("blanks: a sheet keeps those at the ends, a name has none, and both have no run of them", () => {
  expect(printable(" a\u0000\u0000 b ")).toBe(" a b ");
  expect(cleanText(" a \t b\u200b ")).toBe("a b");
  expect(harmlessText("\n a \n b ")).toBe("a b");
});

test("values that are no text are quoted by what they are", () => {
  expect([null, undefined, [1], { a: 1 }, 4, true, () => 1].map(quoted)).toEqual([
    "nothing",
    "nothing",
    "a list",
    "a group of keys",
    "4",
    "true",
    "a function",
  ]);
});
