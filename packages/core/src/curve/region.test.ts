import { describe, expect, test } from "vitest";
import { FLATTEN_MM } from "../measure/index.ts";
import { flatRingAreaMm2, regionExtents } from "./flat-ring.ts";
import { arcsThrough, line } from "./piece.ts";
import { point } from "./point.ts";
import {
  difference,
  EMPTY_REGION,
  intersection,
  regionAreaMm2,
  regionOf,
  regionOfPolygon,
  splitRegion,
  union,
} from "./region.ts";
import { closedRun, reverseRing, ring, ringFromVertices } from "./ring.ts";
import { ringsOf } from "./rings-of.ts";
import type { Region } from "./types.ts";

const box = (x: number, y: number, width: number, height: number, source = 0): Region =>
  regionOfPolygon(
    [point(x, y), point(x + width, y), point(x + width, y + height), point(x, y + height)],
    source,
  );

const sourcesOf = (region: Region) =>
  [...new Set(region.flatMap((ring) => [...ring.sources]))].sort((a, b) => a - b);

/** Edges of a region with the source each of them carries. */
const edgesOf = (region: Region) =>
  region.flatMap(({ xs, ys, sources }) =>
    [...xs].map((x, i) => {
      const next = (i + 1) % xs.length;
      return { from: [x, ys[i]!], to: [xs[next]!, ys[next]!], source: sources[i]! };
    }),
  );

describe("booleans of boxes, by hand", () => {
  const a = box(0, 0, 10, 10, 1);
  const b = box(6, 4, 10, 3, 2);

  test("areas", () => {
    expect(regionAreaMm2(a)).toBe(100);
    expect(regionAreaMm2(difference(a, b))).toBe(88);
    expect(regionAreaMm2(intersection(a, b))).toBe(12);
    expect(regionAreaMm2(union(a, b))).toBe(118);
    expect(regionAreaMm2(union(a, b, box(100, 0, 1, 1)))).toBe(119);
  });

  test("every edge keeps the source of the curve it came from", () => {
    const notch = edgesOf(difference(a, b)).filter((edge) => edge.source === 2);
    // The slot's floor and both walls, with its mouth open at x = 10.
    expect(notch).toHaveLength(3);
    for (const edge of notch) {
      for (const [x, y] of [edge.from, edge.to])
        expect(x! >= 6 && x! <= 10 && (y === 4 || y === 7 || x === 6)).toBe(true);
    }
    expect(edgesOf(difference(a, b)).filter((edge) => edge.source === 1)).toHaveLength(5);
  });

  test("edges that coincide carry the first one's source, but one that has one", () => {
    const beside = box(10, 2, 5, 5, 7);
    expect(sourcesOf(difference(a, beside))).toEqual([1]);
    expect(sourcesOf(intersection(a, box(0, 0, 10, 4, 7)))).toEqual([1, 7]);
    expect(sourcesOf(intersection(box(0, 0, 10, 10), box(0, 0, 10, 10, 7)))).toEqual([7]);
  });

  test("a hole, its area and its direction", () => {
    const holed = difference(a, box(4, 4, 2, 2, 3));
    expect(holed).toHaveLength(2);
    expect(regionAreaMm2(holed)).toBe(96);
    expect(sourcesOf(holed)).toEqual([1, 3]);
    expect(splitRegion(holed)).toHaveLength(1);
    expect(regionAreaMm2(difference(holed, box(4, 4, 2, 2)))).toBe(96);
  });

  test("nothing with anything, and things that lie apart", () => {
    expect(union()).toBe(EMPTY_REGION);
    expect(union(EMPTY_REGION, a)).toBe(a);
    expect(difference(a, EMPTY_REGION)).toBe(a);
    expect(difference(EMPTY_REGION, a)).toBe(EMPTY_REGION);
    expect(intersection(a, box(20, 0, 5, 5))).toBe(EMPTY_REGION);
    expect(difference(a, a)).toEqual(EMPTY_REGION);
    expect(regionAreaMm2(EMPTY_REGION)).toBe(0);
    expect(() => regionExtents(EMPTY_REGION)).toThrow("extents");
  });

  test("a number that is none, or out of all reach, is refused", () => {
    const broken = [point(0, 0), { x: Number.NaN, y: 0 }, point(0, 9)];
    expect(() => regionOfPolygon(broken)).toThrow("coordinate");
    expect(() => box(1e7, 0, 1, 1)).toThrow("coordinate");
  });

  test("either direction of a polygon is the same region; what encloses nothing is empty", () => {
    expect(regionAreaMm2(regionOfPolygon([point(0, 0), point(0, 5), point(5, 5), point(5, 0)]))).toBe(25);
    expect(regionOfPolygon([point(0, 0), point(5, 5)])).toEqual([]);
    expect(regionOfPolygon([])).toEqual([]);
  });
});

describe("a three-cornered hole", () => {
  // A thin blade from (0, 3) to (8, -5) touches the wedge's point at (3, 0); a third wedge closes the gap between.
  const blade = regionOfPolygon([point(0, 3), point(8, -5), point(0, 4)], 1);
  const wedge = regionOfPolygon([point(0, 0), point(3, 0), point(0, 1)], 2);
  const bridge = regionOfPolygon([point(0, 1), point(0, 2 / 3), point(2, 2)], 3);
  // (3, 0), (7/5, 8/5), (1/3, 8/9): where x + y = 3, y = (1 − x / 3) and y = 2/3 + 2x/3 meet.
  const holeMm2 = Math.abs((7 / 5 - 3) * (8 / 9) - (1 / 3 - 3) * (8 / 5)) / 2;

  test("between parts that touch in a point is no noise", () => {
    const all = union(blade, wedge, bridge);
    expect(
      all.filter((part) => flatRingAreaMm2(part) < 0).map((part) => -flatRingAreaMm2(part))[0],
    ).toBeCloseTo(holeMm2, 6);
    // Each area by hand: 4, 1.5, 1/3; the overlaps as the difference and intersection find them.
    const overlapMm2 =
      regionAreaMm2(intersection(blade, bridge)) + regionAreaMm2(intersection(wedge, bridge));
    expect(regionAreaMm2(all)).toBeCloseTo(4 + 1.5 + 1 / 3 - overlapMm2, 6);
  });
});

describe("directions", () => {
  test("a level spike on top does not turn a ring round", () => {
    const spiked = regionOfPolygon([point(-1, 0), point(0, -1), point(0, 0), point(-2, 0)], 4);
    expect(regionAreaMm2(spiked)).toBe(0.5);
    // With sources, so that the turned ring's edges are seen to keep theirs.
    const sided = regionOf(
      [
        closedRun([
          line(point(-1, 0), point(0, -1), 1),
          line(point(0, -1), point(0, 0), 2),
          line(point(0, 0), point(-2, 0), 3),
          line(point(-2, 0), point(-1, 0), 3),
        ]),
      ],
      FLATTEN_MM,
    );
    const bySource = new Map(edgesOf(sided).map(({ from, to, source }) => [source, [from, to]]));
    expect(bySource.get(1)).toEqual([
      [-1, 0],
      [0, -1],
    ]);
    expect(bySource.get(2)).toEqual([
      [0, -1],
      [0, 0],
    ]);
    expect(bySource.get(3)).toEqual([
      [0, 0],
      [-1, 0],
    ]);
  });
});

describe("splitRegion", () => {
  test("parts come largest first, each with its own holes, islands included", () => {
    const frame = difference(box(0, 0, 30, 30), box(5, 5, 20, 20));
    const island = difference(box(8, 8, 10, 10), box(9, 9, 2, 2));
    const parts = splitRegion(union(box(50, 0, 3, 3), frame, island));
    // 900 − 400, 100 − 4, 9.
    expect(parts.map(regionAreaMm2)).toEqual([500, 96, 9]);
    expect(parts.map((part) => part.length)).toEqual([2, 2, 1]);
  });

  test("a saw cut through a stick leaves two", () => {
    expect(splitRegion(difference(box(0, 0, 40, 20), box(18, -1, 2, 22))).map(regionAreaMm2)).toEqual([
      400, 360,
    ]);
  });
});

describe("slivers", () => {
  test("a sole run along the very arc that it cut before takes nothing more", () => {
    const circle = { centre: point(20, 21.7), radiusMm: 9.525 };
    const stick = box(0, 0, 40, 20, 1);
    // The same sole laid at many tilts: sectors of one circle.
    let left = stick;
    // From just above the face on one side to just above it on the other: all the flanks are run over.
    for (let i = 0; i < 25; i++) {
      const start = -Math.PI + 0.1 + i * 0.1;
      const arcs = arcsThrough(circle, start, 0.6, 5);
      const end = arcs[arcs.length - 1]!.to;
      const sector = ring([...arcs, line(end, circle.centre, 9), line(circle.centre, arcs[0]!.from, 9)]);
      left = difference(left, regionOf(sector, FLATTEN_MM));
      expect(left).toHaveLength(1);
    }
    const before = regionAreaMm2(left);
    const [again] = arcsThrough(circle, -Math.PI + 0.5, 2.2, 5);
    const sector = ring([again!, line(again!.to, circle.centre), line(circle.centre, again!.from)]);
    const more = difference(left, regionOf(sector, FLATTEN_MM));
    expect(before - regionAreaMm2(more)).toBeLessThan(1e-5);
    // A flank stands on the true circle, the chord beside it a little above: what is left of a flank is no taller.
    for (const edge of edgesOf(left).filter(({ source }) => source === 9)) {
      expect(Math.hypot(edge.to[0]! - edge.from[0]!, edge.to[1]! - edge.from[1]!)).toBeLessThan(FLATTEN_MM);
    }
    const [whole] = ringsOf(left, new Map([[5, circle]]), 1e-3);
    expect(whole!.pieces.map(({ kind }) => kind).sort()).toEqual([
      "arc",
      "line",
      "line",
      "line",
      "line",
      "line",
    ]);
  });

  test("a ring given clockwise is a hole in one given anticlockwise", () => {
    const outer = ringFromVertices([
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ]);
    const inner = ringFromVertices([
      [4, 4],
      [6, 4],
      [6, 6],
      [4, 6],
    ]);
    expect(regionAreaMm2(regionOf([outer, reverseRing(inner)], FLATTEN_MM))).toBe(96);
    expect(regionAreaMm2(regionOf([outer, inner], FLATTEN_MM))).toBe(100);
  });

  test("ten metres away the same figures", () => {
    const far = difference(box(10_000, -10_000, 10, 10), box(10_006, -9_996, 10, 3));
    expect(regionAreaMm2(far)).toBeCloseTo(88, 9);
  });
});
