import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { verticesOf } from "./chain.ts";
import { arcsThrough, circleOf, line, sweepRad } from "./piece.ts";
import { distanceMm, point } from "./point.ts";
import { difference, regionAreaMm2, regionOf, regionOfPolygon } from "./region.ts";
import { areaMm2, ring, ringFromVertices } from "./ring.ts";
import { ringsOf } from "./rings-of.ts";
import { PROPERTY, starRing } from "./testing/generators.ts";
import type { Arc, Circle, Piece } from "./types.ts";

const TOL_MM = 1e-3;
const arcsOf = (pieces: readonly Piece[]) => pieces.filter((piece): piece is Arc => piece.kind === "arc");
const stick = regionOfPolygon([point(0, 0), point(40, 0), point(40, 20), point(0, 20)], 1);
const disc = (circle: Circle, source: number) =>
  regionOf(ring(arcsThrough(circle, 0, 2 * Math.PI, source)), 1e-4);

describe("ringsOf", () => {
  test("a cut by a circle comes back as one arc of that circle, to rounding", () => {
    // Centre 3 above the face, radius 5: meets the face 4 to either side, by 3-4-5.
    const circle = { centre: point(20, 23), radiusMm: 5 };
    const [left] = ringsOf(difference(stick, disc(circle, 7)), new Map([[7, circle]]), TOL_MM);
    expect(left!.pieces).toHaveLength(6);
    const [arc] = arcsOf(left!.pieces);
    expect(arc!.source).toBe(7);
    expect(arcsOf(left!.pieces)).toHaveLength(1);
    expect(distanceMm(arc!.from, point(24, 20))).toBeLessThan(1e-9);
    expect(distanceMm(arc!.to, point(16, 20))).toBeLessThan(1e-9);
    expect(circleOf(arc!).radiusMm).toBeCloseTo(5, 9);
    expect(sweepRad(arc!)).toBeCloseTo(-2 * Math.atan2(4, 3), 9);
    // 800 less the segment: 25 atan(4/3) − 12.
    expect(areaMm2(left!)).toBeCloseTo(800 - (25 * Math.atan2(4, 3) - 12), 7);
  });

  test("two circles meet in their exact point, a half circle and more is split", () => {
    const circles = new Map([
      [7, { centre: point(16, 20), radiusMm: 5 }],
      [8, { centre: point(24, 20), radiusMm: 5 }],
    ]);
    const left = difference(difference(stick, disc(circles.get(7)!, 7)), disc(circles.get(8)!, 8));
    const [shape] = ringsOf(left, circles, TOL_MM);
    const cusp = shape!.pieces.find((piece) => piece.source === 7)!;
    // The circles cross 3 below the face, on the middle line.
    expect(distanceMm(cusp.from, point(20, 17))).toBeLessThan(1e-9);

    const key = difference(stick, disc({ centre: point(20, 17), radiusMm: 5 }, 9));
    const [keyed] = ringsOf(key, new Map([[9, { centre: point(20, 17), radiusMm: 5 }]]), TOL_MM);
    expect(arcsOf(keyed!.pieces)).toHaveLength(2);
  });

  test("a hole is a whole turn, clockwise, and comes last", () => {
    const circle = { centre: point(20, 10), radiusMm: 4 };
    const rings = ringsOf(difference(stick, disc(circle, 3)), new Map([[3, circle]]), TOL_MM);
    expect(rings).toHaveLength(2);
    expect(areaMm2(rings[0]!)).toBe(800);
    expect(areaMm2(rings[1]!)).toBeCloseTo(-16 * Math.PI, 9);
    expect(rings[1]!.pieces).toHaveLength(2);
  });

  test("edges that claim a circle they do not lie on stay lines", () => {
    const circle = { centre: point(20, 23), radiusMm: 5 };
    const wrong = new Map([[7, { centre: point(20, 23.5), radiusMm: 5 }]]);
    const [left] = ringsOf(difference(stick, disc(circle, 7)), wrong, TOL_MM);
    expect(arcsOf(left!.pieces)).toHaveLength(0);
    expect(left!.pieces.length).toBeGreaterThan(20);
  });

  test("straight edges of one source in a row are one line, across the first vertex too", () => {
    const shape = ringFromVertices([
      [5, 0],
      [10, 0],
      [10, 10],
      [0, 10],
      [0, 5],
      [0, 0],
    ]);
    const rings = ringsOf(regionOf(shape, TOL_MM), new Map(), TOL_MM);
    expect(verticesOf(rings[0]!)).toHaveLength(4);
    const halves = shape.pieces.map((piece, source) => line(piece.from, piece.to, source + 1));
    expect(ringsOf(regionOf(ring(halves), TOL_MM), new Map(), TOL_MM)[0]!.pieces).toHaveLength(6);
  });

  test("flattened and put together again, a ring has its area and its pieces", () => {
    fc.assert(
      fc.property(starRing, (shape) => {
        const circles = new Map<number, Circle>();
        for (const piece of shape.pieces)
          if (piece.kind === "arc") circles.set(piece.source!, circleOf(piece));
        const region = regionOf(shape, 1e-4);
        const rings = ringsOf(region, circles, TOL_MM);
        expect(rings).toHaveLength(1);
        expect(Math.abs(areaMm2(rings[0]!) - areaMm2(shape))).toBeLessThan(1e-4);
        expect(arcsOf(rings[0]!.pieces)).toHaveLength(circles.size);
        // And the region of what came back is the region again.
        expect(Math.abs(regionAreaMm2(regionOf(rings, 1e-4)) - regionAreaMm2(region))).toBeLessThan(1e-3);
      }),
      { ...PROPERTY, numRuns: 400 },
    );
  });
});
