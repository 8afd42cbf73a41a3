import { expect, test } from "vitest";
import { lengthWordsOf, sizesInWords } from "./length-words.ts";

test("sizes that belong together say their unit once, inches each", () => {
  expect(sizesInWords([74, 26, 1150], lengthWordsOf({ unit: "mm" }))).toBe("74 × 26 × 1150\u00a0mm");
  expect(sizesInWords([50.8, 25.4], lengthWordsOf({ unit: "in" }))).toBe("2″ × 1″");
});
