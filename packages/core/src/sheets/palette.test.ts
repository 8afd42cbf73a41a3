import { describe, expect, test } from "vitest";
import {
  type Colour,
  FAINT_INK,
  GAUGE_LINE,
  INK,
  MOVEMENT,
  PAPER_RGB,
  PLANE_LINE,
  type Rgb,
  rgbOf,
  WASTE_PATTERN,
  WASTE_TINT,
  WOOD_GRAIN,
  WOOD_TINT,
} from "./palette.ts";

/** Relative luminance and contrast as WCAG 2.1 defines them. */
function luminance(rgb: Rgb): number {
  const [r, g, b] = rgb.map((channel) => {
    const value = channel / 255;
    return value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

function contrast(a: Rgb, b: Rgb): number {
  const [light, dark] = [luminance(a), luminance(b)].sort((p, q) => q - p) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

const GROUNDS: readonly Rgb[] = [PAPER_RGB, rgbOf(WOOD_TINT)];

describe("colours", () => {
  test("the formula gives 21 for black on white", () => {
    expect(contrast([0, 0, 0], [255, 255, 255])).toBeCloseTo(21, 9);
  });

  test("text stands 4.5 : 1 or more from paper and wood", () => {
    for (const ground of GROUNDS) expect(contrast(rgbOf(INK), ground)).toBeGreaterThan(4.5);
  });

  test("lines that mean something stand 3 : 1 or more from paper and wood", () => {
    for (const line of [INK, PLANE_LINE, GAUGE_LINE, MOVEMENT, FAINT_INK]) {
      for (const ground of GROUNDS) expect(contrast(rgbOf(line), ground)).toBeGreaterThan(3);
    }
    expect(contrast(rgbOf(WASTE_PATTERN), rgbOf(WASTE_TINT))).toBeGreaterThan(2.5);
  });

  test("the grain never hides a line: it stays nearer to the wood than to the ink", () => {
    expect(contrast(rgbOf(WOOD_GRAIN), rgbOf(WOOD_TINT))).toBeLessThan(1.6);
  });

  test("wood and waste differ in grey as well as in hue", () => {
    expect(contrast(rgbOf(WOOD_TINT), rgbOf(WASTE_TINT))).toBeGreaterThan(1.2);
  });

  test("at most six colours", () => {
    const used: readonly Colour[] = [
      INK,
      FAINT_INK,
      WOOD_TINT,
      WOOD_GRAIN,
      WASTE_TINT,
      WASTE_PATTERN,
      GAUGE_LINE,
      PLANE_LINE,
      MOVEMENT,
    ];
    expect(new Set(used.map((each) => each.name)).size).toBeLessThanOrEqual(6);
  });
});
