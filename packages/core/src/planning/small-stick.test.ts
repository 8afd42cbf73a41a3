import { describe, expect, test } from "vitest";
import { COMMON_LIMITS } from "../cutting/index.ts";
import { planOf, sectionOf } from "./testing/benches.ts";
import { hollow, plough, rebate, round, SNIPE_BILLS, shelfOf } from "./testing/shelves.ts";

const SHELF = shelfOf(
  hollow(6.35),
  round(6.35),
  ...SNIPE_BILLS,
  rebate(3),
  rebate(6),
  rebate(12),
  plough(3, 6),
);

function ovoloOn(widthMm: number, thicknessMm: number) {
  return sectionOf({
    name: "bar",
    stick: { widthMm, thicknessMm },
    parts: [
      { kind: "ovolo", acrossMm: 6.35, riseMm: -6.35 },
      { kind: "fillet", widthMm: "rest" },
    ],
  });
}

const holding = (widthMm: number, thicknessMm: number) =>
  planOf(ovoloOn(widthMm, thicknessMm), SHELF).warnings.filter((words) => words.startsWith("A stick "));

describe("a small stick", () => {
  test("smaller than a vice holds is worked on a board's edge as thick as it is wide, and ripped off after, with care", () => {
    const [words = ""] = holding(10, 14);
    expect(words).toContain("too small to be held");
    expect(words).toContain("edge of a wider board 10\u00a0mm thick");
    expect(words).toContain("rip it off at the back when the last cut is made");
    expect(words).toContain("guard, push stick");
  });

  test("thin and wide on the face of a thicker board", () => {
    expect(holding(60, 9)[0]).toContain("on a board of that width that is thick enough to hold");
  });

  test("larger than that on a sticking board", () => {
    expect(holding(18, 20)).toHaveLength(1);
    expect(holding(18, 20)[0]).toContain("sticking board");
  });

  test("a thin board too wide for a sticking board lies on the bench like any other", () => {
    expect(holding(250, 20)).toEqual([]);
    expect(holding(90, 18)).toEqual([]);
    expect(holding(70, 18)).toHaveLength(1);
  });

  test("no word of a stick that is held like any other", () => {
    expect(holding(40, 30)).toEqual([]);
  });

  test("one whose back is worked too cannot stay on its board", () => {
    const section = sectionOf({
      name: "bar",
      stick: { widthMm: 14, thicknessMm: 11 },
      parts: [{ kind: "fillet", widthMm: "rest" }],
      back: [{ kind: "rebate", edge: "far", widthMm: 5, depthMm: 4 }],
    });
    const [words = ""] = planOf(section, SHELF).warnings.filter((one) => one.startsWith("A stick "));
    expect(words).toContain("sticking board");
  });

  test("the sizes are the maker's to change", () => {
    const limits = { ...COMMON_LIMITS, holding: { ...COMMON_LIMITS.holding, stickingBoardBelowMm: 5 } };
    expect(planOf(ovoloOn(10, 14), SHELF, { limits }).warnings).toEqual([]);
  });
});
