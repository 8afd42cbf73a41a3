import fc from "fast-check";
import { expect, test } from "vitest";
import { chainFromVertices, type Point, regionOfPolygon } from "../curve/index.ts";
import { soleOf } from "../shelf/index.ts";
import { profileOf, restOn, turned, turnedBack, turnOf } from "./profile.ts";
import { soleHeightMm, soleShape } from "./sole-shape.ts";

fc.configureGlobal({ seed: 20261124 });

const SOLES = [
  soleOf({ id: "o", name: "o", kind: "round", radiusMm: 8, widthMm: 8 }).chain,
  soleOf({ id: "h", name: "h", kind: "hollow", radiusMm: 8, widthMm: 8 }).chain,
  soleOf({
    id: "s",
    name: "s",
    kind: "snipe bill",
    hand: "left",
    widthMm: 6,
    noseMm: 0.4,
    slopeDeg: 60,
    reachMm: 5,
  }).chain,
  chainFromVertices([
    [-5, 2, 0.3],
    [0, 1],
    [2, 0],
    [5, 0, -0.3],
    [8, 1],
  ]),
];

/** Height at which the plane is stopped, by looking at a thousand upright lines: never above the true one. */
function sampledRest(
  outline: readonly Point[],
  heightAt: (x: number) => number,
  left: number,
  right: number,
  shift: number,
) {
  let height = Number.NEGATIVE_INFINITY;
  for (let k = 0; k <= 1000; k++) {
    const x = left + ((right - left) * k) / 1000;
    for (let i = 0, j = outline.length - 1; i < outline.length; j = i++) {
      const [a, b] = [outline[j] as Point, outline[i] as Point];
      const at = shift + x;
      if (Math.min(a.x, b.x) > at || Math.max(a.x, b.x) < at || a.x === b.x) continue;
      height = Math.max(height, a.y + ((at - a.x) / (b.x - a.x)) * (b.y - a.y) - heightAt(x));
    }
  }
  return height;
}

test("a plane let down is stopped where a thousand upright lines say, or a hair above", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...SOLES),
      fc.array(fc.double({ min: 0, max: 12, noNaN: true }), { minLength: 9, maxLength: 9 }),
      fc.double({ min: 8, max: 32, noNaN: true }),
      fc.constantFrom(0, 0, 30, -25, 90, 180),
      (chain, heights, shift, tilt) => {
        const face = heights.map((y, i): Point => ({ x: 40 - 5 * i, y: 10 + y }));
        const upright: Point[] = [{ x: 0, y: 0 }, { x: 40, y: 0 }, ...face];
        // The wood is turned the other way, so that the plane at this tilt sees it upright.
        const turn = turnOf(tilt);
        const region = regionOfPolygon(upright.map((p) => turnedBack(turn, p)));
        const shape = soleShape(chain);
        const rest = restOn(profileOf(region, tilt), shape, shift);
        const sampled = sampledRest(
          upright,
          (x) => soleHeightMm(shape, x),
          shape.leftMm,
          shape.rightMm,
          shift,
        );
        expect(rest).not.toBeNull();
        expect(rest?.heightMm).toBeGreaterThan(sampled - 1e-6);
        expect(rest?.heightMm).toBeLessThan(sampled + 0.1);
        expect(rest?.touchXMm).toBeGreaterThanOrEqual(shift + shape.leftMm - 1e-9);
        expect(rest?.touchXMm).toBeLessThanOrEqual(shift + shape.rightMm + 1e-9);
      },
    ),
    { numRuns: 300 },
  );
});

test("quarter turns are exact, and turning there and back is nothing", () => {
  expect(turned(turnOf(90), { x: 3, y: 4 })).toEqual({ x: 4, y: -3 });
  expect(turnedBack(turnOf(-450), { x: 3, y: 4 })).toEqual({ x: 4, y: -3 });
  fc.assert(
    fc.property(fc.double({ min: -360, max: 360, noNaN: true }), (tilt) => {
      const back = turnedBack(turnOf(tilt), turned(turnOf(tilt), { x: 3, y: 4 }));
      expect(back.x).toBeCloseTo(3, 12);
      expect(back.y).toBeCloseTo(4, 12);
    }),
  );
});
