import { describe, expect, test } from "vitest";
import { regionOf, ringFromVertices } from "../curve/index.ts";
import { FLATTEN_MM } from "../measure/index.ts";
import type { Plane } from "../shelf/index.ts";
import { COMMON_WORKING } from "./minutes.ts";
import { planCuts } from "./plan-cuts.ts";
import { benchOf, draftAt, drawnSection, planOf, sectionOf } from "./testing/benches.ts";
import { hollow, rebate, SNIPE_BILLS, shelfOf, smoother } from "./testing/shelves.ts";
import { tryCut } from "./try-cut.ts";

const NBSP = "\u00a0";
/** How far a reed of this width and of a radius as large rises. */
const SAG_MM = 6.35 * (1 - Math.cos(Math.PI / 6));
const FILLISTER: Plane = {
  id: "fillister",
  name: "Moving fillister",
  kind: "moving fillister",
  widthMm: 38,
  fenceMm: 38,
  depthMm: 20,
};
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

describe("a plane taken up again", () => {
  const { cuts, time, assumed } = planOf(
    sectionOf({
      name: "reeded strip",
      stick: { widthMm: 60, thicknessMm: 20 },
      parts: [
        { kind: "fillet", widthMm: 10 },
        { kind: "step", riseMm: -SAG_MM },
        { kind: "reeds", count: 4, widthMm: 6.35 },
        { kind: "step", riseMm: SAG_MM },
        { kind: "fillet", widthMm: "rest" },
      ],
    }),
    shelfOf(...SNIPE_BILLS, hollow(6.35)),
    {
      working: {
        ...COMMON_WORKING,
        setMinutes: 10,
        carryMinutes: 2,
        secondsPerMetre: 0.001,
        sharpenMinutes: 0,
      },
    },
  );

  test("is set the first time and carried on from line to line, whatever was done in between", () => {
    const met = new Set<string>();
    const carried = cuts.filter(({ plane, minutes, setting }, i) => {
      const isKept = setting === cuts[i - 1]?.setting;
      const expected = isKept ? 0 : met.has(plane.id) ? 2 : 10;
      met.add(plane.id);
      expect(minutes).toBeCloseTo(expected, 1);
      return expected === 2;
    });
    expect(met.size).toBe(3);
    expect(carried.length).toBeGreaterThan(5);
    expect(time?.settingMinutes).toBe(30 + 2 * carried.length);
    expect(assumed.join(" ")).toContain("2 minutes to carry it on to its next line");
  });
});

test("a step is done when its gauge line is split, or when the stop bears of a plane that has one", () => {
  const outline: [number, number][] = [
    [0, 0],
    [40, 0],
    [40, 14],
    [32, 14],
    [32, 20],
    [0, 20],
  ];
  const done = (...planes: readonly Plane[]) =>
    planOf(drawnSection(40, 20, outline), shelfOf(...planes))
      .cuts.map(({ doneWhen }) => doneWhen)
      .join(" ");
  expect(done(rebate(12))).toMatch(/gauge line is just split/);
  expect(done(rebate(12))).not.toMatch(/depth stop/);
  expect(done(FILLISTER)).toMatch(/depth stop bears/);
});
