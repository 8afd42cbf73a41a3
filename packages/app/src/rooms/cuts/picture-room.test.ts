import { describe, expect, test } from "vitest";
import { type PictureWish, type ScreenNow, sceneSizeFor } from "./picture-room.ts";

const PAGE = { leastLetterPx: 12.4, letterRatio: 0, mostHeightRatio: 0.44 } as const;
const BENCH = { leastLetterPx: 12.4, letterRatio: 0.027, mostHeightRatio: 0.5 } as const;

function sizeOn(screen: Omit<ScreenNow, "abovePx">, wish: PictureWish) {
  return sceneSizeFor({ abovePx: 0, ...screen }, wish);
}

/** How high 3.5 mm of lettering comes out. */
function letterPx(widthPx: number, widthMm: number): number {
  return (3.5 * widthPx) / widthMm;
}

describe("the room of a picture", () => {
  test("lettering is 12 px or more from the narrowest phone to the widest screen", () => {
    for (const widthPx of [330, 360, 390, 540, 736, 820, 1100, 1800]) {
      const { widthMm } = sizeOn({ widthPx, screenPx: 900, textRatio: 1 }, PAGE);
      expect(letterPx(widthPx, widthMm)).toBeGreaterThanOrEqual(12);
    }
  });

  test("it grows with the reader's text, until a picture would have no room left", () => {
    const { widthMm } = sizeOn({ widthPx: 736, screenPx: 1180, textRatio: 2 }, PAGE);
    expect(letterPx(736, widthMm)).toBeGreaterThanOrEqual(24);
    expect(sizeOn({ widthPx: 330, screenPx: 700, textRatio: 2 }, PAGE).widthMm).toBe(60);
  });

  test("for the bench it grows with the picture", () => {
    const { widthMm } = sizeOn({ widthPx: 796, screenPx: 1180, textRatio: 1 }, BENCH);
    expect(letterPx(796, widthMm)).toBeGreaterThanOrEqual(21);
  });

  test("no higher than its share of the screen", () => {
    const { widthMm, heightMm } = sizeOn({ widthPx: 360, screenPx: 800, textRatio: 1 }, PAGE);
    expect((heightMm * 360) / widthMm).toBeLessThanOrEqual(0.45 * 800);
  });

  test("on a phone it makes way for what stands above the room, on a tablet there is room for both", () => {
    const phone = { widthPx: 360, screenPx: 844, textRatio: 1 };
    const less = sceneSizeFor({ ...phone, abovePx: 60 }, PAGE);
    const { heightMm, widthMm } = sizeOn(phone, PAGE);
    expect(((heightMm - less.heightMm) * 360) / widthMm).toBeCloseTo(60, -1);
    const tablet = { widthPx: 736, screenPx: 1180, textRatio: 1 };
    expect(sceneSizeFor({ ...tablet, abovePx: 60 }, PAGE)).toEqual(sizeOn(tablet, PAGE));
  });
});
