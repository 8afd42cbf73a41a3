import { describe, expect, test } from "vitest";
import { type PlanCut, recutPlan } from "../cutting/index.ts";
import { planOf, sectionOf } from "./testing/benches.ts";
import { WHOLE_SHELF } from "./testing/shelves.ts";

/** The ogee of a cornice: its hollow half begins beside the groove that cuts the fillet's wall. */
const OGEE_BESIDE_A_WALL = sectionOf({
  name: "ogee beside a wall",
  stick: { widthMm: 60, thicknessMm: 22 },
  parts: [
    { kind: "fillet", widthMm: 7 },
    { kind: "step", riseMm: -2.5 },
    { kind: "cyma recta", acrossMm: 30.667, riseMm: -8.217 },
    { kind: "fillet", widthMm: "rest" },
  ],
});

describe("waste is taken where it makes the seat as well", () => {
  const plan = planOf(OGEE_BESIDE_A_WALL, WHOLE_SHELF);
  const inHollowHalf = (cut: PlanCut) => acrossOf(cut)[1] < 7 + 30.667 / 2;
  const grooves = plan.cuts.filter((cut) => cut.plane.kind === "plough" && inHollowHalf(cut));

  test("the round rides on the arrises of the groove that took the waste, no cut is made for it alone", () => {
    const round = plan.cuts.findIndex(({ plane }) => plane.kind === "round");
    expect(plan.cuts[round]?.seat).not.toBeNull();
    const flats = plan.cuts.slice(0, round).filter(({ plane }) => plane.kind !== "hollow");
    expect(Math.min(...flats.map(({ takes }) => takes))).toBeGreaterThan(2);
    expect(plan.cuts.length).toBeLessThanOrEqual(7);
    expect(recutPlan(plan).findings).toEqual([]);
  });

  test("the strip between the two grooves is wide enough to carry it", () => {
    expect(grooves).toHaveLength(2);
    const [first, second] = grooves.map(acrossOf);
    expect((second?.[0] ?? 0) - (first?.[1] ?? 0)).toBeGreaterThanOrEqual(1.5);
  });
});

function acrossOf({ plane, runs }: PlanCut): readonly [number, number] {
  const half = "width" in plane && typeof plane.width === "number" ? plane.width / 2 : 0;
  const at = runs?.[0]?.[0]?.[0] ?? 0;
  return [at - half, at + half];
}
