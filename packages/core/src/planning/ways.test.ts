import { describe, expect, test } from "vitest";
import { planOf, sectionOf } from "./testing/benches.ts";
import { hollow, rebate, round, SNIPE_BILLS, shelfOf, smoother } from "./testing/shelves.ts";
import { askedWay } from "./ways.ts";

const SHELF = shelfOf(hollow(6.35), round(6.35), rebate(12), rebate(32), smoother(50), ...SNIPE_BILLS);

/** A small sprung cornice: a bead above a cove, both spring bevels to be sawn. */
const SPRUNG = sectionOf({
  name: "sprung",
  stick: { widthMm: 40, thicknessMm: 18 },
  parts: [
    { kind: "fillet", widthMm: 12 },
    { kind: "cavetto", acrossMm: 6.35, riseMm: -6.35 },
    { kind: "fillet", widthMm: "rest" },
  ],
  back: [
    { kind: "bevel", edge: "gauge", riseMm: 12, fromBackDeg: 52 },
    { kind: "bevel", edge: "far", riseMm: 8, fromBackDeg: 38 },
  ],
});

describe("the way that is asked for", () => {
  test("is taken wherever it exists, cheaper or not, and says so", () => {
    const open = planOf(SPRUNG, SHELF);
    expect(open.ways.length).toBeGreaterThan(1);
    for (const { way } of open.ways) {
      const plan = planOf(SPRUNG, SHELF, { ways: [way as "flat" | "bevelled" | "canted"] });
      expect(plan.way).toBe(way);
      if (plan.ways.length > 1) expect(plan.ways[0]?.why).toContain("It is the way asked for.");
    }
  });

  test("is not taken where the section has none, and flat stands instead", () => {
    const plain = sectionOf({
      name: "plain",
      stick: { widthMm: 30, thicknessMm: 16 },
      parts: [
        { kind: "fillet", widthMm: 10 },
        { kind: "step", riseMm: -4 },
        { kind: "fillet", widthMm: "rest" },
      ],
    });
    const plan = planOf(plain, SHELF, { ways: ["bevelled"] });
    expect(plan.way).toBe("flat");
    expect(plan.ways.map(({ way }) => way)).toEqual(["flat"]);
    expect(plan.ways[0]?.why).not.toContain("asked for");
  });

  test("two ways are a choice left open, one is asked for", () => {
    expect(askedWay(undefined)).toBeNull();
    expect(askedWay([])).toBeNull();
    expect(askedWay(["flat", "canted"])).toBeNull();
    expect(askedWay(["canted"])).toBe("canted");
  });
});
