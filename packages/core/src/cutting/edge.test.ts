import { describe, expect, test } from "vitest";
import { type Region, regionOfPolygon } from "../curve/index.ts";
import type { Plane } from "../shelf/index.ts";
import { edgeAsItStands, edgeGuides } from "./edge.ts";
import { COMMON_LIMITS } from "./limits.ts";
import { profileOf, topBetween } from "./profile.ts";
import { soleShape } from "./sole-shape.ts";
import type { Pose } from "./types.ts";

const PLOUGH: Plane = { id: "p", name: "plough", kind: "plough", widthsMm: [6], fenceMm: 100, depthMm: 20 };
const REBATE: Plane = { id: "r", name: "rebate", kind: "rebate", widthMm: 20 };

/** A sole of 20 mm or, for a plough, 6 mm. */
function planeOf(plane: Plane, cantDeg = 0) {
  const half = plane.kind === "plough" ? 3 : 10;
  const left = { x: -half, y: 0 };
  const right = { x: half, y: 0 };
  return {
    ends: { left, right },
    shape: soleShape({ pieces: [{ kind: "line", from: left, to: right }] }),
    cantDeg,
  };
}

function drawn(...corners: readonly (readonly [number, number])[]): Region {
  return regionOfPolygon(corners.map(([x, y]) => ({ x, y })));
}

/** A stick of 60 by 40 mm, its right edge taken down to a height over 10 mm. */
const lowered = (toMm: number): Region => drawn([0, 0], [60, 0], [60, toMm], [50, toMm], [50, 40], [0, 40]);

function atRight(wood: Region, plane: Plane, pose: Pose, cantDeg = 0) {
  const found = edgeAsItStands(
    wood,
    profileOf(wood, pose[2]),
    planeOf(plane, cantDeg),
    pose,
    { side: "right", atMm: 60 },
    COMMON_LIMITS,
    plane.kind === "plough" ? COMMON_LIMITS.fenceArmsMm : 0,
  );
  return { ...found, guides: edgeGuides(found, plane, COMMON_LIMITS) };
}

describe("an edge as it stands", () => {
  test("is looked for from where the sole is first set down, not from where it ends", () => {
    // Set down on the face at 40, 10.5 mm above an edge that stands to 29.5; it ends at 32.
    const found = atRight(lowered(29.5), REBATE, [55, 32, 0]);
    expect(found.hangMm).toBeCloseTo(10.5, 9);
    expect(found.overhangMm).toBeCloseTo(5, 9);
    expect(found.uprightMm).toBeCloseTo(29.5, 9);
  });

  test.each([
    [28.1, true],
    [27.9, false],
  ])("a fence hangs 12 mm: an edge that stands to %d mm below a face at 40", (toMm, guides) => {
    expect(atRight(lowered(toMm), REBATE, [55, 32, 0]).guides).toBe(guides);
  });

  test.each([
    [24.1, true],
    [23.9, false],
  ])("a plough's fence hangs 16 mm: an edge that stands to %d mm", (toMm, guides) => {
    expect(atRight(lowered(toMm), PLOUGH, [40, 35, 0]).guides).toBe(guides);
  });

  test("the arms of a plough's fence pass 22 mm of wood, those of a deeper plough more", () => {
    // A trench 12 wide, its floor at 10: the iron ends in it, the rim on the way to the edge stands to `rim`.
    const trenched = (rim: number) =>
      drawn([0, 0], [60, 0], [60, 30], [52, 30], [52, rim], [46, rim], [46, 10], [34, 10], [34, 40], [0, 40]);
    const at = (rim: number, plane: Plane = PLOUGH) => {
      const found = atRight(trenched(rim), plane, [40, 9, 0]);
      return { underArmsMm: found.underArmsMm, guides: found.guides };
    };
    expect(at(30.9)).toEqual({ underArmsMm: expect.closeTo(21.9, 9), guides: true });
    expect(at(31.1)).toEqual({ underArmsMm: expect.closeTo(22.1, 9), guides: false });
    expect(at(31.1, { ...PLOUGH, depthMm: 25 }).guides).toBe(true);
  });

  test("an edge sawn to a bevel of 20° bears no fence; one that leans by 2° does", () => {
    const leaning = (deg: number) =>
      drawn([0, 0], [60 - 40 * Math.tan((deg * Math.PI) / 180), 0], [60, 40], [0, 40]);
    expect(atRight(leaning(20), REBATE, [55, 38, 0]).guides).toBe(false);
    expect(atRight(leaning(2), REBATE, [55, 38, 0]).guides).toBe(true);
  });

  test("an edge of which nothing is left guides nothing", () => {
    expect(atRight(drawn([0, 0], [50, 0], [50, 40], [0, 40]), REBATE, [55, 38, 0]).guides).toBe(false);
  });

  test("in a canted jaw the fence has a strip planed to the lean: only its depth is asked for", () => {
    const turn = (20 * Math.PI) / 180;
    const wood = drawn([0, 0], [60, 0], [60, 40], [0, 40]);
    // Turned by 20° the lower right corner (60, 0) stands furthest right.
    const at = 60 * Math.cos(turn);
    const low = edgeAsItStands(
      wood,
      profileOf(wood, -20),
      planeOf(REBATE, 20),
      [52, 2, -20],
      { side: "right", atMm: at },
      COMMON_LIMITS,
    );
    expect(low.isCanted).toBe(true);
    expect(low.uprightMm).toBeLessThan(COMMON_LIMITS.edgeBearsMm);
    expect(edgeGuides({ ...low, hangMm: 11 }, REBATE, COMMON_LIMITS)).toBe(true);
    expect(edgeGuides({ ...low, hangMm: 13 }, REBATE, COMMON_LIMITS)).toBe(false);
  });

  test("mirrored, it is found the same", () => {
    const mirrored = drawn([0, 0], [60, 0], [60, 40], [10, 40], [10, 25], [0, 25]);
    const found = edgeAsItStands(
      mirrored,
      profileOf(mirrored, 0),
      planeOf(REBATE),
      [5, 32, 0],
      { side: "left", atMm: 0 },
      COMMON_LIMITS,
    );
    const { guides: _, ...right } = atRight(lowered(25), REBATE, [55, 32, 0]);
    expect(found).toEqual(right);
  });
});

test("the highest wood between two places is told on a slope and on either side of a step", () => {
  const profile = profileOf(drawn([0, 0], [30, 0], [30, 10], [20, 20], [10, 20], [10, 5], [0, 5]), 0);
  expect(topBetween(profile, 25, 28)).toBeCloseTo(15, 9);
  expect(topBetween(profile, 2, 8)).toBeCloseTo(5, 9);
  expect(topBetween(profile, 2, 12)).toBeCloseTo(20, 9);
  expect(topBetween(profile, 31, 40)).toBe(Number.NEGATIVE_INFINITY);
});
