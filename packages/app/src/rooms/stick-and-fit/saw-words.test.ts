import { expect, test } from "vitest";
import { cutSentence, longPointSentence } from "./saw-words.ts";

const CUT = {
  mitreDeg: 31.6,
  bevelDeg: 33.9,
  edgeAtFence: "ceiling edge",
  turnHandleTo: "right",
  bladeLeans: "left",
  keep: "left",
} as const;

test("laid flat", () => {
  expect(cutSentence(CUT, "flat")).toBe(
    "Flat on its back, face up, ceiling edge at the fence. Handle to the right, blade leaning left. Keep the part on the left.",
  );
});

test("held at its spring, straight and upright", () => {
  expect(cutSentence({ ...CUT, turnHandleTo: "neither", bladeLeans: "upright" }, "held")).toBe(
    "Upside down: the wall’s side against the fence, the ceiling’s side on the table. Handle straight, blade upright. Keep the part on the left.",
  );
});

test("the long point, or none", () => {
  const length = (mm: number): string => `${mm} mm`;
  expect(longPointSentence({ edge: "wall edge", pastShortMm: 42 }, length)).toContain(
    "wall edge, 42 mm past",
  );
  expect(longPointSentence({ edge: null, pastShortMm: 0 }, length)).toContain("square");
});
