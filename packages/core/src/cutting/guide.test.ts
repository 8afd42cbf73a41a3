import { expect, test } from "vitest";
import { difference, type Region, regionOfPolygon, union } from "../curve/index.ts";
import { wallLeftMm, wallsBesideSole } from "./guide.ts";
import { COMMON_LIMITS } from "./limits.ts";

function box(minX: number, minY: number, maxX: number, maxY: number): Region {
  return regionOfPolygon([
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ]);
}

test("a wall that two cuts left one above the other belongs to both, by as much as each left of it", () => {
  // A step taken to 5 mm and then to 9.9 mm, and a rebate away from it.
  const steps = [box(0, 15, 10, 20), box(0, 10.1, 10, 15), box(30, 0, 40, 20)];
  const woods = [box(0, 0, 40, 20)];
  for (const taken of steps) woods.push(difference(woods[woods.length - 1] as Region, taken));
  const ends = { left: { x: -3, y: 0 }, right: { x: 3, y: 0 } };
  // Set down on the step's floor, its right end in the corner.
  const leftBy = (cut: number) =>
    wallLeftMm(
      { ends },
      [7, 10.1, 0],
      { before: woods[cut - 1] as Region, left: woods[cut] as Region, now: woods[3] as Region },
      COMMON_LIMITS,
    );
  expect([1, 2, 3].map(leftBy)).toEqual([expect.closeTo(5, 6), expect.closeTo(4.9, 6), 0]);
});

test("wood that slopes up to a wall adds nothing to what a cut left of it", () => {
  // Two lines sunk to the wall at x = 10, 0.2 mm and then 0.21 mm more, each with a slope of 60° away from the wall.
  const slopeOf = (topMm: number): Region =>
    regionOfPolygon([
      { x: 0, y: topMm - 10 * Math.sqrt(3) },
      { x: 10, y: topMm },
      { x: 10, y: 21 },
      { x: 0, y: 21 },
    ]);
  const woods = [box(0, 0, 40, 20)];
  for (const topMm of [19.8, 19.59])
    woods.push(difference(woods[woods.length - 1] as Region, slopeOf(topMm)));
  const ends = { left: { x: -3, y: 0 }, right: { x: 3, y: 0 } };
  const leftBy = (cut: number) =>
    wallLeftMm(
      { ends },
      [7, 15, 0],
      { before: woods[cut - 1] as Region, left: woods[cut] as Region, now: woods[2] as Region },
      COMMON_LIMITS,
    );
  // The whole wall, 0.41 mm, is enough to run against, but half of it is not.
  expect(leftBy(1)).toBeLessThan(0.21);
  expect(leftBy(1)).toBeGreaterThan(0.2);
  expect(leftBy(2)).toBeLessThan(0.211);
});

test("a wall is one from a quarter of a millimetre up, on whichever side; a crack or a film beside the sole is none", () => {
  const ends = { left: { x: -3, y: 0 }, right: { x: 3, y: 0 } };
  const beside = (wood: Region) => wallsBesideSole({ ends }, [13, 10, 0], wood, COMMON_LIMITS);
  // The sole stands from 10 to 16 on a floor at 10.
  const floor = box(0, 0, 40, 10);
  const withPart = (minX: number, maxX: number, topMm: number) =>
    beside(union(floor, box(minX, 5, maxX, topMm)));
  expect(withPart(0, 10, 10.26)).toEqual(["left"]);
  expect(withPart(0, 10, 10.24)).toEqual([]);
  expect(withPart(16, 40, 14)).toEqual(["right"]);
  expect(withPart(9.97, 10, 14)).toEqual([]);
  // The face of a block that a crack 0.03 mm wide parts from the wood under the sole.
  const cracked = difference(box(0, 0, 40, 10), box(10, 5, 10.03, 10));
  expect(wallsBesideSole({ ends }, [13, 9, 0], cracked, COMMON_LIMITS)).toEqual([]);
});
