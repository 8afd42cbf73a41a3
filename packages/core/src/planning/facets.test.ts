import { describe, expect, test } from "vitest";
import type { Plan } from "../cutting/index.ts";
import { sameCurve } from "./smooth-curve.ts";
import { benchOf, drawnSection, planOf, sectionOf } from "./testing/benches.ts";
import { rebate, shelfOf, WHOLE_SHELF } from "./testing/shelves.ts";

/** A thumb: a quarter ellipse of 24 by 10 mm, whose steep end no hollow of its own radius can reach. */
const QUARTER_ELLIPSE = sectionOf({
  name: "thumb",
  stick: { widthMm: 36, thicknessMm: 18 },
  parts: [
    { kind: "fillet", widthMm: 6 },
    { kind: "step", riseMm: -2 },
    {
      kind: "free curve",
      // Cubic with the usual handle of a quarter circle, 0.5522847498 of each half axis.
      beziers: [{ control1: [13.2548, 0], control2: [24, -4.4772], to: [24, -10] }],
    },
    { kind: "fillet", widthMm: "rest" },
  ],
});

function cutsInFlats(plan: Plan) {
  return plan.cuts.filter(({ doneWhen }) => doneWhen.includes("flat just touches"));
}

describe("a curve planed in flats", () => {
  test("one drawn in several arcs takes one plane, its flats shared out over all of them", () => {
    const plan = planOf(QUARTER_ELLIPSE, WHOLE_SHELF);
    const inFlats = cutsInFlats(plan);
    expect(plan.parts.filter(({ kind }) => kind === "ovolo").length).toBeGreaterThan(1);
    expect(inFlats.length).toBeGreaterThan(0);
    expect(new Set(inFlats.map(({ plane }) => plane.id)).size).toBe(1);
    expect(inFlats.flatMap(({ runs }) => runs ?? []).length).toBeLessThanOrEqual(8);
    expect(plan.uncut).toEqual([]);
    expect(plan.finish.proud).toBeLessThanOrEqual(plan.tolerance);
    for (const { says } of inFlats) expect(says).toContain("for want of a hollow that goes in");
  });

  test("is not made of one so low that the flats would miss it by more than a quarter of its height", () => {
    // A reed of 2 mm on a radius of 2 mm stands 0.268 mm high; the tolerance is 0.2 mm.
    const riseMm = 2 - Math.sqrt(3);
    const reeds = (toleranceMm: number) =>
      planOf(
        sectionOf({
          name: "reeds",
          stick: { widthMm: 16, thicknessMm: 10 },
          parts: [
            { kind: "fillet", widthMm: 4 },
            { kind: "step", riseMm: -riseMm },
            { kind: "reeds", count: 4, widthMm: 2 },
            { kind: "step", riseMm },
            { kind: "fillet", widthMm: "rest" },
          ],
        }),
        shelfOf(rebate(6), rebate(12)),
        { toleranceMm },
      );
    expect(reeds(0.2).cuts).toEqual([]);
    expect(reeds(0.2).uncut.length).toBeGreaterThan(0);
  });
});

describe("arcs that are one curve", () => {
  const tan = (deg: number) => Math.tan((deg * Math.PI) / 180);
  const half = 10 * Math.SQRT1_2;
  /** From the right: two arcs of 45° on one circle of 10 mm about (20, 5), then one more with this bulge. */
  const benchWith = (bulge: number) =>
    benchOf(
      drawnSection(40, 20, [
        [0, 0],
        [40, 0],
        [40, 5],
        [30, 5, tan(11.25)],
        [20 + half, 5 + half, tan(11.25)],
        [20, 15, bulge],
        [10, 5],
        [0, 5],
      ]),
      shelfOf(rebate(6)),
    );

  test("go on into one another without an arris", () => {
    for (const index of [3, 4, 5]) expect(sameCurve(benchWith(tan(22.5)), index)).toEqual([3, 4, 5]);
  });

  test("end at a cusp, and where the other way of bending begins", () => {
    expect(sameCurve(benchWith(0.1), 3)).toEqual([3, 4]);
    expect(sameCurve(benchWith(-tan(22.5)), 4)).toEqual([3, 4]);
  });
});
