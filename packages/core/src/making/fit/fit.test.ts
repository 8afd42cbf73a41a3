import { describe, expect, test } from "vitest";
import { point } from "../../curve/index.ts";
import { type Outcome, sayTrouble } from "../../measure/index.ts";
import { findTimber } from "../../timber/index.ts";
import {
  type Corner,
  cornerFromAngle,
  cornerFromTriangle,
  cornice,
  type FrameQuestion,
  frame,
  hip,
  hipSideFromJack,
  hopper,
  mitre,
  mitreSeasons,
  polygonMitre,
  type RunCorner,
  riseOf,
  type SideMouldingQuestion,
  sideMoulding,
  springFrom,
  springFromLegs,
  type UnlikeMoulding,
  unlikeMitre,
} from "./index.ts";
import { answer } from "./testing/generators.ts";

/** The code of a refusal, after saying it aloud. */
function refusal(outcome: Outcome<unknown>): string {
  if (outcome.ok) throw new Error("a refusal was expected");
  const { sentence, hint } = sayTrouble(outcome.trouble, { unit: "mm" });
  expect(`${sentence} ${hint}`).not.toMatch(/NaN|undefined|Infinity/);
  return outcome.trouble.code;
}

const warnings = (outcome: Outcome<unknown>) => (outcome.ok ? outcome.warnings.map(({ code }) => code) : []);
const inside = (cornerDeg: number): Corner => answer(cornerFromAngle(cornerDeg, "inside"));
const outside = (cornerDeg: number): Corner => answer(cornerFromAngle(cornerDeg, "outside"));
const spring38 = answer(springFrom("wall", 38));
const cherry = answer(findTimber("black cherry"));

describe("spring", () => {
  test("both conventions always stand beside each other", () => {
    expect(spring38).toEqual({ fromWallDeg: 38, fromCeilingDeg: 52, statedAs: "from the wall" });
    expect(answer(springFrom("ceiling", 38)).fromWallDeg).toBe(52);
  });

  test("flat on the wall and flat on the ceiling", () => {
    expect(answer(springFromLegs(0, 60)).fromWallDeg).toBe(0);
    expect(answer(springFromLegs(60, 0)).fromWallDeg).toBe(90);
  });

  test.each([-1, 90.5, 180, 400, Number.NaN])("%d is refused", (springDeg) => {
    expect(refusal(springFrom("wall", springDeg))).toBe("spring-angle");
  });

  test("legs that are none are refused", () => {
    expect(refusal(springFromLegs(0, 0))).toBe("spring-no-legs");
    expect(refusal(springFromLegs(-5, 10))).toBe("fit-size");
    expect(refusal(springFromLegs(5, Number.NaN))).toBe("fit-size");
  });
});

describe("corner", () => {
  test.each([0, 29.9, 175.1, 180, 184, 331, 360, 400, -90, Number.NaN, Number.POSITIVE_INFINITY])(
    "%d is refused",
    (angle) => {
      expect(refusal(cornerFromAngle(angle))).toBe("corner-angle");
    },
  );

  test("270 is the square outside corner, and said", () => {
    const corner = cornerFromAngle(270);
    expect(answer(corner)).toMatchObject({ cornerDeg: 90, kind: "outside" });
    expect(warnings(corner)).toEqual(["corner-taken-outside"]);
  });

  test("three lengths: 3, 4, 5 is square; 1 mm more across opens it by 5/12 of a milliradian a metre", () => {
    const corner = answer(
      cornerFromTriangle({ alongFirstMm: 300, alongSecondMm: 400, acrossMm: 500 }, "inside"),
    );
    expect(corner.cornerDeg).toBeCloseTo(90, 10);
    // dC/dc = c / (a b sin C) = 500 / 120000 rad per mm.
    expect(corner.degPerMm).toBeCloseTo((500 / 120000) * (180 / Math.PI), 10);
    const wider = answer(
      cornerFromTriangle({ alongFirstMm: 300, alongSecondMm: 400, acrossMm: 501 }, "inside"),
    );
    expect(wider.cornerDeg - corner.cornerDeg).toBeCloseTo(corner.degPerMm!, 2);
  });

  test.each([
    [{ alongFirstMm: 300, alongSecondMm: 400, acrossMm: 700 }, "corner-no-triangle"],
    [{ alongFirstMm: 300, alongSecondMm: 400, acrossMm: 100 }, "corner-no-triangle"],
    [{ alongFirstMm: -300, alongSecondMm: 400, acrossMm: 500 }, "fit-size"],
    [{ alongFirstMm: 400, alongSecondMm: 400, acrossMm: 10 }, "corner-angle"],
  ] as const)("%j is refused", (triangle, code) => {
    expect(refusal(cornerFromTriangle(triangle, "inside"))).toBe(code);
  });
});

describe("how the stick lies on the saw", () => {
  // Common practice, no source: the table that hangs beside saws whose blade leans to the left, 38° spring, square corner.
  test.each([
    ["inside", "leftPiece", "ceiling edge", "right", "left"],
    ["inside", "rightPiece", "wall edge", "left", "left"],
    ["outside", "leftPiece", "wall edge", "left", "right"],
    ["outside", "rightPiece", "ceiling edge", "right", "right"],
  ] as const)("%s corner, %s", (kind, piece, edgeAtFence, turnHandleTo, keep) => {
    const made = answer(mitre({ spring: spring38, corner: kind === "inside" ? inside(90) : outside(90) }));
    expect(made.laidFlat[piece]).toMatchObject({ edgeAtFence, turnHandleTo, keep, bladeLeans: "left" });
  });

  test("a saw that leans the other way takes the stick the other way round", () => {
    const corner = inside(90);
    const left = answer(mitre({ spring: spring38, corner })).laidFlat.leftPiece;
    const right = answer(mitre({ spring: spring38, corner, bladeLeans: "right" })).laidFlat.leftPiece;
    expect(right).toMatchObject({
      edgeAtFence: "wall edge",
      turnHandleTo: "right",
      keep: "right",
      bladeLeans: "right",
    });
    expect(right.mitreDeg).toBe(left.mitreDeg);
  });

  test("the shooting board: fence at 90° less the mitre, bed lifted by the bevel", () => {
    const made = answer(mitre({ spring: answer(springFrom("wall", 90)), corner: inside(90) }));
    expect(made.shootingBoard).toMatchObject({ fenceDeg: 45, liftDeg: 0 });
    const upright = answer(mitre({ spring: answer(springFrom("wall", 0)), corner: inside(90) }));
    expect(upright.shootingBoard.fenceDeg).toBe(90);
    expect(upright.shootingBoard.liftDeg).toBeCloseTo(45, 10);
  });

  test("the drawing shows both springs, the corner, the mitre and the bevel", () => {
    const { drawing, laidFlat } = answer(mitre({ spring: spring38, corner: inside(120), widthMm: 80 }));
    const values = Object.fromEntries(
      drawing.views.flatMap(({ angles }) => angles.map(({ name, valueDeg }) => [name, valueDeg])),
    );
    expect(values).toEqual({
      "spring from the wall": 38,
      "spring from the ceiling": 52,
      corner: 120,
      mitre: laidFlat.mitreDeg,
      bevel: laidFlat.bevelDeg,
    });
    // The stick on the table is as wide as it is, and its cut leans by the mitre.
    const stick = drawing.views[2]!.shapes.find(({ kind }) => kind === "stick")!;
    const ys = stick.points.map(({ y }) => y);
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(80, 10);
    const [near, far] = drawing.views[2]!.shapes.find(({ kind }) => kind === "cut")!.points;
    const leanDeg = (Math.atan2(Math.abs(far!.x - near!.x), far!.y - near!.y) * 180) / Math.PI;
    expect(leanDeg).toBeCloseTo(laidFlat.mitreDeg, 10);
  });

  test("a width that is none is refused", () => {
    expect(refusal(mitre({ spring: spring38, corner: inside(90), widthMm: -60 }))).toBe("fit-size");
  });
});

describe("polygons and hoppers", () => {
  test.each([2, 2.5, 73, -4, Number.NaN])("%d sides are refused", (sides) => {
    expect(refusal(polygonMitre(sides))).toBe("polygon-sides");
  });

  test("sides that stand plumb meet at the polygon's own angle", () => {
    const box = answer(hopper({ sides: 4, slope: { fromLevelDeg: 90 } }));
    expect(box.betweenFacesDeg).toBeCloseTo(90, 10);
    expect(box.buttBevelDeg).toBeCloseTo(0, 10);
    expect(box.bevelDeg).toBeCloseTo(45, 10);
  });

  test("three square faces round a point: the corner of a cube stood on its tip", () => {
    // Faces of a cube seen along its diagonal slope atan(√2) from level and stand square to each other.
    const box = answer(
      hopper({ sides: 3, slope: { fromLevelDeg: (Math.atan(Math.SQRT2) * 180) / Math.PI } }),
    );
    expect(box.betweenFacesDeg).toBeCloseTo(90, 10);
    expect(box.bevelDeg).toBeCloseTo(45, 10);
  });

  test("a slope beyond plumb is refused", () => {
    expect(refusal(hopper({ sides: 4, slope: { fromLevelDeg: 91 } }))).toBe("hopper-slope");
    expect(refusal(hopper({ sides: 4, slope: { fromPlumbDeg: Number.NaN } }))).toBe("hopper-slope");
  });
});

describe("frames", () => {
  const ask = (change: Partial<FrameQuestion>) =>
    frame({
      shape: { kind: "rectangle", acrossMm: 300, upMm: 400 },
      stated: "sight",
      widthMm: 30,
      ...change,
    });

  test("300 × 400 to be seen, 30 wide, rebate 8, allowance 2", () => {
    const made = answer(ask({ rebateMm: 8, allowanceMm: 2 }));
    expect(made.rails.map(({ outsideMm }) => outsideMm)).toEqual([360, 460, 360, 460]);
    expect(made.rails.map(({ rebateMm }) => rebateMm)).toEqual([316, 416, 316, 416]);
    const [corner] = made.outlines.glass!;
    expect(corner).toEqual({ x: -7, y: -7 });
    expect(made.stickMm).toBe(1640);
    for (const { start, end } of made.rails) expect([start.mitreDeg, end.mitreDeg]).toEqual([45, 45]);
  });

  test("the same frame whichever size is stated", () => {
    const sizes = { rebateMm: 8, allowanceMm: 2 };
    const stated = [
      ["sight", 300, 400],
      ["rebate", 316, 416],
      ["glass", 314, 414],
      ["outside", 360, 460],
    ] as const;
    for (const [size, acrossMm, upMm] of stated) {
      const made = answer(ask({ ...sizes, stated: size, shape: { kind: "rectangle", acrossMm, upMm } }));
      expect(made.rails[0]!.sightMm).toBeCloseTo(300, 10);
      expect(made.rails[1]!.outsideMm).toBeCloseTo(460, 10);
    }
  });

  test("sides of unlike widths: 30 beside 40 makes mitres of atan(40/30) and atan(30/40)", () => {
    const made = answer(ask({ widthMm: [30, 40, 30, 40] }));
    const degrees = (ratio: number) => (Math.atan(ratio) * 180) / Math.PI;
    expect(made.rails[0]!.outsideMm).toBeCloseTo(380, 10);
    expect(made.rails[1]!.outsideMm).toBeCloseTo(460, 10);
    expect(made.rails[0]!.start.mitreDeg).toBeCloseTo(degrees(40 / 30), 10);
    expect(made.rails[1]!.start.mitreDeg).toBeCloseTo(degrees(30 / 40), 10);
  });

  test("a hexagon 200 on the sight edge: 2 · 30 / √3 longer outside", () => {
    const made = answer(
      frame({ shape: { kind: "regular", sides: 6, sideMm: 200 }, stated: "sight", widthMm: 30 }),
    );
    for (const rail of made.rails) {
      expect(rail.outsideMm).toBeCloseTo(200 + 60 / Math.sqrt(3), 9);
      expect(rail.start.mitreDeg).toBeCloseTo(30, 9);
    }
  });

  test("a corner that points inward: the sight edge is the longer one there", () => {
    const corners = [
      point(0, 0),
      point(600, 0),
      point(600, 300),
      point(300, 300),
      point(300, 600),
      point(0, 600),
    ];
    const made = answer(frame({ shape: { kind: "polygon", corners }, stated: "outside", widthMm: 40 }));
    const inward = made.rails[2]!.end;
    expect(inward.cornerDeg).toBeCloseTo(270, 9);
    expect(inward.mitreDeg).toBeCloseTo(45, 9);
    expect(inward.longerAt).toBe("sight");
    // Outside 300, one end shorter inside by 40, the other longer by 40.
    expect(made.rails[2]!.sightMm).toBeCloseTo(300, 9);
    expect(made.rails[2]!.longMm).toBeCloseTo(340, 9);
  });

  test("corners given clockwise make the same frame", () => {
    const corners = [point(0, 0), point(500, 0), point(420, 300), point(-30, 260)];
    const there = answer(frame({ shape: { kind: "polygon", corners }, stated: "sight", widthMm: 25 }));
    const back = answer(
      frame({ shape: { kind: "polygon", corners: [...corners].reverse() }, stated: "sight", widthMm: 25 }),
    );
    expect(back.stickMm).toBeCloseTo(there.stickMm, 9);
  });

  test.each([
    [{ widthMm: -30 }, "fit-size"],
    [{ widthMm: [30, 30] }, "frame-widths"],
    [{ rebateMm: 30 }, "frame-rebate-too-wide"],
    [{ rebateMm: -1 }, "fit-size"],
    [{ rebateMm: 3, allowanceMm: 6 }, "frame-glass-falls-through"],
    [{ shape: { kind: "rectangle", acrossMm: 0, upMm: 400 } }, "fit-size"],
    [{ shape: { kind: "rectangle", acrossMm: Number.NaN, upMm: 400 } }, "fit-size"],
    [{ shape: { kind: "regular", sides: 2, sideMm: 100 } }, "polygon-sides"],
    [{ shape: { kind: "regular", sides: 5, sideMm: -100 } }, "fit-size"],
    [{ shape: { kind: "polygon", corners: [point(0, 0), point(100, 0)] } }, "polygon-sides"],
    [
      { shape: { kind: "polygon", corners: [point(0, 0), point(0, 0), point(100, 0)] } },
      "frame-corner-place",
    ],
    [
      { shape: { kind: "polygon", corners: [point(0, 0), point(100, 0), point(200, 1), point(100, 90)] } },
      "frame-corner-angle",
    ],
    [
      { shape: { kind: "polygon", corners: [point(0, 0), point(100, 100), point(100, 0), point(0, 100)] } },
      "frame-crosses-itself",
    ],
    [{ stated: "outside", shape: { kind: "rectangle", acrossMm: 50, upMm: 400 } }, "frame-nothing-left"],
  ] as const)("%j is refused", (change, code) => {
    expect(refusal(ask(change as Partial<FrameQuestion>))).toBe(code);
  });

  test("a small frame carries the caution about short pieces", () => {
    const cautions = answer(ask({ shape: { kind: "rectangle", acrossMm: 80, upMm: 120 } })).cautions;
    expect(cautions.map(({ code }) => code)).toContain("caution-short-piece");
    expect(answer(ask({})).cautions.map(({ code }) => code)).not.toContain("caution-short-piece");
  });
});

describe("mitres through the seasons", () => {
  test("what keeps the gap under a wish does keep it, and a little wider does not", () => {
    const question = {
      timber: cherry,
      widthMm: 60,
      fromPercent: 12,
      toPercent: 6,
      sawn: "flat",
      wishedGapMm: 0.8,
    } as const;
    const made = answer(mitreSeasons(question));
    expect(made.gapMm).toBeGreaterThan(0.8);
    const gapAt = (widthMm: number) => answer(mitreSeasons({ ...question, widthMm })).gapMm;
    expect(gapAt(made.widestMm!)).toBeCloseTo(0.8, 10);
    const names = made.timbersUnder.map(({ timber, sawn }) => `${timber}, ${sawn}`);
    expect(names).toContain("Cherry, black, quarter");
    expect(names).not.toContain("Cherry, black, flat");
    for (const { gapMm, widestMm } of made.timbersUnder) {
      expect(gapMm).toBeLessThanOrEqual(0.8);
      expect(widestMm).toBeGreaterThanOrEqual(60);
    }
  });

  test("no change of moisture: it opens nowhere", () => {
    const still = answer(
      mitreSeasons({
        timber: cherry,
        widthMm: 60,
        fromPercent: 8,
        toPercent: 8,
        sawn: "flat",
        wishedGapMm: 0.1,
      }),
    );
    expect(still).toMatchObject({ opensAt: "nowhere", gapMm: 0, openingDeg: 0, widestMm: null });
  });

  test("humid air and corners beyond the range are refused", () => {
    const base = { timber: cherry, widthMm: 60, fromPercent: 12, toPercent: 6, sawn: "flat" } as const;
    expect(refusal(mitreSeasons({ ...base, toPercent: 31 }))).toBe("movement-above-saturation");
    expect(refusal(mitreSeasons({ ...base, cornerDeg: 180 }))).toBe("corner-angle");
    expect(refusal(mitreSeasons({ ...base, wishedGapMm: 0 }))).toBe("fit-size");
  });
});

describe("unlike mouldings", () => {
  const flat = answer(springFrom("wall", 90));
  const plain = (projectionMm: number, heightMm = 20): UnlikeMoulding => ({
    projectionMm,
    heightMm,
    spring: flat,
  });

  test("30 against 40 at a square corner: atan(3/4) from the first wall", () => {
    const made = answer(unlikeMitre({ corner: inside(90), first: plain(30), second: plain(40) }));
    expect(made.line).toBe("straight");
    expect(made.fromFirstWallDeg).toBeCloseTo((Math.atan(0.75) * 180) / Math.PI, 10);
    expect(made.fromFirstWallDeg + made.fromSecondWallDeg).toBeCloseTo(90, 10);
    expect(made.first.mitreDeg).toBeCloseTo(90 - made.fromFirstWallDeg, 10);
  });

  test("like ones come back to the bisector, at any corner", () => {
    for (const cornerDeg of [40, 90, 150]) {
      const made = answer(unlikeMitre({ corner: outside(cornerDeg), first: plain(30), second: plain(30) }));
      expect(made.fromFirstWallDeg).toBeCloseTo(cornerDeg / 2, 9);
    }
  });

  test("faces out of proportion bend the mitre: a chamfer against a step, by hand", () => {
    const corner = inside(90);
    const first = { ...plain(20), face: [point(0, 0), point(20, 20)] };
    const second = { ...plain(20), face: [point(10, 0), point(10, 10), point(20, 10), point(20, 20)] };
    const outcome = unlikeMitre({ corner, first, second });
    const made = answer(outcome);
    expect(warnings(outcome)).toEqual(["unlike-curved"]);
    // Heights 0, 10 (below and above the step), 20; at a square corner along the first wall is the other's projection.
    expect(
      made.points.map(({ heightMm, fromFirstWallMm, alongFirstMm }) => [
        heightMm,
        fromFirstWallMm,
        Math.round(alongFirstMm * 1e9) / 1e9,
      ]),
    ).toEqual([
      [0, 0, 10],
      [10, 10, 10],
      [10, 10, 20],
      [20, 20, 20],
    ]);
    // Chord from (10, 0) to (20, 20): the points (10, 10) and (20, 10) lie 100/√500 off it.
    expect(made.mostOffChordMm).toBeCloseTo(100 / Math.sqrt(500), 9);
  });

  test("at an outside corner the points stand past the corner", () => {
    const made = answer(unlikeMitre({ corner: outside(90), first: plain(30), second: plain(40) }));
    expect(made.points.at(-1)?.alongFirstMm).toBeCloseTo(-40, 9);
  });

  test("a plain board against a moulding has no mitre", () => {
    const board = { ...plain(20), face: [point(20, 0), point(20, 20)] };
    expect(refusal(unlikeMitre({ corner: inside(90), first: board, second: plain(30) }))).toBe(
      "unlike-along-wall",
    );
    expect(refusal(unlikeMitre({ corner: inside(90), first: plain(30), second: board }))).toBe(
      "unlike-along-wall",
    );
    expect(refusal(unlikeMitre({ corner: inside(90), first: board, second: board }))).toBe("unlike-no-line");
  });

  test("unlike heights are said, and only what both have is mitred", () => {
    const outcome = unlikeMitre({ corner: inside(90), first: plain(30, 26), second: plain(40, 20) });
    expect(warnings(outcome)).toContain("unlike-heights");
    expect(answer(outcome).points.at(-1)?.heightMm).toBe(20);
  });

  test.each([
    [plain(-30), "fit-size"],
    [{ ...plain(30), face: [point(0, 10), point(30, 0)] }, "unlike-face"],
    [{ ...plain(30), face: [point(0, 0)] }, "unlike-face"],
    [{ ...plain(30), face: [point(0, 0), { x: Number.NaN, y: 10 }] }, "unlike-face"],
  ] as const)("%j is refused", (first, code) => {
    expect(refusal(unlikeMitre({ corner: inside(90), first, second: plain(20) }))).toBe(code);
  });
});

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

describe("slopes and hips", () => {
  test.each([-1, 75.1, 90, 400, Number.NaN])("a slope of %d is refused", (slopeDeg) => {
    expect(refusal(riseOf(slopeDeg))).toBe("slope-angle");
  });

  test("hips: bad slopes and corners are refused", () => {
    expect(refusal(hip({ mainDeg: 0 }))).toBe("slope-angle");
    expect(refusal(hip({ mainDeg: 30, adjacentDeg: 89 }))).toBe("slope-angle");
    expect(refusal(hip({ mainDeg: 30, cornerDeg: 20 }))).toBe("corner-angle");
    expect(refusal(hipSideFromJack(30, 90))).toBe("jack-side-cut");
  });

  test("an octagon's hip stands over the middle of its corner", () => {
    const roof = answer(hip({ mainDeg: 35, cornerDeg: 135 }));
    expect(roof.main.planDeg).toBeCloseTo(67.5, 10);
    expect(roof.adjacent.planDeg).toBeCloseTo(67.5, 10);
  });
});
