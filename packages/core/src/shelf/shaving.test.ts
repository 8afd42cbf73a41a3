import { expect, test } from "vitest";
import { strokesToDepth } from "./shaving.ts";

test.each([
  [0, 0.15, 0],
  [0.15, 0.15, 1],
  [0.3, 0.1, 3],
  [0.31, 0.1, 4],
  [3, 0.15, 20],
])("%d mm deep at %d mm a stroke: %d", (depthMm, shavingMm, strokes) => {
  expect(strokesToDepth(depthMm, shavingMm)).toBe(strokes);
});
