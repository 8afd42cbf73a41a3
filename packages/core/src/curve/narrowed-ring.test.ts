import fc from "fast-check";
import { expect, test } from "vitest";
import { narrowedTo } from "./narrowed-ring.ts";
import { difference, regionOfPolygon } from "./region.ts";
import type { FlatRing, Region } from "./types.ts";

/** A stick with a face of so many heights, 1 mm apart, from right to left. */
function comb(heights: readonly number[]): Region {
  const wide = heights.length - 1;
  return regionOfPolygon([
    { x: 0, y: 0 },
    { x: wide, y: 0 },
    ...heights.map((y, i) => ({ x: wide - i, y: 10 + y })),
  ]);
}

/** A strip that leans, from a level up out of the stick. */
function strip(x: number, widthMm: number, fromMm: number, leanMm: number): Region {
  return regionOfPolygon([
    { x, y: fromMm },
    { x: x + widthMm, y: fromMm },
    { x: x + widthMm + leanMm, y: fromMm + 200 },
    { x: x + leanMm, y: fromMm + 200 },
  ]);
}

/** Something far off: with it the wood is no single ring, and the difference is made of the whole of it. */
const FAR_OFF = regionOfPolygon([
  { x: 1, y: -50 },
  { x: 2, y: -50 },
  { x: 1, y: -49 },
]);

const placesOf = (ring: FlatRing) => Array.from(ring.xs, (x, i) => `${x} ${ring.ys[i]} ${ring.sources[i]}`);

test("what lies beside a strip is passed over, its ends apart", () => {
  const [ring] = comb(Array.from({ length: 101 }, (_, i) => (i % 2 === 0 ? 1 : 2)));
  const narrowed = ring && narrowedTo(ring, strip(48, 4, 9, 0));
  expect(narrowed?.skipped).toHaveLength(2);
  expect(narrowed?.ring.xs.length).toBeLessThan(14);
});

test("a ring that goes beyond a side twice is left whole", () => {
  // A slot from the left splits what lies there in two.
  const slotted = difference(
    comb(Array.from({ length: 101 }, (_, i) => (i % 2 === 0 ? 1 : 2))),
    regionOfPolygon([
      { x: -1, y: 4 },
      { x: 60, y: 4 },
      { x: 60, y: 5 },
      { x: -1, y: 5 },
    ]),
  );
  const [ring] = slotted;
  expect(slotted).toHaveLength(1);
  expect(ring && narrowedTo(ring, strip(48, 4, 9, 0))).toBeNull();
});

test("the difference is the same, place by place, as one made of the whole ring", () => {
  const cases = fc.record({
    heights: fc.array(fc.integer({ min: 0, max: 400 }), { minLength: 30, maxLength: 80 }),
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    widthMm: fc.double({ min: 0.5, max: 9, noNaN: true }),
    fromMm: fc.double({ min: 1, max: 14, noNaN: true }),
    leanMm: fc.double({ min: -150, max: 150, noNaN: true }),
  });
  let narrowed = 0;
  fc.assert(
    fc.property(cases, ({ heights, at, widthMm, fromMm, leanMm }) => {
      const wood = comb(heights.map((height) => height / 100));
      const sweep = strip(at * heights.length, widthMm, fromMm, leanMm);
      if (wood[0] && narrowedTo(wood[0], sweep)) narrowed++;
      const whole = difference([...wood, ...FAR_OFF], sweep).filter((ring) => (ring.ys[0] ?? 0) > -10);
      const found = difference(wood, sweep);
      const sorted = (region: Region) => region.map((ring) => placesOf(ring).sort()).sort();
      expect(sorted(found)).toEqual(sorted(whole));
    }),
    { seed: 20261127, numRuns: 300 },
  );
  expect(narrowed).toBeGreaterThan(100);
});
