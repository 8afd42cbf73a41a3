import * as fc from "fast-check";
import * as polygonClipping from "polygon-clipping";
import { expect, test } from "vitest";
import { point } from "./point.ts";
import { difference, intersection, regionAreaMm2, regionOf, regionOfPolygon, union } from "./region.ts";
import { areaMm2 } from "./ring.ts";
import { coordinate, PROPERTY, starRing } from "./testing/generators.ts";
import type { Region } from "./types.ts";

/**
 * Rounding to the grid and closing up edges moves outlines by at most 1e-5 mm; rings of 1e-4 mm² are dropped.
 * Outlines of the generators run to some 300 mm, a dozen rings can go.
 */
const SLACK_MM2 = 4e-3;

const CHORD_TOL_MM = 1e-2;

const polygon = fc
  .array(fc.record({ x: coordinate, y: coordinate }), { minLength: 3, maxLength: 9 })
  .map((points) => points.map(({ x, y }) => point(x, y)));

test("the area of A is that of A − B and of A ∩ B, and A ∪ B is B and what A has more", () => {
  fc.assert(
    fc.property(starRing, starRing, (one, other) => {
      const a = regionOf(one, CHORD_TOL_MM);
      const b = regionOf(other, CHORD_TOL_MM);
      const apart = regionAreaMm2(difference(a, b));
      const shared = regionAreaMm2(intersection(a, b));
      expect(Math.abs(apart + shared - regionAreaMm2(a))).toBeLessThan(SLACK_MM2);
      expect(Math.abs(regionAreaMm2(union(a, b)) - apart - regionAreaMm2(b))).toBeLessThan(SLACK_MM2);
      expect(Math.abs(regionAreaMm2(intersection(b, a)) - shared)).toBeLessThan(SLACK_MM2);
    }),
    PROPERTY,
  );
});

test("flattening costs an area of no more than the tolerance along the outline", () => {
  fc.assert(
    fc.property(starRing, (shape) => {
      expect(Math.abs(regionAreaMm2(regionOf(shape, 1e-4)) - areaMm2(shape))).toBeLessThan(1e-4 * 400);
    }),
    PROPERTY,
  );
});

test("polygons that cross themselves and one another: areas as another program finds them", () => {
  let compared = 0;
  fc.assert(
    fc.property(polygon, polygon, (one, other) => {
      const a = regionOfPolygon(one);
      const b = regionOfPolygon(other);
      const ringsOf = (region: Region): polygonClipping.MultiPolygon =>
        region.map(({ xs, ys }) => [[...xs].map((x, i): [number, number] => [x, ys[i]!])]);
      // Holes are handed over as plain polygons to be taken off, so that the other program does that too.
      const second = (region: Region): polygonClipping.MultiPolygon => {
        const outers = region.filter((ring) => regionAreaMm2([ring]) > 0);
        const holes = region.filter((ring) => regionAreaMm2([ring]) < 0);
        const whole = polygonClipping.union([], ...ringsOf(outers));
        return holes.length === 0 ? whole : polygonClipping.difference(whole, ...ringsOf(holes));
      };
      let wanted: readonly number[];
      try {
        const [p, q] = [second(a), second(b)];
        wanted = [
          polygonClipping.difference(p, q),
          polygonClipping.intersection(p, q),
          polygonClipping.union(p, q),
        ].map(areaOf);
      } catch {
        // The other program throws on some near-degenerate input; it is counted below that this stays rare.
        return;
      }
      compared++;
      const found = [difference(a, b), intersection(a, b), union(a, b)].map(regionAreaMm2);
      for (const [i, area] of wanted.entries()) expect(Math.abs(found[i]! - area)).toBeLessThan(SLACK_MM2);
    }),
    PROPERTY,
  );
  expect(compared).toBeGreaterThan(0.9 * PROPERTY.numRuns);
});

function areaOf(polygons: polygonClipping.MultiPolygon): number {
  let area = 0;
  for (const rings of polygons) {
    for (const [index, ring] of rings.entries()) {
      let doubled = 0;
      for (let i = 0; i + 1 < ring.length; i++)
        doubled += ring[i]![0] * ring[i + 1]![1] - ring[i + 1]![0] * ring[i]![1];
      area += (Math.abs(doubled) / 2) * (index === 0 ? 1 : -1);
    }
  }
  return area;
}

test("every edge of an answer lies on an edge of its source", () => {
  fc.assert(
    fc.property(starRing, starRing, (one, other) => {
      const a = regionOf(one, CHORD_TOL_MM);
      const shifted = {
        pieces: other.pieces.map((piece) => ({ ...piece, source: (piece.source ?? 0) + 100 })),
      };
      const b = regionOf(shifted, CHORD_TOL_MM);
      const given = [...edgesOf(a), ...edgesOf(b)];
      for (const answer of [difference(a, b), intersection(a, b), union(a, b)]) {
        for (const edge of edgesOf(answer)) {
          const ofSource = given.filter((other) => other.source === edge.source);
          const away = Math.min(
            ...ofSource.map((other) => awayMm(other, (edge.x0 + edge.x1) / 2, (edge.y0 + edge.y1) / 2)),
          );
          // Two flattened edges of one arc may have become one where the rest was closed up.
          expect(away).toBeLessThan(2e-5);
        }
      }
    }),
    { ...PROPERTY, numRuns: 200 },
  );
});

interface Edge {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
  readonly source: number;
}

function edgesOf(region: Region): Edge[] {
  return region.flatMap(({ xs, ys, sources }) =>
    [...xs].map((x, i) => {
      const next = (i + 1) % xs.length;
      return { x0: x, y0: ys[i]!, x1: xs[next]!, y1: ys[next]!, source: sources[i]! };
    }),
  );
}

function awayMm(edge: Edge, x: number, y: number): number {
  const dx = edge.x1 - edge.x0;
  const dy = edge.y1 - edge.y0;
  const t = Math.max(0, Math.min(1, ((x - edge.x0) * dx + (y - edge.y0) * dy) / (dx * dx + dy * dy)));
  return Math.hypot(x - edge.x0 - t * dx, y - edge.y0 - t * dy);
}
