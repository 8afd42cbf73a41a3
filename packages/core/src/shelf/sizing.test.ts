import { describe, expect, test } from "vitest";
import { nearestPairNumber, pairSizeMm, READING_MM, radiusFromSole } from "./sizing.ts";

describe("pair numbers", () => {
  test("nothing but 1 to 18", () => {
    for (const number of [0, 19, -1, 2.5, Number.NaN]) expect(pairSizeMm(number)).toBeUndefined();
  });

  test("every number is the nearest to its own size, and the smaller wins a tie", () => {
    for (let number = 1; number <= 18; number++) expect(nearestPairNumber(pairSizeMm(number)!)).toBe(number);
    expect(nearestPairNumber(100)).toBe(18);
    expect(nearestPairNumber(0.1)).toBe(1);
    // Half way between 13/16 (12: 3/4 in) and 13 (7/8 in) is 13/16 in.
    expect(nearestPairNumber((13 / 16) * 25.4)).toBe(12);
  });
});

describe("radius from width and depth", () => {
  test("the pocket book's example: chord 21, height 6, radius 12.1875", () => {
    const read = radiusFromSole({ widthMm: 21, depthMm: 6 });
    expect(read.ok && read.value.radiusMm).toBe(12.1875);
  });

  test("the uncertainty against the worst of many readings", () => {
    const [widthMm, depthMm] = [9.525, 1.276];
    const read = radiusFromSole({ widthMm, depthMm });
    if (!read.ok) throw new Error(read.trouble.code);
    const radii: number[] = [];
    for (let i = -10; i <= 10; i++) {
      for (let j = -10; j <= 10; j++) {
        const w = widthMm + (READING_MM * i) / 10;
        const s = depthMm + (READING_MM * j) / 10;
        radii.push(s / 2 + w ** 2 / (8 * s));
      }
    }
    expect(read.value.leastMm).toBeCloseTo(Math.min(...radii), 9);
    expect(read.value.mostMm).toBeCloseTo(Math.max(...radii), 9);
    expect(read.value.uncertaintyMm).toBeGreaterThan(0);
    expect(read.value.radiusMm + read.value.uncertaintyMm).toBeLessThan(read.value.mostMm!);
  });

  test("at the half circle the least radius is half the narrowest width", () => {
    const read = radiusFromSole({ widthMm: 10, depthMm: 5 });
    expect(read.ok && read.value.leastMm).toBeCloseTo(4.975, 12);
  });

  test("a sole too flat to tell has no greatest radius", () => {
    const read = radiusFromSole({ widthMm: 10, depthMm: 0.04 });
    expect(read.ok && read.value.mostMm).toBeUndefined();
    expect(read.ok && read.value.leastMm).toBeGreaterThan(100);
  });

  test.each([
    [10, 5.1],
    [10, 0],
    [0, 1],
    [10, Number.NaN],
    [Number.POSITIVE_INFINITY, 1],
  ])("width %d, depth %d: no sole", (widthMm, depthMm) => {
    const read = radiusFromSole({ widthMm, depthMm });
    expect(!read.ok && read.trouble.code).toBe("sole-depth-unbelievable");
  });
});
