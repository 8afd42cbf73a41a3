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

/** The drawing with its first part wider, so that all that follows it stands further over. */
function withFirstPartWider(spec: (typeof CHART_CABINET)[number], byMm: number): Section {
  const parts = spec.parts.map((part, i) =>
    i === 0 && "widthMm" in part && typeof part.widthMm === "number"
      ? { ...part, widthMm: part.widthMm + byMm }
      : part,
  );
  return sectionOf({ ...spec, parts });
}

/** The sections of which every step of the pull is followed; the others leave wood on a part that moves, or lose a seat. */
const FOLLOWED = ["cornice", "reeded pilaster", "glazing bar"];

describe.each(CHART_CABINET)("the chart cabinet's $name, a part pulled wider step by step", (spec) => {
  const first = planOf(sectionOf(spec), WHOLE_SHELF, { quick: true });
  const pulled: {
    readonly plan: Plan;
    readonly anew: Plan;
    readonly work: number;
    readonly workAnew: number;
  }[] = [];
  for (let step = 1; step <= 6; step++) {
    const like = pulled[pulled.length - 1]?.plan ?? first;
    const request = { section: withFirstPartWider(spec, step / 10), shelf: WHOLE_SHELF, quick: true };
    const { plan, work } = workOf(() => held(planSection({ ...request, like })));
    const { plan: anew, work: workAnew } = workOf(() => held(planSection(request)));
    pulled.push({ plan, anew, work, workAnew });
  }

  test("every plan on the way holds, and is no longer than the first or the search's own", () => {
    for (const { plan, anew } of pulled) {
      expect(recutPlan(plan).findings).toEqual([]);
      expect(plan.cuts.length).toBeLessThanOrEqual(Math.max(first.cuts.length, anew.cuts.length));
    }
  });

  const most = FOLLOWED.includes(spec.name) ? 0.5 : 1.5;
  test(`takes at most ${most} times the work, though all that follows the part moves with it`, () => {
    const sum = (of: "work" | "workAnew") => pulled.reduce((total, one) => total + one[of], 0);
    expect(sum("work")).toBeLessThan(sum("workAnew") * most);
  });
});
