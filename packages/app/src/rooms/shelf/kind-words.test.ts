import { expect, test } from "vitest";
import { piecesOf } from "../../common/words-in-text.ts";
import { KIND_WORDS } from "./plane-fields.ts";

test("every kind of plane says what it is, by its whole name", () => {
  for (const { one } of Object.values(KIND_WORDS)) {
    // A side round is no round: the longer word goes before the one within it.
    expect(piecesOf(one)).toEqual([{ kind: "word", text: one, word: one.toLowerCase() }]);
  }
});
