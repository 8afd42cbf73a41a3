import polygonClipping from "polygon-clipping";
import { expect, test } from "vitest";
import { areaMm2, outlinesOf, regionOf, together } from "./booleans.ts";
import { type FlatOutline, flatChain } from "./flat.ts";
import type { BulgedVertex, PoseXyt } from "./plan-json.ts";
import { differenceAreaMm2 } from "./slabs.ts";
import { inPlace, rockOf, rockOutline, stripOutline } from "./strips.ts";

const RADIUS_MM = 16;
/** Middle ordinate of a 60° sole as wide as its radius, and its bulge tan 15°. */
const SAGITTA_MM = RADIUS_MM * (1 - Math.cos(Math.PI / 6));
const BULGE = Math.tan(Math.PI / 12);

const ROUND: readonly BulgedVertex[] = [
  [-RADIUS_MM / 2, SAGITTA_MM, BULGE],
  [RADIUS_MM / 2, SAGITTA_MM],
];
const HOLLOW: readonly BulgedVertex[] = [
  [-RADIUS_MM / 2, -SAGITTA_MM, -BULGE],
  [RADIUS_MM / 2, -SAGITTA_MM],
];

/** Poses that turn a sole about (30, 40): the origin stands one radius below a round's centre, above a hollow's. */
function rocking(fromDeg: number, toDeg: number, isRound: boolean): PoseXyt[] {
  const count = Math.ceil(Math.abs(toDeg - fromDeg) / 0.7);
  return Array.from({ length: count + 1 }, (_, i) => {
    const deg = fromDeg + ((toDeg - fromDeg) * i) / count;
    const off = (isRound ? -1 : 1) * RADIUS_MM;
    return [30 - off * Math.sin((deg * Math.PI) / 180), 40 + off * Math.cos((deg * Math.PI) / 180), deg];
  });
}

const WINDOW: FlatOutline = [
  [-10, 0],
  [70, 0],
  [70, 80],
  [-10, 80],
];

test.each([
  ["round", ROUND, true],
  ["hollow", HOLLOW, false],
] as const)("a rocked %s sweeps what its strips sweep together", (_, sole, isRound) => {
  for (const [from, to] of [
    [-12, 9],
    [-60, -41],
    [40, 55],
  ] as const) {
    const run = rocking(from, to, isRound);
    const rock = rockOf(sole, run);
    if (rock === null) throw new Error("no rock was seen");
    const strips = together(run.map((pose) => regionOf([stripOutline(sole, pose, 200)])));
    const inWindow = (region: ReturnType<typeof regionOf>) =>
      outlinesOf(polygonClipping.intersection(region, regionOf([WINDOW])));
    const apart = differenceAreaMm2(inWindow(regionOf([rockOutline(rock, 200)])), inWindow(strips));
    expect(apart).toBeLessThan(0.01);
  }
});

test("a plane that creeps is no rock, nor is a run of one flat", () => {
  const crept = rocking(0, 9, true).map(([x, y, t], i): PoseXyt => [x + i * 0.01, y, t]);
  expect(rockOf(ROUND, crept)).toBeNull();
  expect(
    rockOf(
      [
        [-3, 0],
        [3, 0],
      ],
      rocking(0, 9, true),
    ),
  ).toBeNull();
});

test("a strip is the sole in its place and straight up its axis: area of width times reach and the arc's segment", () => {
  // Segment of a 60° arc: r² (π/3 - sin 60°) / 2; a round's strip has it under its chord.
  const segment = (RADIUS_MM ** 2 * (Math.PI / 3 - Math.sin(Math.PI / 3))) / 2;
  const strip = regionOf([stripOutline(ROUND, [3, 4, 25], 100)]);
  expect(areaMm2(strip)).toBeCloseTo(RADIUS_MM * 100 + segment, 2);
});

test("a tilt of 90° lays the plane over to the left", () => {
  const [x, y] = inPlace([10, 5, 90], [0, 2]);
  expect(x).toBeCloseTo(8, 12);
  expect(y).toBeCloseTo(5, 12);
});

test("arcs of a chain are flattened to within the format's chord error", () => {
  const points = flatChain(ROUND);
  // Distance from the circle's centre (0, r) to the middle of each chord.
  for (let i = 0; i + 1 < points.length; i++) {
    const x = (points[i][0] + points[i + 1][0]) / 2;
    const y = (points[i][1] + points[i + 1][1]) / 2;
    expect(RADIUS_MM - Math.hypot(x, y - RADIUS_MM)).toBeLessThanOrEqual(1.001e-4);
  }
});

test("a hair between two sides that are meant to be one is left off, a thin fin of wood is not", () => {
  const block = (widthMm: number): FlatOutline => [
    [0, 0],
    [10, 0],
    [10, 4],
    [6 + widthMm, 4],
    [6 + widthMm, 8],
    [6, 8],
    [6, 5],
    [0, 5],
  ];
  expect(outlinesOf([[[...block(2e-6), [0, 0]] as [number, number][]]])[0].some(([, y]) => y > 6)).toBe(
    false,
  );
  expect(outlinesOf([[[...block(0.05), [0, 0]] as [number, number][]]])[0]).toHaveLength(8);
});
