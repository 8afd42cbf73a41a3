import { describe, expect, test } from "vitest";
import { ringFromVertices } from "../curve/index.ts";
import { type Plan, recutPlan } from "../cutting/index.ts";
import { planOf, sectionOf } from "./testing/benches.ts";
import { sideOf } from "./testing/edges.ts";
import { hollow, rebate, SNIPE_BILLS, shelfOf } from "./testing/shelves.ts";

const SHELF = shelfOf(hollow(9.525), rebate(12), rebate(32), ...SNIPE_BILLS);

/** An ovolo at either edge of the face: each takes some of its edge, and neither has to come first. */
const TWO_OVOLOS = sectionOf({
  name: "frame",
  stick: { widthMm: 60, thicknessMm: 30 },
  startHeightMm: 18.475,
  parts: [
    { kind: "ovolo", acrossMm: 9.525, riseMm: 9.525 },
    { kind: "step", riseMm: 2 },
    { kind: "fillet", widthMm: 30 },
    { kind: "step", riseMm: -2 },
    { kind: "ovolo", acrossMm: 9.525, riseMm: -9.525 },
    { kind: "fillet", widthMm: "rest" },
  ],
});

/** The number of the first cut after which less of a side stands, or infinity. */
function goneWith(plan: Plan, side: "left" | "right"): number {
  const x = side === "left" ? 0 : 60;
  const whole = sideOf(ringFromVertices(plan.stick), x);
  const cut = plan.cuts.find(({ after }) =>
    after.every((ring) => sideOf(ringFromVertices(ring), x) < whole - 0.06),
  );
  return cut?.number ?? Number.POSITIVE_INFINITY;
}

describe("an edge that is to be kept square", () => {
  const free = planOf(TWO_OVOLOS, SHELF);
  const gauge = planOf(TWO_OVOLOS, SHELF, { keepSquare: "gauge" });
  const far = planOf(TWO_OVOLOS, SHELF, { keepSquare: "far" });

  test("goes early where nothing is said, and no word is said of it", () => {
    expect(Math.min(goneWith(free, "left"), goneWith(free, "right"))).toBeLessThanOrEqual(2);
    expect(free.warnings).toEqual([]);
  });

  test("goes after the other edge's parts are done, and nothing of the section is lost for it", () => {
    expect(goneWith(gauge, "left")).toBeGreaterThan(goneWith(free, "left"));
    expect(goneWith(gauge, "left")).toBeGreaterThan(goneWith(gauge, "right"));
    expect(goneWith(far, "right")).toBeGreaterThan(goneWith(far, "left"));
    for (const plan of [gauge, far]) {
      expect(plan.uncut).toEqual([]);
      expect(recutPlan(plan).findings).toEqual([]);
    }
  });

  test("the plan says until which cut", () => {
    expect(gauge.warnings).toHaveLength(1);
    expect(gauge.warnings[0]).toContain(
      `The gauge edge stays square and untouched until cut ${goneWith(gauge, "left")}, `,
    );
    expect(far.warnings[0]).toContain(
      `The far edge stays square and untouched until cut ${goneWith(far, "right")}, `,
    );
  });

  test("of two only one can go last: the plan says so of the other", () => {
    const both = planOf(TWO_OVOLOS, SHELF, { keepSquare: "both" });
    expect(both.warnings.filter((words) => /^The (gauge|far) edge /.test(words))).toHaveLength(2);
    expect(both.uncut).toEqual([]);
  });

  test("the other hand gives the mirrored plan", () => {
    const mirrored = planOf(TWO_OVOLOS, SHELF, { keepSquare: "gauge", gaugeEdge: "right" });
    expect(goneWith(mirrored, "right")).toBeGreaterThan(goneWith(mirrored, "left"));
  });

  test("an edge that the section leaves alone stays to the end", () => {
    const one = sectionOf({
      name: "ovolo",
      stick: { widthMm: 40, thicknessMm: 30 },
      parts: [
        { kind: "fillet", widthMm: 20 },
        { kind: "step", riseMm: -2 },
        { kind: "ovolo", acrossMm: 9.525, riseMm: -9.525 },
        { kind: "fillet", widthMm: "rest" },
      ],
    });
    expect(planOf(one, SHELF, { keepSquare: "gauge" }).warnings).toEqual([
      "The gauge edge stays square and untouched to the end.",
    ]);
  });
});
