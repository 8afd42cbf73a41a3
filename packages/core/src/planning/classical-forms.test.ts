import { describe, expect, test } from "vitest";
import { type PlanCut, recutPlan } from "../cutting/index.ts";
import { planOf, sectionOf } from "./testing/benches.ts";
import { CLASSICAL_FORMS } from "./testing/classical-forms.ts";
import { WHOLE_SHELF } from "./testing/shelves.ts";

describe.each(CLASSICAL_FORMS)("$name", (form) => {
  const plan = planOf(sectionOf(form.spec), WHOLE_SHELF);

  test("all of it is cut", () => {
    expect(plan.uncut).toEqual([]);
  });

  test("re-cut from its file alone, the plan holds", () => {
    const report = recutPlan(plan);
    expect(report.findings).toEqual([]);
    expect(report.holds).toBe(true);
  });

  test("the face stands within the tolerance of the drawing, and nowhere below it", () => {
    expect(plan.finish.proud).toBeLessThanOrEqual(plan.tolerance);
    expect(plan.finish.under).toBeLessThanOrEqual(0.011);
  });

  test(`at most ${form.mostCuts} cuts: ${form.counted}`, () => {
    expect(plan.cuts.length).toBeLessThanOrEqual(form.mostCuts);
  });

  test("every curved plane is held by a seat", () => {
    expect(plan.cuts.filter((cut) => isCurved(cut) && cut.seat === null).map((cut) => cut.plane.id)).toEqual(
      [],
    );
  });

  test("every flat plane has an edge, a wall or a line to run on", () => {
    const loose = plan.cuts.filter((cut) => !isCurved(cut) && cut.plane.kind !== "saw");
    expect(loose.filter((cut) => cut.runsAgainst === "batten").map((cut) => cut.number)).toEqual([]);
  });

  test("every cut takes something, and every part has a cut that made it", () => {
    for (const cut of plan.cuts) expect(cut.takes).toBeGreaterThan(0.02);
    expect(plan.parts.filter((part) => part.madeBy.length === 0).map((part) => part.id)).toEqual([]);
  });
});

function isCurved(cut: PlanCut): boolean {
  return cut.plane.kind === "hollow" || cut.plane.kind === "round";
}
