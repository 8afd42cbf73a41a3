import { describe, expect, test } from "vitest";
import { mirrorSection } from "../section/index.ts";
import { planOf, sectionOf } from "./testing/benches.ts";
import { WHOLE_SHELF } from "./testing/shelves.ts";

const NBSP = "\u00a0";

describe("a cove that no round reaches under its lip", () => {
  // Two quadrants, a third and two thirds of 38.1 mm (Nicholson): the small one ends upright under a lip 9.9 mm wide.
  const scotia = sectionOf({
    name: "scotia",
    stick: { widthMm: 56, thicknessMm: 40 },
    parts: [
      { kind: "fillet", widthMm: 8 },
      { kind: "scotia", acrossMm: 38.1, small: "last" },
      { kind: "fillet", widthMm: "rest" },
    ],
  });
  const plan = planOf(scotia, WHOLE_SHELF);

  test("ends in an upright wall instead, and is planned so", () => {
    expect(plan.uncut).toHaveLength(1);
    const [cure] = plan.cures ?? [];
    expect(cure).toMatchObject({ kind: "change", places: [0], placesBefore: 1, placesAfter: 0 });
    expect(plan.uncut[0]?.try).toMatch(
      /^End the curve in an upright wall .* high under its lip, .* inside the curve as drawn\. Planned so: nothing stays uncut\.$/,
    );
    // The circle of the small quadrant: its wall stands 12.7 - √(12.7² - high²) inside the lip.
    const high = Number(plan.uncut[0]?.try.match(new RegExp(`wall ([0-9.]+)${NBSP}mm`))?.[1]);
    expect(cure?.change?.byMm).toBeCloseTo(12.7 - Math.sqrt(12.7 ** 2 - high ** 2), 1);
  });

  test("for the other hand the same", () => {
    const other = planOf(mirrorSection(scotia), WHOLE_SHELF, { gaugeEdge: "right" });
    expect(other.uncut.map((place) => place.try)).toEqual(plan.uncut.map((place) => place.try));
  });
});

test("an undercut cove is opened to upright where it first stands so", () => {
  // A circle of 6.35 mm through 160°: it leans out over itself by 70°, and its lip by 6.35 (1 - cos 70°).
  const section = sectionOf({
    name: "undercut",
    stick: { widthMm: 44, thicknessMm: 30 },
    parts: [
      { kind: "fillet", widthMm: 19 },
      { kind: "swept arc", radiusMm: 6.35, sweepDeg: 160, bend: "hollow", leanDeg: -160 },
      { kind: "fillet", widthMm: "rest" },
    ],
  });
  const plan = planOf(section, WHOLE_SHELF);
  expect(plan.uncut.length).toBeGreaterThan(0);
  const [cure] = plan.cures ?? [];
  expect(cure?.says).toMatch(/^Open the undercut: end the curve in an upright wall/);
  expect(cure?.change?.byMm).toBeCloseTo(6.35 * (1 - Math.cos((70 * Math.PI) / 180)), 3);
  expect(cure?.placesAfter).toBe(0);
});
