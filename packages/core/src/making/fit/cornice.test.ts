import { describe, expect, test } from "vitest";
import { findTimber } from "../../timber/index.ts";
import {
  type Corner,
  cornice,
  type RunCorner,
  type SideMouldingQuestion,
  sideMoulding,
  springFrom,
} from "./index.ts";
import { answer, inside, outside, refusal, warnings } from "./testing/generators.ts";

const spring38 = answer(springFrom("wall", 38));
const cherry = answer(findTimber("black cherry"));

describe("cornices", () => {
  const base = { spring: spring38, projectionMm: 50, heightMm: 64 } as const;
  const at = (corner: Corner): RunCorner => ({ corner });

  test("a case with two sides: fronts run on by the projection at each outside corner", () => {
    const made = answer(
      cornice({ ...base, wallsMm: [300, 900, 300], corners: [at(outside(90)), at(outside(90))] }),
    );
    expect(
      made.pieces.map(({ backMm, frontMm, longMm }) => [backMm, Math.round(frontMm), Math.round(longMm)]),
    ).toEqual([
      [300, 350, 350],
      [900, 1000, 1000],
      [300, 350, 350],
    ]);
    expect(made.pieces.map(({ cutFirst }) => cutFirst)).toEqual(["right", "left", "left"]);
  });

  test("returns at both ends of one wall", () => {
    const made = answer(cornice({ ...base, wallsMm: [800], corners: [], start: "return", end: "return" }));
    expect(made.pieces.map(({ kind }) => kind)).toEqual(["return", "wall", "return"]);
    const [first, wall] = made.pieces;
    expect(first!.frontMm).toBeCloseTo(50, 9);
    expect(first!.backMm).toBe(0);
    expect(first!.cutFirst).toBe("right");
    expect(wall!.frontMm).toBeCloseTo(900, 9);
    expect(made.fittingOrder).toEqual([2, 1, 3]);
    expect(made.cautions.map(({ code }) => code)).toContain("caution-short-piece");
  });

  test("a square room: the first piece butts twice, the last is scribed twice, and it closes", () => {
    const made = answer(
      cornice({
        ...base,
        wallsMm: [3000, 4000, 3000, 4000],
        corners: [1, 2, 3, 4].map(() => at(inside(90))),
      }),
    );
    expect(made.pieces.map(({ left, right }) => [left.joint, right.joint])).toEqual([
      ["butt", "butt"],
      ["scribed", "butt"],
      ["scribed", "butt"],
      ["scribed", "scribed"],
    ]);
    expect(made.fittingOrder).toEqual([1, 2, 3, 4]);
    expect(made.closingGapMm).toBeLessThan(1e-6);
    expect(made.pieces[3]!.frontMm).toBeCloseTo(3900, 9);
  });

  test("walls measured 40 mm apart do not close, and that is said", () => {
    const outcome = cornice({
      ...base,
      wallsMm: [3000, 4000, 3040, 4000],
      corners: [1, 2, 3, 4].map(() => at(inside(90))),
    });
    expect(warnings(outcome)).toEqual(["cornice-does-not-close"]);
    expect(answer(outcome).closingGapMm).toBeCloseTo(40, 6);
  });

  test("a chimney breast: inside and outside corners in turn", () => {
    const corners = [inside(90), outside(90), outside(90), inside(90)].map(at);
    const made = answer(
      cornice({ ...base, wallsMm: [1000, 350, 1200, 350, 1000], corners, start: "against a wall" }),
    );
    expect(made.pieces.map(({ left, right }) => `${left.joint}-${right.joint}`)).toEqual([
      "against a wall-butt",
      "scribed-mitre",
      "mitre-mitre",
      "mitre-butt",
      "scribed-square",
    ]);
    expect(made.pieces.map(({ frontMm }) => Math.round(frontMm))).toEqual([1000, 350, 1300, 400, 950]);
  });

  test("where scribing is impossible inside corners are mitred, and said", () => {
    const outcome = cornice({
      ...base,
      wallsMm: [900, 900],
      corners: [at(inside(90))],
      scribing: "impossible",
    });
    expect(answer(outcome).pieces[0]!.right.joint).toBe("mitre");
    expect(warnings(outcome)).toEqual(["cornice-mitred-inside"]);
  });

  test.each([
    [{ wallsMm: [], corners: [] }, "cornice-walls"],
    [{ wallsMm: [900, 900, 900], corners: [at(inside(90))] }, "cornice-corners"],
    [{ wallsMm: [-5], corners: [] }, "fit-size"],
    [{ wallsMm: [900], corners: [], projectionMm: 0 }, "fit-size"],
    [
      { wallsMm: [900, 90, 900], corners: [at(inside(90)), { corner: inside(90), joint: "scribe left" }] },
      "cornice-wall-too-short",
    ],
    [
      { wallsMm: [900, 900], corners: [at(inside(90)), at(inside(90))], start: "return" },
      "cornice-closed-end",
    ],
    [{ wallsMm: [900, 900], corners: [{ corner: outside(90), joint: "scribe left" }] }, "scribe-outside"],
  ] as const)("%j is refused", (change, code) => {
    expect(refusal(cornice({ ...base, ...change } as never))).toBe(code);
  });
});

describe("a moulding along a solid side", () => {
  const question: SideMouldingQuestion = {
    timber: cherry,
    sawn: "flat",
    depthMm: 400,
    fittedPercent: 8,
    driestPercent: 6,
    wettestPercent: 12,
    screwsMm: [0, 200, 380],
    screwMm: 4,
  };

  test("it moves by the table, the slots grow towards the back, and the moulding is cut short by what it dries", () => {
    const made = answer(sideMoulding(question));
    expect(made.driestMm).toBeCloseTo(-400 * 0.00248 * 2, 10);
    expect(made.wettestMm).toBeCloseTo(400 * 0.00248 * 4, 10);
    expect(made.travelMm).toBeCloseTo(400 * 0.00248 * 6, 10);
    expect(made.screws.map(({ slotMm }) => slotMm)).toEqual(
      [4, 4 + 200 * 0.00248 * 6, 4 + 380 * 0.00248 * 6].map((one) => expect.closeTo(one, 9)),
    );
    expect(made.shortAtBackMm).toBeCloseTo(1.984, 9);
  });

  test.each([
    [{ driestPercent: 9 }, "side-moisture-order"],
    [{ wettestPercent: 7 }, "side-moisture-order"],
    [{ screwsMm: [401] }, "side-screw-place"],
    [{ screwsMm: [Number.NaN] }, "side-screw-place"],
    [{ depthMm: -400 }, "fit-size"],
    [{ screwMm: 0 }, "fit-size"],
    [{ wettestPercent: 35 }, "movement-above-saturation"],
    [{ fittedPercent: Number.NaN }, "movement-moisture"],
  ] as const)("%j is refused", (change, code) => {
    expect(refusal(sideMoulding({ ...question, ...change }))).toBe(code);
  });
});
