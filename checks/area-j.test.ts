import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import {
  formatLength,
  INCH_MM,
  type InchDenominator,
  nearestFraction,
  parseLength,
} from "../packages/core/src/measure/index.ts";

interface Row {
  readonly id: string;
  readonly claim: string;
  readonly input: {
    readonly inch?: number | string;
    readonly mm?: number;
    readonly denominator?: number | number[];
  };
  readonly expected: Readonly<Record<string, unknown>>;
  readonly tolMm?: number;
  readonly source: string;
}

const { rows } = JSON.parse(readFileSync(new URL("./area-j.json", import.meta.url), "utf8")) as {
  rows: readonly Row[];
};

function readMm(text: string): number {
  const outcome = parseLength(text, { unit: "in" });
  if (!outcome.ok) throw new Error(`${text}: ${outcome.trouble.code}`);
  return outcome.value.mm;
}

/** The nearest fraction as the table prints it: improper, in lowest terms. */
function printed(lengthMm: number, denominator: number): string {
  const fraction = nearestFraction(lengthMm, denominator as InchDenominator);
  const above = fraction.whole * fraction.denominator + fraction.numerator;
  return fraction.denominator === 1 ? `${above}` : `${above}/${fraction.denominator}`;
}

const of = (...claims: string[]): Row[] => rows.filter((row) => claims.includes(row.claim));

describe("Area J: inches and fractions", () => {
  test("every row is run", () => {
    const run = of(
      "inch",
      "nearest fraction",
      "mm to nearest fraction",
      "exact ties",
      "graduations",
      "half graduation",
    );
    expect(run.length).toBe(rows.length);
    expect(rows.length).toBe(20);
  });

  test.each(of("inch"))("$id an inch in mm ($source)", ({ expected }) => {
    expect(INCH_MM).toBe(expected.mm);
    expect(readMm("1 in")).toBe(expected.mm);
  });

  test.each(of("nearest fraction"))("$id $input.inch in to 1/$input.denominator", ({ input, expected }) => {
    expect(printed(readMm(`${input.inch} in`), input.denominator as number)).toBe(expected.fraction);
  });

  test.each(of("mm to nearest fraction"))(
    "$id $input.mm mm to 1/$input.denominator",
    ({ input, expected, tolMm }) => {
      const lengthMm = readMm(`${input.mm} mm`);
      expect(printed(lengthMm, input.denominator as number)).toBe(expected.fraction_in);
      const { errorMm } = nearestFraction(lengthMm, input.denominator as InchDenominator);
      expect(Math.abs(errorMm - (expected.error_mm as number))).toBeLessThanOrEqual(tolMm as number);
    },
  );

  test.each(of("exact ties"))(
    "$id a tie at $input.inch in goes to the even 1/$input.denominator ($source)",
    ({ input, expected }) => {
      expect(printed(readMm(`${input.inch} in`), input.denominator as number)).toBe(expected.half_to_even);
    },
  );

  test.each(of("graduations"))("$id rules are divided by halving ($source)", () => {
    // Every sixty-fourth of the first inch, written for a maker, stands over a power of two.
    for (let parts = 1; parts < 64; parts++) {
      const text = formatLength((parts * INCH_MM) / 64, { unit: "in", denominator: 64, form: "plain" });
      expect(text).toMatch(/^\d+\/(2|4|8|16|32|64) in$/);
    }
  });

  test.each(of("half graduation"))(
    "$id the greatest rounding error is half a division",
    ({ input, expected }) => {
      const greatest = expected.max_rounding_error_mm as number[];
      (input.denominator as number[]).forEach((denominator, index) => {
        let worstMm = 0;
        for (let mm = 0; mm <= 254; mm += 0.001) {
          worstMm = Math.max(worstMm, Math.abs(nearestFraction(mm, denominator as InchDenominator).errorMm));
        }
        const tieMm = INCH_MM / denominator / 2;
        worstMm = Math.max(worstMm, Math.abs(nearestFraction(tieMm, denominator as InchDenominator).errorMm));
        expect(Math.abs(worstMm - greatest[index]!)).toBeLessThanOrEqual(1e-9);
      });
    },
  );
});
