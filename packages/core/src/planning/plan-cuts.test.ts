import { describe, expect, test } from "vitest";
import { regionOf, ringFromVertices } from "../curve/index.ts";
import { FLATTEN_MM } from "../measure/index.ts";
import { COMMON_WORKING } from "./minutes.ts";
import { planCuts } from "./plan-cuts.ts";
import { benchOf, draftAt, drawnSection, planOf, sectionOf } from "./testing/benches.ts";
import { rebate, shelfOf, smoother } from "./testing/shelves.ts";
import { tryCut } from "./try-cut.ts";

const NBSP = "\u00a0";
const SHELF = shelfOf(rebate(6), rebate(12), rebate(32), smoother(50));

describe("what a cut's sentence says of its place", () => {
  test("a chamfer runs between two lines, each told from what it is gauged from", () => {
    const { cuts } = planOf(
      sectionOf({
        name: "post",
        stick: { widthMm: 30, thicknessMm: 30 },
        startHeightMm: 23,
        parts: [
          { kind: "chamfer", acrossMm: 7, riseMm: 7 },
          { kind: "fillet", widthMm: "rest" },
        ],
      }),
      SHELF,
    );
    expect(cuts[0]?.says).toContain(
      `from the line 7${NBSP}mm from the face to the one 7${NBSP}mm from the gauge edge`,
    );
    expect(cuts[0]?.fence).toBeUndefined();
  });

  test("a face planed down as a whole has neither wall nor fence", () => {
    const { cuts } = planOf(
      sectionOf({
        name: "board",
        stick: { widthMm: 44, thicknessMm: 24 },
        startHeightMm: 20.7,
        parts: [{ kind: "fillet", widthMm: "rest" }],
      }),
      shelfOf(smoother(50)),
    );
    expect(cuts).toHaveLength(1);
    expect(cuts[0]?.wall).toEqual([0, 0]);
    expect(cuts[0]?.fence).toBeUndefined();
    expect(`${cuts[0]?.says} ${cuts[0]?.doneWhen}`).not.toMatch(/fence|wall|step/);
  });
});

describe("beside a wall", () => {
  const bench = benchOf(
    drawnSection(40, 20, [
      [0, 0],
      [40, 0],
      [40, 14],
      [20, 14],
      [20, 20],
      [0, 20],
    ]),
    SHELF,
  );
  const says = (xMm: number) => {
    const draft = draftAt(bench, "rebate-32", [xMm, 14, 0], { work: "wall", purpose: "shape" });
    const cut = tryCut(bench, bench.stickRegion, draft);
    return planCuts(bench, [cut], [], COMMON_WORKING, { unit: "mm" }).cuts[0];
  };

  test("a thin layer is pared off with a fine iron", () => {
    // The sole's left end stands at 39.6: 0.4 mm off a wall 6 mm high.
    expect(says(55.6)?.says).toContain("paring it with a fine iron");
  });

  test("twenty square millimetres with a floor are a step taken down", () => {
    // From 36 to the edge, 4 mm wide and 6 mm deep.
    const cut = says(52);
    expect(cut?.says).toContain(`6${NBSP}mm deep, taking the step's floor and wall`);
    expect(cut?.doneWhen).toContain(`6${NBSP}mm down`);
  });
});

test("a crumb that a cut parts off is in no picture", () => {
  // A hook hangs over the step: of it the plane leaves 0.05 × 4 mm that hold on to nothing.
  const bench = benchOf(
    drawnSection(40, 20, [
      [0, 0],
      [40, 0],
      [40, 14],
      [0, 14],
    ]),
    SHELF,
  );
  const hooked = regionOf(
    ringFromVertices([
      [0, 0],
      [40, 0],
      [40, 20],
      [19.95, 20],
      [19.95, 16],
      [30, 16],
      [30, 14],
      [0, 14],
    ]),
    FLATTEN_MM,
  );
  const draft = draftAt(bench, "rebate-32", [36, 14, 0], { work: "step", purpose: "shape" });
  const cut = tryCut(bench, hooked, draft);
  expect(cut.after).toHaveLength(2);
  const [planned] = planCuts(bench, [cut], [], COMMON_WORKING, { unit: "mm" }).cuts;
  expect(planned?.after).toHaveLength(1);
});
