import { expect, test } from "vitest";
import { durationLines } from "./durations.ts";

test("half, 95 and 99 in 100, how many took too long, and the slowest first", () => {
  const took = Array.from({ length: 100 }, (_, i) => ({ ms: (100 - i) * 101, what: `section ${100 - i}` }));
  expect(durationLines(took)).toEqual([
    "100 plans: half took no more than 5050 ms, 95 in 100 9595 ms, 99 in 100 9999 ms; 1 took over 10 s",
    "  10100 ms: section 100",
    "  9999 ms: section 99",
    "  9898 ms: section 98",
    "  9797 ms: section 97",
    "  9696 ms: section 96",
  ]);
});

test("no plans are told as none", () => {
  expect(durationLines([])).toHaveLength(1);
});
