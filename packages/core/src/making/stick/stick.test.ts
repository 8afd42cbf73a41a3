import { describe, expect, test } from "vitest";
import type { Plan } from "../../cutting/index.ts";
import { sayTrouble } from "../../measure/index.ts";
import { type BackSpec, buildSection, type PartSpec, type Section } from "../../section/index.ts";
import {
  bestCant,
  grainAdvice,
  type StickAnswer,
  type StickQuestion,
  springBevels,
  springToldBy,
  stickFor,
} from "./index.ts";
import { turnSection } from "./turn-section.ts";

function section(
  widthMm: number,
  thicknessMm: number,
  parts: readonly PartSpec[],
  back: readonly BackSpec[] = [],
): Section {
  const built = buildSection({ name: "Test", stick: { widthMm, thicknessMm }, parts, back });
  if (!built.ok) throw new Error(`${built.trouble.code} ${JSON.stringify(built.trouble.facts)}`);
  return built.value;
}

function answer(question: StickQuestion): StickAnswer {
  const given = stickFor(question);
  if (!given.ok) throw new Error(given.trouble.code);
  return given.value;
}

/** The chart cabinet's cornice: ogee and bead, two back bevels that make a spring of 38° from the wall. */
const cornice = section(
  68,
  22,
  [
    { kind: "fillet", widthMm: 7 },
    { kind: "step", riseMm: -2.5 },
    { kind: "cyma recta", acrossMm: 30.667, riseMm: -8.217 },
    { kind: "fillet", widthMm: 3 },
    { kind: "step", riseMm: -2 },
    { kind: "low bead", widthMm: 9.525 },
    { kind: "fillet", widthMm: "rest" },
  ],
  [
    { kind: "bevel", edge: "gauge", riseMm: 14, fromBackDeg: 52 },
    { kind: "bevel", edge: "far", riseMm: 6, fromBackDeg: 38 },
  ],
);

/** Level for 20, then falling 15 over 20 to the far edge: a slope of 3 in 4. */
const slope = section(40, 20, [
  { kind: "fillet", widthMm: 20 },
  { kind: "bevel", acrossMm: 20, riseMm: -15 },
]);

describe("what to buy", () => {
  test("1200 of cornice: 100 to plane on and off, 50 for checks, 6 and 4 for planing", () => {
    const { stock } = answer({ section: cornice, way: "flat", lengthMm: 1200 });
    expect(stock.planed.lengthMm).toBe(1300);
    expect(stock.planed.widthMm).toBeCloseTo(68, 9);
    expect(stock.planed.thicknessMm).toBeCloseTo(22, 9);
    expect(stock.buy.widthMm).toBeCloseTo(74, 9);
    expect(stock.buy.thicknessMm).toBeCloseTo(26, 9);
    expect(stock.buy.lengthMm).toBe(1350);
  });

  test("the waste of the slope: a triangle of 20 by 15 off 40 by 20", () => {
    const { stock } = answer({ section: slope, way: "flat", lengthMm: 500 });
    expect(stock.wasteRatio).toBeCloseTo(150 / 800, 9);
  });

  test("own allowances are taken", () => {
    const allowances = { planingMm: 30, endChecksMm: 0, sawnWidthMm: 2 };
    const { stock } = answer({ section: slope, way: "flat", lengthMm: 500, allowances });
    expect(stock.buy).toMatchObject({ lengthMm: 560, widthMm: 42, thicknessMm: 24 });
  });
});

describe("spring bevels", () => {
  test("the cornice's two, from 14 / tan 52° and 6 / tan 38°", () => {
    const { bevels, togetherDeg, wasteMm2, wasteRatio } = springBevels(cornice);
    expect(bevels.map(({ edge, layOn }) => [edge, layOn])).toEqual([
      ["gauge edge", "back"],
      ["far edge", "edge"],
    ]);
    const [gauge, far] = bevels;
    expect(gauge!.fromBackDeg).toBeCloseTo(52, 6);
    expect(gauge!.onBackMm).toBeCloseTo(10.93799, 4);
    expect(gauge!.onEdgeMm).toBeCloseTo(14, 9);
    expect(gauge!.backOnTableDeg).toBeCloseTo(38, 6);
    expect(gauge!.edgeOnTableDeg).toBeCloseTo(52, 6);
    expect(far!.fromBackDeg).toBeCloseTo(38, 6);
    expect(far!.onBackMm).toBeCloseTo(7.67965, 4);
    expect(togetherDeg).toBeCloseTo(90, 6);
    // 10.93799 × 14 / 2 + 7.67965 × 6 / 2
    expect(wasteMm2).toBeCloseTo(99.6049, 3);
    expect(wasteRatio).toBeCloseTo(99.6049 / (68 * 22), 6);
  });

  test("a rebate is no bevel", () => {
    const rebated = section(
      40,
      20,
      [
        { kind: "chamfer", acrossMm: 5 },
        { kind: "fillet", widthMm: "rest" },
      ],
      [{ kind: "rebate", edge: "gauge", widthMm: 8, depthMm: 6 }],
    );
    expect(springBevels(rebated).bevels).toEqual([]);
    expect(springToldBy(rebated, "far edge")).toEqual({ springFromWallDeg: 0, toldBy: "no bevel" });
  });

  test("tell the spring: the bevel at the wall, else what the ceiling's leaves of a right angle", () => {
    const atWall = springToldBy(cornice, "far edge");
    expect(atWall.springFromWallDeg).toBeCloseTo(38, 6);
    expect(atWall.toldBy).toBe("bevel at that edge");
    expect(springToldBy(cornice, "gauge edge").springFromWallDeg).toBeCloseTo(52, 6);
    const one = section(
      40,
      20,
      [{ kind: "fillet", widthMm: "rest" }],
      [{ kind: "bevel", edge: "gauge", riseMm: 8, fromBackDeg: 52 }],
    );
    const atOther = springToldBy(one, "far edge");
    expect(atOther.springFromWallDeg).toBeCloseTo(38, 6);
    expect(atOther.toldBy).toBe("bevel at the other edge");
  });
});

describe("best cant", () => {
  test("an ogee: the straight line between its ends", () => {
    // 8.217 in 30.667 is 15.000°, falling to the far edge; turned anticlockwise by that the line lies level.
    const ogee = section(40, 22, [
      { kind: "fillet", widthMm: 5 },
      { kind: "cyma recta", acrossMm: 30.667, riseMm: -8.217 },
      { kind: "fillet", widthMm: "rest" },
    ]);
    const cant = bestCant(ogee)!;
    expect(cant.best).toMatchObject({ cantDeg: 15, reason: "line between the ends of the curves" });
    expect(cant.best.meanLeanDeg).toBeCloseTo(0, 2);
    expect(cant.candidates[0]).toMatchObject({ cantDeg: 0, reason: "flat", extraMm2: 0 });
    expect(cant.candidates[0]!.meanLeanDeg).toBeCloseTo(15, 2);
    expect(cant.isWorthIt).toBe(true);
    expect(cant.best.extraMm2).toBeGreaterThan(0);
    expect(cant.best.sawnBackMm).toBeCloseTo(40, 9);
  });

  test("the cornice's bead pulls it back: chords add up to 40.192 across, 8.217 down, 11.6°", () => {
    const cant = bestCant(cornice)!;
    expect(cant.candidates.map(({ cantDeg, reason }) => [cantDeg, reason])).toContainEqual([
      12,
      "line between the ends of the curves",
    ]);
  });

  test("a bead alone is best left flat", () => {
    const bead = section(30, 12, [
      { kind: "fillet", widthMm: 5 },
      { kind: "step", riseMm: -3 },
      { kind: "low bead", widthMm: 10 },
      { kind: "fillet", widthMm: "rest" },
    ]);
    const cant = bestCant(bead)!;
    expect(cant.best.cantDeg).toBe(0);
    expect(cant.isWorthIt).toBe(false);
  });

  test("no curve, no cant: null, and a canted way is refused with a remedy", () => {
    expect(bestCant(slope)).toBeNull();
    const given = stickFor({ section: slope, way: "canted", lengthMm: 500 });
    if (given.ok) throw new Error("not refused");
    expect(given.trouble.code).toBe("stick-no-curve");
  });

  test("a plan's own leans decide where one is given: 10° and 20° by 1 to 3", () => {
    const cut = (tilt: number, takes: number) => ({
      cant: 0,
      purpose: "shape",
      plane: { id: "a", kind: "hollow" },
      takes,
      runs: [[[0, 0, 0] as const, [0, 0, tilt] as const]],
    });
    const plan = { cuts: [cut(-10, 1), cut(-20, 3)] } as unknown as Plan;
    const reasons = bestCant(cornice, plan)!.candidates.map(({ cantDeg, reason }) => [cantDeg, reason]);
    // (10 + 3 × 20) / 4 = 17.5, which rounds to 18; the middle of the two is 15.
    expect(reasons).toContainEqual([18, "plan"]);
    expect(reasons).toContainEqual([15, "middle of the leans"]);
  });

  test("turned by 30°, 40 by 20 needs 44.641 by 37.321", () => {
    const plain = section(40, 20, [
      { kind: "fillet", widthMm: 20 },
      { kind: "vee quirk", widthMm: 2, depthMm: 2 },
      { kind: "fillet", widthMm: "rest" },
    ]);
    const { stock, cantDeg } = answer({ section: plain, way: "canted", lengthMm: 500, cantDeg: 30 });
    expect(cantDeg).toBe(30);
    expect(stock.planed.widthMm).toBeCloseTo(40 * Math.cos(Math.PI / 6) + 10, 6);
    expect(stock.planed.thicknessMm).toBeCloseTo(20 + 20 * Math.cos(Math.PI / 6), 6);
    const { sawnLast } = answer({ section: plain, way: "canted", lengthMm: 500, cantDeg: 30 });
    expect(
      sawnLast.map(({ widthMm, fromBackDeg }) => [Math.round(widthMm), Math.round(fromBackDeg)]),
    ).toEqual([
      [40, 30],
      [20, 60],
      [18, 30],
      [20, 30],
      [20, 60],
    ]);
    expect(turnSection(plain, 30).outline.pieces).toHaveLength(plain.outline.pieces.length);
  });
});

describe("holding", () => {
  test("a bead 10 by 8 goes on the edge of a board 10 thick: four take 4 × 13 and 80 to hold", () => {
    const bead = section(10, 8, [
      { kind: "fillet", widthMm: 2 },
      { kind: "step", riseMm: -2 },
      { kind: "low bead", widthMm: 6 },
      { kind: "fillet", widthMm: "rest" },
    ]);
    const { holding, cautions } = answer({ section: bead, way: "flat", lengthMm: 900, count: 4 });
    expect(holding.canBeHeld).toBe(false);
    expect(holding.shortcomings).toEqual([{ rule: "width", isMm: 10, leastMm: 12 }]);
    expect(holding.wideBoard).toEqual({
      planed: { widthMm: 132, thicknessMm: 10, lengthMm: 1000 },
      buy: { widthMm: 138, thicknessMm: 14, lengthMm: 1050 },
      eachMm: 13,
      count: 4,
      holdMm: 80,
    });
    expect(cautions.map((one) => one.code)).toContain("caution-small-stick");
  });

  test("the cornice bevelled first stands on 68 − 10.938 − 7.680", () => {
    const flat = answer({ section: cornice, way: "flat", lengthMm: 900 }).holding;
    const first = answer({ section: cornice, way: "bevelled first", lengthMm: 900 }).holding;
    expect(flat.bedMm).toBeCloseTo(68, 9);
    expect(first.bedMm).toBeCloseTo(49.38236, 4);
    expect(first.canBeHeld).toBe(true);
    expect(first.wideBoard).toBeNull();
  });

  test("bevels that leave 8 of bed: flat it can be held, bevelled first not", () => {
    const back: BackSpec[] = [
      { kind: "bevel", edge: "gauge", riseMm: 16, fromBackDeg: 45 },
      { kind: "bevel", edge: "far", riseMm: 16, fromBackDeg: 45 },
    ];
    const parts: PartSpec[] = [
      { kind: "fillet", widthMm: 20 },
      { kind: "bevel", acrossMm: 20, riseMm: -2 },
    ];
    const sprung = section(40, 20, parts, back);
    expect(answer({ section: sprung, way: "flat", lengthMm: 900 }).holding.canBeHeld).toBe(true);
    const { shortcomings } = answer({ section: sprung, way: "bevelled first", lengthMm: 900 }).holding;
    expect(shortcomings).toEqual([{ rule: "bed", isMm: expect.closeTo(8, 6), leastMm: 10 }]);
  });
});

describe("sticking board", () => {
  test("the slope ends 5 high at the far edge: fence and stop stand 4 high", () => {
    const { board } = answer({ section: slope, way: "flat", lengthMm: 900 });
    expect(board.fence).toMatchObject({ atMm: 40, topMm: 4, bearsFromMm: 0 });
    // 1000 of planed stick after 50 of board.
    expect(board.stop).toEqual({ fromStartMm: 1050, topMm: 4 });
    expect(board).toMatchObject({ widthMm: 70, lengthMm: 1120, fenceBelow: "the face at the far edge" });
  });

  test("a sole that comes down to 3.5 beyond the far edge lowers the fence to 2.5", () => {
    const cut = {
      cant: 0,
      sole: [
        [-5, 0],
        [5, 0],
      ],
      runs: [[[38, 3.5, 0]]],
      plane: { kind: "rebate" },
    };
    const plan = { cuts: [cut] } as unknown as Plan;
    const { board } = answer({ section: slope, way: "flat", lengthMm: 900, plan });
    expect(board.fence!.topMm).toBeCloseTo(2.5, 9);
    expect(board.fenceBelow).toBe("the planes' soles beyond the far edge");
  });

  test("a round's belly counts, not its chord: radius 10 about (45, 12) comes down to 2 at x = 45", () => {
    // A half circle from (−10, 0) to (10, 0) hanging down: bulge 1, its belly 10 lower.
    const cut = {
      cant: 0,
      sole: [
        [-10, 0, 1],
        [10, 0],
      ],
      runs: [[[45, 14, 0]]],
      plane: { kind: "round" },
    };
    const plan = { cuts: [cut] } as unknown as Plan;
    const { board } = answer({ section: slope, way: "flat", lengthMm: 900, plan });
    expect(board.fence!.topMm).toBeCloseTo(3, 3);
  });

  test("a face that runs out to the back leaves no fence", () => {
    const feather = section(40, 20, [
      { kind: "fillet", widthMm: 20 },
      { kind: "bevel", acrossMm: 20, riseMm: -19 },
    ]);
    expect(answer({ section: feather, way: "flat", lengthMm: 900 }).board.fence).toBeNull();
  });

  test("bevelled first: strips under both bevels, and the fence bears above the far one", () => {
    const { board } = answer({ section: cornice, way: "bevelled first", lengthMm: 900 });
    expect(board.fillers.map(({ edge }) => edge)).toEqual(["gauge edge", "far edge"]);
    expect(board.fence!.bearsFromMm).toBeCloseTo(6, 9);
    // The bottom fillet lies at 22 − 2.5 − 8.217 − 2.
    expect(board.fence!.topMm).toBeCloseTo(8.283, 9);
  });
});

describe("grain", () => {
  test("the slope's one flank, 36.87°, faces the far edge: the grain drifts that way", () => {
    const advice = grainAdvice(slope);
    expect(advice.towardsFarEdge.steepestDeg).toBeCloseTo(36.8699, 4);
    expect(advice.towardsGaugeEdge).toEqual({ steepestDeg: 0, at: null });
    expect(advice).toMatchObject({ rises: "with the push", drift: "towards the far edge", forStick: null });
  });

  test("the cornice's ogee is steepest where its curves join: 15° and half of 60°", () => {
    const advice = grainAdvice(cornice);
    expect(advice.towardsFarEdge.steepestDeg).toBeCloseTo(45, 2);
    // The bead's flank falls to the gauge edge by half of its 60°.
    expect(advice.towardsGaugeEdge.steepestDeg).toBeCloseTo(30, 6);
    expect(advice.drift).toBe("towards the far edge");
  });

  test.each([
    [{ risesDeg: 2, driftsDeg: 1 }, "as it lies", "this end"],
    [{ risesDeg: -2, driftsDeg: 1 }, "end for end", "the other end"],
    [{ risesDeg: -2, driftsDeg: -1 }, "over, face to back", "the other end"],
    [{ risesDeg: 2, driftsDeg: -1 }, "end for end and over", "this end"],
  ] as const)("a stick with %o is turned %s; once fixed, pushed from %s", (seen, turn, pushFrom) => {
    expect(grainAdvice(slope, seen).forStick).toMatchObject({ turn, pushFrom });
  });

  test("against the push on the slope: 0.6 tan 1° + 0.8 tan 2° is 2.20°", () => {
    const { forStick } = grainAdvice(slope, { risesDeg: -2, driftsDeg: -1 });
    expect(forStick!.worstFromThisEndDeg).toBeCloseTo(2.2, 2);
    expect(forStick!.worstFromOtherEndDeg).toBe(0);
  });

  test("the other end swaps the snipe bills' hands", () => {
    const plan = {
      cuts: [
        { number: 1, plane: { kind: "rebate" } },
        { number: 2, plane: { kind: "snipe bill", hand: "left" } },
      ],
    } as unknown as Plan;
    expect(grainAdvice(slope, null, plan).handsFromOtherEnd).toEqual([
      { cut: 2, was: "left", becomes: "right" },
    ]);
  });
});

test.each([
  ["stick-length", { lengthMm: -5 }],
  ["stick-length", { lengthMm: Number.NaN }],
  ["stick-count", { count: 0 }],
  ["stick-count", { count: 1.5 }],
  ["stick-cant", { cantDeg: 90 }],
  ["stick-cant", { cantDeg: Number.NaN }],
  ["stick-allowance", { allowances: { planingMm: -1 } }],
  ["stick-allowance", { board: { clearMm: Number.NaN } }],
  ["stick-allowance", { holding: { mostHeightPerBedRatio: 0 } }],
  ["stick-grain", { grain: { risesDeg: 45, driftsDeg: 0 } }],
] satisfies [string, Partial<StickQuestion>][])("%s is refused with a remedy: %o", (code, wrong) => {
  const given = stickFor({ section: slope, way: "flat", lengthMm: 900, ...wrong });
  if (given.ok) throw new Error("not refused");
  expect(given.trouble.code).toBe(code);
  expect(sayTrouble(given.trouble, { unit: "in" }).hint).not.toBe("");
});
