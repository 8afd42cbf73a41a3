import { describe, expect, test } from "vitest";
import { chainFromVertices } from "../curve/index.ts";
import { Bug } from "../measure/index.ts";
import {
  type Bed,
  clearanceDeg,
  curvedIron,
  cuttingPitchDeg,
  ironEdge,
  pitchAlongPlaneDeg,
  pitchSquareToEdgeDeg,
  soleToIron,
  squareBed,
  stretchRatio,
} from "./iron.ts";
import { soleOf } from "./sole.ts";

const ROUND = { id: "r", name: "r", kind: "round", radiusMm: 12.7, widthMm: 12.7 } as const;
const skewed = (pitchMeasured: Bed["pitchMeasured"]): Bed => ({ pitchDeg: 50, skewDeg: 20, pitchMeasured });

describe("pitch", () => {
  test("on a square bed all pitches are one", () => {
    const bed = squareBed(50);
    for (const pitch of [pitchSquareToEdgeDeg, pitchAlongPlaneDeg, cuttingPitchDeg]) {
      expect(pitch(bed)).toBeCloseTo(50, 12);
    }
  });

  test("measured along the plane or square to the edge, one bed gives one answer", () => {
    const square = skewed("square to edge");
    const along: Bed = { ...skewed("along plane"), pitchDeg: pitchAlongPlaneDeg(square) };
    expect(pitchSquareToEdgeDeg(along)).toBeCloseTo(50, 12);
    expect(cuttingPitchDeg(along)).toBeCloseTo(cuttingPitchDeg(square), 12);
    const there = soleToIron({ x: 4, y: 3 }, along);
    const sameThere = soleToIron({ x: 4, y: 3 }, square);
    expect(there.x).toBeCloseTo(sameThere.x, 12);
    expect(there.y).toBeCloseTo(sameThere.y, 12);
  });

  test("a scraping iron stands upright whatever its skew, and cuts at the skew's complement", () => {
    for (const pitchMeasured of ["square to edge", "along plane"] as const) {
      const bed: Bed = { pitchDeg: 90, skewDeg: 20, pitchMeasured };
      expect(pitchSquareToEdgeDeg(bed)).toBe(90);
      expect(pitchAlongPlaneDeg(bed)).toBe(90);
      expect(cuttingPitchDeg(bed)).toBeCloseTo(70, 12);
    }
  });

  test("angles that no bed has are our own mistake", () => {
    for (const bed of [
      squareBed(0),
      squareBed(91),
      squareBed(Number.NaN),
      { ...squareBed(45), skewDeg: 90 },
    ]) {
      expect(() => pitchAlongPlaneDeg(bed)).toThrow(Bug);
    }
    expect(() => stretchRatio(0)).toThrow(Bug);
    expect(() => clearanceDeg(45, -1)).toThrow(Bug);
  });
});

describe("the edge", () => {
  test("a point against an oracle in space: the skewed bed cut by the upright line through it", () => {
    // Edge direction e = (cos k, sin k, 0); the bed rises square to it, backwards, at q. The point of the bed over
    // (x, y) of the section is where u e + v f has x and height y: solved here as vectors, not by the formula.
    const [q, k] = [50, 20].map((angleDeg) => (angleDeg * Math.PI) / 180) as [number, number];
    const edge = [Math.cos(k), Math.sin(k), 0];
    const back = [-Math.sin(k), Math.cos(k), 0];
    const face = back.map((part) => part * Math.cos(q));
    face[2] = Math.sin(q);
    const at = soleToIron({ x: 7, y: 2.5 }, skewed("square to edge"));
    const inSpace = edge.map((part, axis) => part * at.x + face[axis]! * at.y);
    expect(inSpace[0]).toBeCloseTo(7, 12);
    expect(inSpace[2]).toBeCloseTo(2.5, 12);
  });

  test("an upright square iron is the sole itself", () => {
    const edge = ironEdge(soleOf(ROUND), squareBed(90), 0.001);
    for (const { x, y } of edge) expect(Math.hypot(x, y - 12.7)).toBeCloseTo(12.7, 9);
    expect(edge[0]!.x).toBeCloseTo(-6.35, 12);
    expect(edge[edge.length - 1]!.x).toBeCloseTo(6.35, 12);
  });

  test.each([45, 55, 90])(
    "every point lies on the ellipse, no chord strays further than asked (bed %d°)",
    (pitchDeg) => {
      const tolMm = 0.01;
      const iron = curvedIron(ROUND, pitchDeg);
      const onEllipse = (x: number, y: number) => Math.hypot(x / iron.acrossMm, (y - iron.upMm) / iron.upMm);
      const edge = ironEdge(soleOf(ROUND), squareBed(pitchDeg), tolMm);
      edge.forEach(({ x, y }, index) => {
        expect(onEllipse(x, y)).toBeCloseTo(1, 9);
        const next = edge[index + 1];
        if (next === undefined) return;
        // Half way along a chord the ellipse is nearly at its furthest; measured up the face, which is no less.
        const [midX, midY] = [(x + next.x) / 2, (y + next.y) / 2];
        const trueY = iron.upMm * (1 - Math.sqrt(1 - (midX / iron.acrossMm) ** 2));
        expect(Math.abs(midY - trueY)).toBeLessThan(1.2 * tolMm);
      });
      expect(edge[0]!.y).toBeCloseTo(iron.depthMm, 9);
    },
  );

  test("straight soles keep their corners and no more", () => {
    const sole = soleOf({
      id: "s",
      name: "s",
      kind: "shaped",
      sole: chainFromVertices([
        [-5, 2],
        [0, 0],
        [5, 0],
      ]),
      cutsWall: "none",
    });
    const edge = ironEdge(sole, squareBed(30));
    // 1 / sin 30° = 2.
    expect(edge.map(({ x, y }) => [x, Math.round(y * 1e9) / 1e9])).toEqual([
      [-5, 4],
      [0, 0],
      [5, 0],
    ]);
  });
});

describe("grinding to a plain arc", () => {
  test("costs nothing on an upright bed", () => {
    expect(curvedIron(ROUND, 90).plainArc).toEqual({ radiusMm: expect.closeTo(12.7, 9), errorMm: 0 });
  });

  test.each([
    [10, 10, 45],
    [10, 3, 60],
    [10, 14, 55],
    [6, 11, 75],
  ])("radius %d, width %d, bed %d°: the error against dense sampling", (radiusMm, widthMm, pitchDeg) => {
    const stretch = 1 / Math.sin((pitchDeg * Math.PI) / 180);
    const { plainArc } = curvedIron({ radiusMm, widthMm }, pitchDeg);
    if (plainArc === undefined) throw new Error("this edge is shallow enough for a plain arc");
    let mostMm = 0;
    for (let step = 0; step <= 20_000; step++) {
      const x = (widthMm / 2) * (step / 20_000);
      const edge = stretch * (radiusMm - Math.sqrt(radiusMm ** 2 - x ** 2));
      const arc = plainArc.radiusMm - Math.sqrt(plainArc.radiusMm ** 2 - x ** 2);
      mostMm = Math.max(mostMm, Math.abs(edge - arc));
    }
    expect(plainArc.errorMm).toBeCloseTo(mostMm, 6);
  });

  test("an edge deeper than half its width has no such arc", () => {
    // A half circle on a bed of 30°: 2 mm wide, 2 mm deep.
    expect(curvedIron({ radiusMm: 1, widthMm: 2 }, 30)).not.toHaveProperty("plainArc");
  });
});
