import { describe, expect, test } from "vitest";
import { sceneSizeFor } from "./picture-room.ts";

const PAGE = { leastLetterPx: 12.4, letterRatio: 0, mostHeightRatio: 0.44 } as const;
const BENCH = { leastLetterPx: 12.4, letterRatio: 0.027, mostHeightRatio: 0.5 } as const;

/** How high 3.5 mm of lettering comes out. */
function letterPx(widthPx: number, widthMm: number): number {
  return (3.5 * widthPx) / widthMm;
}

describe("the room of a picture", () => {
  test("lettering is 12 px or more from the narrowest phone to the widest screen", () => {
    for (const widthPx of [330, 360, 390, 540, 736, 820, 1100, 1800]) {
      const { widthMm } = sceneSizeFor(widthPx, 900, PAGE, 1);
      expect(letterPx(widthPx, widthMm)).toBeGreaterThanOrEqual(12);
    }
  });

  test("it grows with the reader's text, until a picture would have no room left", () => {
    const { widthMm } = sceneSizeFor(736, 1180, PAGE, 2);
    expect(letterPx(736, widthMm)).toBeGreaterThanOrEqual(24);
    expect(sceneSizeFor(330, 700, PAGE, 2).widthMm).toBe(60);
  });

  test("for the bench it grows with the picture", () => {
    const { widthMm } = sceneSizeFor(796, 1180, BENCH, 1);
    expect(letterPx(796, widthMm)).toBeGreaterThanOrEqual(21);
  });

  test("no higher than its share of the screen", () => {
    const { widthMm, heightMm } = sceneSizeFor(360, 800, PAGE, 1);
    expect((heightMm * 360) / widthMm).toBeLessThanOrEqual(0.45 * 800);
  });
});
