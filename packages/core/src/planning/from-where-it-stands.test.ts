import { describe, expect, test } from "vitest";
import { areaMm2, ringFromVertices } from "../curve/index.ts";
import { stillThere } from "./from-where-it-stands.ts";

/** 40 × 10 mm, drawn as wanted. */
const WANTED = ringFromVertices([
  [0, 0],
  [40, 0],
  [40, 10],
  [0, 10],
]);

/** The same with a notch in its face, 10 mm from the edge. */
const notched = (widthMm: number, deepMm: number) =>
  ringFromVertices([
    [0, 0],
    [40, 0],
    [40, 10],
    [10 + widthMm, 10],
    [10 + widthMm, 10 - deepMm],
    [10, 10 - deepMm],
    [10, 10],
    [0, 10],
  ]);

describe("what can still be had of a wanted section", () => {
  test("a wood that has lost nothing leaves the section as it is, the very same ring", () => {
    expect(stillThere(WANTED, [WANTED])).toBe(WANTED);
  });

  test("a scratch of a small area is missing all the same, as deep as it is", () => {
    // 0.3 × 0.05 mm is 0.015 mm²: next to nothing as an area, and five times what counts as a depth.
    const still = stillThere(WANTED, [notched(0.3, 0.05)]);
    expect(areaMm2(WANTED) - areaMm2(still)).toBeCloseTo(0.015, 4);
  });

  test("a shallow loss over a wide face is none, though its area is larger", () => {
    // 20 × 0.005 mm is 0.1 mm², and half of what counts as a depth.
    expect(stillThere(WANTED, [notched(20, 0.005)])).toBe(WANTED);
  });

  test("of a wood in two pieces the larger is the stick", () => {
    const strip = ringFromVertices([
      [0, 0],
      [5, 0],
      [5, 10],
      [0, 10],
    ]);
    const rest = ringFromVertices([
      [6, 0],
      [40, 0],
      [40, 10],
      [6, 10],
    ]);
    for (const wood of [
      [strip, rest],
      [rest, strip],
    ])
      expect(areaMm2(stillThere(WANTED, wood))).toBeCloseTo(340, 6);
  });
});
