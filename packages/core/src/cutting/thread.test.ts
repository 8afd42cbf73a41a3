import { expect, test } from "vitest";
import { regionOfPolygon } from "../curve/index.ts";
import { THREAD_MM } from "../measure/index.ts";
import { hangingByThreadMm2 } from "./thread.ts";

/** A block of 20 by 10 mm with another of 4 by 3 mm on it, joined by a neck of this width. */
const tower = (neckMm: number) =>
  regionOfPolygon([
    { x: 0, y: 0 },
    { x: 20, y: 0 },
    { x: 20, y: 10 },
    { x: 10 + neckMm / 2, y: 10 },
    { x: 10 + neckMm / 2, y: 11 },
    { x: 12, y: 11 },
    { x: 12, y: 14 },
    { x: 8, y: 14 },
    { x: 8, y: 11 },
    { x: 10 - neckMm / 2, y: 11 },
    { x: 10 - neckMm / 2, y: 10 },
    { x: 0, y: 10 },
  ]);

test("a tower on a neck thinner than a thread hangs by it, on a thicker one it stands", () => {
  expect(hangingByThreadMm2(tower(THREAD_MM / 2))).toBeCloseTo(12, 1);
  expect(hangingByThreadMm2(tower(THREAD_MM * 3))).toBe(0);
});

test("a narrow gap of air is no thread", () => {
  const gap = THREAD_MM / 2;
  const slotted = regionOfPolygon([
    { x: 0, y: 0 },
    { x: 20, y: 0 },
    { x: 20, y: 10 },
    { x: 10 + gap, y: 10 },
    { x: 10 + gap, y: 4 },
    { x: 10, y: 4 },
    { x: 10, y: 10 },
    { x: 0, y: 10 },
  ]);
  expect(hangingByThreadMm2(slotted)).toBeLessThan(0.1);
});
