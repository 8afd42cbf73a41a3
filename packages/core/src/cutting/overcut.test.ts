import { describe, expect, test } from "vitest";
import {
  difference,
  EMPTY_REGION,
  type Region,
  regionOf,
  regionOfPolygon,
  ringFromVertices,
} from "../curve/index.ts";
import { FLATTEN_MM, OVERCUT_MM } from "../measure/index.ts";
import { deepestFrom } from "./depth.ts";
import { overcutOf } from "./overcut.ts";

function box(minX: number, minY: number, maxX: number, maxY: number): Region {
  return regionOfPolygon([
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ]);
}

const PLANNED = ringFromVertices([
  [0, 0],
  [40, 0],
  [40, 15],
  [0, 15],
]);
const REGION = regionOf(PLANNED, FLATTEN_MM);

describe("overcut", () => {
  test("none where the planned section is whole", () => {
    expect(overcutOf(PLANNED, REGION, box(0, 0, 40, 20))).toEqual({ depthMm: 0, at: null });
  });

  test("a notch counts by its depth", () => {
    const { depthMm, at } = overcutOf(PLANNED, REGION, difference(box(0, 0, 40, 20), box(10, 14.6, 12, 20)));
    expect(depthMm).toBeCloseTo(0.4, 6);
    expect(at?.y).toBeCloseTo(14.6, 6);
  });

  test("a slab taken right across the face, all corners of which lie on the planned outline", () => {
    const { depthMm, at } = overcutOf(PLANNED, REGION, box(0, 0, 40, 14));
    expect(depthMm).toBeCloseTo(1, 2);
    expect(at?.y).toBeCloseTo(14, 6);
  });

  test("a saw cut right through is as deep as half the section is thick", () => {
    // From the new end the nearest sides are the face and the back, 7.5 mm off its middle.
    expect(overcutOf(PLANNED, REGION, box(0, 0, 20, 15)).depthMm).toBeCloseTo(7.5, 1);
  });

  test("the tip of a cusp that loses its height counts, though it has next to no area", () => {
    // A cove of 4 mm that meets a wall along its own tangent: 0.2 mm under its tip the cusp is 4 - √(16 - 0.04) = 0.005 mm thick.
    const cusp = ringFromVertices([
      [0, 0],
      [10, 0],
      [10, 10, -Math.tan(Math.PI / 8)],
      [6, 6],
      [0, 6],
    ]);
    const region = regionOf(cusp, FLATTEN_MM);
    const { depthMm, at } = overcutOf(cusp, region, difference(region, box(0, 9.8, 20, 20)));
    expect(depthMm).toBeCloseTo(0.2, 6);
    expect(at).toEqual({ x: 10, y: 10 });
  });

  test("everything gone is at least as deep as its area over its perimeter", () => {
    expect(overcutOf(PLANNED, REGION, EMPTY_REGION).depthMm).toBeCloseTo((40 * 15) / (2 * (40 + 15)), 6);
  });
});

test("wood left in a groove up to its arrises is as high as the groove is deep", () => {
  const flute = ringFromVertices([
    [0, 0],
    [40, 0],
    [40, 20],
    [24, 20, -1],
    [16, 20],
    [0, 20],
  ]);
  const left = difference(box(0, 0, 40, 20), regionOf(flute, FLATTEN_MM));
  const { depthMm, at } = deepestFrom(flute, left, OVERCUT_MM);
  // From the middle of the flute's mouth its floor and its arrises are all one radius away.
  expect(depthMm).toBeCloseTo(4, 2);
  expect(at?.x).toBeCloseTo(20, 1);
});
