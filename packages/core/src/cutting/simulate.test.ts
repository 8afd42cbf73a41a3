import { describe, expect, test } from "vitest";
import {
  difference,
  intersection,
  type Region,
  regionAreaMm2,
  regionOfPolygon,
  ringFromVertices,
} from "../curve/index.ts";
import { FLATTEN_MM } from "../measure/index.ts";
import { type Plane, type Shoulder, soleOf } from "../shelf/index.ts";
import { bearingRatio } from "./bearing.ts";
import { curveBook } from "./curve-book.ts";
import { turnedBack, turnOf } from "./profile.ts";
import {
  belowBenchMm,
  benchLevelMm,
  bodyMeetsMm2,
  cutAway,
  cutShape,
  looseWoodMm2,
  partedOffMm2,
  sawnAway,
} from "./simulate.ts";
import { leanDeg } from "./turning.ts";
import type { Pose, Run } from "./types.ts";

const STICK = ringFromVertices([
  [0, 0],
  [40, 0],
  [40, 20],
  [0, 20],
]);
const WOOD = box(0, 0, 40, 20);
const OPTIONS = { reachMm: 200, chordTolMm: FLATTEN_MM, book: curveBook() };
const REBATE: Plane = { id: "r", name: "r", kind: "rebate", widthMm: 10 };

function box(minX: number, minY: number, maxX: number, maxY: number): Region {
  return regionOfPolygon([
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ]);
}

function round(radiusMm: number, widthMm: number): Plane {
  return { id: "o", name: "o", kind: "round", radiusMm, widthMm };
}

function cutOf(plane: Plane, runs: readonly Run[], cantDeg = 0, shoulder?: Shoulder) {
  return cutShape(soleOf(plane).chain, runs, cantDeg, OPTIONS, shoulder);
}

describe("the stick as it lies on the bench", () => {
  test.each([
    { cantDeg: 0, level: 0 },
    // Turned anticlockwise by a quarter the right edge is up and the left edge, x = 0, lies on the bench.
    { cantDeg: 90, level: 0 },
    { cantDeg: -90, level: -40 },
    { cantDeg: 180, level: -20 },
    { cantDeg: 20, level: 0 },
    { cantDeg: -30, level: -20 },
  ])("turned by $cantDeg° its lowest place is $level in the turned frame", ({ cantDeg, level }) => {
    expect(benchLevelMm(STICK, cantDeg)).toBeCloseTo(level, 9);
  });

  test("a swollen side lies on its swell", () => {
    const swollen = ringFromVertices([
      [0, 0, 0.5],
      [40, 0],
      [40, 20],
      [0, 20],
    ]);
    // A chord of 40 with the bulge 1/2 bows out by 10.
    expect(benchLevelMm(swollen, 0)).toBeCloseTo(-10, 9);
  });

  test("face up, a plane below the back is in the bench", () => {
    expect(belowBenchMm(cutOf(REBATE, [[[20, 5, 0]]]), 0)).toBe(0);
    expect(belowBenchMm(cutOf(REBATE, [[[44, -2, 0]]]), 0)).toBeCloseTo(2, 9);
  });

  test("a round hangs lowest in its middle, not at its corners", () => {
    // The corners stand 1.34 above the middle, which is 1 below the bench.
    expect(belowBenchMm(cutOf(round(10, 10), [[[20, -1, 0]]]), 0)).toBeCloseTo(1, 9);
  });

  test("back up, the same bench lies over the face", () => {
    const level = benchLevelMm(STICK, 180);
    expect(belowBenchMm(cutOf(REBATE, [[[20, 5, 180]]], 180), level)).toBe(0);
    expect(belowBenchMm(cutOf(REBATE, [[[44, 23, 180]]], 180), level)).toBeCloseTo(3, 9);
  });

  test("an edge up, the other edge lies on it", () => {
    const level = benchLevelMm(STICK, 90);
    expect(belowBenchMm(cutOf(REBATE, [[[30, 10, -90]]], 90), level)).toBe(0);
    expect(belowBenchMm(cutOf(REBATE, [[[-1.5, 25, -90]]], 90), level)).toBeCloseTo(1.5, 9);
  });

  test("every pose of a run counts", () => {
    const run: Run = [
      [20, 5, 0],
      [20, -4, 0],
      [20, 5, 0],
    ];
    expect(belowBenchMm(cutOf(REBATE, [run]), 0)).toBeCloseTo(4, 9);
  });
});

test.each([
  [0, 0, 0],
  [180, 180, 0],
  [-90, 90, 0],
  [-100, 90, -10],
  [170, 170, -20],
  [-180, 0, 180],
])("tilt %i° with the stick turned by %i° is a lean of %i°", (tilt, cant, lean) => {
  expect(leanDeg(tilt, cant)).toBe(lean);
});

describe("loose wood", () => {
  test("a groove along a tenon parts nothing off; right through it does", () => {
    const across = cutOf(REBATE, [[[20, 0, 0]]]);
    const after = cutAway(WOOD, across.sweep);
    expect(looseWoodMm2(after)).toBeCloseTo(300, 6);
    expect(partedOffMm2(WOOD, after)).toBeCloseTo(300, 6);
    expect(partedOffMm2(WOOD, cutAway(WOOD, cutOf(REBATE, [[[20, 5, 0]]]).sweep))).toBe(0);
  });

  test("what was loose before is not parted off again, and does not hide what is", () => {
    const before = difference(WOOD, box(30, 0, 31, 20));
    expect(partedOffMm2(before, difference(before, box(35, 10, 40, 20)))).toBe(0);
    // The loose end of 180 mm² goes, and another of 80 comes off: the sum would have said that less is loose.
    const after = difference(difference(before, box(31, 0, 40, 20)), box(4, 0, 5, 20));
    expect(partedOffMm2(before, after)).toBeCloseTo(80, 6);
  });

  test("several shavings are no piece", () => {
    // Four slips 0.01 wide and 20 high.
    const comb = [0, 1, 2, 3].reduce((left, x) => difference(left, box(x, 0, x + 0.99, 20)), WOOD);
    const slips = difference(comb, box(3.995, -1, 4.5, 21));
    expect(partedOffMm2(WOOD, slips)).toBeCloseTo(0.2, 4);
    expect(looseWoodMm2(slips)).toBeCloseTo(0.7, 4);
  });
});

test("a saw takes what lies right of its line, whichever way it runs", () => {
  const up = sawnAway({ x: 30, y: 0 }, { x: 30, y: 20 }, 200);
  expect(regionAreaMm2(intersection(WOOD, up))).toBeCloseTo(200, 6);
  const down = sawnAway({ x: 30, y: 20 }, { x: 30, y: 0 }, 200);
  expect(regionAreaMm2(intersection(WOOD, down))).toBeCloseTo(600, 6);
});

describe("the body above a small plane's sole", () => {
  const small = round(5, 5);
  const shoulder = { widthMm: 12, heightMm: 4 };

  test("meets what stands beside the sole above its shoulders", () => {
    // Sunk 6 mm: the shoulders, 12 wide from 4 up, stand 2 deep in 3.5 mm of wood on either side of the sole.
    const cut = cutOf(small, [[[20, 14, 0]]], 0, shoulder);
    expect(bodyMeetsMm2(cutAway(WOOD, cut.sweep), cut, 200)).toBeCloseTo(2 * 3.5 * 2, 6);
  });

  test("clears the face while it is sunk less than they are high", () => {
    const cut = cutOf(small, [[[20, 16.5, 0]]], 0, shoulder);
    expect(bodyMeetsMm2(cutAway(WOOD, cut.sweep), cut, 200)).toBe(0);
  });

  test("a post that only a lean in between reaches is met too", () => {
    // About the arc's centre the shoulder's corner stands at (6, -2): 20° more or less and it has left that place.
    const at = (tilt: number): Pose => {
      const rad = (tilt * Math.PI) / 180;
      return [20 + 5 * Math.sin(rad), 15 - 5 * Math.cos(rad), tilt];
    };
    const turn = turnOf(30);
    const post = regionOfPolygon(
      [
        { x: 5.9, y: -2 },
        { x: 6, y: -2 },
        { x: 6, y: -1.9 },
        { x: 5.9, y: -1.9 },
      ].map((p) => {
        const q = turnedBack(turn, p);
        return { x: q.x + 20, y: q.y + 15 };
      }),
    );
    const meets = (run: Run) => bodyMeetsMm2(post, cutOf(small, [run], 0, { widthMm: 12, heightMm: 3 }), 200);
    expect(meets([at(10)])).toBe(0);
    expect(meets([at(50)])).toBe(0);
    expect(meets([at(10), at(30), at(50)])).toBeCloseTo(0.01, 6);
  });

  test("a plane without shoulders meets nothing", () => {
    expect(bodyMeetsMm2(WOOD, cutOf(small, [[[20, 10, 0]]]), 200)).toBe(0);
  });
});

describe("bearing", () => {
  // A cove of radius 10 about (20, 25), from 225° to 315° of its circle: y = 25 - 7.07 at both ends.
  const corner = 10 / Math.SQRT2;
  const cove = ringFromVertices([
    [0, 0],
    [40, 0],
    [40, 25 - corner],
    [20 + corner, 25 - corner, -Math.tan(Math.PI / 8)],
    [20 - corner, 25 - corner],
    [0, 25 - corner],
  ]);

  test("a sole of its own radius wholly on its arc bears all over", () => {
    expect(bearingRatio(cove, cutOf(round(10, 10), [[[20, 15, 0]]]))).toBe(1);
  });

  test("turned past the end of the arc it bears with the part that is on it", () => {
    // The arc runs to 45°; the sole spans 60°, turned by 35° from 5° to 65°: 40 of 60 bear.
    const rad = (35 * Math.PI) / 180;
    const pose: Run = [[20 + 10 * Math.sin(rad), 25 - 10 * Math.cos(rad), 35]];
    expect(bearingRatio(cove, cutOf(round(10, 10), [pose]))).toBeCloseTo(40 / 60, 1);
  });

  test("a much smaller round bears along a line only; lifted off, nowhere", () => {
    expect(bearingRatio(cove, cutOf(round(5, 5), [[[20, 15, 0]]]))).toBeLessThan(0.3);
    expect(bearingRatio(cove, cutOf(round(10, 10), [[[20, 15.1, 0]]]))).toBe(0);
  });

  test("it is the last pose of the last run that counts", () => {
    const on: Run = [[20, 15, 0]];
    const off: Run = [[20, 16, 0]];
    expect(bearingRatio(cove, cutOf(round(10, 10), [on, off]))).toBe(0);
    expect(bearingRatio(cove, cutOf(round(10, 10), [off, on]))).toBe(1);
  });
});
