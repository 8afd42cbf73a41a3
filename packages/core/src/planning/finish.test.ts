import { expect, test } from "vitest";
import { recutPlan } from "../cutting/index.ts";
import { planOf, sectionOf } from "./testing/benches.ts";
import { WHOLE_SHELF } from "./testing/shelves.ts";

test("a splinter that two cuts leave on the gauge edge's arris, joined in one point, is not the face's height", () => {
  const section = sectionOf({
    name: "ovolo up to the gauge edge",
    stick: { widthMm: 50, thicknessMm: 30 },
    startHeightMm: 22,
    parts: [
      { kind: "step", riseMm: 3 },
      { kind: "ovolo", acrossMm: 6.35, riseMm: -6.35 },
      { kind: "fillet", widthMm: "rest" },
    ],
  });
  const plan = planOf(section, WHOLE_SHELF);
  expect(plan.uncut).toEqual([]);
  expect(plan.finish.proud).toBe(0);
  expect(recutPlan(plan).findings).toEqual([]);
});
