import { describe, expect, test } from "vitest";
import { recutPlan } from "../cutting/index.ts";
import type { Draft, PlaneDraft } from "./draft-cut.ts";
import { foundFlat, planOf, sectionOf } from "./testing/benches.ts";
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

  test("the round rides on the arrises of the groove that took the waste, no cut is made for it alone", () => {
    const round = plan.cuts.findIndex(({ plane }) => plane.kind === "round");
    expect(plan.cuts[round]?.seat).not.toBeNull();
    const flats = plan.cuts.slice(0, round).filter(({ plane }) => plane.kind !== "hollow");
    expect(Math.min(...flats.map(({ takes }) => takes))).toBeGreaterThan(2);
    expect(plan.cuts.length).toBeLessThanOrEqual(7);
    expect(recutPlan(plan).findings).toEqual([]);
  });

  test("the strip between the two grooves is wide enough to carry it", () => {
    const { cuts } = foundFlat(OGEE_BESIDE_A_WALL, WHOLE_SHELF).sequence;
    const grooves = cuts.flatMap(({ draft }) => (isPloughed(draft) ? [acrossOf(draft)] : []));
    const inHollowHalf = grooves.filter(([, right]) => right < 7 + 30.667 / 2);
    expect(inHollowHalf).toHaveLength(2);
    const [first, second] = inHollowHalf.sort((a, b) => a[0] - b[0]);
    expect((second?.[0] ?? 0) - (first?.[1] ?? 0)).toBeGreaterThanOrEqual(1.5);
  });
});

function isPloughed(draft: Draft): draft is PlaneDraft {
  return draft.kind === "plane" && draft.tool.plane.kind === "plough";
}

function acrossOf({ tool, runs }: PlaneDraft): readonly [number, number] {
  const [x] = runs[0][0];
  return [x + tool.sole.leftMm, x + tool.sole.rightMm];
}
