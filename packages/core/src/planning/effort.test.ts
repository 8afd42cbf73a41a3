import { describe, expect, test } from "vitest";
import { recutPlan } from "../cutting/index.ts";
import { countWork, DEFAULT_TOLERANCE_MM } from "../measure/index.ts";
import { CHART_CABINET } from "../section/testing/chart-cabinet.ts";
import { benchesFor } from "./benches-for.ts";
import { Effort } from "./effort.ts";
import { provenPlan } from "./proven-plan.ts";
import { type Found, searchWay } from "./search.ts";
import { sectionOf } from "./testing/benches.ts";
import { WHOLE_SHELF } from "./testing/shelves.ts";

const MUCH = 1_000_000_000;

/** Found by one whose plan has taken so much work already. */
function foundAfter(
  work: number,
  name: string,
): { found: Found; effort: Effort; request: Parameters<typeof provenPlan>[0] } {
  const spec = CHART_CABINET.find((one) => one.name === name);
  if (!spec) throw new Error(name);
  const request = { section: sectionOf(spec), shelf: WHOLE_SHELF };
  const effort = new Effort();
  effort.resume();
  countWork(work);
  const search = searchWay("flat", benchesFor(request, DEFAULT_TOLERANCE_MM, effort));
  for (let step = search.next(); ; step = search.next()) {
    if (!step.done) continue;
    effort.pause();
    if (!step.value) throw new Error("no way was found");
    return { found: step.value, effort, request };
  }
}

describe("the work of a plan", () => {
  test("is what is counted between resuming and pausing", () => {
    const effort = new Effort();
    countWork(5);
    expect(effort.spent).toBe(0);
    effort.resume();
    countWork(7);
    expect(effort.spent).toBe(7);
    effort.pause();
    countWork(11);
    expect(effort.spent).toBe(7);
    effort.resume();
    countWork(1);
    expect(effort.spent).toBe(8);
  });

  test("sets the pace: thorough, then brisk, then hasty, and no cure is looked for at the last", () => {
    const effort = new Effort();
    effort.resume();
    const paces = new Set([effort.pace]);
    expect(effort.maySeekCures).toBe(true);
    expect(effort.mayWorkFaceAgain).toBe(true);
    for (let i = 0; i < 1000; i++) {
      countWork(MUCH / 1000);
      paces.add(effort.pace);
    }
    expect([...paces]).toEqual(["thorough", "brisk", "hasty"]);
    expect(effort.maySeekCures).toBe(false);
    expect(effort.mayWorkFaceAgain).toBe(false);
  });
});

describe.each(CHART_CABINET.map(({ name }) => name))("the chart cabinet's %s in haste", (name) => {
  const thorough = foundAfter(0, name);
  const hasty = foundAfter(MUCH, name);

  test("is planned all the same, and holds when it is cut again", () => {
    const { found, request } = hasty;
    const { plan } = provenPlan(request, { taken: found, found: [found], asked: null });
    expect(recutPlan(plan).findings).toEqual([]);
    expect(plan.warnings.join(" ")).toContain("not every order of the cuts");
  });

  test("takes less work", () => {
    expect(thorough.effort.isThorough).toBe(true);
    expect(hasty.effort.spent - MUCH).toBeLessThan(thorough.effort.spent);
  });
});
