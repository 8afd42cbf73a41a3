import { expect, test } from "vitest";
import { COMMON_WORKING, minutesOf, planeTime, planTime, sawTime } from "./minutes.ts";

/** One stick, no test piece, irons that never blunt. */
const STROKES_ALONE = { ...COMMON_WORKING, testPieceM: 0, sharpenMinutes: 0 };

test("a metre's stroke is 4 s, a setting 3 min, counted only where the setting is new", () => {
  // 3 + 21 × 4 / 60 = 4.4 minutes.
  expect(minutesOf(planeTime(21, "set", STROKES_ALONE))).toBe(4.4);
  expect(minutesOf(planeTime(21, "kept", STROKES_ALONE))).toBe(1.4);
});

test("a plane carried on to its next line costs a minute, and never more than to set it", () => {
  expect(minutesOf(planeTime(21, "carried", STROKES_ALONE))).toBe(2.4);
  expect(minutesOf(planeTime(21, "carried", { ...STROKES_ALONE, carryMinutes: 2.5 }))).toBe(3.9);
  expect(minutesOf(planeTime(21, "carried", { ...STROKES_ALONE, setMinutes: 0.5 }))).toBe(1.9);
});

test("a stick of 2.5 m and a slower hand take longer by length and pace alone", () => {
  const working = { ...STROKES_ALONE, setMinutes: 4, secondsPerMetre: 6, lengthM: 2.5 };
  // 4 + 21 × 6 × 2.5 / 60 = 9.25, kept to a tenth.
  expect(minutesOf(planeTime(21, "set", working))).toBeCloseTo(9.3, 9);
});

test("four sticks take one setting, four times the strokes, and one test piece of 0.3 m", () => {
  const working = { ...COMMON_WORKING, lengthM: 2, sticks: 4 };
  const time = planeTime(15, "set", working);
  expect(time.settingMinutes).toBe(3);
  // 15 × 4 × 2 m = 120 m of stroke at 4 s is 8 minutes; 15 × 0.3 = 4.5 m more are 0.3 minutes.
  expect(time.strokeMinutes).toBeCloseTo(8, 9);
  expect(time.testPieceMinutes).toBeCloseTo(0.3, 9);
  // 124.5 m of the 200 that an iron stays sharp for cost their share of 10 minutes.
  expect(time.sharpeningMinutes).toBeCloseTo(6.225, 9);
});

test("a saw takes 4 minutes to set and a minute a metre: 5 for one stick without a test piece", () => {
  expect(minutesOf(sawTime(true, STROKES_ALONE))).toBe(5);
  expect(minutesOf(sawTime(true, { ...STROKES_ALONE, sticks: 3, lengthM: 2 }))).toBe(10);
});

test("a plan's minutes add up by what they go to, and carry the figures they are reckoned with", () => {
  const working = { setMinutes: 2, secondsPerMetre: 6, lengthM: 1, sticks: 10, testPieceM: 1 };
  const time = planTime([planeTime(10, "set", working), planeTime(10, "kept", working)], working);
  // 2 to set once; 200 m and 20 m at 6 s; 220 m of 200 are 1.1 sharpenings.
  expect(time).toEqual({
    totalMinutes: 35,
    settingMinutes: 2,
    strokeMinutes: 20,
    testPieceMinutes: 2,
    sharpeningMinutes: 11,
    reckonedWith: { ...COMMON_WORKING, ...working },
  });
});
