import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { extentsOf } from "./extents.ts";
import {
  angleOnArc,
  arc,
  arcsThrough,
  circleOf,
  endAngleRad,
  lengthMm,
  line,
  nearestOnPiece,
  pointAt,
  reversePiece,
  splitPiece,
  startAngleRad,
  sweepRad,
  tangentRad,
} from "./piece.ts";
import { distanceMm, point } from "./point.ts";
import { anyArc, anyPiece, anyPoint, PROPERTY } from "./testing/generators.ts";
import { sampledDistanceMm, sampledLengthMm, samplesOf } from "./testing/sampling-oracle.ts";

/** Anticlockwise half circle of radius 5 over the top, from (5, 0) to (-5, 0). */
const overTop = arc(point(5, 0), point(-5, 0), 1);
/** Anticlockwise quarter of radius 5 about the origin, from (5, 0) to (0, 5): tan(90° / 4) = √2 − 1. */
const quarter = arc(point(5, 0), point(0, 5), Math.SQRT2 - 1);

function near(actual: number, expected: number, slack = 1e-12): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(slack);
}

describe("constructors", () => {
  test("refuse bulges of 0 or beyond a half circle, numbers that are none, and ends that are one", () => {
    expect(() => arc(point(0, 0), point(1, 0), 0)).toThrow("bulge");
    expect(() => arc(point(0, 0), point(1, 0), 5e-324)).toThrow("bulge");
    expect(() => arc(point(0, 0), point(1, 0), 1.001)).toThrow("bulge");
    expect(() => arc(point(0, 0), point(1, 0), Number.NaN)).toThrow("bulge");
    expect(() => arc(point(1, 0), point(1, 0), 1)).toThrow("same point");
    expect(() => line(point(0, 0), { x: 0, y: Number.NaN })).toThrow("to is not");
    expect(() => arcsThrough({ centre: point(0, 0), radiusMm: 0 }, 0, 1)).toThrow("radiusMm");
    expect(() => arcsThrough({ centre: point(0, 0), radiusMm: 1 }, 0, 7)).toThrow("sweep");
  });

  test("keep the source only if there is one", () => {
    expect(line(point(0, 0), point(1, 0), 4).source).toBe(4);
    expect("source" in line(point(0, 0), point(1, 0))).toBe(false);
    expect(arc(point(0, 0), point(1, 0), 1, 9).source).toBe(9);
  });

  test("a full turn is two arcs that end where they start", () => {
    const circle = arcsThrough({ centre: point(1, 2), radiusMm: 3 }, 0.3, -2 * Math.PI);
    expect(circle).toHaveLength(2);
    expect(circle[1]!.to).toBe(circle[0]!.from);
    expect(circle[0]!.to).toBe(circle[1]!.from);
    near(sweepRad(circle[0]!) + sweepRad(circle[1]!), -2 * Math.PI);
  });
});

describe("arcs", () => {
  test("centre, radius, sweep, angles of a quarter", () => {
    const { centre, radiusMm } = circleOf(quarter);
    near(centre.x, 0);
    near(centre.y, 0);
    near(radiusMm, 5);
    near(sweepRad(quarter), Math.PI / 2);
    near(startAngleRad(quarter), 0);
    near(endAngleRad(quarter), Math.PI / 2);
    near(lengthMm(quarter), 2.5 * Math.PI);
  });

  test("middle and directions of travel of a half circle", () => {
    near(distanceMm(pointAt(overTop, 0.5), point(0, 5)), 0);
    near(tangentRad(overTop, 0), Math.PI / 2);
    near(Math.abs(tangentRad(overTop, 0.5)), Math.PI);
    near(tangentRad(overTop, 1), -Math.PI / 2);
  });

  test("extents reach the swell, not only the ends", () => {
    const box = extentsOf(overTop);
    near(box.maxY, 5);
    near(box.minY, 0);
    near(extentsOf(quarter).maxX, 5);
    near(extentsOf(arc(point(-3, -4), point(3, -4), 0.5)).minY, -5.5);
  });

  test("is this direction on the arc: every start in steps of 1°, both hands", () => {
    for (let startDeg = -180; startDeg <= 180; startDeg++) {
      for (const sweepDeg of [60, -60, 180, -180]) {
        const start = (startDeg * Math.PI) / 180;
        const sweep = (sweepDeg * Math.PI) / 180;
        const [piece] = arcsThrough({ centre: point(2, -1), radiusMm: 7 }, start, sweep);
        for (const share of [0.01, 0.5, 0.99]) {
          expect(angleOnArc(piece!, start + share * sweep + 2 * Math.PI)).toBe(true);
          expect(angleOnArc(piece!, start + share * sweep - 4 * Math.PI)).toBe(true);
        }
        for (const share of [-0.01, 1.01]) expect(angleOnArc(piece!, start + share * sweep)).toBe(false);
      }
    }
  });

  test("both ends lie on the circle", () => {
    fc.assert(
      fc.property(anyArc, (piece) => {
        const { centre, radiusMm } = circleOf(piece);
        const slack = 1e-14 * (radiusMm + 100);
        near(distanceMm(centre, piece.from), radiusMm, slack);
        near(distanceMm(centre, piece.to), radiusMm, slack);
      }),
      PROPERTY,
    );
  });

  test("a hardly bent arc keeps its accuracy: 1e-9 of bulge over 100 mm rises 5e-8 mm", () => {
    const flat = arc(point(0, 0), point(100, 0), -1e-9);
    near(pointAt(flat, 0.5).y, 5e-8, 1e-20);
    near(nearestOnPiece(flat, point(25, 1)).t, 0.25, 1e-9);
    near(lengthMm(flat), 100);
  });
});

describe("any piece", () => {
  test("length and points agree with dense samples", () => {
    fc.assert(
      fc.property(anyPiece, (piece) => {
        near(lengthMm(piece), sampledLengthMm(piece, 400), 1e-5 * (1 + lengthMm(piece)));
        const samples = samplesOf(piece, 8);
        for (let i = 0; i <= 8; i++) near(distanceMm(pointAt(piece, i / 8), samples[i]!), 0, 1e-6);
      }),
      PROPERTY,
    );
  });

  test("the nearest point agrees with dense samples and lies where it says", () => {
    fc.assert(
      fc.property(anyPiece, anyPoint, (piece, p) => {
        const found = nearestOnPiece(piece, p);
        near(found.distanceMm, sampledDistanceMm(piece, p, 400), 1e-3 + 1e-5 * lengthMm(piece));
        expect(found.point).toEqual(pointAt(piece, found.t));
        expect(found.t >= 0 && found.t <= 1).toBe(true);
      }),
      PROPERTY,
    );
  });

  test("a reversed piece runs the same way back", () => {
    fc.assert(
      fc.property(anyPiece, fc.double({ min: 0, max: 1, noNaN: true }), (piece, t) => {
        near(distanceMm(pointAt(reversePiece(piece), 1 - t), pointAt(piece, t)), 0, 1e-9);
        expect(reversePiece(reversePiece(piece))).toEqual(piece);
      }),
      PROPERTY,
    );
  });

  test("two parts share their point, and make up the length", () => {
    fc.assert(
      fc.property(anyPiece, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (piece, t) => {
        const [before, after] = splitPiece(piece, t);
        expect(before.to).toBe(after.from);
        expect(before.from).toBe(piece.from);
        expect(after.to).toBe(piece.to);
        near(lengthMm(before), t * lengthMm(piece), 1e-9 * (1 + lengthMm(piece)));
        near(lengthMm(before) + lengthMm(after), lengthMm(piece), 1e-9 * (1 + lengthMm(piece)));
      }),
      PROPERTY,
    );
  });
});
