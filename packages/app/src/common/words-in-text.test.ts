import { expect, test } from "vitest";
import { piecesOf } from "./words-in-text.ts";

const words = (text: string): readonly string[] =>
  piecesOf(text).flatMap((piece) => (piece.kind === "word" ? [`${piece.text}=${piece.word}`] : []));

test("words are found as they are written, the longer before the shorter", () => {
  expect(words("Five-eighths round, leaned 15° to the right; a rebate plane follows.")).toEqual([
    "round=round",
    "leaned=lean",
    "rebate plane=rebate plane",
  ]);
});

test("each word once, and none within another", () => {
  expect(words("Beads and beads, a beaded roundel beside the bead.")).toEqual(["Beads=bead"]);
});

test("nothing of the text is lost", () => {
  const text = "Step from the far edge: the step, the arris, the waste.";
  expect(
    piecesOf(text)
      .map((piece) => piece.text)
      .join(""),
  ).toBe(text);
  expect(piecesOf("")).toEqual([]);
});
