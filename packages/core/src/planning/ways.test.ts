import { describe, expect, test } from "vitest";
import { ringFromVertices } from "../curve/index.ts";
import type { PlanCut } from "../cutting/index.ts";
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

describe("a way's figures", () => {
  const plan = planOf(SPRUNG, SHELF);
  const [taken, ...others] = plan.ways;
  const curvedCuts = plan.cuts.filter(({ plane }) => plane.kind === "hollow" || plane.kind === "round");
  const sum = (cuts: readonly PlanCut[]) => cuts.reduce((mm2, { takes }) => mm2 + takes, 0);

  test("are those of the plan's own cuts and lines", () => {
    expect(taken).toMatchObject({
      way: plan.way,
      cuts: plan.cuts.length,
      curved: curvedCuts.length,
      seats: curvedCuts.filter(({ seat }) => seat !== null).length,
      lines: plan.marks.length,
    });
    expect(taken?.planed).toBeCloseTo(sum(plan.cuts.filter(({ plane }) => plane.kind !== "saw")), 1);
    expect(taken?.sawn).toBeCloseTo(sum(plan.cuts.filter(({ plane }) => plane.kind === "saw")), 1);
  });

  test("tell the lines that lie on the stick as it is before the first cut from those on what is cut", () => {
    const onStick = plan.marks.filter(
      ({ at: [x, y], from }) =>
        !from.startsWith("foot") && [x, 40 - x, y, 18 - y].some((off) => Math.abs(off) < 0.01),
    );
    expect(onStick.length).toBeGreaterThan(0);
    expect(onStick.length).toBeLessThan(plan.marks.length);
    expect(taken?.linesAtFirst).toBe(onStick.length);
  });

  test("of the others too: whichever way it is worked, the same wood goes", () => {
    expect(others.length).toBeGreaterThan(0);
    for (const { planed = 0, sawn = 0, lines = 0, linesAtFirst = 0, seats = 0, curved = 0 } of others) {
      expect(planed + sawn).toBeCloseTo((taken?.planed ?? 0) + (taken?.sawn ?? 0), 0);
      expect(linesAtFirst).toBeLessThanOrEqual(lines);
      expect(seats).toBeLessThanOrEqual(curved);
    }
  });

  test("from a half-done stick, lines on what was cut before can be scribed at once", () => {
    // A step 20 mm wide and 6.35 mm deep is off the far edge already: a line in its floor waits for nothing.
    const begun = ringFromVertices([
      [0, 0],
      [40, 0],
      [40, 11.65],
      [20, 11.65],
      [20, 18],
      [0, 18],
    ]);
    const rest = planOf(SPRUNG, SHELF, { from: [begun], ways: ["flat"] });
    const onWood = rest.marks.filter(({ at: [x, y], from }) => {
      const isOnStep = (x >= 20 && Math.abs(y - 11.65) < 0.01) || (y >= 11.65 && Math.abs(x - 20) < 0.01);
      const isOnEdge = [x, y, 40 - x].some((off) => Math.abs(off) < 0.01);
      return !from.startsWith("foot") && (isOnStep || isOnEdge || (x <= 20 && Math.abs(18 - y) < 0.01));
    });
    expect(onWood.some(({ at: [, y] }) => Math.abs(y - 11.65) < 0.01)).toBe(true);
    expect(rest.ways[0]?.linesAtFirst).toBe(onWood.length);
  });
});
