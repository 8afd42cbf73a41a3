import { describe, expect, test } from "vitest";
import { recutPlan } from "../cutting/index.ts";
import { drawnSection, planOf } from "./testing/benches.ts";
import { hollow, plough, rebate, round, SNIPE_BILLS, shelfOf, smoother } from "./testing/shelves.ts";

const RADIUS_MM = 12.7;
const SAG_MM = RADIUS_MM * (1 - Math.sqrt(3) / 2);
const BULGE_60 = Math.tan(Math.PI / 12);
const NBSP = "\u00a0";

/** One low bead whose crown is level with the face, wood standing to both sides of it. */
const SUNK_BEAD = drawnSection(60, 16, [
  [0, 0],
  [60, 0],
  [60, 16],
  [24 + RADIUS_MM, 16],
  [24 + RADIUS_MM, 16 - SAG_MM, BULGE_60],
  [24, 16 - SAG_MM],
  [24, 16],
  [0, 16],
]);

/** A slot 3 mm wide and 5 mm deep. */
const NARROW_SLOT = drawnSection(40, 20, [
  [0, 0],
  [40, 0],
  [40, 20],
  [21.5, 20],
  [21.5, 15],
  [18.5, 15],
  [18.5, 20],
  [0, 20],
]);

/** A flute of 60° in a bare face. */
const FLUTE = drawnSection(60, 16, [
  [0, 0],
  [60, 0],
  [60, 16],
  [24 + RADIUS_MM, 16, -BULGE_60],
  [24, 16],
  [0, 16],
]);

describe("what stays uncut is named with its rule and its cure", () => {
  test("wall: a sunk bead without snipe bills; with them all of it is cut", () => {
    const without = planOf(SUNK_BEAD, shelfOf(hollow(RADIUS_MM), smoother(50)));
    const wall = without.uncut.find((place) => place.rule === "wall");
    expect(wall?.why).toContain("12.7 mm hollow");
    expect(wall?.why).toContain(`1.7${NBSP}mm`);
    expect(wall?.try).toContain("snipe bills");
    expect(wall?.left).toBeGreaterThan(0.2);
    expect(recutPlan(without).holds).toBe(true);
    const withThem = planOf(SUNK_BEAD, shelfOf(hollow(RADIUS_MM), ...SNIPE_BILLS));
    expect(withThem.uncut).toEqual([]);
    expect(recutPlan(withThem).holds).toBe(true);
  });

  test("out of reach: a slot narrower than every flat plane, both widths told", () => {
    const plan = planOf(NARROW_SLOT, shelfOf(rebate(6)));
    const floor = plan.uncut.find((place) => place.from[1] === 15 && place.to[1] === 15);
    expect(floor?.rule).toBe("out of reach");
    expect(floor?.left).toBeCloseTo(5, 1);
    expect(floor?.why).toBe(
      `This flat is 3${NBSP}mm wide between standing wood, and the narrowest flat plane is 6${NBSP}mm.`,
    );
    // The cure that serves is the narrower plane, or a slot as wide as the plane.
    expect(floor?.try).toMatch(new RegExp(`[36]${NBSP}mm wide`));
    expect(recutPlan(plan).holds).toBe(true);
  });

  // Known: every piece of the slot is told of with the sentence for a floor, its upright walls as "this flat is 5 mm wide".
  test("the sentence for a floor between walls is told of the floor only", () => {
    const plan = planOf(NARROW_SLOT, shelfOf(rebate(6)));
    const told = plan.uncut.filter((place) => place.why.includes("wide between standing wood"));
    expect(told).toHaveLength(1);
  });

  test("no round at all, and none of the radius", () => {
    const none = planOf(FLUTE, shelfOf(rebate(12), hollow(RADIUS_MM)));
    expect(none.uncut).toHaveLength(1);
    expect(none.uncut[0]?.try).toContain("round");
    expect(none.uncut[0]?.left).toBeCloseTo(SAG_MM, 2);
    const large = planOf(FLUTE, shelfOf(round(40)));
    expect(large.uncut).toHaveLength(1);
    expect(large.uncut[0]?.try).toContain(`12.7${NBSP}mm`);
  });

  /** A bead of 12.7 mm radius and 45° with a wall at either end, as deep as it is high. */
  const HALF_45 = Math.PI / 8;
  const [HALF_WIDE_MM, HIGH_MM] = [RADIUS_MM * Math.sin(HALF_45), RADIUS_MM * (1 - Math.cos(HALF_45))];
  const SHUT_IN = drawnSection(60, 16, [
    [0, 0],
    [60, 0],
    [60, 16],
    [30 + HALF_WIDE_MM, 16],
    [30 + HALF_WIDE_MM, 16 - HIGH_MM - 1, Math.tan(HALF_45 / 2)],
    [30 - HALF_WIDE_MM, 16 - HIGH_MM - 1],
    [30 - HALF_WIDE_MM, 16],
    [0, 16],
  ]);

  test("a plane that is on the shelf is never advised: what keeps it off is said", () => {
    const plan = planOf(SHUT_IN, shelfOf(hollow(RADIUS_MM), plough(3, 6), ...SNIPE_BILLS));
    const [curve] = plan.uncut.filter((place) => place.why.includes("fits this curve"));
    expect(curve?.rule).toBe("out of reach");
    expect(curve?.why).toBe(
      `The 12.7 mm hollow fits this curve, but its sole is 12.7${NBSP}mm wide and the curve only 9.7${NBSP}mm from end to end, with wood standing at both.`,
    );
    for (const place of plan.uncut) expect(place.try).not.toContain(`12.7${NBSP}mm radius would fit`);
    expect(recutPlan(plan).holds).toBe(true);
  });

  test("a curve that asks for more lean than is held true says how much", () => {
    // The middle of a quarter round faces 45°; half of a 60° sole brings the plane to 15° from upright, no nearer.
    const ovolo = drawnSection(40, 20, [
      [0, 0],
      [40, 0],
      [40, 5],
      [30, 5, Math.tan(Math.PI / 8)],
      [20, 15],
      [0, 15],
    ]);
    const plan = planOf(ovolo, shelfOf(hollow(10), rebate(32), smoother(50)), { greatestLeanDeg: 10 });
    const leaning = plan.uncut.filter((place) => place.rule === "lean");
    expect(leaning).toHaveLength(1);
    expect(leaning[0]?.why).toBe(
      "The 10 mm hollow fits this curve, but it would have to lean 15° here, and 10° is the most that is held true.",
    );
  });

  test("in inches the same place is told in inches", () => {
    const plan = planOf(FLUTE, shelfOf(rebate(12), hollow(RADIUS_MM)), { unit: "in" });
    expect(plan.uncut[0]?.try).toContain("½″");
    expect(plan.uncut[0]?.try).not.toContain("mm");
  });
});
