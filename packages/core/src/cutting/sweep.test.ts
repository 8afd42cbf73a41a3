import { describe, expect, test } from "vitest";
import {
  chainFromVertices,
  intersection,
  regionAreaMm2,
  regionOf,
  ringFromVertices,
} from "../curve/index.ts";
import { FLATTEN_MM } from "../measure/index.ts";
import { soleOf } from "../shelf/index.ts";
import { curveBook } from "./curve-book.ts";
import { placed, placedSole, stripOf, sweepOf, sweepReachMm } from "./sweep.ts";

const STICK_RING = ringFromVertices([
  [0, 0],
  [40, 0],
  [40, 20],
  [0, 20],
]);
const STICK = regionOf(STICK_RING, FLATTEN_MM);
const OPTIONS = { reachMm: sweepReachMm(STICK_RING), chordTolMm: FLATTEN_MM, book: curveBook() };
const REBATE = soleOf({ id: "r", name: "r", kind: "rebate", widthMm: 10 }).chain;

function takes(sweep: ReturnType<typeof stripOf>): number {
  return regionAreaMm2(intersection(STICK, sweep));
}

describe("strip", () => {
  test("an upright rebate plane takes its width times the depth", () => {
    expect(takes(stripOf(REBATE, [20, 16, 0], OPTIONS))).toBeCloseTo(40, 6);
  });

  test("a plane tilted by a quarter turn goes in from the side, through the whole stick", () => {
    // Tilt is anticlockwise: the body points to the left, the sole stands upright at x = 30.
    expect(takes(stripOf(REBATE, [30, 10, 90], OPTIONS))).toBeCloseTo(300, 6);
    expect(takes(stripOf(REBATE, [30, 10, -90], OPTIONS))).toBeCloseTo(100, 6);
  });

  test("a rebate plane leaning 45° over a corner takes a triangle", () => {
    // Its sole lies along the line through (40, 15) and (35, 20): 7.07 of its 10 mm are in wood.
    expect(takes(stripOf(REBATE, [37.5, 17.5, -45], OPTIONS))).toBeCloseTo(12.5, 6);
  });

  test("a round sinks its segment and the strip above it", () => {
    // r = w = 10, its middle 3 mm deep: the corners stand 10 (1 - cos 30°) = 1.33975 above the middle.
    const sole = soleOf({ id: "r", name: "r", kind: "round", radiusMm: 10, widthMm: 10 }).chain;
    const segment = (100 / 2) * (Math.PI / 3 - Math.sin(Math.PI / 3));
    const wanted = 10 * (3 - 10 * (1 - Math.cos(Math.PI / 6))) + segment;
    expect(takes(stripOf(sole, [20, 17, 0], OPTIONS))).toBeCloseTo(wanted, 2);
  });
});

describe("sweep", () => {
  test("nothing is swept from one run to the next", () => {
    const apart = sweepOf(REBATE, [[[10, 16, 0]], [[30, 16, 0]]], OPTIONS);
    expect(takes(apart)).toBeCloseTo(80, 6);
  });

  test("an arc on one side of its centre only is no rock in closed form", () => {
    // The right flank of a round of radius 10, from straight below its centre's right by 2 to 8 mm.
    const flank = chainFromVertices([
      [2, 10 - Math.sqrt(96), Math.tan((Math.asin(0.8) - Math.asin(0.2)) / 4)],
      [8, 4],
    ]);
    const run = Array.from({ length: 61 }, (_, i): [number, number, number] => {
      const tilt = -30 + i;
      const rad = (tilt * Math.PI) / 180;
      return [20 + 10 * Math.sin(rad), 22 - 10 * Math.cos(rad), tilt];
    });
    const byStrips = sweepOf(
      flank,
      run.map((pose) => [pose]),
      OPTIONS,
    );
    expect(takes(sweepOf(flank, [run], OPTIONS))).toBeCloseTo(takes(byStrips), 6);
  });

  test("a leap from one lean to another is no rock: what lies between is not taken", () => {
    const round = soleOf({ id: "r", name: "r", kind: "round", radiusMm: 10, widthMm: 4 }).chain;
    const pose = (tilt: number): [number, number, number] => {
      const rad = (tilt * Math.PI) / 180;
      return [20 + 10 * Math.sin(rad), 25 - 10 * Math.cos(rad), tilt];
    };
    const leaping = sweepOf(round, [[pose(-40), pose(-39.5), pose(40)]], OPTIONS);
    const rocking = sweepOf(round, [Array.from({ length: 81 }, (_, i) => pose(i - 40))], OPTIONS);
    expect(takes(rocking)).toBeGreaterThan(takes(leaping) + 10);
  });

  test("a rock taken far outside reaches through the stick between its two axes too", () => {
    // A wide hollow held under a small stick: everything above its circle goes, to the far corners.
    const hollow = soleOf({ id: "h", name: "h", kind: "hollow", radiusMm: 60, widthMm: 60 }).chain;
    const run = Array.from({ length: 121 }, (_, i): [number, number, number] => {
      const rad = ((i - 60) * Math.PI) / 180;
      return [20 - 60 * Math.sin(rad), -61 + 60 * Math.cos(rad), i - 60];
    });
    expect(takes(sweepOf(hollow, [run], OPTIONS))).toBeCloseTo(800, 3);
  });
});

test("a placed point turns anticlockwise about the sole's origin", () => {
  const p = placed([10, 5, 90], { x: 2, y: 3 });
  expect(p.x).toBeCloseTo(7, 12);
  expect(p.y).toBeCloseTo(7, 12);
  const [piece] = placedSole(REBATE, [10, 5, 180]).pieces;
  expect(piece?.from).toEqual({ x: 15, y: 5 });
  expect(piece?.to).toEqual({ x: 5, y: 5 });
});
