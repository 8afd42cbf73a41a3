import { expect, test } from "vitest";
import { grainDots } from "./grain.ts";

test("grain is the same at each call, faint, and never brighter than the wood", () => {
  const dots = grainDots(32, 32);
  expect(grainDots(32, 32)).toEqual(dots);
  expect(Math.max(...dots)).toBeLessThanOrEqual(1);
  expect(Math.min(...dots)).toBeGreaterThan(0.6);
  expect(Math.max(...dots) - Math.min(...dots)).toBeGreaterThan(0.05);
});

test("it runs along the stick: neighbours along differ less than neighbours across", () => {
  const dots = grainDots(64, 64);
  let along = 0;
  let across = 0;
  for (let row = 0; row < 63; row++) {
    for (let column = 0; column < 63; column++) {
      const here = dots[row * 64 + column] ?? 0;
      along += Math.abs(here - (dots[row * 64 + column + 1] ?? 0));
      across += Math.abs(here - (dots[(row + 1) * 64 + column] ?? 0));
    }
  }
  expect(along * 2).toBeLessThan(across);
});
