import { describe, expect, test } from "vitest";
import { planOf, sectionOf } from "./testing/benches.ts";
import { hollow, rebate, round, SNIPE_BILLS, shelfOf } from "./testing/shelves.ts";

describe("a wall that leans out over its floor", () => {
  const section = sectionOf({
    name: "tongue",
    stick: { widthMm: 30, thicknessMm: 22 },
    startHeightMm: 12,
    parts: [
      { kind: "fillet", widthMm: 11.76327 },
      { kind: "step", riseMm: 10.154266, leanDeg: 10 },
      { kind: "fillet", widthMm: "rest" },
    ],
  });
  const plan = planOf(section, shelfOf(rebate(12), ...SNIPE_BILLS));

  test("the floor is cut as far as nothing hangs over it", () => {
    expect(plan.cuts).toHaveLength(1);
    // From the gauge edge to under the wall's upper arris: 10.154266 · tan 10° short of its foot.
    expect(plan.cuts[0]).toMatchObject({ runsAgainst: "gauge edge", fence: 10 });
    expect(plan.cuts[0]?.takes).toBeCloseTo(100, 1);
  });

  test("side rebate planes with a narrow foot are told for the rest, planned so", () => {
    expect(plan.uncut.length).toBeGreaterThan(0);
    expect(plan.cures?.[0]).toMatchObject({ kind: "plane", placesAfter: 0 });
    expect(plan.cures?.[0]?.says).toContain("side rebate planes");
  });
});

describe("half-rounds side by side", () => {
  const section = sectionOf({
    name: "reeds",
    stick: { widthMm: 31.05, thicknessMm: 20 },
    startHeightMm: 15.2375,
    parts: [
      { kind: "fillet", widthMm: 6 },
      { kind: "bead", widthMm: 9.525 },
      { kind: "bead", widthMm: 9.525 },
      { kind: "fillet", widthMm: "rest" },
    ],
  });
  const planes = [hollow(4.7625), rebate(6), rebate(12), ...SNIPE_BILLS];

  test("are drawn flatter to a hollow of the shelf, all alike, where none goes between them", () => {
    const plan = planOf(section, shelfOf(...planes, hollow(6.35)));
    expect(plan.uncut.length).toBeGreaterThan(0);
    const change = plan.cures?.find(({ kind }) => kind === "change");
    expect(change).toMatchObject({ change: { what: "radius", toMm: 6.35 }, placesAfter: 0 });
    expect(change?.says).toContain("Draw the reeds flatter");
  });

  test("where no cure is found the plan says so and names the tool for the hand", () => {
    const plan = planOf(section, shelfOf(...planes));
    expect(plan.uncut.length).toBeGreaterThan(0);
    expect(plan.cures).toBeUndefined();
    for (const place of plan.uncut) {
      expect(place.try).toMatch(/^No plane to borrow and no small change of the section was found/);
      expect(place.try).toContain("scratch stock");
    }
  });
});

test("a hollow curve that no plane reaches names the carving gouge", () => {
  const section = sectionOf({
    name: "cove",
    stick: { widthMm: 30, thicknessMm: 20 },
    parts: [
      { kind: "fillet", widthMm: 10 },
      { kind: "cavetto", acrossMm: 4, riseMm: -4 },
      { kind: "fillet", widthMm: "rest" },
    ],
  });
  const plan = planOf(section, shelfOf(round(20), rebate(12)), { quick: true });
  const curves = plan.uncut.filter(({ try: words }) => words.includes("carving gouge"));
  expect(curves.length).toBeGreaterThan(0);
});
