import { describe, expect, test } from "vitest";
import type { Region } from "../curve/index.ts";
import type { Pose } from "../cutting/index.ts";
import { type Bench, layOutBench } from "./bench.ts";
import { planeDraft } from "./draft-cut.ts";
import { guidedRuns, guideFor } from "./guide.ts";
import { isNeverGuided, lostItsEdge } from "./never-guided.ts";
import { benchOf, draftAt, drawnSection, toolOf } from "./testing/benches.ts";
import { plough, rebate, shelfOf, snipeBill } from "./testing/shelves.ts";
import { tryCut } from "./try-cut.ts";

const SECTION = drawnSection(120, 30, [
  [0, 0],
  [120, 0],
  [120, 5],
  [0, 5],
]);
const SHELF = shelfOf(
  rebate(12),
  rebate(80),
  plough(6),
  snipeBill("left"),
  { id: "short-fence", name: "Short plough", kind: "plough", widthsMm: [12], fenceMm: 15, depthMm: 20 },
  {
    id: "fillister",
    name: "Moving fillister",
    kind: "moving fillister",
    widthMm: 12,
    fenceMm: 12,
    depthMm: 20,
  },
);

function bench(): Bench {
  return benchOf(SECTION, SHELF);
}

/** The wood after a 12 mm slot whose walls stand at 44 and 56, sunk to this depth. */
function slotted(on: Bench, depthMm: number): Region {
  return tryCut(on, on.stickRegion, draftAt(on, "rebate-12", [50, 30 - depthMm, 0])).after;
}

describe("what a flat plane runs against", () => {
  test("an edge it hangs over, and how far the cut's near side lies from it", () => {
    const on = bench();
    const guide = guideFor(on, on.stickRegion, draftAt(on, "rebate-12", [116, 25, 0]));
    // The sole reaches from 110 to 122: 2 mm of overhang, the wall 10 mm from the far edge.
    expect(guide).toEqual({ kind: "edge", edge: "far edge", fenceMm: 10 });
    const left = guideFor(on, on.stickRegion, draftAt(on, "rebate-12", [1, 25, 0]));
    expect(left).toEqual({ kind: "edge", edge: "gauge edge", fenceMm: 7 });
  });

  test("an edge it hangs over by less than a finger can feel is none", () => {
    const on = bench();
    // From 108.1 to 120.1.
    expect(guideFor(on, on.stickRegion, draftAt(on, "rebate-12", [114.1, 25, 0])).kind).toBe("batten");
  });

  test("a fence or fingers reach 50 mm from the edge, no further", () => {
    const on = bench();
    const at = (nearSideMm: number) =>
      guideFor(on, on.stickRegion, draftAt(on, "rebate-80", [120 - nearSideMm + 40, 25, 0]));
    expect(at(49.5)).toEqual({ kind: "edge", edge: "far edge", fenceMm: 49.5 });
    expect(at(51).kind).toBe("batten");
  });

  test("with the back up the edges have changed sides", () => {
    const on = bench();
    const guide = guideFor(on, on.stickRegion, draftAt(on, "rebate-12", [1, 6, 180], { cantDeg: 180 }));
    expect(guide).toEqual({ kind: "edge", edge: "gauge edge", fenceMm: 7 });
  });

  test("a gauge edge on the right of the drawing is still called the gauge edge", () => {
    const on = layOutBench(SECTION.outline, SECTION.stick, SHELF, { toleranceMm: 0.2, gaugeEdge: "right" });
    const guide = guideFor(on, on.stickRegion, draftAt(on, "rebate-12", [116, 25, 0]));
    expect(guide).toEqual({ kind: "edge", edge: "gauge edge", fenceMm: 10 });
  });

  test("a plough's fence reaches where the sole does not hang over; the nearer edge carries it", () => {
    const on = bench();
    const at = (x: number) =>
      guideFor(on, on.stickRegion, draftAt(on, "plough", [x, 25, 0], { work: "groove" }));
    expect(at(33)).toEqual({ kind: "edge", edge: "gauge edge", fenceMm: 30 });
    expect(at(97)).toEqual({ kind: "edge", edge: "far edge", fenceMm: 20 });
    // Only 4 mm nearer to the far edge: the gauge edge is kept, everything else is measured from it.
    expect(at(62)).toEqual({ kind: "edge", edge: "gauge edge", fenceMm: 59 });
  });

  test("a fence shorter than the distance does not reach", () => {
    const on = bench();
    const at = (x: number) => guideFor(on, on.stickRegion, draftAt(on, "short-fence", [x, 25, 0]));
    expect(at(21)).toEqual({ kind: "edge", edge: "gauge edge", fenceMm: 15 });
    expect(at(22).kind).toBe("batten");
  });

  test("a wall already standing beside the sole", () => {
    const on = bench();
    const deeper = draftAt(on, "rebate-12", [50, 24, 0]);
    expect(guideFor(on, slotted(on, 4), deeper)).toEqual({
      kind: "wall",
      side: "left",
      at: { x: 44, y: 24 },
    });
    // The wall must be a quarter of a millimetre to hold a plane.
    expect(guideFor(on, slotted(on, 0.2), deeper).kind).toBe("batten");
    expect(guideFor(on, slotted(on, 0.3), deeper).kind).toBe("wall");
  });

  test("a beak is laid into its line; a rebate plane dropped into a bare face wants a batten", () => {
    const on = bench();
    expect(guideFor(on, on.stickRegion, draftAt(on, "snipe-left", [50, 28, 0])).kind).toBe("lines");
    expect(guideFor(on, on.stickRegion, draftAt(on, "rebate-12", [50, 28, 0])).kind).toBe("batten");
  });

  test("a moving fillister works from an edge only: its fence lies under its own sole", () => {
    const on = bench();
    const at = (x: number) => guideFor(on, on.stickRegion, draftAt(on, "fillister", [x, 25, 0]));
    expect(at(1)).toEqual({ kind: "edge", edge: "gauge edge", fenceMm: 7 });
    expect(at(7).kind).toBe("batten");
  });

  test("of several widths each needs something to run on when its turn comes", () => {
    const on = bench();
    const pose = (x: number): readonly [Pose] => [[x, 25, 0]];
    const draft = planeDraft(on, {
      work: "step",
      purpose: "waste",
      cantDeg: 0,
      shapes: [],
      tool: toolOf(on, "rebate-12"),
      runs: [pose(93), pose(104), pose(115)],
    });
    expect(guidedRuns(on, on.stickRegion, draft).guide.kind).toBe("batten");
    // A groove at the wall holds the innermost; the ridge that is left between lies between two floors.
    const grooved = tryCut(on, on.stickRegion, draftAt(on, "plough", [90, 25, 0], { work: "groove" })).after;
    const guided = guidedRuns(on, grooved, draft);
    expect(guided.guide.kind).not.toBe("batten");
    expect(guided.runs.map((run) => run[0][0])).toEqual([93, 115, 104]);
  });

  test("an edge cut down so far that no fence hangs to it is no guide, and the cut is known to have lost it", () => {
    const on = bench();
    const wide = draftAt(on, "rebate-80", [115, 28, 0], { work: "step" });
    const lowered = (toMm: number) =>
      tryCut(on, on.stickRegion, draftAt(on, "rebate-12", [119, toMm, 0], { work: "step" })).after;
    // The sole is set down on the face, at 30.
    expect(guideFor(on, lowered(18.1), wide)).toEqual({ kind: "edge", edge: "far edge", fenceMm: 45 });
    expect(guideFor(on, lowered(17.9), wide).kind).toBe("batten");
    expect(lostItsEdge(on, tryCut(on, lowered(17.9), wide))).toBe(true);
    expect(isNeverGuided(on, tryCut(on, lowered(17.9), wide))).toBe(false);
    // In the middle of the face there never was an edge.
    const inFace = tryCut(on, lowered(17.9), draftAt(on, "rebate-12", [50, 28, 0]));
    expect(lostItsEdge(on, inFace)).toBe(false);
    expect(isNeverGuided(on, inFace)).toBe(true);
  });

  test("a plough whose arms would have to pass too much wood runs from the other edge", () => {
    const thick = drawnSection(120, 60, [
      [0, 0],
      [120, 0],
      [120, 5],
      [0, 5],
    ]);
    const on = benchOf(thick, SHELF);
    // Down to 45 from 59 on: on the way to the gauge edge the face stands at 60.
    const wood = tryCut(on, on.stickRegion, draftAt(on, "rebate-80", [99, 45, 0], { work: "step" })).after;
    const groove = (floorMm: number) =>
      guideFor(on, wood, draftAt(on, "plough", [62.5, floorMm, 0], { work: "groove" }));
    expect(groove(38.1)).toEqual({ kind: "edge", edge: "gauge edge", fenceMm: 59.5 });
    expect(groove(37.9)).toEqual({ kind: "edge", edge: "far edge", fenceMm: 54.5 });
  });
});
