import { expect, test } from "vitest";
import { regionOfPolygon, ringFromVertices } from "../curve/index.ts";
import { THREAD_MM } from "../measure/index.ts";
import { comesAway, faceFigures } from "./face.ts";

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

/** The block with wood left on its face: `profile` is its upper edge, from right to left. */
const blockUnder = (profile: readonly (readonly [number, number])[]) =>
  regionOfPolygon([[0, 0] as const, [20, 0] as const, ...profile].map(([x, y]) => ({ x, y })));

test("a hair that stands on a film of wood is no part of the face where the film was meant", () => {
  // Aimed 0.1 mm over the drawing, as where an arc goes to a radius of the shelf; on it a hair 0.002 mm thick.
  const planned = ringFromVertices([
    [0, 0],
    [20, 0],
    [20, 10.1],
    [0, 10.1],
  ]);
  const wood = blockUnder([
    [20, 10.1],
    [8.002, 10.1],
    [8.002, 11],
    [8, 11],
    [8, 10.1],
    [0, 10.1],
  ]);
  const { unlisted, proudMm } = faceFigures({
    drawn: BLOCK,
    planned,
    left: wood,
    toleranceMm: 0.2,
    uncut: [],
  });
  expect(unlisted.at).toBeNull();
  expect(proudMm).toBeCloseTo(0.1, 6);
  expect(
    faceFigures({ drawn: BLOCK, planned: BLOCK, left: wood, toleranceMm: 0.2, uncut: [] }).unlisted.depthMm,
  ).toBeCloseTo(1, 6);
});

test("a listed place stands where beside it the wood is within a hair of too high, and not where it is well below", () => {
  const place = { from: [10, 10], to: [0, 10], left: 0.25, rule: "wall", why: "", try: "" } as const;
  const notStanding = (highMm: number) =>
    faceFigures({
      drawn: BLOCK,
      planned: BLOCK,
      left: blockUnder([
        [20, 10 + highMm],
        [10, 10 + highMm],
        [10, 10],
        [0, 10],
      ]),
      toleranceMm: 0.2,
      uncut: [place],
    }).notStanding;
  expect(notStanding(0.205)).toEqual([]);
  expect(notStanding(0.15)).toEqual([place]);
});
