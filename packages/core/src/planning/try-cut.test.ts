import { describe, expect, test } from "vitest";
import type { Bench } from "./bench.ts";
import { sawDraft } from "./draft-cut.ts";
import { benchOf, draftAt, drawnSection } from "./testing/benches.ts";
import { hollow, plough, rebate, round, shelfOf, snipeBill } from "./testing/shelves.ts";
import { type Refusal, tryCut } from "./try-cut.ts";

/** A 40 × 20 mm stick of which nothing but a thin sole plate is wanted, so that no cut is an overcut. */
const PLATE = drawnSection(40, 20, [
  [0, 0],
  [40, 0],
  [40, 0.5],
  [0, 0.5],
]);

const SHOULDERED = { ...round(6), id: "shouldered", shoulder: { widthMm: 12, heightMm: 5 } };

function benchForCuts(): Bench {
  return benchOf(
    PLATE,
    shelfOf(
      rebate(6),
      rebate(12),
      hollow(12.7),
      { ...hollow(12.7), id: "measured", wallMm: 2 },
      SHOULDERED,
      snipeBill("left"),
      plough(6),
    ),
  );
}

function rules(refusals: readonly Refusal[]): string[] {
  return refusals.map((refusal) => refusal.rule).sort();
}

describe("what a cut takes", () => {
  test("a rebate plane over an edge takes width times depth and is refused by no rule", () => {
    const bench = benchForCuts();
    const tried = tryCut(bench, bench.stickRegion, draftAt(bench, "rebate-12", [36, 14, 0]));
    // From x = 30 to the edge at 40, 6 mm deep.
    expect(tried.takesMm2).toBeCloseTo(60, 6);
    expect(tried.wallMm[0]).toBeCloseTo(6, 6);
    expect(tried.wallMm[1]).toBe(0);
    expect(tried.refusals).toEqual([]);
  });

  test("a saw takes what lies to the right of its line", () => {
    const bench = benchForCuts();
    // Walked from the far edge at 10 up to the face at 30 the corner triangle of 10 × 10 mm lies to the right.
    const draft = sawDraft(bench, { x: 40, y: 10 }, { x: 30, y: 20 }, 0, []);
    const tried = tryCut(bench, bench.stickRegion, draft);
    expect(tried.takesMm2).toBeCloseTo(50, 6);
    expect(tried.refusals).toEqual([]);
  });
});

describe("what forbids a cut", () => {
  test("wall: a 12.7 mm hollow sunk to its corners leaves 1.7 mm on both sides and clears 0.4", () => {
    const bench = benchForCuts();
    // The crown is level with the face, so the corners stand r (1 - cos 30°) = 1.7015 mm below it.
    const tried = tryCut(bench, bench.stickRegion, draftAt(bench, "hollow-12.7-12.7", [20, 20, 0]));
    expect(tried.refusals.map((r) => [r.rule, r.side])).toEqual([
      ["wall", "left"],
      ["wall", "right"],
    ]);
    for (const { foundMm, limitMm } of tried.refusals) {
      expect(foundMm).toBeCloseTo(1.7015, 3);
      // 0.06 of the width is 0.762 mm, but no hollow's iron clears more than 0.4.
      expect(limitMm).toBe(0.4);
    }
  });

  test("a wall that the maker measured goes before the common one", () => {
    const bench = benchForCuts();
    expect(tryCut(bench, bench.stickRegion, draftAt(bench, "measured", [20, 20, 0])).refusals).toEqual([]);
  });

  test("wall: a beak sunk deeper than its reach", () => {
    const bench = benchForCuts();
    const at = (depthMm: number) =>
      tryCut(bench, bench.stickRegion, draftAt(bench, "snipe-left", [20, 20 - depthMm, 0]));
    // Reach 5 mm on the upright side. On the sloping side the beak is 6 mm wide at (6 - 0.4) tan 60° = 9.7 mm.
    expect(at(4.9).refusals).toEqual([]);
    const [refusal, ...others] = at(6).refusals;
    expect(others).toEqual([]);
    expect(refusal?.side).toBe("left");
    expect(refusal?.foundMm).toBeCloseTo(6, 3);
    expect(refusal?.limitMm).toBe(5);
  });

  test("wall: a leaning flat plane sunk aslant into solid wood", () => {
    const bench = benchForCuts();
    const aslant = tryCut(bench, bench.stickRegion, draftAt(bench, "rebate-12", [20, 10, 30]));
    expect(aslant.refusals.some((r) => r.rule === "wall" && r.limitMm === 4)).toBe(true);
    // Upright the same plane, sunk the same depth with both walls standing, may go down 16 mm.
    expect(tryCut(bench, bench.stickRegion, draftAt(bench, "rebate-12", [20, 10, 0])).refusals).toEqual([]);
  });

  test("wall and loose wood: a slot right through the stick", () => {
    const bench = benchForCuts();
    const tried = tryCut(bench, bench.stickRegion, draftAt(bench, "rebate-6", [10, 0, 0]));
    expect(rules(tried.refusals)).toEqual(["loose wood", "wall"]);
    const loose = tried.refusals.find((r) => r.rule === "loose wood");
    // Left of the slot stands a piece 7 mm wide and 20 mm high.
    expect(loose?.foundMm).toBeCloseTo(140, 4);
    const slot = tried.refusals.find((r) => r.rule === "wall");
    expect(slot?.foundMm).toBeCloseTo(20, 4);
    expect(slot?.limitMm).toBe(16);
  });

  test("wood that lies loose already is not held against the next cut", () => {
    const bench = benchForCuts();
    const parted = tryCut(bench, bench.stickRegion, draftAt(bench, "rebate-6", [10, 0, 0])).after;
    const next = tryCut(bench, parted, draftAt(bench, "rebate-12", [36, 14, 0]));
    expect(next.refusals).toEqual([]);
  });

  test("bench: a plane that would have to go below the stick's back", () => {
    const bench = benchForCuts();
    const tried = tryCut(bench, bench.stickRegion, draftAt(bench, "rebate-12", [40, -1.5, 0]));
    const below = tried.refusals.find((r) => r.rule === "bench");
    expect(below?.foundMm).toBeCloseTo(1.5, 6);
  });

  test("bench: with the stick on its far edge the far edge is what lies on it", () => {
    const bench = benchForCuts();
    // Turned so that the gauge edge looks up, a plane of tilt 90 is upright; its sole's origin lies 1 mm past x = 40.
    const past = tryCut(
      bench,
      bench.stickRegion,
      draftAt(bench, "rebate-12", [41, 20, 90], { cantDeg: -90 }),
    );
    expect(past.refusals.find((r) => r.rule === "bench")?.foundMm).toBeCloseTo(1, 6);
    const above = tryCut(
      bench,
      bench.stickRegion,
      draftAt(bench, "rebate-12", [30, 20, 90], { cantDeg: -90 }),
    );
    expect(rules(above.refusals)).not.toContain("bench");
  });

  test("body: a shouldered plane sunk past its shoulder meets the wood beside it", () => {
    const bench = benchForCuts();
    const at = (depthMm: number) =>
      tryCut(bench, bench.stickRegion, draftAt(bench, "shouldered", [20, 20 - depthMm, 0]));
    // The body widens 5 mm above the sole.
    expect(rules(at(6).refusals)).toContain("body");
    expect(rules(at(4.9).refusals)).not.toContain("body");
  });
});

describe("what holds a curved plane", () => {
  test("on a bare face a round has no seat and runs against a batten", () => {
    const bench = benchForCuts();
    const tried = tryCut(
      bench,
      bench.stickRegion,
      draftAt(bench, "shouldered", [20, 19.6, 0], { work: "curve" }),
    );
    expect(tried.seat).toBeNull();
    expect(tried.guide).toEqual({ kind: "batten" });
  });

  test("on the two arrises of a groove it sits in the middle and needs no guide", () => {
    const bench = benchForCuts();
    const groove = tryCut(bench, bench.stickRegion, draftAt(bench, "plough", [20, 17, 0])).after;
    const wide = benchOf(PLATE, shelfOf(round(12.7)));
    const tried = tryCut(wide, groove, draftAt(wide, "round-12.7-12.7", [20, 18, 0], { work: "curve" }));
    expect(tried.guide).toBeNull();
    expect(tried.seat?.shift).toBeCloseTo(0, 2);
    // Arrises 3 mm to either side of the axis: the sole hangs sqrt(12.7² - 3²) under its centre there, so it rests
    // with its middle 12.7 - 12.3406 = 0.3594 mm under the face.
    expect(tried.seat?.heightMm).toBeCloseTo(20 - 0.3594, 3);
    // Shifted by w/8 = 1.5875 mm it is carried by the arris that is now nearer to its axis, 1.4125 mm off.
    const carriedAt = 12.7 - Math.sqrt(12.7 ** 2 - (3 - 12.7 / 8) ** 2);
    expect(tried.seat?.lift).toBeCloseTo(0.3594 - carriedAt, 3);
  });
});
