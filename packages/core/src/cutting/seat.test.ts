import { describe, expect, test } from "vitest";
import { difference, type Point, type Region, regionOfPolygon } from "../curve/index.ts";
import { soleOf } from "../shelf/index.ts";
import { COMMON_LIMITS } from "./limits.ts";
import { profileOf, restOn } from "./profile.ts";
import { seatOf } from "./seat.ts";
import { soleHeightMm, soleShape } from "./sole-shape.ts";
import type { Pose } from "./types.ts";

const CLEARANCE = COMMON_LIMITS.bodyClearanceMm;

function polygon(...points: readonly (readonly [number, number])[]): Region {
  return regionOfPolygon(points.map(([x, y]): Point => ({ x, y })));
}

function box(minX: number, minY: number, maxX: number, maxY: number): Region {
  return polygon([minX, minY], [maxX, minY], [maxX, maxY], [minX, maxY]);
}

const STICK = box(0, 0, 40, 20);

function sole(kind: "hollow" | "round", radiusMm: number, widthMm = radiusMm) {
  return soleShape(soleOf({ id: "p", name: "p", kind, radiusMm, widthMm }).chain);
}

function seat(wood: Region, plane: ReturnType<typeof sole>, pose: Pose) {
  return seatOf(wood, plane, pose, COMMON_LIMITS);
}

/** How much lower a circle of this radius lies at `x` from its middle than it would at the middle of a round's sole. */
function riseMm(radiusMm: number, x: number): number {
  return radiusMm - Math.sqrt(radiusMm ** 2 - x ** 2);
}

describe("a round", () => {
  test("on two arrises a groove apart is held, and lifted by what the nearer arris gains", () => {
    // r = w = 12; arrises 6 mm apart. Shifted by w/8 = 1.5 the circle meets an arris at 3 - 1.5 from its middle.
    const wood = difference(STICK, box(17, 10, 23, 20));
    const found = seat(wood, sole("round", 12), [20, 20, 0]);
    expect(found?.lift).toBeCloseTo(riseMm(12, 3) - riseMm(12, 1.5), 4);
    // The design's rule of thumb: [(g/2)² - (g/2 - s)²] / 2r.
    expect(found?.lift).toBeCloseTo((3 ** 2 - 1.5 ** 2) / 24, 1);
    expect(found?.shift).toBeCloseTo(0, 3);
    expect(found?.heightMm).toBeCloseTo(20 - riseMm(12, 3), 4);
    expect(found?.ratio).toBeGreaterThan(COMMON_LIMITS.seatWellHeldRatio * 0.9);
  });

  test("comes to rest in the middle of its groove when it is aimed a little beside it, not when far", () => {
    const wood = difference(STICK, box(17, 10, 23, 20));
    // w/20 = 0.6 mm is as far as it may come to rest.
    expect(seat(wood, sole("round", 12), [19.6, 20, 0])?.shift).toBeCloseTo(0.4, 2);
    expect(seat(wood, sole("round", 12), [21.5, 20, 0])).toBeNull();
  });

  test.each([1, -1])(
    "that slides on a level floor rests where it first finds it, and both lifts are told from there",
    (hand) => {
      // r = w = 12, a groove of 10 mm and 1 deep: the circle rises 1 mm at 4.796 from its middle, so that it slides
      // 0.204 to either side on the floor before an arris lifts it.
      const wood = difference(STICK, box(15, 19, 25, 20));
      const slideMm = 5 - Math.sqrt(12 ** 2 - 11 ** 2);
      const found = seat(wood, sole("round", 12), [20 + hand * 0.5, 20, 0]);
      expect(found?.heightMm).toBeCloseTo(19, 5);
      expect(found?.shift).toBeCloseTo(hand * (slideMm - 0.5), 3);
      // To the nearer side w/8 = 1.5 lift it at once, to the other only when it has slid across.
      expect(found?.lift).toBeCloseTo(1 - riseMm(12, 5 - (1.5 - slideMm)), 3);
    },
  );

  test("on a bare flat has none", () => {
    expect(seat(STICK, sole("round", 12), [20, 20, 0])).toBeNull();
  });

  test("on two arrises too near to each other has none", () => {
    // 0.2 mm apart: the gain is that of the whole half gap, (0.1)² / 2r, far under w/100.
    const wood = difference(STICK, box(19.9, 10, 20.1, 20));
    expect(seat(wood, sole("round", 12), [20, 20, 0])).toBeNull();
  });

  test("leaning is held in a V whose bisector leans with it", () => {
    // A V of a right angle turned by 30°, its point at (20, 12); both flanks are as steep to the plane.
    const turn = (p: readonly [number, number]): readonly [number, number] => {
      const [c, s] = [Math.cos(Math.PI / 6), Math.sin(Math.PI / 6)];
      return [20 + p[0] * c - p[1] * s, 12 + p[0] * s + p[1] * c];
    };
    const wood = difference(STICK, polygon(turn([0, 0]), turn([30, 30]), turn([-30, 30])));
    const found = seat(wood, sole("round", 6), [20 - Math.sin(Math.PI / 6), 12 + Math.cos(Math.PI / 6), 30]);
    // Both corners of its sole would reach 45° only for w = 1.41 r: it hangs by its corners and is held by them.
    expect(found?.shift).toBeCloseTo(0, 3);
    expect(found?.lift).toBeGreaterThan(6 / 40);
  });

  test("one arris alone does not hold it", () => {
    expect(seat(polygon([0, 0], [40, 0], [20, 20]), sole("round", 12), [20, 20, 0])).toBeNull();
  });
});

describe("a hollow", () => {
  test("on the two arrises of a chamfer is held", () => {
    // A chamfer 4 mm wide at 45° on the right edge; the plane leans with it. r = w = 10, shift w/8 = 1.25.
    const chamferMm = 4;
    const leg = chamferMm / Math.SQRT2;
    const wood = polygon([0, 0], [40, 0], [40, 20 - leg], [40 - leg, 20], [0, 20]);
    const found = seat(wood, sole("hollow", 10), [40 - leg / 2, 20 - leg / 2, -45]);
    const half = chamferMm / 2;
    expect(found?.lift).toBeCloseTo(riseMm(10, half + 1.25) - riseMm(10, half), 4);
    expect(found?.shift).toBeCloseTo(0, 3);
  });

  test("over a single arris is not held: it slides off to either side", () => {
    expect(seat(polygon([0, 0], [40, 0], [40, 20], [0, 20]), sole("hollow", 10), [40, 20, -45])).toBeNull();
  });

  test("between two snipe lines is held by their far walls", () => {
    // Lines 1 mm wide just inside the corners of a sole 12 wide; the flat between them is 10 wide.
    const lined = difference(difference(STICK, box(14, 17, 15, 20)), box(25, 17, 26, 20));
    const found = seat(lined, sole("hollow", 12), [20, 20, 0]);
    // It rests on the inner arrises, 5 mm off its middle, and rides up when a corner meets the outer flat.
    expect(found?.lift).toBeCloseTo(riseMm(12, 6 - CLEARANCE) - riseMm(12, 5), 4);
  });

  test("upright on a bare flat has none", () => {
    expect(seat(STICK, sole("hollow", 12), [20, 20, 0])).toBeNull();
  });

  test("one line only holds it on one side only", () => {
    const lined = difference(STICK, box(14, 17, 15, 20));
    expect(seat(lined, sole("hollow", 12), [20, 20, 0])).toBeNull();
  });
});

describe("contacts exactly at the end of the sole", () => {
  const ulps = [-3, -1, 0, 1, 3].map((count) => count * 20 * Number.EPSILON);

  test.each([1, -1])("do not flip a round over a groove as wide as its sole (hand %i)", (hand) => {
    // The body, a shade narrower than the sole, drops between the arrises and is stopped by the floor.
    const wood = difference(STICK, box(14, 17, 26, 20));
    const found = ulps.map((off) => seat(wood, sole("round", 12), [20 + hand * off, 17, 0]));
    for (const one of found) {
      expect(one?.heightMm).toBeCloseTo(17, 6);
      // Pushed aside by w/8 = 1.5 it rides up on the arris of the wall, 6 - 1.5 from its middle.
      expect(one?.lift).toBeCloseTo(3 - riseMm(12, 4.5), 4);
    }
  });

  test.each(["left", "right"] as const)("do not flip a hollow against a wall on its %s", (side) => {
    // A chamfer's two arrises inside the sole, the upper one at a wall in line with the sole's very end.
    const [left, right] = side === "left" ? [14, 15] : [25, 26];
    const wood = difference(STICK, box(left, 15, right, 20));
    const shifted = ulps.map((off) => seat(wood, sole("hollow", 12), [20 + off, 20, 0]) !== null);
    expect(new Set(shifted).size).toBe(1);
  });

  test.each([-1e-9, 0, 1e-9])("a groove as wide as the body but for %d mm takes it in", (apartMm) => {
    const plane = sole("hollow", 12);
    const half = plane.widthMm / 2 - CLEARANCE + apartMm / 2;
    const wood = difference(STICK, box(20 - half, 14, 20 + half, 20));
    // Down between the walls both its ends come to stand on the floor.
    const profile = profileOf(wood, 0);
    const rest = restOn(profile, plane, 20, { narrowMm: CLEARANCE });
    const endMm = soleHeightMm(plane, plane.leftMm + CLEARANCE);
    expect(rest?.heightMm).toBeCloseTo(14 - endMm, 4);
  });

  test("mirrored wood, mirrored seat", () => {
    const profile = polygon([0, 0], [40, 0], [40, 18], [24, 18], [22, 20], [18.5, 20], [15, 17], [0, 17]);
    const mirrored = polygon([0, 0], [40, 0], [40, 17], [25, 17], [21.5, 20], [18, 20], [16, 18], [0, 18]);
    for (const kind of ["hollow", "round"] as const) {
      for (const x of [18, 19.9, 20.25, 21, 23]) {
        const one = seat(profile, sole(kind, 9), [x, 20, -12]);
        const other = seat(mirrored, sole(kind, 9), [40 - x, 20, 12]);
        expect(other === null).toBe(one === null);
        if (one && other) {
          expect(other.lift).toBeCloseTo(one.lift, 3);
          expect(other.shift).toBeCloseTo(-one.shift, 3);
        }
      }
    }
  });
});

test("wood that stands nowhere under the plane gives no seat", () => {
  expect(seat(STICK, sole("round", 12), [80, 20, 0])).toBeNull();
  expect(seat([], sole("round", 12), [20, 20, 0])).toBeNull();
});
