import { expect, test } from "vitest";
import { type Region, regionOf, ringFromVertices, type Vertex } from "../curve/index.ts";
import { FLATTEN_MM, OVERCUT_MM } from "../measure/index.ts";
import { soleOf } from "../shelf/index.ts";
import { profileOf } from "./profile.ts";
import { restBesideWalls } from "./rest-beside-walls.ts";
import { soleShape } from "./sole-shape.ts";

const PLOUGH = soleShape(soleOf({ id: "r", name: "r", kind: "rebate", widthMm: 6 }).chain);
const GAP = { gapMm: OVERCUT_MM / 4 };

/** Where a plane of 6 mm comes to rest whose left end is laid at this place across. */
function restAt(leftMm: number, vertices: readonly Vertex[]): number | undefined {
  const region: Region = regionOf(ringFromVertices(vertices), FLATTEN_MM);
  return restBesideWalls(profileOf(region, 0), PLOUGH, leftMm - PLOUGH.leftMm, GAP)?.heightMm;
}

const slot = (widthMm: number): Vertex[] => [
  [0, 0],
  [20, 0],
  [20, 10],
  [4 + widthMm, 10],
  [4 + widthMm, 3],
  [4, 3],
  [4, 10],
  [0, 10],
];

test("a slot as wide as the sole is entered, and one a hair narrower", () => {
  expect(restAt(4, slot(6))).toBe(3);
  expect(restAt(4, slot(6 - OVERCUT_MM / 5))).toBe(3);
  expect(restAt(4, slot(6 - OVERCUT_MM))).toBe(10);
});

/** A cove of 4 mm radius that ends in a cusp against the wall at x = 10, its tip 8 mm up. */
const cusp: readonly Vertex[] = [
  [0, 0],
  [10, 0],
  [10, 8, -Math.tan(Math.PI / 8)],
  [6, 4],
  [4, 4],
  [4, 10],
  [0, 10],
];

test("the tip of a cusp under the end of the sole stops it", () => {
  expect(restAt(4, cusp)).toBeCloseTo(8, 3);
});

test("a plane laid along the wall that a cusp ends at goes down beside it", () => {
  expect(restAt(10, [...cusp.slice(0, 1), [20, 0], [20, 2], [10, 2], ...cusp.slice(2)])).toBe(2);
});
