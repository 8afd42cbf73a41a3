import { describe, expect, test } from "vitest";
import { difference, type Region, regionOfPolygon } from "../curve/index.ts";
import { FLATTEN_MM } from "../measure/index.ts";
import { type Plane, soleOf } from "../shelf/index.ts";
import { curveBook } from "./curve-book.ts";
import { cutShape, wallsOfCut } from "./simulate.ts";
import type { Run } from "./types.ts";
import { isInWood, spansAlong, standingBeside } from "./wall.ts";

const STICK = box(0, 0, 40, 20);
const REBATE: Plane = { id: "r", name: "r", kind: "rebate", widthMm: 10 };

function box(minX: number, minY: number, maxX: number, maxY: number): Region {
  return regionOfPolygon([
    { x: minX, y: minY },
    { x: maxX, y: minY },
    { x: maxX, y: maxY },
    { x: minX, y: maxY },
  ]);
}

function wallsOf(plane: Plane, runs: readonly Run[], wood: Region = STICK): readonly [number, number] {
  const cut = cutShape(soleOf(plane).chain, runs, 0, {
    reachMm: 200,
    chordTolMm: FLATTEN_MM,
    book: curveBook(),
  });
  return wallsOfCut(wood, difference(wood, cut.sweep), cut);
}

describe("new wall beside a sole", () => {
  test("a rebate plane in the middle of a face leaves one on both sides", () => {
    const [left, right] = wallsOf(REBATE, [[[20, 15, 0]]]);
    expect(left).toBeCloseTo(5, 6);
    expect(right).toBeCloseTo(5, 6);
  });

  test("over the edge it leaves one on the inner side only", () => {
    const [left, right] = wallsOf(REBATE, [[[36, 15, 0]]]);
    expect(left).toBeCloseTo(5, 6);
    expect(right).toBe(0);
  });

  test("a step widened beside a step leaves no new wall where the first one was open", () => {
    const wood = difference(STICK, box(25, 12, 40, 20));
    // Sole from 20 to 30, 2 mm over the floor of the first step: on the right there is no wood at all.
    expect(wallsOf(REBATE, [[[20, 14, 0]]], wood)).toEqual([expect.closeTo(6, 6), 0]);
  });

  test("deepening a groove to its own walls counts only what is new", () => {
    const wood = difference(STICK, box(15, 15, 25, 20));
    const [left, right] = wallsOf(REBATE, [[[20, 12, 0]]], wood);
    expect(left).toBeCloseTo(3, 6);
    expect(right).toBeCloseTo(3, 6);
  });

  test("a line cut beside the sole beforehand takes the wall away", () => {
    const round: Plane = { id: "o", name: "o", kind: "round", radiusMm: 10, widthMm: 10 };
    // Its corners stand 10 (1 - cos 30°) = 1.33975 above the middle, which goes 3 mm deep.
    const [left, right] = wallsOf(round, [[[20, 17, 0]]]);
    expect(left).toBeCloseTo(3 - 10 * (1 - Math.cos(Math.PI / 6)), 6);
    expect(right).toBeCloseTo(left, 6);
    const relieved = difference(STICK, box(24, 18, 26, 20));
    expect(wallsOf(round, [[[20, 17, 0]]], relieved)).toEqual([expect.closeTo(left, 6), 0]);
  });

  test.each(["left", "right"] as const)("a %s snipe bill leaves it on its upright side", (hand) => {
    const bill: Plane = {
      id: "s",
      name: "s",
      kind: "snipe bill",
      hand,
      widthMm: 6,
      noseMm: 0.4,
      slopeDeg: 60,
      reachMm: 5,
    };
    const walls = wallsOf(bill, [[[20, 17.5, 0]]]);
    // The flank leaves the nose at 60°; at the beak's far end it has come out of the wood.
    expect(walls[hand === "left" ? 0 : 1]).toBeCloseTo(2.5, 6);
    expect(walls[hand === "left" ? 1 : 0]).toBe(0);
  });

  test("a leaning plane's wall is measured along its own side", () => {
    // Leaning 30° to the right with its left end at (10, 18): the side goes up at 30° from upright, 2 mm of height.
    const lean = Math.PI / 6;
    const run: Run = [[10 + 5 * Math.cos(lean), 18 - 5 * Math.sin(lean), -30]];
    expect(wallsOf(REBATE, [run])[0]).toBeCloseTo(2 / Math.cos(lean), 1);
  });

  test("the tallest over all runs counts", () => {
    const [left, right] = wallsOf(REBATE, [[[14, 18, 0]], [[22, 16, 0]]]);
    expect(left).toBeCloseTo(2, 6);
    expect(right).toBeCloseTo(4, 6);
  });
});

test("spans along a line are heights from its start, holes left out", () => {
  const holed = difference(STICK, box(10, 8, 20, 12));
  expect(spansAlong(holed, { x: 15, y: 5 }, { x: 0, y: 1 })).toEqual([
    [0, 3],
    [7, 15],
  ]);
  expect(spansAlong(holed, { x: 45, y: 5 }, { x: 0, y: 1 })).toEqual([]);
});

test("wood beside an end lying exactly on a wall is told apart by its side", () => {
  const wood = difference(STICK, box(10, 10, 20, 20));
  expect(standingBeside(wood, { x: 20, y: 10 }, [15, 10, 0], 1)).toEqual([[0, 10]]);
  expect(standingBeside(wood, { x: 20, y: 10 }, [15, 10, 0], -1)).toEqual([]);
});

test("a place is in the wood or not", () => {
  const holed = difference(STICK, box(10, 8, 20, 12));
  expect(isInWood(holed, { x: 5, y: 10 })).toBe(true);
  expect(isInWood(holed, { x: 15, y: 10 })).toBe(false);
  expect(isInWood(holed, { x: 15, y: 5 })).toBe(true);
  expect(isInWood(holed, { x: 41, y: 5 })).toBe(false);
});
