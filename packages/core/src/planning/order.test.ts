import { describe, expect, test } from "vitest";
import { regionAreaMm2 } from "../curve/index.ts";
import { curveCovers } from "./curves.ts";
import { type PlaneDraft, planeDraft, sawDraft } from "./draft-cut.ts";
import { costOf, type FlatToCut, orderCurves, orderFlats } from "./order.ts";
import { ORDER_WEIGHTS } from "./order-weights.ts";
import { makeAll, tidied } from "./sequence.ts";
import { wantedCuts } from "./strategy.ts";
import { benchOf, draftAt, drawnSection, toolOf } from "./testing/benches.ts";
import { hollow, rebate, SNIPE_BILLS, shelfOf } from "./testing/shelves.ts";

/** A large step on the right (10 × 6 mm), a small one on the left (5 × 2 mm). */
const TWO_STEPS = drawnSection(60, 20, [
  [0, 0],
  [60, 0],
  [60, 14],
  [50, 14],
  [50, 20],
  [5, 20],
  [5, 18],
  [0, 18],
]);

/** A flat with one way to cut it. */
function only(draft: PlaneDraft): FlatToCut {
  return { ways: [draft] };
}

describe("the order of flats", () => {
  test("steps from the face down, in whatever order they are given", () => {
    const bench = benchOf(TWO_STEPS, shelfOf(rebate(12)));
    const shallow = draftAt(bench, "rebate-12", [-1, 18, 0]);
    const deep = draftAt(bench, "rebate-12", [56, 14, 0]);
    for (const given of [
      [shallow, deep],
      [deep, shallow],
    ]) {
      const ordered = orderFlats(bench, bench.stickRegion, given.map(only));
      // 5 × 2 mm on the left, then 10 × 6 mm on the right.
      expect(ordered.cuts.map((cut) => cut.takesMm2)).toEqual([expect.closeTo(10, 6), expect.closeTo(60, 6)]);
      expect(ordered.refused).toEqual([]);
    }
  });

  test("of a flat's ways the first that may be made and has a guide is taken", () => {
    const bench = benchOf(TWO_STEPS, shelfOf(rebate(12)));
    // Into the middle of the face it would drop without an edge; through the stick it may not go at all.
    const through = draftAt(bench, "rebate-12", [30, -2, 0]);
    const fromEdge = draftAt(bench, "rebate-12", [56, 14, 0]);
    const ordered = orderFlats(bench, bench.stickRegion, [{ ways: [through, fromEdge] }]);
    expect(ordered.cuts.map((cut) => cut.draft.key)).toEqual([fromEdge.key]);
    expect(ordered.refused).toEqual([]);
  });

  test("a cut that no order allows is refused by its rule, and the others are made", () => {
    const bench = benchOf(TWO_STEPS, shelfOf(rebate(12)));
    const through = draftAt(bench, "rebate-12", [30, -2, 0]);
    const large = draftAt(bench, "rebate-12", [56, 14, 0]);
    const ordered = orderFlats(bench, bench.stickRegion, [through, large].map(only));
    expect(ordered.cuts.map((cut) => cut.draft.key)).toEqual([large.key]);
    expect(ordered.refused.map(({ draft }) => draft.key)).toEqual([through.key]);
  });

  test("a cut whose waste is gone when its turn comes is not made", () => {
    const bench = benchOf(TWO_STEPS, shelfOf(rebate(12)));
    const large = draftAt(bench, "rebate-12", [56, 14, 0]);
    // The same step in a plane half a millimetre further out: all that it would take lies in the first one's sweep.
    const again = draftAt(bench, "rebate-12", [56.5, 14, 0]);
    const ordered = orderFlats(bench, bench.stickRegion, [large, again].map(only));
    expect(ordered.cuts.map((cut) => cut.draft.key)).toEqual([large.key]);
    expect(ordered.refused).toEqual([]);
  });

  test("upright cuts go before leaning ones, whatever they take", () => {
    const bench = benchOf(TWO_STEPS, shelfOf(rebate(12)));
    const chamfer = planeDraft(bench, {
      work: "chamfer",
      purpose: "waste",
      cantDeg: 0,
      shapes: [],
      tool: toolOf(bench, "rebate-12"),
      // Takes the corner of 6 × 6 mm, 18 mm², off the far edge; the small step takes 10 mm².
      runs: [[[57, 17, -45]]],
    });
    const small = draftAt(bench, "rebate-12", [-1, 18, 0]);
    const ordered = orderFlats(bench, bench.stickRegion, [chamfer, small].map(only));
    expect(ordered.cuts.map((cut) => cut.draft.work)).toEqual(["step", "chamfer"]);
  });
});

describe("the cost of an order", () => {
  // What strokes cost is looked at by itself (stroke-cost.test.ts).
  const bench = {
    ...benchOf(TWO_STEPS, shelfOf(rebate(12), rebate(6))),
    weights: { ...ORDER_WEIGHTS, perPass: 0 },
  };
  const made = (...planes: readonly string[]) =>
    makeAll(
      bench,
      bench.stickRegion,
      planes.map((id, i) => draftAt(bench, id, id === "rebate-12" ? [56, 18 - i, 0] : [-1, 18 - i, 0])),
    ).cuts;

  test("each cut is a setting; another plane adds the change", () => {
    expect(costOf(bench, made("rebate-12"))).toBeCloseTo(ORDER_WEIGHTS.setting, 9);
    expect(costOf(bench, made("rebate-12", "rebate-12"))).toBeCloseTo(2 * ORDER_WEIGHTS.setting, 9);
    expect(costOf(bench, made("rebate-12", "rebate-6"))).toBeCloseTo(
      2 * ORDER_WEIGHTS.setting + ORDER_WEIGHTS.planeChange,
      9,
    );
  });

  test("what went before counts for the change of plane", () => {
    const [first, second] = made("rebate-6", "rebate-12");
    if (!first || !second) throw new Error("two cuts expected");
    expect(costOf(bench, [second], first)).toBeCloseTo(ORDER_WEIGHTS.setting + ORDER_WEIGHTS.planeChange, 9);
  });

  test("a batten costs as much as three settings", () => {
    // In the middle of a bare face nothing guides a rebate plane.
    const cuts = makeAll(bench, bench.stickRegion, [draftAt(bench, "rebate-6", [30, 19, 0])]).cuts;
    expect(costOf(bench, cuts)).toBeCloseTo(ORDER_WEIGHTS.setting + 3, 9);
  });
});

describe("the order of curves", () => {
  const RADIUS_MM = 12.7;
  const SAG_MM = RADIUS_MM * (1 - Math.sqrt(3) / 2);
  const sunkBead = drawnSection(60, 16, [
    [0, 0],
    [60, 0],
    [60, 16],
    [24 + RADIUS_MM, 16],
    [24 + RADIUS_MM, 16 - SAG_MM, Math.tan(Math.PI / 12)],
    [24, 16 - SAG_MM],
    [24, 16],
    [0, 16],
  ]);

  test("a hollow between standing wood gets its lines first, one with each snipe bill", () => {
    const bench = benchOf(sunkBead, shelfOf(hollow(RADIUS_MM), ...SNIPE_BILLS));
    const ordered = orderCurves(bench, bench.stickRegion, wantedCuts(bench).curves);
    const planes = ordered.cuts.map((cut) => (cut.draft.kind === "plane" ? cut.draft.tool.plane.id : "saw"));
    expect(planes.slice(0, -1).sort()).toEqual(["snipe-left", "snipe-right"]);
    expect(planes.at(-1)).toBe("hollow-12.7-12.7");
    expect(ordered.cuts.every((cut) => cut.refusals.length === 0)).toBe(true);
    expect(ordered.cuts.at(-1)?.seat).not.toBeNull();
  });

  test("without snipe bills the hollow is refused for the wall beside it", () => {
    const bench = benchOf(sunkBead, shelfOf(hollow(RADIUS_MM)));
    const ordered = orderCurves(bench, bench.stickRegion, wantedCuts(bench).curves);
    expect(ordered.cuts).toEqual([]);
    expect(ordered.refused.map(({ refusal }) => refusal.rule)).toEqual(["wall"]);
  });

  test("of several ways to cut one arc exactly one is taken", () => {
    const bench = benchOf(sunkBead, shelfOf(hollow(RADIUS_MM), ...SNIPE_BILLS));
    const piece = bench.worked.find((worked) => worked.curve);
    const draft = piece && curveCovers(bench, piece)[0]?.drafts[0];
    if (!draft) throw new Error("the fixture's curve has no plane");
    const ordered = orderCurves(bench, bench.stickRegion, [{ covers: [[draft, draft]], others: () => [] }]);
    const hollows = ordered.cuts.filter((cut) => cut.draft.work === "curve");
    expect(hollows).toHaveLength(1);
  });

  test("a band of 33 curves is ordered like any other", () => {
    const bench = benchOf(sunkBead, shelfOf(hollow(RADIUS_MM)));
    const inTheAir = draftAt(bench, "hollow-12.7-12.7", [30, 40, 0], { work: "curve" });
    const ordered = orderCurves(
      bench,
      bench.stickRegion,
      Array.from({ length: 33 }, () => ({ covers: [[inTheAir]], others: () => [] })),
    );
    expect(ordered.cuts).toEqual([]);
  });
});

describe("tidying", () => {
  test("a first step that the next one takes anyway is dropped, and the wood left is the same", () => {
    const bench = benchOf(TWO_STEPS, shelfOf(rebate(12)));
    const drafts = [
      draftAt(bench, "rebate-12", [56, 17, 0]),
      draftAt(bench, "rebate-12", [56, 14, 0]),
      draftAt(bench, "rebate-12", [-1, 18, 0]),
    ];
    const before = makeAll(bench, bench.stickRegion, drafts);
    const after = tidied(bench, bench.stickRegion, before);
    expect(after.cuts.map((cut) => cut.draft.key)).toEqual([drafts[1]?.key, drafts[2]?.key]);
    expect(regionAreaMm2(after.wood)).toBeCloseTo(regionAreaMm2(before.wood), 6);
  });

  test("nothing is dropped that would leave wood standing", () => {
    const bench = benchOf(TWO_STEPS, shelfOf(rebate(12)));
    const drafts = [draftAt(bench, "rebate-12", [56, 14, 0]), draftAt(bench, "rebate-12", [-1, 18, 0])];
    const made = makeAll(bench, bench.stickRegion, drafts);
    expect(tidied(bench, bench.stickRegion, made).cuts).toHaveLength(2);
  });

  test("a sequence with a refused cut is not allowed", () => {
    const bench = benchOf(TWO_STEPS, shelfOf(rebate(12)));
    const drafts = [draftAt(bench, "rebate-12", [30, -2, 0])];
    expect(makeAll(bench, bench.stickRegion, drafts).allowed).toBe(false);
  });
});

describe("which cuts a section wants", () => {
  test("two steps want two cuts, and nothing else", () => {
    const wanted = wantedCuts(benchOf(TWO_STEPS, shelfOf(rebate(12))));
    expect(wanted.flats.map(({ ways }) => ways[0]?.runs[0]?.[0])).toEqual(
      expect.arrayContaining([
        [56, 14, 0],
        [-1, 18, 0],
      ]),
    );
    expect(wanted.flats).toHaveLength(2);
    expect([wanted.saws, wanted.curves, wanted.none]).toEqual([[], [], []]);
  });

  test("a bevel across a whole corner is sawn, one with a part of the section beyond it is not", () => {
    const bevel = drawnSection(60, 20, [
      [0, 0],
      [45, 0],
      [60, 15],
      [60, 20],
      [0, 20],
    ]);
    const wanted = wantedCuts(benchOf(bevel, shelfOf(rebate(12))));
    // The corner of 15 × 15 mm under the far edge: 112.5 mm².
    expect(wanted.saws).toHaveLength(1);
    const bench = benchOf(bevel, shelfOf(rebate(12)));
    const saw = wanted.saws[0];
    const made = saw && makeAll(bench, bench.stickRegion, [sawDraft(bench, saw.from, saw.to, 0, [])]);
    expect(made?.cuts[0]?.takesMm2).toBeCloseTo(112.5, 4);
    const stopped = drawnSection(60, 20, [
      [0, 0],
      [40, 0],
      [55, 15],
      [60, 15],
      [60, 20],
      [0, 20],
    ]);
    expect(wantedCuts(benchOf(stopped, shelfOf(rebate(12)))).saws).toEqual([]);
  });
});
