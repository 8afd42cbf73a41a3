import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type CircleFitting, fitCircle } from "./fit-circle.ts";
import { point } from "./point.ts";
import type { Point } from "./types.ts";

const FITTINGS: readonly CircleFitting[] = ["kasa", "pratt", "taubin", "geometric"];

const onCircle = (x: number, y: number, radius: number, degrees: readonly number[]): Point[] =>
  degrees.map((deg) =>
    point(x + radius * Math.cos((deg * Math.PI) / 180), y + radius * Math.sin((deg * Math.PI) / 180)),
  );

function fitted(points: readonly Point[], fitting: CircleFitting) {
  const fit = fitCircle(points, fitting);
  if (!fit.ok) throw new Error(fit.trouble.code);
  return fit.value;
}

describe.each(FITTINGS)("%s", (fitting) => {
  test("points of a circle give that circle, however short the arc", () => {
    const places = fc.record({
      x: fc.double({ min: -500, max: 500, noNaN: true }),
      y: fc.double({ min: -500, max: 500, noNaN: true }),
      radius: fc.double({ min: 1, max: 300, noNaN: true }),
      from: fc.integer({ min: 0, max: 359 }),
      sweep: fc.integer({ min: 10, max: 360 }),
      count: fc.integer({ min: 3, max: 40 }),
    });
    fc.assert(
      fc.property(places, ({ x, y, radius, from, sweep, count }) => {
        const degrees = Array.from({ length: count }, (_, i) => from + (sweep * i) / count);
        const fit = fitted(onCircle(x, y, radius, degrees), fitting);
        expect(Math.abs(fit.radiusMm - radius)).toBeLessThan(1e-6);
        expect(Math.hypot(fit.centre.x - x, fit.centre.y - y)).toBeLessThan(1e-6);
        expect(fit.rmsMm).toBeLessThan(1e-9);
      }),
      { seed: 41, numRuns: 200 },
    );
  });

  test("moved, turned and enlarged points give the circle moved, turned and enlarged", () => {
    const points = onCircle(0, 0, 10, [0, 20, 40, 60, 80, 100]).map((p, i) =>
      point(p.x, p.y + (i % 2) * 0.1),
    );
    const plain = fitted(points, fitting);
    // By 3-4-5, twice as large, and off to the side.
    const laid = fitted(
      points.map(({ x, y }) => point(2 * (0.6 * x - 0.8 * y) + 70, 2 * (0.8 * x + 0.6 * y) - 30)),
      fitting,
    );
    const { x, y } = plain.centre;
    expect(laid.radiusMm).toBeCloseTo(2 * plain.radiusMm, 7);
    expect(laid.centre.x).toBeCloseTo(2 * (0.6 * x - 0.8 * y) + 70, 7);
    expect(laid.centre.y).toBeCloseTo(2 * (0.8 * x + 0.6 * y) - 30, 7);
    expect(laid.rmsMm).toBeCloseTo(2 * plain.rmsMm, 7);
  });

  test("two points, or none, are too few", () => {
    for (const count of [0, 1, 2]) {
      const fit = fitCircle(onCircle(0, 0, 5, [0, 90].slice(0, count)), fitting);
      expect(fit.ok ? null : [fit.trouble.code, fit.trouble.facts]).toEqual([
        "points-too-few",
        { count, least: 3 },
      ]);
    }
  });

  test("points in one line, and points in one place, lie on no circle", () => {
    const aslant = [0, 1, 2.5, 7].map((t) => point(3 + 2 * t, 4 - t));
    const level = [0, 1, 2].map((t) => point(t, 7));
    const upright = [0, 1, 2].map((t) => point(1e5, t));
    const one = [0, 1, 2].map(() => point(3, 3));
    const two = [0, 1, 0, 1].map((t) => point(t, 2 * t));
    for (const points of [aslant, level, upright, one, two]) {
      const fit = fitCircle(points, fitting);
      expect(fit.ok ? fit.value : fit.trouble.code).toBe("points-in-line");
    }
  });

  test("what is no number is told by its place in the list", () => {
    for (const broken of [Number.NaN, Number.POSITIVE_INFINITY, -1e300]) {
      const points = [point(0, 0), point(1, 0), { x: 1, y: broken }, point(0, 1)];
      const fit = fitCircle(points, fitting);
      expect(fit.ok ? null : [fit.trouble.code, fit.trouble.facts]).toEqual([
        "point-not-a-place",
        { place: 3 },
      ]);
    }
  });
});

describe("the geometric fit", () => {
  const noisy = fc.record({
    radius: fc.double({ min: 3, max: 60, noNaN: true }),
    sweep: fc.integer({ min: 40, max: 180 }),
    noise: fc.array(fc.double({ min: -0.2, max: 0.2, noNaN: true }), { minLength: 6, maxLength: 30 }),
  });

  const pointsOf = ({ radius, sweep, noise }: { radius: number; sweep: number; noise: readonly number[] }) =>
    noise.flatMap((off, i) => onCircle(0, 0, radius + off, [(sweep * i) / (noise.length - 1)]));

  test("no circle beside it lies nearer to the points, nor does another fit's", () => {
    fc.assert(
      fc.property(noisy, (one) => {
        const points = pointsOf(one);
        const best = fitted(points, "geometric");
        const rms = (x: number, y: number, r: number) =>
          Math.sqrt(points.reduce((s, p) => s + (Math.hypot(p.x - x, p.y - y) - r) ** 2, 0) / points.length);
        const { x, y } = best.centre;
        for (const [dx, dy, dr] of [
          [0.01, 0, 0],
          [-0.01, 0, 0],
          [0, 0.01, 0],
          [0, -0.01, 0],
          [0, 0, 0.01],
          [0, 0, -0.01],
        ] as const)
          expect(rms(x + dx, y + dy, best.radiusMm + dr)).toBeGreaterThanOrEqual(best.rmsMm - 1e-12);
        for (const other of ["kasa", "pratt", "taubin"] as const)
          expect(fitted(points, other).rmsMm).toBeGreaterThanOrEqual(best.rmsMm - 1e-12);
      }),
      { seed: 42, numRuns: 200 },
    );
  });

  test("points to which a line lies nearer than any circle are refused, not fitted with a huge one", () => {
    const zigzag = [0, 1, 2, 3, 4, 5].map((t) => point(t, t % 2 === 0 ? 0.1 : -0.1));
    // The same upside down is the same: a circle could only bend to one side.
    const both = [...zigzag, ...zigzag.map(({ x, y }) => point(x, -y))];
    const fit = fitCircle(both, "geometric");
    expect(fit.ok ? fit.value : fit.trouble.code).toBe("points-in-line");
  });

  test("four points of a cross have their middle for a centre, however unlike its arms", () => {
    // By symmetry; the mean distance of arms 3 and 5 is 4.
    const fit = fitted([point(3, 0), point(-3, 0), point(0, 5), point(0, -5)], "geometric");
    expect(fit.radiusMm).toBeCloseTo(4, 9);
    expect(fit.rmsMm).toBeCloseTo(1, 9);
  });
});
