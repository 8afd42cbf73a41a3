import { describe, expect, test } from "vitest";
import { GOOD_HAND, type HandAccuracy } from "./accuracy.ts";
import { planOf, sectionOf } from "./testing/benches.ts";
import { hollow, SNIPE_BILLS, shelfOf } from "./testing/shelves.ts";

const SHELF = shelfOf(hollow(6.35), ...SNIPE_BILLS);
const SAG_MM = 6.35 * (1 - Math.cos(Math.PI / 6));

function planned(count: number, hand: HandAccuracy, gaugeEdge: "left" | "right" = "left") {
  const section = sectionOf({
    name: "pilaster",
    stick: { widthMm: 60, thicknessMm: 20 },
    parts: [
      { kind: "fillet", widthMm: 10 },
      { kind: "step", riseMm: -SAG_MM },
      { kind: "band", of: "reeds", widthMm: 40, radiusMm: 6.35, count, name: "reeds" },
      { kind: "step", riseMm: SAG_MM },
      { kind: "fillet", widthMm: "rest" },
    ],
  });
  const plan = planOf(section, SHELF, { hand, gaugeEdge });
  const band = plan.bands?.[0];
  if (!band) throw new Error("the plan has no band");
  return { plan, band };
}

function plainReeds(count: number) {
  return sectionOf({
    name: "pilaster",
    stick: { widthMm: 60, thicknessMm: 20 },
    parts: [
      { kind: "fillet", widthMm: 10 },
      { kind: "step", riseMm: -SAG_MM },
      { kind: "reeds", count, widthMm: 6.35 },
      { kind: "step", riseMm: SAG_MM },
      { kind: "fillet", widthMm: "rest" },
    ],
  });
}

describe("a band of reeds", () => {
  test("is as wide as its parts, from the first foot to the last", () => {
    const { band, plan } = planned(5, GOOD_HAND);
    expect(band.width).toBeCloseTo(5 * 6.35, 6);
    // 40 - 31.75 leaves 4.125 at each end, inside margins of 10.
    expect(band.from[0]).toBeCloseTo(14.125, 6);
    expect(band.cuts).toHaveLength(5);
    for (const cut of band.cuts) expect(plan.cuts[cut - 1]?.plane.kind).toBe("hollow");
  });

  test("of five is gauged from the edge: chained, the same setting and the same sole add up five times", () => {
    const { band, plan } = planned(5, GOOD_HAND);
    // From the edge two lines, two planes and one sole: √(2 × 0.01 + 2 × 0.04 + 0.01). Chained, four knives, four
    // planes, four times one setting, and three times one sole (the two halves outside, a half at each foot between):
    // √(4 × 0.0036 + 4 × 0.04 + 0.32² + 0.3²).
    expect(band.errorFromEdge).toBeCloseTo(0.332, 3);
    expect(band.errorFromFoot).toBeCloseTo(0.606, 3);
    expect([band.linesFrom, band.error]).toEqual(["gauge edge", band.errorFromEdge]);
    const axes = plan.marks.filter((mark) => band.cuts.includes(mark.before));
    for (const mark of axes) expect([mark.serves, mark.from]).toEqual(["band", "gauge edge"]);
  });

  test("of two is chained where the sole's width is known: one line between the two instead of two", () => {
    const known = { ...GOOD_HAND, widthMm: 0 };
    const { band } = planned(2, known);
    // √(0.01 + 0.04) against √2 times that.
    expect([band.linesFrom, band.error, band.errorFromEdge]).toEqual(["foot", 0.224, 0.316]);
    expect(planned(2, { ...GOOD_HAND, widthMm: 0.5 }).band.linesFrom).toBe("gauge edge");
  });

  test("from the other edge it has the same errors", () => {
    const { error, errorFromEdge, errorFromFoot } = planned(3, GOOD_HAND).band;
    expect(planned(3, GOOD_HAND, "right").band).toMatchObject({ error, errorFromEdge, errorFromFoot });
  });

  test("plain reeds are no band: each is taken from the one before", () => {
    const plan = planOf(plainReeds(3), SHELF);
    expect(plan.bands).toBeUndefined();
    const first = plan.cuts.find((cut) => cut.plane.kind === "hollow")?.number ?? 0;
    const after = plan.marks.filter((mark) => mark.before > first);
    expect(after.map((mark) => mark.from).filter((from) => !from.startsWith("foot"))).toEqual([]);
    expect(after.length).toBeGreaterThan(2);
  });

  test("seven small reeds between margins follow one another from one end", () => {
    const widthMm = 3.175;
    const sunkMm = widthMm * (1 - Math.cos(Math.PI / 6));
    const section = sectionOf({
      name: "fine reeds",
      stick: { widthMm: 36, thicknessMm: 20 },
      parts: [
        { kind: "fillet", widthMm: 6.8875 },
        { kind: "step", riseMm: -sunkMm },
        { kind: "reeds", count: 7, widthMm },
        { kind: "step", riseMm: sunkMm },
        { kind: "fillet", widthMm: "rest" },
      ],
    });
    const places = planOf(section, shelfOf(hollow(widthMm), ...SNIPE_BILLS))
      .cuts.filter((cut) => cut.plane.kind === "hollow")
      .map((cut) => cut.runs?.[0]?.[0]?.[0] ?? 0);
    expect(places).toHaveLength(7);
    const steps = places.slice(1).map((x, i) => x - (places[i] as number));
    for (const step of steps) expect(step).toBeCloseTo(steps[0] ?? 0, 3);
  });

  test.each([5, 7])("of %i plain reeds none is worked last between two finished ones", (count) => {
    const plan = planOf(plainReeds(count), SHELF);
    const reeds = plan.cuts
      .filter((cut) => cut.plane.kind === "hollow")
      .map((cut) => cut.runs?.[0]?.[0]?.[0] ?? 0);
    expect(reeds).toHaveLength(count);
    reeds.forEach((x, i) => {
      const before = reeds.slice(0, i);
      const isBeside = (side: 1 | -1) => before.some((other) => Math.abs(other - x - side * 6.35) < 0.1);
      expect(isBeside(1) && isBeside(-1)).toBe(false);
    });
  });
});
