import { readFileSync } from "node:fs";
import type { Plan } from "mouldwright/cutting";
import { describe, expect, test } from "vitest";
import { cutWords, distancesOf } from "./cut-words.ts";

function planOf(example: string): Plan {
  const file = new URL(`../../../../../examples/${example}/plan.json`, import.meta.url);
  return JSON.parse(readFileSync(file, "utf8")) as Plan;
}

const CORNICE = planOf("cornice");
const PILASTER = planOf("pilaster");

function wordsOf(plan: Plan, number: number, unit: "mm" | "in" = "mm") {
  const cut = plan.cuts.find((one) => one.number === number);
  if (cut === undefined) throw new Error(`no cut ${number}`);
  return cutWords(plan, cut, { unit });
}

describe("what a page says", () => {
  test("of a fenced plane the fence is set first, then lines and depth", () => {
    const { distance, further } = wordsOf(CORNICE, 3);
    expect(distance).toEqual({ figure: "30.3\u00a0mm", from: "fence on the far edge" });
    expect(further).toEqual([
      { figure: "37.7\u00a0mm", from: "from the gauge edge" },
      { figure: "10.7\u00a0mm", from: "down from the face" },
    ]);
  });

  test("a fence and a line from the same edge at the same distance are told once", () => {
    const cut = CORNICE.cuts[0];
    expect(cut && distancesOf(CORNICE, cut, { unit: "mm" })).toEqual([
      { figure: "7\u00a0mm", from: "fence on the gauge edge" },
      { figure: "10\u00a0mm", from: "from the gauge edge" },
    ]);
  });

  test("of a curved plane the line of its middle, from the foot it is measured from", () => {
    expect(wordsOf(CORNICE, 9).distance).toEqual({ figure: "7.9\u00a0mm", from: "from the foot of cut 8" });
  });

  test("a line in the foot itself has no figure to set", () => {
    expect(wordsOf(PILASTER, 6, "in").distance).toEqual({ figure: "at", from: "the foot of cut 4" });
  });

  test("strokes are counted, a saw's are not", () => {
    expect(wordsOf(CORNICE, 8).strokes).toMatch(/^About 15 passes of 0\.15.mm\. About \d+ minutes?\.$/);
    expect(wordsOf(CORNICE, CORNICE.cuts.length).strokes).toMatch(/^About \d+ minutes?\.$/);
  });

  test("the reason comes first, what goes wrong without it last, and neither is empty", () => {
    for (const plan of [CORNICE, PILASTER])
      for (const { number } of plan.cuts) {
        const { reason, otherwise } = wordsOf(plan, number);
        expect(reason.length).toBeGreaterThan(20);
        expect(otherwise.length).toBeGreaterThan(20);
        expect(reason).not.toContain(otherwise);
      }
    expect(wordsOf(CORNICE, 6).otherwise).toBe("Without it the plane rides up on that wood and tears it.");
  });

  test("a saw has the saw's cautions, a plane the edge tool's", () => {
    expect(wordsOf(CORNICE, CORNICE.cuts.length).cautions[0]).toMatch(/^Saw/);
    expect(wordsOf(CORNICE, 3).cautions[0]).toMatch(/^Edge tools/);
  });
});
