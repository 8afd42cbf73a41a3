import { describe, expect, test } from "vitest";
import { type Region, regionOf, ringFromVertices, type Vertex } from "../curve/index.ts";
import type { Pose } from "../cutting/index.ts";
import { FLATTEN_MM } from "../measure/index.ts";
import { lyingWords } from "./how-it-lies.ts";
import { benchOf, draftAt, drawnSection } from "./testing/benches.ts";
import { rebate, shelfOf } from "./testing/shelves.ts";
import { tryCut } from "./try-cut.ts";

const NBSP = "\u00a0";

const bench = benchOf(
  drawnSection(18, 25, [
    [0, 0],
    [18, 0],
    [18, 20],
    [0, 20],
  ]),
  shelfOf(rebate(6)),
);

const FACE: Pose = [15, 20, 0];

function words(cuts: readonly (readonly [readonly Vertex[], Pose, number])[]): string[] {
  const tried = cuts.map(([wood, pose, cantDeg]) =>
    tryCut(
      bench,
      woodOf(wood),
      draftAt(bench, "rebate-6", pose, { work: "step", purpose: "waste", cantDeg }),
    ),
  );
  return lyingWords(bench, tried, { unit: "mm" });
}

function woodOf(outline: readonly Vertex[]): Region {
  return regionOf(ringFromVertices([...outline]), FLATTEN_MM);
}

const SQUARE: readonly Vertex[] = [
  [0, 0],
  [18, 0],
  [18, 25],
  [0, 25],
];

/** A glazing bar with both rebates cut: a foot from 6 to 12, 12 high. */
const ON_A_FOOT: readonly Vertex[] = [
  [6, 0],
  [12, 0],
  [12, 12],
  [18, 12],
  [18, 25],
  [0, 25],
  [0, 12],
  [6, 12],
];

describe("what a stick stands on", () => {
  test("no word of a square stick, whichever way up", () => {
    expect(
      words([
        [SQUARE, FACE, 0],
        [SQUARE, [3, 5, 180], 180],
      ]),
    ).toEqual([]);
  });

  test("a foot that earlier cuts have left narrow is packed beside, for each cut that stands on it", () => {
    expect(
      words([
        [SQUARE, FACE, 0],
        [ON_A_FOOT, FACE, 0],
        [ON_A_FOOT, [3, 20, 0], 0],
        [ON_A_FOOT, FACE, 0],
      ]),
    ).toEqual([
      `For cuts 2 to 4 the stick stands on a foot 6${NBSP}mm wide: lay 12${NBSP}mm of packing beside it, so that it cannot tip.`,
    ]);
  });

  test("a tongue with nothing under it is told with what to lay there", () => {
    // A rebate 8 wide from the back; over it 5 mm are left when the face is 20 high.
    const rebated: readonly Vertex[] = [
      [0, 0],
      [10, 0],
      [10, 15],
      [18, 15],
      [18, 25],
      [0, 25],
    ];
    expect(words([[rebated, FACE, 0]])).toEqual([
      `For cut 1 the plane presses on a tongue 5${NBSP}mm thick with nothing under it: lay 15${NBSP}mm of packing there, so that it cannot spring.`,
    ]);
    // Over the solid side the plane presses on solid wood.
    expect(words([[rebated, [3, 20, 0], 0]])).toEqual([]);
  });

  test("with the face down it is what is cut of it before that counts", () => {
    // A half round over the whole width: radius 9, its crown at 25.
    const rounded: readonly Vertex[] = [
      [0, 0],
      [18, 0],
      [18, 16, 1],
      [0, 16],
    ];
    const [said = ""] = words([[rounded, [3, 5, 180], 180]]);
    expect(said).toMatch(/^For cut 1 the stick lies on the crown of what is moulded already/);
  });
});
