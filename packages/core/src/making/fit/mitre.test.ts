import { describe, expect, test } from "vitest";
import { point } from "../../curve/index.ts";
import {
  cornerFromAngle,
  cornerFromTriangle,
  hip,
  hipSideFromJack,
  hopper,
  mitre,
  polygonMitre,
  riseOf,
  springFrom,
  springFromLegs,
  type UnlikeMoulding,
  unlikeMitre,
} from "./index.ts";
import { answer, inside, outside, refusal, warnings } from "./testing/generators.ts";

const spring38 = answer(springFrom("wall", 38));

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
