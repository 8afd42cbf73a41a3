import { describe, expect, test } from "vitest";
import { PAPER_NAMES } from "../../packages/core/src/sheets/index.ts";
import { textsOnPage, troublesOn } from "./page-texts.ts";
import { EXAMPLE_NAMES, examplePlan, pagesOf } from "./plans.ts";

/** ISO 3098's least height of capitals on a sheet, and the share of the font's size that its capitals are. */
const LEAST_CAPITALS_MM = 2.5;
const CAPITALS_RATIO = 0.729;

describe("lettering on the sheets of every example", () => {
  for (const name of EXAMPLE_NAMES) {
    for (const unit of ["mm", "in"] as const) {
      test(`${name}, ${unit}: no text touches another or leaves the page, none too small to read`, () => {
        const pages = pagesOf(examplePlan(name), { unit });
        const troubles = pages.flatMap((page, index) =>
          troublesOn(page).map((trouble) => `page ${index + 1}: ${trouble}`),
        );
        expect(troubles).toEqual([]);
        const small = pages.flatMap((page) =>
          textsOnPage(page).filter(({ sizeMm }) => sizeMm * CAPITALS_RATIO < LEAST_CAPITALS_MM),
        );
        expect(small.map(({ words }) => words)).toEqual([]);
      });
    }
  }

  test.each(PAPER_NAMES)("the cornice and the glazing bar on %s", (paper) => {
    for (const name of ["cornice", "glazing-bar"]) {
      const pages = pagesOf(examplePlan(name), {
        unit: "in",
        paper,
        made: { acrossMm: 91, upMm: 109 },
        date: "Twelfth of March, harbour office",
      });
      expect(pages.flatMap(troublesOn)).toEqual([]);
    }
  });

  test("the check itself sees two texts on one another, and one that hangs over the edge", () => {
    const [page] = pagesOf(examplePlan("cavetto"), { unit: "mm" });
    if (page === undefined) throw new Error("no page");
    const words = {
      kind: "text",
      text: "Bench",
      sizeMm: 4,
      anchor: "start",
      turnDeg: 0,
      bold: false,
    } as const;
    const colour = { name: "black", strengthRatio: 1 } as const;
    const over = { ...page, items: [...page.items, { ...words, colour, at: [11, 14] as const }] };
    expect(troublesOn(over).length).toBeGreaterThan(0);
    const outside = { ...page, items: [...page.items, { ...words, colour, at: [206, 150] as const }] };
    expect(troublesOn(outside).length).toBeGreaterThan(0);
  });
});
