import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { flatRingOf, flattenPiece, stepsPerTurn } from "./flatten.ts";
import { arcsThrough, circleOf, line } from "./piece.ts";
import { distanceMm, point, samePoint } from "./point.ts";
import { mirrorRing, ringFromVertices } from "./ring.ts";
import { anyArc, PROPERTY } from "./testing/generators.ts";
import { samplesOf } from "./testing/sampling-oracle.ts";
import type { Point } from "./types.ts";

const TOL_MM = 1e-3;

describe("flattenPiece", () => {
  test("a line is its ends, the very ones", () => {
    const piece = line(point(0, 0), point(3, 1));
    expect(flattenPiece(piece, TOL_MM)).toEqual([piece.from, piece.to]);
    expect(flattenPiece(piece, TOL_MM)[1]).toBe(piece.to);
  });

  test("steps of radius 10 at 0.001: the chord's height asks for 223 steps, the next multiple of 4 is 224", () => {
    // cos(a) = 1 − 0.001 / 10 gives a half step of 0.014142 rad, so 2π / 0.028285 = 222.14 steps.
    expect(stepsPerTurn(10, TOL_MM)).toBe(224);
    expect(stepsPerTurn(1e-5, TOL_MM)).toBe(4);
    expect(() => flattenPiece(line(point(0, 0), point(1, 0)), 0)).toThrow("chordTolMm");
  });

  test("a circle has its four extremes as vertices", () => {
    const [half] = arcsThrough({ centre: point(2, 3), radiusMm: 7 }, 0.1, Math.PI);
    const vertices = flattenPiece(half!, TOL_MM);
    for (const extreme of [point(2, 10), point(-5, 3)]) {
      expect(vertices.filter((p) => samePoint(p, extreme, 1e-12))).toHaveLength(1);
    }
  });

  test("arcs of one circle share their inner vertices, wherever they start and whichever way they run", () => {
    const circle = { centre: point(12.7, -3.3), radiusMm: 9.525 };
    const isSame = (a: Point) => (b: Point) => samePoint(a, b, 1e-12);
    fc.assert(
      fc.property(
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: 0.5, max: 3, noNaN: true }),
        fc.double({ min: -3, max: -0.5, noNaN: true }),
        (start, sweep, back) => {
          const [one] = arcsThrough(circle, start, sweep);
          // The same stretch travelled back, from its end, by its own length and some more or less.
          const [other] = arcsThrough(circle, start + sweep, back);
          const shared = Math.min(sweep, -back);
          const vertices = flattenPiece(one!, TOL_MM).slice(1, -1);
          const others = flattenPiece(other!, TOL_MM).slice(1, -1);
          const common = vertices.filter((p) => others.some(isSame(p)));
          const stepRad = (2 * Math.PI) / stepsPerTurn(9.525, TOL_MM);
          expect(Math.abs(common.length - shared / stepRad)).toBeLessThanOrEqual(2);
        },
      ),
      { ...PROPERTY, numRuns: 100 },
    );
  });

  test("no vertex stands a whisker from an end", () => {
    const stepRad = (2 * Math.PI) / stepsPerTurn(5, TOL_MM);
    for (const off of [-1e-4, -1e-9, 0, 1e-9, 1e-4]) {
      const [piece] = arcsThrough({ centre: point(0, 0), radiusMm: 5 }, off * stepRad, (8 + off) * stepRad);
      expect(flattenPiece(piece!, TOL_MM)).toHaveLength(9);
    }
  });

  test("every chord lies within the tolerance of the arc", () => {
    fc.assert(
      fc.property(anyArc, fc.constantFrom(1e-4, 1e-3, 1e-2), (piece, tolMm) => {
        const vertices = flattenPiece(piece, tolMm);
        expect(vertices[0]).toBe(piece.from);
        expect(vertices[vertices.length - 1]).toBe(piece.to);
        const { radiusMm } = circleOf(piece);
        for (const p of samplesOf(piece, 31)) {
          let least = Number.POSITIVE_INFINITY;
          for (let i = 0; i + 1 < vertices.length; i++)
            least = Math.min(least, awayMm(vertices[i]!, vertices[i + 1]!, p));
          expect(least).toBeLessThanOrEqual(tolMm * 1.01 + radiusMm * 1e-13);
        }
      }),
      { ...PROPERTY, numRuns: 150 },
    );
  });
});

function awayMm(a: Point, b: Point, p: Point): number {
  const lengthOfLine = distanceMm(a, b);
  if (lengthOfLine === 0) return distanceMm(a, p);
  const t = ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / lengthOfLine ** 2;
  const foot = Math.max(0, Math.min(1, t));
  return Math.hypot(a.x + foot * (b.x - a.x) - p.x, a.y + foot * (b.y - a.y) - p.y);
}

describe("flatRingOf", () => {
  test("every edge carries its piece's source, or 0", () => {
    const shape = ringFromVertices([
      [0, 0],
      [20, 0],
      [20, 5, 1],
      [0, 5],
    ]);
    const pieces = shape.pieces.map((piece, index) =>
      index === 0 ? piece : { ...piece, source: index * 10 },
    );
    const { xs, sources } = flatRingOf({ pieces }, TOL_MM);
    expect(sources).toHaveLength(xs.length);
    expect([...new Set(sources)]).toEqual([0, 10, 20, 30]);
    expect([...sources].filter((source) => source !== 20)).toHaveLength(3);
  });

  test("a mirrored ring has mirrored vertices, to the last bit about the axis 0", () => {
    const shape = ringFromVertices([
      [-4, 0],
      [12, 0],
      [12, 5, 0.7],
      [-4, 5],
    ]);
    const { xs, ys } = flatRingOf(shape, TOL_MM);
    const mirrored = flatRingOf(mirrorRing(shape, 0), TOL_MM);
    const key = (x: number, y: number) => `${x.toFixed(11)} ${y.toFixed(11)}`;
    const wanted = [...xs].map((x, index) => key(0 - x, ys[index]!)).sort();
    expect([...mirrored.xs].map((x, index) => key(x, mirrored.ys[index]!)).sort()).toEqual(wanted);
  });
});
