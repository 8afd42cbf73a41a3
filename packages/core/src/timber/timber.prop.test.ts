import fc from "fast-check";
import { expect, test } from "vitest";
import { equilibriumMoisture, findTimber, movement, strainByShrinkage, TIMBERS } from "./index.ts";

const SETTINGS = { seed: 20261124, numRuns: 300 };
const real = (min: number, max: number) => fc.double({ min, max, noNaN: true, noDefaultInfinity: true });
/** Moisture contents as a meter reads them. */
const tenths = fc.integer({ min: 0, max: 300 }).map((tenth) => tenth / 10);
const moving = TIMBERS.filter(({ shrinkage, coefficients }) => shrinkage !== null || coefficients !== null);

test("no text makes the look-up throw, and a refusal always offers something", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary", maxLength: 200 }), (asked) => {
      const found = findTimber(asked);
      if (found.ok) expect(TIMBERS).toContain(found.value);
      else if (found.trouble.code === "timber-unknown") expect(found.trouble.facts.nearest).toHaveLength(5);
    }),
    SETTINGS,
  );
});

test("moisture rises with humidity, and stays within 0 and 40 %", () => {
  fc.assert(
    fc.property(real(-30, 120), real(0, 99), real(0.1, 1), (celsius, humidity, more) => {
      const low = equilibriumMoisture({ celsius }, humidity);
      const high = equilibriumMoisture({ celsius }, Math.min(100, humidity + more));
      if (!low.ok || !high.ok) throw new Error("refused");
      expect(high.value.moisturePercent).toBeGreaterThan(low.value.moisturePercent);
      expect(low.value.moisturePercent).toBeGreaterThanOrEqual(0);
      expect(high.value.moisturePercent).toBeLessThan(40);
    }),
    SETTINGS,
  );
});

test("drying shrinks, wetting swells, more width moves more, flat-sawn moves at least as much as quarter-sawn", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...moving),
      real(1, 2000),
      tenths,
      tenths,
      (timber, widthMm, fromPercent, toPercent) => {
        const change = (sawn: "flat" | "quarter", times = 1) => {
          const moved = movement({ timber, widthMm: widthMm * times, fromPercent, toPercent, sawn });
          if (!moved.ok) throw new Error(JSON.stringify(moved.trouble));
          return moved.value.width.changeMm;
        };
        const flat = change("flat");
        expect(Math.sign(flat)).toBe(Math.sign(toPercent - fromPercent));
        expect(Math.abs(flat)).toBeGreaterThanOrEqual(Math.abs(change("quarter")));
        expect(change("flat", 2)).toBeCloseTo(2 * flat, 6);
      },
    ),
    SETTINGS,
  );
});

test("the wider formula: there and back is nothing, and two steps are one", () => {
  fc.assert(
    fc.property(real(0.5, 15), real(0, 30), real(0, 30), real(0, 30), (shrinkage, a, b, c) => {
      const factor = (from: number, to: number) => 1 + strainByShrinkage(shrinkage, from, to);
      expect(factor(a, b) * factor(b, a)).toBeCloseTo(1, 10);
      expect(factor(a, b) * factor(b, c)).toBeCloseTo(factor(a, c), 10);
    }),
    SETTINGS,
  );
});
