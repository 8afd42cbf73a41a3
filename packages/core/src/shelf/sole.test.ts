import { describe, expect, test } from "vitest";
import { chainFromVertices, circleOf, pointAt, type Vertex, verticesOf } from "../curve/index.ts";
import { Bug } from "../measure/index.ts";
import { soleAngleDeg, soleDepthMm, soleOf, solesOf } from "./sole.ts";
import type { Plane, Sole } from "./types.ts";

const named = { id: "p", name: "p" };

/** A sole's vertices, to twelve decimals. */
function outline(plane: Plane): readonly Vertex[] {
  return verticesOf(soleOf(plane).chain).map((vertex) => vertex.map(rounded) as unknown as Vertex);
}

const rounded = (value: number) => Math.round(value * 1e12) / 1e12 + 0;

const walls = (sole: Sole) => [sole.cutsWall.left, sole.cutsWall.right];

describe("hollow and round", () => {
  // A 3-4-5 triangle: radius 5, half width 4, so the centre stands 3 from the chord and the arc is 2 deep.
  const sizes = { radiusMm: 5, widthMm: 8 };

  test("depth and arc of a sole of 3-4-5", () => {
    expect(soleDepthMm(sizes)).toBeCloseTo(2, 14);
    expect(soleAngleDeg(sizes)).toBeCloseTo((2 * Math.asin(0.8) * 180) / Math.PI, 12);
  });

  test("a hollow's ends lie below its middle, a round's above", () => {
    for (const [kind, endMm, centreMm] of [
      ["hollow", -2, -5],
      ["round", 2, 5],
    ] as const) {
      const sole = soleOf({ ...named, kind, ...sizes });
      const [arc] = sole.chain.pieces;
      expect(sole.chain.pieces).toHaveLength(1);
      if (arc?.kind !== "arc") throw new Error("a curved sole is one arc");
      expect([arc.from.x, arc.to.x]).toEqual([-4, 4]);
      expect(arc.from.y).toBeCloseTo(endMm, 14);
      expect(arc.to.y).toBe(arc.from.y);
      const middle = pointAt(arc, 0.5);
      expect(Math.hypot(middle.x, middle.y)).toBeLessThan(1e-12);
      const circle = circleOf(arc);
      expect(circle.radiusMm).toBeCloseTo(5, 12);
      expect(circle.centre.y).toBeCloseTo(centreMm, 12);
      expect(sole.arc).toEqual({ radiusMm: 5, sign: kind === "round" ? 1 : -1 });
      expect(walls(sole)).toEqual([false, false]);
      expect([sole.leftMm, sole.rightMm, sole.widthMm]).toEqual([-4, 4, 8]);
    }
  });

  test("a half circle, and one a hair too wide from rounding, come out as a half circle", () => {
    expect(soleDepthMm({ radiusMm: 5, widthMm: 10 })).toBe(5);
    expect(soleAngleDeg({ radiusMm: 5, widthMm: 10.0000015 })).toBe(180);
    const [arc] = soleOf({ ...named, kind: "round", radiusMm: 5, widthMm: 10 }).chain.pieces;
    expect(arc).toMatchObject({ bulge: 1 });
  });

  test("a very flat sole keeps its digits: 0.05 mm across a radius of 300 mm", () => {
    // w²/8r to the next term, w⁴/128r³, by hand: 0.0025/2400 = 1.0416666666666667e-6; the next term is below 2e-15 of it.
    const depthMm = soleDepthMm({ radiusMm: 300, widthMm: 0.05 });
    expect(Math.abs(depthMm / (0.0025 / 2400) - 1)).toBeLessThan(1e-8);
  });

  test("an impossible sole is our own mistake by now", () => {
    for (const [radiusMm, widthMm] of [
      [5, 10.1],
      [0, 1],
      [5, 0],
      [Number.NaN, 3],
      [5, Number.NaN],
    ] as const) {
      expect(() => soleOf({ ...named, kind: "hollow", radiusMm, widthMm })).toThrow(Bug);
    }
  });

  test("the shoulder goes with the sole", () => {
    const shoulder = { widthMm: 12, heightMm: 15 };
    expect(soleOf({ ...named, kind: "hollow", ...sizes, shoulder }).shoulder).toEqual(shoulder);
    expect("shoulder" in soleOf({ ...named, kind: "hollow", ...sizes })).toBe(false);
  });
});

describe("flat soles", () => {
  test.each([
    ["rebate", [true, true]],
    ["smoother", [false, false]],
  ] as const)("%s", (kind, cuts) => {
    const plane: Plane = { ...named, kind, widthMm: 12 };
    expect(outline(plane)).toEqual([
      [-6, 0],
      [6, 0],
    ]);
    expect(walls(soleOf(plane))).toEqual(cuts);
  });

  test("moving fillister: as a rebate plane", () => {
    const plane: Plane = { ...named, kind: "moving fillister", widthMm: 38, fenceMm: 38, depthMm: 20 };
    expect(outline(plane)).toEqual([
      [-19, 0],
      [19, 0],
    ]);
    expect(walls(soleOf(plane))).toEqual([true, true]);
  });

  test("plough: one sole for each iron, in its order", () => {
    const plane: Plane = { ...named, kind: "plough", widthsMm: [6, 3], fenceMm: 100, depthMm: 20 };
    expect(solesOf(plane).map(({ widthMm }) => widthMm)).toEqual([6, 3]);
    expect(solesOf(plane).map(walls)).toEqual([
      [true, true],
      [true, true],
    ]);
    expect(soleOf(plane)).toEqual(solesOf(plane)[0]);
  });

  test("every other kind has one sole", () => {
    expect(solesOf({ ...named, kind: "rebate", widthMm: 6 })).toHaveLength(1);
  });
});

describe("snipe bill", () => {
  // Slope 45: the flank rises as far as it runs.
  const bill = { ...named, kind: "snipe bill", widthMm: 6, noseMm: 1, slopeDeg: 45, reachMm: 5 } as const;

  test("left hand: the wall at x = 0, the beak to the right of it", () => {
    expect(outline({ ...bill, hand: "left" })).toEqual([
      [0, 0],
      [1, 0],
      [6, 5],
    ]);
    expect(walls(soleOf({ ...bill, hand: "left" }))).toEqual([true, false]);
  });

  test("right hand: mirrored, still from left to right", () => {
    expect(outline({ ...bill, hand: "right" })).toEqual([
      [-6, 5],
      [-1, 0],
      [0, 0],
    ]);
    expect(walls(soleOf({ ...bill, hand: "right" }))).toEqual([false, true]);
    expect(soleOf({ ...bill, hand: "right" })).toMatchObject({ leftMm: -6, rightMm: 0, widthMm: 6 });
  });

  test("no nose: the flank starts at the wall", () => {
    expect(outline({ ...bill, noseMm: 0, hand: "left" })).toEqual([
      [0, 0],
      [6, 6],
    ]);
  });
});

describe("side planes and beads", () => {
  test("side snipe and side rebate plane: a narrow foot beside the wall", () => {
    expect(outline({ ...named, kind: "side snipe", hand: "left", widthMm: 3 })).toEqual([
      [0, 0],
      [3, 0],
    ]);
    expect(outline({ ...named, kind: "side rebate", hand: "right", widthMm: 3 })).toEqual([
      [-3, 0],
      [0, 0],
    ]);
  });

  test("side round: a quarter circle down from the wall where its radius is its width", () => {
    const plane: Plane = { ...named, kind: "side round", hand: "left", widthMm: 8, radiusMm: 8 };
    expect(outline(plane)).toEqual([
      [0, 8, rounded(Math.tan(Math.PI / 8))],
      [8, 0],
    ]);
    expect(outline({ ...plane, radiusMm: undefined } as unknown as Plane)).toEqual(outline(plane));
  });

  test("side round of a greater radius: still upright at the wall, a 3-4-5 arc", () => {
    // Radius 5, foot 2: the centre stands 5 from the wall and 4 above the foot, which is 3 across from it.
    const [arc] = soleOf({ ...named, kind: "side round", hand: "left", widthMm: 2, radiusMm: 5 }).chain
      .pieces;
    if (arc?.kind !== "arc") throw new Error("a side round is one arc");
    expect(arc.from).toEqual({ x: 0, y: 4 });
    expect(circleOf(arc).centre.x).toBeCloseTo(5, 12);
    expect(circleOf(arc).centre.y).toBeCloseTo(4, 12);
  });

  test("bead plane: a half circle and the nib of its quirk, on the right unless said", () => {
    const bead: Plane = { ...named, kind: "bead", widthMm: 6, quirkMm: 1 };
    expect(outline(bead)).toEqual([
      [-3, -3, -1],
      [3, -3],
      [4, -3],
    ]);
    expect(walls(soleOf(bead))).toEqual([false, true]);
    expect(outline({ ...bead, hand: "left" })).toEqual([
      [-4, -3],
      [-3, -3, -1],
      [3, -3],
    ]);
    expect(walls(soleOf({ ...bead, hand: "left" }))).toEqual([true, false]);
    expect(soleOf({ ...bead, hand: "left" })).toMatchObject({ leftMm: -4, rightMm: 3, widthMm: 7 });
  });
});

test("shaped: the sole as drawn, the walls as said", () => {
  const sole = chainFromVertices([
    [-5, 1],
    [-1, 0, 0.5],
    [3, 0],
  ]);
  const made = soleOf({ ...named, kind: "shaped", sole, cutsWall: "right" });
  expect(made.chain).toBe(sole);
  expect(made).toMatchObject({ leftMm: -5, rightMm: 3, widthMm: 8 });
  expect(walls(made)).toEqual([false, true]);
});
