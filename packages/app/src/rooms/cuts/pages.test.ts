import { readFileSync } from "node:fs";
import type { Plan } from "mouldwright/cutting";
import { describe, expect, test } from "vitest";
import { pageOnShow, pagesOf, swiped, turnedByKey } from "./pages.ts";

const FILE = new URL("../../../../../examples/impossible/plan.json", import.meta.url);
const PLAN = JSON.parse(readFileSync(FILE, "utf8")) as Plan;
const NONE: ReadonlySet<number> = new Set();

describe("pages", () => {
  test("the overview, then one page a cut", () => {
    expect(pagesOf(PLAN)).toHaveLength(1 + PLAN.cuts.length);
    expect(pagesOf(PLAN)[0]).toEqual({ kind: "overview" });
  });

  test("at first the first cut that is not done; when all are done the first", () => {
    const all = new Set(PLAN.cuts.map(({ number }) => number));
    expect(pageOnShow(PLAN, null, NONE)).toEqual({ kind: "cut", number: 1 });
    expect(pageOnShow(PLAN, null, new Set([1]))).toEqual({ kind: "cut", number: 2 });
    expect(pageOnShow(PLAN, null, all)).toEqual({ kind: "cut", number: 1 });
    expect(pageOnShow({ ...PLAN, cuts: [] }, null, NONE)).toEqual({ kind: "overview" });
  });

  test("a page that a new plan does not have gives way to the last", () => {
    const last = PLAN.cuts.length;
    expect(pageOnShow(PLAN, { kind: "cut", number: 40 }, NONE)).toEqual({ kind: "cut", number: last });
    expect(pageOnShow(PLAN, { kind: "cut", number: 2 }, NONE)).toEqual({ kind: "cut", number: 2 });
  });

  test("keys turn one page or to an end, and never past one", () => {
    expect(turnedByKey("ArrowRight", 3, 5)).toBe(4);
    expect(turnedByKey("PageDown", 4, 5)).toBe(4);
    expect(turnedByKey("ArrowLeft", 3, 5)).toBe(2);
    expect(turnedByKey("PageUp", 0, 5)).toBe(0);
    expect(turnedByKey("Home", 3, 5)).toBe(0);
    expect(turnedByKey("End", 1, 5)).toBe(4);
    expect(turnedByKey("a", 1, 5)).toBe(null);
  });

  test("a finger turns the page only far enough across, and not while it scrolls", () => {
    expect(swiped(-80, 10)).toBe(1);
    expect(swiped(80, -10)).toBe(-1);
    expect(swiped(-30, 0)).toBe(0);
    expect(swiped(-80, 120)).toBe(0);
  });
});
