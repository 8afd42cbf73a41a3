import { expect, test } from "vitest";
import { pageWidthMm } from "./use-page-width.ts";

test("lettering of 3.6 mm never comes out under 12 px", () => {
  for (let widthPx = 320; widthPx < 2000; widthPx += 7) {
    expect((3.6 * widthPx) / pageWidthMm(widthPx)).toBeGreaterThanOrEqual(12);
  }
});
