import * as fc from "fast-check";
import { describe, expect, test } from "vitest";
import { chain, chainFromVertices, verticesOf } from "./chain.ts";
import { extentsOf } from "./extents.ts";
import { lengthMm, line } from "./piece.ts";
import { point } from "./point.ts";
import { areaMm2, insideRing, nearestOnRing, reverseRing, ring, ringFromVertices } from "./ring.ts";
import { anyPoint, PROPERTY, starRing } from "./testing/generators.ts";
import { samesOf } from "./testing/sames.ts";
import { sampledAreaMm2, sampledInside } from "./testing/sampling-oracle.ts";
import type { Ring } from "./types.ts";

/** A stick 40 × 20 with a quarter hollow of radius 8 cut from its far corner: 800 − 16π mm². */
const hollowed = ringFromVertices([
  [0, 0],
  [40, 0],
  [40, 12, 1 - Math.SQRT2],
  [32, 20],
  [0, 20],
]);
/** A half round of radius 10 standing on a 20 × 5 strip: 100 + 50π mm². */
const halfRound = ringFromVertices([
  [0, 0],
  [20, 0],
  [20, 5, 1],
  [0, 5],
]);

const AREAS: readonly (readonly [string, Ring, number])[] = [
  ["a quarter hollow", hollowed, 800 - 16 * Math.PI],
  ["a half round", halfRound, 100 + 50 * Math.PI],
];

const perimeterMm = (shape: Ring) => shape.pieces.reduce((sum, piece) => sum + lengthMm(piece), 0);

describe.each(AREAS)("%s and its sames", (_, shape, area) => {
  test.each(samesOf(shape).map((same) => [same.name, same] as const))("%s", (_name, same) => {
    const sign = same.isReversed ? -1 : 1;
    // Rounding of one coordinate, 10 m away, over the whole outline.
    const slackMm = 1e-11;
    const perimeter = perimeterMm(shape) * same.scale;
    expect(Math.abs(areaMm2(same.ring) - sign * area * same.scale ** 2)).toBeLessThan(slackMm * perimeter);
    expect(Math.abs(perimeterMm(same.ring) - perimeter)).toBeLessThan(slackMm * (1 + perimeter));
    expect(same.ring.pieces).toHaveLength(shape.pieces.length);
    expect(same.ring.pieces.filter((piece) => piece.kind === "arc")).toHaveLength(1);
  });
});

describe("ring", () => {
  test("turns itself anticlockwise, and shares its joints", () => {
    const clockwise = ringFromVertices([
      [0, 0],
      [0, 10],
      [10, 10],
      [10, 0],
    ]);
    expect(areaMm2(clockwise)).toBe(100);
    for (const [index, piece] of clockwise.pieces.entries()) {
      expect(clockwise.pieces[(index + 1) % 4]!.from).toBe(piece.to);
    }
  });

  test("takes ends a whisker apart as one, and refuses a gap by its place", () => {
    const almost = [
      line(point(0, 0), point(10, 0)),
      line(point(10, 5e-7), point(10, 10)),
      line(point(10, 10), point(0, 0)),
    ];
    expect(ring(almost).pieces[1]!.from).toBe(almost[0]!.to);
    const gapped = [almost[0]!, line(point(10, 2e-6), point(10, 10)), almost[2]!];
    expect(() => ring(gapped)).toThrow(/"index":1/);
    expect(() => ring(almost.slice(0, 2))).toThrow("end where it starts");
  });

  test("refuses what encloses nothing, and numbers that are none", () => {
    expect(() =>
      ringFromVertices([
        [0, 0],
        [10, 0],
      ]),
    ).toThrow("nothing");
    expect(() => ringFromVertices([[0, 0]])).toThrow("two pieces");
    expect(() =>
      ringFromVertices([
        [0, 0],
        [10, Number.NaN],
        [0, 10],
      ]),
    ).toThrow(/^y /);
    expect(() => chainFromVertices([[0, 0]])).toThrow("two vertices");
  });

  test("a vertex repeated, at the end or between, is taken once", () => {
    expect(
      ringFromVertices([
        [0, 0],
        [10, 0],
        [10, 0],
        [0, 10],
        [0, 0],
      ]).pieces,
    ).toHaveLength(3);
  });

  test("a bulge beyond a half circle comes in as two arcs: three quarters of radius 5", () => {
    const most = ringFromVertices([
      [5, 0],
      [0, -5],
      [0, 0],
    ]);
    // From (0, -5) anticlockwise to ... the file's own form: bulge tan(270° / 4) from (5, 0) to (0, -5).
    const bulged = ringFromVertices([
      [5, 0, Math.tan((270 * Math.PI) / 720)],
      [0, -5],
      [0, 0],
    ]);
    expect(bulged.pieces.filter((piece) => piece.kind === "arc")).toHaveLength(2);
    expect(areaMm2(bulged)).toBeCloseTo(25 * Math.PI * 0.75, 10);
    expect(areaMm2(most)).toBe(12.5);
  });

  test("vertices read back are those written, rings and chains", () => {
    expect(verticesOf(halfRound)).toEqual([
      [0, 0],
      [20, 0],
      [20, 5, 1],
      [0, 5],
    ]);
    const open = [
      [0, 0],
      [5, 0, -0.5],
      [9, 2],
    ] as const;
    expect(verticesOf(chainFromVertices(open))).toEqual(open);
    expect(verticesOf(chain([]))).toEqual([]);
  });

  test("area agrees with a fine polygon, whatever the ring", () => {
    fc.assert(
      fc.property(starRing, (shape) => {
        expect(Math.abs(areaMm2(shape) - sampledAreaMm2(shape, 200))).toBeLessThan(1e-2);
        expect(areaMm2(reverseRing(shape))).toBeCloseTo(-areaMm2(shape), 8);
      }),
      PROPERTY,
    );
  });
});

describe("insideRing", () => {
  test("between an arc and its chord, both ways of bulging", () => {
    // The quarter hollow's corner is air, its chord's inside still wood under the arc.
    expect(insideRing(hollowed, point(37, 17))).toBe("out");
    expect(insideRing(hollowed, point(35, 15))).toBe("out");
    expect(insideRing(hollowed, point(33, 13))).toBe("in");
    expect(insideRing(halfRound, point(10, 14.9))).toBe("in");
    expect(insideRing(halfRound, point(10, 15.1))).toBe("out");
    expect(insideRing(halfRound, point(10, 15))).toBe("on");
  });

  test("level with corners, on chords and at joints", () => {
    expect(insideRing(halfRound, point(10, 5))).toBe("in");
    expect(insideRing(halfRound, point(-1, 5))).toBe("out");
    expect(insideRing(halfRound, point(21, 5))).toBe("out");
    expect(insideRing(halfRound, point(0, 5))).toBe("on");
    expect(insideRing(hollowed, point(36, 16))).toBe("out");
    expect(insideRing(reverseRing(hollowed), point(20, 12))).toBe("in");
  });

  test("agrees with the angles seen from the point", () => {
    fc.assert(
      fc.property(starRing, anyPoint, (shape, p) => {
        // Samples decide only where they are sure: a fiftieth of a millimetre off the outline.
        if (nearestOnRing(shape, p).distanceMm < 0.02) return;
        expect(insideRing(shape, p)).toBe(sampledInside(shape, p, 100) ? "in" : "out");
      }),
      PROPERTY,
    );
  });
});

test("the nearest point of a ring tells its piece", () => {
  const near = nearestOnRing(hollowed, point(20, 21));
  expect(near).toMatchObject({ piece: 3, distanceMm: 1, point: { x: 20, y: 20 } });
  expect(near.t).toBeCloseTo(12 / 32, 12);
  expect(extentsOf(hollowed)).toEqual({ minX: 0, minY: 0, maxX: 40, maxY: 20 });
});
