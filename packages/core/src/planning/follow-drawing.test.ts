import { describe, expect, test } from "vitest";
import { ringFromVertices, verticesOf } from "../curve/index.ts";
import { type Plan, recutPlan } from "../cutting/index.ts";
import { workCounted } from "../measure/index.ts";
import type { Section } from "../section/index.ts";
import { CHART_CABINET } from "../section/testing/chart-cabinet.ts";
import { planSection } from "./index.ts";
import { held, planOf, sectionOf } from "./testing/benches.ts";
import { shelfOf, smoother, WHOLE_SHELF } from "./testing/shelves.ts";

/** The section with one vertex moved down by a tenth of a millimetre. */
function moved(section: Section, at: number): Section {
  const vertices = verticesOf(section.outline).map(([x, y, bulge = 0], i): [number, number, number] =>
    i === at ? [x, y - 0.1, bulge] : [x, y, bulge],
  );
  return { ...section, outline: ringFromVertices(vertices), freeSpans: [] };
}

function workOf(make: () => Plan): { readonly plan: Plan; readonly work: number } {
  const from = workCounted();
  const plan = make();
  return { plan, work: workCounted() - from };
}

const onFace = (section: Section): number => {
  const ys = verticesOf(section.outline).map(([, y]) => y);
  // A vertex of the face, neither on the back nor on top.
  return ys.findIndex((y) => y > Math.min(...ys) + 1 && y < Math.max(...ys) - 0.5);
};

describe.each(CHART_CABINET)("the chart cabinet's $name, a vertex moved under the finger", (spec) => {
  const section = sectionOf(spec);
  const like = planOf(section, WHOLE_SHELF);
  const now = moved(section, onFace(section));
  const quick = (more: object) =>
    held(planSection({ section: now, shelf: WHOLE_SHELF, quick: true, ...more }));
  const follows = workOf(() => quick({ like }));
  const anew = workOf(() => quick({}));

  test("holds when it is cut again, and says no more than the best found", () => {
    expect(recutPlan(follows.plan).findings).toEqual([]);
    expect(follows.plan.standing).toBe("best found");
    expect(follows.plan.uncut.length).toBeLessThanOrEqual(
      Math.max(like.uncut.length, anew.plan.uncut.length),
    );
  });

  test("is the same, byte for byte, whenever it follows that plan", () => {
    expect(JSON.stringify(quick({ like }))).toBe(JSON.stringify(follows.plan));
  });

  test("is the search's own where the plan before is not one that the planner gave", () => {
    const copy = JSON.parse(JSON.stringify(like)) as Plan;
    expect(JSON.stringify(quick({ like: copy }))).toBe(JSON.stringify(anew.plan));
  });
});

describe("following the plan before", () => {
  const spec = CHART_CABINET[0];
  const section = sectionOf(spec as (typeof CHART_CABINET)[number]);
  const like = planOf(section, WHOLE_SHELF);
  const request = { section: moved(section, onFace(section)), shelf: WHOLE_SHELF };

  test("takes less than half the work where only a part has moved", () => {
    const follows = workOf(() => held(planSection({ ...request, quick: true, like })));
    const anew = workOf(() => held(planSection({ ...request, quick: true })));
    expect(follows.work).toBeLessThan(anew.work / 2);
  });

  test("is no matter for a whole plan", () => {
    expect(JSON.stringify(held(planSection({ ...request, like })))).toBe(
      JSON.stringify(held(planSection(request))),
    );
  });

  test("ends where the shelf is another", () => {
    const other = { ...request, shelf: shelfOf(smoother(40)), quick: true };
    expect(JSON.stringify(held(planSection({ ...other, like })))).toBe(
      JSON.stringify(held(planSection(other))),
    );
  });
});
