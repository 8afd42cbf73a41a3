import { expect, test } from "vitest";
import { regionOfPolygon, ringFromVertices } from "../curve/index.ts";
import { THREAD_MM } from "../measure/index.ts";
import { comesAway } from "./face.ts";

const BLOCK = ringFromVertices([
  [0, 0],
  [20, 0],
  [20, 10],
  [0, 10],
]);

/** Wood over the block's face, 0.4 mm high and wide at its top, that stands on so much of the face. */
const splinter = (footMm: number, highMm = 0.4, wideMm = 0.4) => {
  const points = [
    { x: 5, y: 10 },
    { x: 5 + footMm, y: 10 },
    { x: 5 + wideMm, y: 10 + highMm },
    { x: 5, y: 10 + highMm },
  ];
  const [ring] = regionOfPolygon(footMm > 0 ? points : points.filter((_, i) => i !== 1));
  if (!ring) throw new Error("no ring");
  return ring;
};

test("a splinter that stands on one point or on less than a thread comes away", () => {
  expect(comesAway(BLOCK, splinter(0))).toBe(true);
  expect(comesAway(BLOCK, splinter(THREAD_MM / 2))).toBe(true);
});

test("wood that stands on more than a thread stays, and so does more than a shaving on a point", () => {
  expect(comesAway(BLOCK, splinter(THREAD_MM * 3))).toBe(false);
  expect(comesAway(BLOCK, splinter(0, 1, 1))).toBe(false);
});
