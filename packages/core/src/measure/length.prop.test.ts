import * as fc from "fast-check";
import { expect, test } from "vitest";
import { formatFieldLength, formatLength, type LengthFormat, writeLength } from "./format.ts";
import { nearestFraction } from "./fraction.ts";
import { LONGEST_MM, parseLength, readLength } from "./length.ts";
import { sayTrouble } from "./say.ts";

const settings = { seed: 20261124, numRuns: 2000 };

const lengthMm = fc.oneof(
  fc.double({ min: 0, max: 3000, noNaN: true }),
  // Whole 128ths of an inch: marks and exact ties, a few units in the last place off half the time.
  fc
    .tuple(fc.integer({ min: 0, max: 128 * 60 }), fc.integer({ min: -4, max: 4 }))
    .map(([parts, ulps]) => Math.max(0, (parts * 25.4) / 128 + ulps * 1e-13)),
  fc.integer({ min: 0, max: 20_000 }).map((twentieths) => twentieths / 20),
);

const format: fc.Arbitrary<LengthFormat> = fc.oneof(
  fc.record({
    unit: fc.constant("in" as const),
    denominator: fc.constantFrom(16 as const, 32 as const, 64 as const),
    sides: fc.constant("none" as const),
    form: fc.constantFrom("print" as const, "plain" as const),
  }),
  fc.record({
    unit: fc.constant("mm" as const),
    stepMm: fc.constantFrom(0.1 as const, 0.5 as const),
    form: fc.constantFrom("print" as const, "plain" as const),
  }),
);

test("what is written reads back within half a step, and by exactly the error it tells", () => {
  fc.assert(
    fc.property(lengthMm, format, (length, style) => {
      const written = writeLength(length, style);
      const read = parseLength(written.text, { unit: style.unit === "mm" ? "in" : "mm" });
      if (!read.ok) throw new Error(`${written.text}: ${read.trouble.code}`);
      expect(Math.abs(read.value.mm - length)).toBeLessThanOrEqual(written.stepMm / 2 + 1e-6);
      expect(read.value.mm - length).toBeCloseTo(written.errorMm, 9);
    }),
    settings,
  );
});

test("writing what was read again gives the same text", () => {
  fc.assert(
    fc.property(lengthMm, format, (length, style) => {
      const text = formatLength(length, style);
      const read = parseLength(text, { unit: "mm" });
      if (!read.ok) throw new Error(`${text}: ${read.trouble.code}`);
      expect(formatLength(read.value.mm, style)).toBe(text);
    }),
    settings,
  );
});

test("what stands in a field reads back to within half a thousandth of a millimetre, and is written the same again", () => {
  fc.assert(
    fc.property(lengthMm, fc.constantFrom("mm" as const, "in" as const), (length, unit) => {
      const text = formatFieldLength(length, unit);
      const read = parseLength(text, { unit });
      if (!read.ok) throw new Error(`${text}: ${read.trouble.code}`);
      expect(Math.abs(read.value.mm - length)).toBeLessThanOrEqual(0.0005 + 1e-6);
      expect(formatFieldLength(read.value.mm, unit)).toBe(text);
    }),
    settings,
  );
});

test("a fraction typed in inches comes back as it was typed", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 40 }),
      fc.constantFrom(2, 3, 4, 8, 12, 16, 32, 64),
      fc.nat(),
      (whole, denominator, any) => {
        const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));
        const numerator = (any % (denominator - 1)) + 1;
        fc.pre(gcd(numerator, denominator) === 1);
        const typed = whole === 0 ? `${numerator}/${denominator}` : `${whole} ${numerator}/${denominator}`;
        const read = parseLength(typed, { unit: "in" });
        if (!read.ok) throw new Error(typed);
        const text = formatFieldLength(read.value.mm, "in");
        // NFKC parts the signs for fractions into their digits: 1⅜ becomes 13⁄8.
        expect(text.normalize("NFKC")).toContain(
          `${whole === 0 ? "" : whole}${numerator}\u2044${denominator}`,
        );
        expect(parseLength(text, { unit: "mm" })).toMatchObject({ value: { mm: read.value.mm } });
      },
    ),
    settings,
  );
});

test("the nearest fraction is in lowest terms, and its mirror image is the same", () => {
  const gcd = (a: number, b: number): number => (b === 0 ? a : gcd(b, a % b));
  fc.assert(
    fc.property(lengthMm, fc.constantFrom(16 as const, 32 as const, 64 as const), (length, denominator) => {
      const fraction = nearestFraction(length, denominator);
      expect(gcd(fraction.numerator, fraction.denominator)).toBe(1);
      expect(denominator % fraction.denominator).toBe(0);
      expect(fraction.numerator).toBeLessThan(fraction.denominator);
      const mirrored = nearestFraction(-length, denominator);
      expect(mirrored.whole).toBe(fraction.whole);
      expect(mirrored.numerator).toBe(fraction.numerator);
      expect(mirrored.errorMm).toBeCloseTo(-fraction.errorMm, 12);
    }),
    settings,
  );
});

const anyText = fc.oneof(
  fc.string({ maxLength: 200, unit: "binary" }),
  fc.string({ maxLength: 200, unit: "grapheme" }),
  // Texts made of the very characters lengths are made of come much nearer to the reader's edges.
  fc.string({
    maxLength: 200,
    unit: fc.constantFrom(..."0123456789 .,/-⁄'\"″’½⅜⁵₁₆infmcmlight\u0000\u200b"),
  }),
);

test("no text throws; it is read as a length that can be used, or refused with a sentence and a hint", () => {
  fc.assert(
    fc.property(anyText, fc.constantFrom("mm" as const, "in" as const), (text, unit) => {
      const read = parseLength(text, { unit });
      if (read.ok) {
        expect(read.value.mm).toBeGreaterThanOrEqual(0);
        expect(read.value.mm).toBeLessThanOrEqual(LONGEST_MM);
        expect(Object.is(read.value.mm, -0)).toBe(false);
        return;
      }
      const said = sayTrouble(read.trouble, { unit });
      expect(said.sentence).not.toBe("");
      expect(said.hint).not.toBe("");
      expect(`${said.sentence}${said.hint}`).not.toMatch(/\p{Cc}/u);
    }),
    settings,
  );
});

test("no number throws", () => {
  fc.assert(
    fc.property(fc.double(), fc.constantFrom("mm" as const, "in" as const), (value, unit) => {
      const read = readLength(value, { unit });
      if (read.ok) expect(read.value.mm).toBeLessThanOrEqual(LONGEST_MM);
    }),
    settings,
  );
});
