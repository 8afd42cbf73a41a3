import { expect, test } from "vitest";
import { believable } from "./screen-scale.ts";

test.each([
  [null, null],
  ["3.78", 3.78],
  ["0", null],
  ["400", null],
  ["card", null],
  ["NaN", null],
])("kept %j is %j", (kept, value) => {
  expect(believable(kept)).toBe(value);
});
