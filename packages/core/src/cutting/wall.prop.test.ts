import fc from "fast-check";
import { expect, test } from "vitest";
import { difference, type Region, regionOfPolygon } from "../curve/index.ts";
import { FLATTEN_MM } from "../measure/index.ts";
import { type Plane, soleOf } from "../shelf/index.ts";
import { curveBook } from "./curve-book.ts";
import { cutShape, wallsOfCut } from "./simulate.ts";
import type { Pose } from "./types.ts";

fc.configureGlobal({ seed: 20261124 });

const PLANES: readonly Plane[] = [
  { id: "r", name: "r", kind: "rebate", widthMm: 8 },
  { id: "o", name: "o", kind: "round", radiusMm: 9, widthMm: 9 },
  { id: "h", name: "h", kind: "hollow", radiusMm: 7, widthMm: 7 },
  { id: "s", name: "s", kind: "snipe bill", hand: "left", widthMm: 6, noseMm: 0.4, slopeDeg: 60, reachMm: 5 },
];

function box(minX: number, minY: number, width: number, height: number): Region {
  return regionOfPolygon([
    { x: minX, y: minY },
    { x: minX + width, y: minY },
    { x: minX + width, y: minY + height },
    { x: minX, y: minY + height },
  ]);
}

const STICK = box(0, 0, 40, 20);
// Grid places make exact contacts (a wall in line with a side) as common as they are at the bench.
const place = (most: number) => fc.integer({ min: 0, max: 2 * most }).map((half) => half / 2);

const openings = fc
  .array(fc.tuple(place(40), place(20), place(12), place(12)), { maxLength: 5 })
  .map((list) => list.map(([x, y, width, height]) => box(x, y, width + 0.5, height + 0.5)));

test("cutting more before never makes a wall worse", () => {
  fc.assert(
    fc.property(
      fc.constantFrom(...PLANES),
      place(40),
      place(20),
      fc.constantFrom(-45, -20, 0, 0, 20, 45),
      openings,
      openings,
      (plane, x, y, tilt, first, more) => {
        const pose: Pose = [x, y, tilt];
        const options = { reachMm: 200, chordTolMm: FLATTEN_MM, book: curveBook() };
        const cut = cutShape(soleOf(plane).chain, [[pose]], 0, options);
        const cutFrom = (opened: readonly Region[]): readonly [number, number] => {
          const wood = opened.reduce((left, one) => difference(left, one), STICK);
          return wallsOfCut(wood, difference(wood, cut.sweep), cut);
        };
        const plain = cutFrom(first);
        const opened = cutFrom([...first, ...more]);
        expect(opened[0]).toBeLessThanOrEqual(plain[0] + 1e-6);
        expect(opened[1]).toBeLessThanOrEqual(plain[1] + 1e-6);
      },
    ),
    { numRuns: 300 },
  );
});

test("a mirrored cut leaves mirrored walls", () => {
  fc.assert(
    fc.property(place(40), place(20), fc.integer({ min: -50, max: 50 }), openings, (x, y, tilt, opened) => {
      const options = { reachMm: 200, chordTolMm: FLATTEN_MM, book: curveBook() };
      const sole = soleOf(PLANES[1] as Plane).chain;
      const wood = opened.reduce((left, one) => difference(left, one), STICK);
      const mirror = (region: Region): Region =>
        region.map(({ xs, ys, sources }) => ({
          xs: xs.map((value) => 40 - value).reverse(),
          ys: ys.slice().reverse(),
          sources: sources.slice().reverse(),
        }));
      const wallsOf = (from: Region, pose: Pose) => {
        const cut = cutShape(sole, [[pose]], 0, options);
        return wallsOfCut(from, difference(from, cut.sweep), cut);
      };
      const [left, right] = wallsOf(wood, [x, y, tilt]);
      const [otherLeft, otherRight] = wallsOf(mirror(wood), [40 - x, y, -tilt]);
      expect(otherLeft).toBeCloseTo(right, 4);
      expect(otherRight).toBeCloseTo(left, 4);
    }),
    { numRuns: 200 },
  );
});
