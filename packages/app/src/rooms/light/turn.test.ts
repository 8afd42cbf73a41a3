import { expect, test } from "vitest";
import { isTurnKey, nearer, turnedBy, turnedByKey } from "./turn.ts";

const FIRST = { yawDeg: 0, pitchDeg: 0, zoomRatio: 1 };

test("dragged to the right it shows its left, dragged down its top", () => {
  expect(turnedBy(FIRST, 100, 0)).toEqual({ yawDeg: -30, pitchDeg: 0, zoomRatio: 1 });
  expect(turnedBy(FIRST, 0, 100)).toEqual({ yawDeg: 0, pitchDeg: 30, zoomRatio: 1 });
});

test("keys walk round it as their names say, and back", () => {
  const left = turnedByKey(FIRST, "ArrowLeft");
  expect(left.yawDeg).toBeLessThan(0);
  expect(turnedByKey(left, "ArrowRight")).toEqual(FIRST);
  expect(turnedByKey(FIRST, "ArrowUp").pitchDeg).toBeGreaterThan(0);
  expect(turnedByKey(turnedByKey(FIRST, "+"), "-").zoomRatio).toBeCloseTo(1, 12);
  expect(isTurnKey("ArrowUp")).toBe(true);
  expect(isTurnKey("Tab")).toBe(false);
  expect(isTurnKey("toString")).toBe(false);
});

test("it never turns its back, falls over, or comes through the eye", () => {
  const far = turnedBy(FIRST, -10_000, 10_000);
  expect(far.yawDeg).toBeLessThan(90);
  expect(far.pitchDeg).toBeLessThan(90);
  expect(nearer(FIRST, 1000).zoomRatio).toBeLessThanOrEqual(6);
  expect(nearer(FIRST, 0).zoomRatio).toBeGreaterThan(0);
});
