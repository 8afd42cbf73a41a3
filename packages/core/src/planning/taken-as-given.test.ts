import { describe, expect, test } from "vitest";
import type { Vertex } from "../curve/index.ts";
import { drawnSection, planOf } from "./testing/benches.ts";
import { rebate, SNIPE_BILLS, shelfOf } from "./testing/shelves.ts";

const STEP: readonly Vertex[] = [
  [0, 0],
  [40, 0],
  [40, 14],
  [30, 14],
  [30, 20],
  [0, 20],
];

const OF_REBATE = "12 mm rebate plane: its width is assumed; measure the plane and enter what differs.";
const OF_BEAK = "Left-hand snipe bill: beak 6 mm is assumed; measure the plane and enter what differs.";
const OF_NONE = "The shelf is as it was in spring.";
const SHELF = { ...shelfOf(rebate(12), ...SNIPE_BILLS), assumed: [OF_REBATE, OF_BEAK, OF_NONE] };

describe("what a plan takes as given", () => {
  const plan = planOf(drawnSection(40, 20, STEP), SHELF);

  test("names only planes that the plan uses", () => {
    expect(plan.cuts.map((cut) => cut.plane.id)).toEqual(["rebate-12"]);
    expect(plan.assumed).toContain(OF_REBATE);
    expect(plan.assumed).toContain(OF_NONE);
    expect(plan.assumed).not.toContain(OF_BEAK);
  });

  test("and no saw, and no fence or gauge, where the plan has none", () => {
    const said = plan.assumed.join(" ");
    expect(said).not.toMatch(/saw/i);
    expect(said).not.toMatch(/carry/);
    expect(said).toContain("fence 0.1");
  });

  test("says nothing of a plane that is left out", () => {
    const left = planOf(drawnSection(40, 20, STEP), SHELF, { without: ["snipe-left"] });
    expect(left.assumed).not.toContain(OF_BEAK);
  });

  test("a plane is named that something stays uncut for", () => {
    // A groove narrower than the rebate plane: nothing is cut, and the reason names it.
    const groove: readonly Vertex[] = [
      [0, 0],
      [40, 0],
      [40, 20],
      [24, 20],
      [24, 14],
      [16, 14],
      [16, 20],
      [0, 20],
    ];
    const none = planOf(drawnSection(40, 20, groove), SHELF);
    const named = none.uncut.some(({ why }) => why.includes("12 mm rebate plane"));
    expect(none.assumed.includes(OF_REBATE)).toBe(named || none.cuts.length > 0);
    expect(none.assumed.join(" ")).not.toMatch(/minutes to set/);
  });
});
