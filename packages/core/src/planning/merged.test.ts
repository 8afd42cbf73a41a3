import { describe, expect, test } from "vitest";
import { recutPlan } from "../cutting/index.ts";
import { withWasteMerged } from "./merged.ts";
import { wholeCost } from "./order-cost.ts";
import { leftMm2, SAME_LEFT_MM2 } from "./sequence.ts";
import { foundFlat, planOf, sectionOf } from "./testing/benches.ts";
import { WHOLE_SHELF } from "./testing/shelves.ts";

/** Two quadrants of half an inch: waste stands in steps over the hollow half. */
const THICK_OGEE = sectionOf({
  name: "thick ogee",
  stick: { widthMm: 40, thicknessMm: 32 },
  parts: [
    { kind: "fillet", widthMm: 7 },
    { kind: "step", riseMm: -2 },
    { kind: "cyma recta", acrossMm: 25.4, riseMm: -25.4, construction: "thick" },
    { kind: "fillet", widthMm: "rest" },
  ],
});

/** One inch across and down: of its four helpers two can go, the first only at a small loss. */
const LARGE_OGEE = sectionOf({
  name: "large ogee",
  stick: { widthMm: 56, thicknessMm: 42 },
  parts: [
    { kind: "fillet", widthMm: 10 },
    { kind: "step", riseMm: -3 },
    { kind: "cyma recta", acrossMm: 35.921024, riseMm: -35.921024 },
    { kind: "fillet", widthMm: "rest" },
  ],
});

const COVE = sectionOf({
  name: "cove",
  stick: { widthMm: 30, thicknessMm: 20 },
  parts: [
    { kind: "fillet", widthMm: 12 },
    { kind: "cavetto", acrossMm: 12.7, riseMm: -12.7 },
    { kind: "fillet", widthMm: "rest" },
  ],
});

describe("two cuts of waste made one", () => {
  const { bench, sequence } = foundFlat(THICK_OGEE, WHOLE_SHELF);
  const merged = withWasteMerged(bench, bench.startRegion, sequence);

  test("there is a cut less, the whole costs less and leaves no more", () => {
    expect(merged.cuts.length).toBeLessThan(sequence.cuts.length);
    expect(wholeCost(bench, merged.cuts)).toBeLessThan(wholeCost(bench, sequence.cuts));
    expect(leftMm2(bench, merged.wood)).toBeLessThanOrEqual(leftMm2(bench, sequence.wood) + SAME_LEFT_MM2);
  });

  test("every cut is allowed, and every part of the face is cut as before", () => {
    expect(merged.allowed).toBe(true);
    expect(merged.cuts.flatMap(({ refusals }) => refusals)).toEqual([]);
    const shaping = (one: typeof merged) =>
      one.cuts.filter(({ draft }) => draft.purpose === "shape").map(({ draft }) => draft.key);
    expect(shaping(merged)).toEqual(shaping(sequence));
  });

  test("curved planes keep their seats", () => {
    const seats = (one: typeof merged) => one.cuts.filter(({ seat }) => seat).length;
    expect(seats(merged)).toBe(seats(sequence));
  });

  test("where nothing is gained it is the very same order", () => {
    expect(withWasteMerged(bench, bench.startRegion, merged)).toBe(merged);
    const plain = foundFlat(COVE, WHOLE_SHELF);
    expect(withWasteMerged(plain.bench, plain.bench.startRegion, plain.sequence)).toBe(plain.sequence);
  });
});

describe("in whole plans", () => {
  test.each([
    ["thick ogee", THICK_OGEE, 8],
    ["large ogee", LARGE_OGEE, 8],
  ] as const)("a %s takes few cuts", (_, section, most) => {
    const plan = planOf(section, WHOLE_SHELF);
    expect(plan.cuts.length).toBeLessThanOrEqual(most);
    expect(plan.uncut).toEqual([]);
    expect(recutPlan(plan).findings).toEqual([]);
  });
});
