import fc from "fast-check";
import { expect, test } from "vitest";
import {
  difference,
  intersection,
  type Region,
  regionAreaMm2,
  regionOfPolygon,
  union,
} from "../curve/index.ts";
import { AREA_AGREEMENT_MM2, FLATTEN_MM, toRad } from "../measure/index.ts";
import { soleOf } from "../shelf/index.ts";
import { curveBook } from "./curve-book.ts";
import { stripOf, sweepOf } from "./sweep.ts";
import type { Pose, Run } from "./types.ts";

fc.configureGlobal({ seed: 20261124 });

const STICK = regionOfPolygon([
  { x: 0, y: 0 },
  { x: 40, y: 0 },
  { x: 40, y: 30 },
  { x: 0, y: 30 },
]);

const rock = fc.record({
  kind: fc.constantFrom("hollow", "round"),
  radiusMm: fc.double({ min: 2, max: 40, noNaN: true }),
  // Up to the half circle, where the sole stands upright at its ends.
  widthRatio: fc.oneof(fc.double({ min: 0.2, max: 2, noNaN: true }), fc.constantFrom(1, 2)),
  fromDeg: fc.integer({ min: -90, max: 90 }),
  spanDeg: fc.double({ min: 2, max: 120, noNaN: true }),
  x: fc.double({ min: -5, max: 45, noNaN: true }),
  y: fc.double({ min: -10, max: 40, noNaN: true }),
});

/** Poses that turn the plane about a point, so far beyond its sole as its radius, `stepDeg` or less apart. */
function rocked(sign: 1 | -1, radiusMm: number, x: number, y: number, fromDeg: number, toDeg: number): Run {
  const count = Math.max(2, Math.ceil((toDeg - fromDeg) / 0.5));
  return Array.from({ length: count + 1 }, (_, i): Pose => {
    const tilt = fromDeg + ((toDeg - fromDeg) * i) / count;
    // A round's centre stands one radius up its axis, a hollow's one radius down.
    return [x + sign * radiusMm * Math.sin(toRad(tilt)), y - sign * radiusMm * Math.cos(toRad(tilt)), tilt];
  });
}

function areaApartMm2(a: Region, b: Region): number {
  return regionAreaMm2(difference(a, b)) + regionAreaMm2(difference(b, a));
}

test("a rock about the arc's centre takes what its strips take", () => {
  fc.assert(
    fc.property(rock, ({ kind, radiusMm, widthRatio, fromDeg, spanDeg, x, y }) => {
      const plane = { id: "p", name: "p", kind, radiusMm, widthMm: radiusMm * widthRatio } as const;
      const options = { reachMm: 300, chordTolMm: FLATTEN_MM, book: curveBook() };
      const sole = soleOf(plane).chain;
      const run = rocked(kind === "round" ? 1 : -1, radiusMm, x, y, fromDeg, fromDeg + spanDeg);
      const closed = intersection(STICK, sweepOf(sole, [run], options));
      let strips: Region = [];
      for (const pose of run) strips = union(strips, intersection(STICK, stripOf(sole, pose, options)));
      expect(areaApartMm2(closed, strips)).toBeLessThanOrEqual(AREA_AGREEMENT_MM2);
    }),
    { numRuns: 60 },
  );
});

test("a cut never adds wood and takes nothing outside its strips; mirrored it takes as much", () => {
  fc.assert(
    fc.property(
      fc.constantFrom("hollow", "round"),
      fc.double({ min: 3, max: 20, noNaN: true }),
      fc.array(
        fc.tuple(
          fc.double({ min: 0, max: 40, noNaN: true }),
          fc.double({ min: 5, max: 30, noNaN: true }),
          fc.double({ min: -60, max: 60, noNaN: true }),
        ),
        { minLength: 1, maxLength: 12 },
      ),
      (kind, radiusMm, run) => {
        const sole = soleOf({ id: "p", name: "p", kind, radiusMm, widthMm: radiusMm }).chain;
        const options = { reachMm: 300, chordTolMm: FLATTEN_MM, book: curveBook() };
        const sweep = sweepOf(sole, [run], options);
        const after = difference(STICK, sweep);
        expect(regionAreaMm2(difference(after, STICK))).toBeLessThan(1e-6);
        const taken = regionAreaMm2(STICK) - regionAreaMm2(after);
        expect(taken).toBeGreaterThanOrEqual(0);
        expect(taken).toBeCloseTo(regionAreaMm2(intersection(STICK, sweep)), 3);
        const mirrored = run.map(([x, y, tilt]): Pose => [40 - x, y, -tilt]);
        const other = regionAreaMm2(difference(STICK, sweepOf(sole, [mirrored], options)));
        expect(other).toBeCloseTo(regionAreaMm2(after), 3);
      },
    ),
    { numRuns: 60 },
  );
});
