import { describe, expect, test } from "vitest";
import type { Vertex } from "../curve/index.ts";
import { floorCuts, wallCuts } from "./flats.ts";
import { benchOf, drawnSection, pieceAt } from "./testing/benches.ts";
import { plough, rebate, shelfOf, smoother } from "./testing/shelves.ts";

/** A step 10 mm wide and 6 mm deep along the far edge of a 40 × 20 mm stick. */
const STEP_ON_RIGHT = drawnSection(40, 20, [
  [0, 0],
  [40, 0],
  [40, 14],
  [30, 14],
  [30, 20],
  [0, 20],
]);

/** The same step along the gauge edge. */
const STEP_ON_LEFT = drawnSection(40, 20, [
  [0, 0],
  [40, 0],
  [40, 20],
  [10, 20],
  [10, 14],
  [0, 14],
]);

/** A slot with upright walls, 6 mm wide and 5 mm deep, in the middle of the face. */
const SLOT = drawnSection(40, 20, [
  [0, 0],
  [40, 0],
  [40, 20],
  [23, 20],
  [23, 15],
  [17, 15],
  [17, 20],
  [0, 20],
]);

/** A floor 30 mm wide from a wall at x = 10 to the far edge. */
const WIDE_FLOOR = drawnSection(40, 20, [
  [0, 0],
  [40, 0],
  [40, 14],
  [10, 14],
  [10, 20],
  [0, 20],
]);

describe("floors", () => {
  test("closed on its left by a wall: one pose, the sole's left end at the wall", () => {
    const bench = benchOf(STEP_ON_RIGHT, shelfOf(rebate(12)));
    const [draft, ...others] = floorCuts(bench, pieceAt(bench, 35, 14));
    // The wall stands at 30 and the sole reaches 6 mm to either side of its origin.
    expect(draft?.runs).toEqual([[[36, 14, 0]]]);
    expect(draft?.work).toBe("step");
    expect(others).toEqual([]);
  });

  test("closed on its right: the sole's right end at the wall", () => {
    const bench = benchOf(STEP_ON_LEFT, shelfOf(rebate(12)));
    expect(floorCuts(bench, pieceAt(bench, 5, 14))[0]?.runs).toEqual([[[4, 14, 0]]]);
  });

  test("a sole a hair wider than its slot may rub a wall, but takes no tip of a cusp along", () => {
    const hairMm = 0.005;
    const slotBeside = (beyond: readonly Vertex[]) =>
      drawnSection(40, 20, [[0, 0], [40, 0], ...beyond, [23 - hairMm, 15], [17, 15], [17, 20], [0, 20]]);
    const wall: readonly Vertex[] = [
      [40, 20],
      [23 - hairMm, 20],
    ];
    // A cove of 4 mm that meets the slot's wall along its own tangent: within the hair it falls by 0.2 mm.
    const cusp: readonly Vertex[] = [
      [40, 16],
      [27 - hairMm, 16, -Math.tan(Math.PI / 8)],
      [23 - hairMm, 20],
    ];
    const offered = [wall, cusp].map((beyond) => {
      const bench = benchOf(slotBeside(beyond), shelfOf(rebate(6)));
      return floorCuts(bench, pieceAt(bench, 20 - hairMm / 2, 15)).length;
    });
    expect(offered).toEqual([1, 0]);
  });

  test("between two walls only a plane that fits between them will do", () => {
    const bench = benchOf(SLOT, shelfOf(rebate(12), rebate(6), rebate(6.5)));
    const drafts = floorCuts(bench, pieceAt(bench, 20, 15));
    expect(drafts.map((draft) => draft.tool.plane.id)).toEqual(["rebate-6"]);
    expect(drafts[0]?.runs).toEqual([[[20, 15, 0]]]);
  });

  test.each([
    // 3 × 12 = 36 and 2 × 18 = 36 are the fewest that pass 30; 6 × 6 = 36 with every width lapped on the next.
    { widthMm: 12, widths: 3 },
    { widthMm: 18, widths: 2 },
    { widthMm: 6, widths: 6 },
    { widthMm: 32, widths: 1 },
  ])("30 mm of floor takes $widths widths of a $widthMm mm plane", ({ widthMm, widths }) => {
    const bench = benchOf(WIDE_FLOOR, shelfOf(rebate(widthMm)));
    const [draft] = floorCuts(bench, pieceAt(bench, 25, 14));
    const lefts = (draft?.runs ?? []).map(([pose]) => pose[0] - widthMm / 2).sort((a, b) => a - b);
    expect(lefts).toHaveLength(widths);
    expect(lefts[0]).toBeCloseTo(10, 9);
    // Each width begins before the one beside it ends, and the last one reaches the far edge.
    for (let i = 1; i < lefts.length; i++) expect(lefts[i]).toBeLessThan((lefts[i - 1] as number) + widthMm);
    expect((lefts[widths - 1] as number) + widthMm).toBeGreaterThanOrEqual(40 - 1e-9);
  });

  test("a plane that would need seven widths is not proposed; the one with the fewest comes first", () => {
    const floor = drawnSection(46, 20, [
      [0, 0],
      [46, 0],
      [46, 14],
      [10, 14],
      [10, 20],
      [0, 20],
    ]);
    // 36 mm in lapped widths of 6 mm needs a seventh; 18 mm planes need 3 for the same reason, 20 mm ones 2.
    const bench = benchOf(floor, shelfOf(rebate(6), rebate(18), rebate(20)));
    const drafts = floorCuts(bench, pieceAt(bench, 28, 14));
    expect(drafts.map((draft) => [draft.tool.plane.id, draft.runs.length])).toEqual([
      ["rebate-20", 2],
      ["rebate-18", 3],
    ]);
  });

  test("a smoother never goes beside a wall, but takes a whole face down, centred on it", () => {
    const beside = benchOf(STEP_ON_RIGHT, shelfOf(smoother(50)));
    expect(floorCuts(beside, pieceAt(beside, 35, 14))).toEqual([]);
    const face = drawnSection(40, 20, [
      [0, 0],
      [40, 0],
      [40, 17],
      [0, 17],
    ]);
    const open = benchOf(face, shelfOf(smoother(50)));
    expect(floorCuts(open, pieceAt(open, 20, 17))[0]?.runs).toEqual([[[20, 17, 0]]]);
  });

  test("a corner off at 45° is a chamfer with the plane leaned 45° to the right", () => {
    const chamfer = drawnSection(40, 20, [
      [0, 0],
      [40, 0],
      [40, 10],
      [30, 20],
      [0, 20],
    ]);
    const bench = benchOf(chamfer, shelfOf(rebate(18)));
    const [draft] = floorCuts(bench, pieceAt(bench, 35, 15));
    expect(draft?.work).toBe("chamfer");
    expect(draft?.cantDeg).toBe(0);
    const pose = draft?.runs[0]?.[0] ?? [0, 0, 0];
    expect(pose[2]).toBeCloseTo(-45, 9);
    // The sole's middle lies on the bevel's line x + y = 50.
    expect(pose[0] + pose[1]).toBeCloseTo(50, 5);
  });

  test("a glass rebate is cut with the back up, from its inner wall out over the gauge edge", () => {
    const rebated = drawnSection(40, 20, [
      [8, 0],
      [40, 0],
      [40, 20],
      [0, 20],
      [0, 6],
      [8, 6],
    ]);
    const bench = benchOf(rebated, shelfOf(rebate(12)));
    const [draft] = floorCuts(bench, pieceAt(bench, 4, 6));
    expect(draft?.cantDeg).toBe(180);
    // From the wall at 8 the sole reaches 12 mm towards the gauge edge: its middle stands at 2.
    expect(draft?.runs).toEqual([[[2, 6, 180]]]);
  });
});

describe("walls", () => {
  test("beside a step's wall the plane runs down its right side to the floor", () => {
    const bench = benchOf(STEP_ON_RIGHT, shelfOf(rebate(12)));
    const [draft] = wallCuts(bench, pieceAt(bench, 30, 17));
    expect(draft?.runs).toEqual([[[36, 14, 0]]]);
  });

  test("a wall 30 mm from the far edge is reached in three widths of a 12 mm plane, the outermost first", () => {
    const bench = benchOf(WIDE_FLOOR, shelfOf(rebate(12)));
    const wide = wallCuts(bench, pieceAt(bench, 10, 17)).find((draft) => draft.runs.length > 1);
    const places = (wide?.runs ?? []).map(([pose]) => pose[0]);
    expect(places).toHaveLength(3);
    expect(places.at(-1)).toBeCloseTo(16, 9);
    expect(places[0]).toBeGreaterThan(places[1] as number);
  });

  test("a smoother cuts no wall; a plough cuts a slot's wall in one groove as wide as its iron", () => {
    const bench = benchOf(SLOT, shelfOf(smoother(50), plough(4)));
    const drafts = wallCuts(bench, pieceAt(bench, 17, 17.5));
    expect(drafts).toHaveLength(1);
    expect(drafts[0]?.work).toBe("groove");
    expect(drafts[0]?.runs).toEqual([[[19, 15, 0]]]);
  });
});
