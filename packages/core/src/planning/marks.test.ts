import { describe, expect, test } from "vitest";
import { GOOD_HAND } from "./accuracy.ts";
import { layOutBench } from "./bench.ts";
import { curveCovers } from "./curves.ts";
import { marksFor } from "./marks.ts";
import { makeAll } from "./sequence.ts";
import { benchOf, draftAt, drawnSection } from "./testing/benches.ts";
import { hollow, rebate, SNIPE_BILLS, shelfOf } from "./testing/shelves.ts";

const RADIUS_MM = 12.7;
const SAG_MM = RADIUS_MM * (1 - Math.sqrt(3) / 2);
const BULGE_60 = Math.tan(Math.PI / 12);

const STEP = drawnSection(40, 20, [
  [0, 0],
  [40, 0],
  [40, 14],
  [30, 14],
  [30, 20],
  [0, 20],
]);

/** Two reeds side by side, sunk into the face from x = 15; they meet at 27.7. */
const TWO_REEDS = drawnSection(60, 16, [
  [0, 0],
  [60, 0],
  [60, 16],
  [15 + 2 * RADIUS_MM, 16],
  [15 + 2 * RADIUS_MM, 16 - SAG_MM, BULGE_60],
  [15 + RADIUS_MM, 16 - SAG_MM, BULGE_60],
  [15, 16 - SAG_MM],
  [15, 16],
  [0, 16],
]);

describe("lines for a step", () => {
  const shelf = shelfOf(rebate(12));

  test("its wall is gauged from the gauge edge, its floor from the face", () => {
    const bench = benchOf(STEP, shelf);
    const made = makeAll(bench, bench.stickRegion, [draftAt(bench, "rebate-12", [36, 14, 0])]);
    const marks = marksFor(bench, made.cuts);
    expect(marks.map(({ id, kind, from, before }) => [id, kind, from, before])).toEqual([
      ["m1", "place", "gauge edge", 1],
      ["m2", "depth", "face", 1],
    ]);
    const [place, depth] = marks;
    expect(place?.distance).toBeCloseTo(30, 5);
    expect(place?.at[1]).toBeCloseTo(20, 5);
    expect(depth?.distance).toBeCloseTo(6, 5);
    // Gauge 0.08 and knife 0.06 are 0.1 together; the fence set to the line adds its 0.1 to the wall, the stop its
    // 0.15 to the floor: the roots of 0.02 and of 0.01 + 0.0225.
    expect(place?.error).toBe(0.141);
    expect(depth?.error).toBe(0.18);
    expect(place?.serves).toBe("place");
  });

  test("with the gauge edge on the right the same line is 10 mm from it", () => {
    const bench = layOutBench(STEP.outline, STEP.stick, shelf, { toleranceMm: 0.2, gaugeEdge: "right" });
    const made = makeAll(bench, bench.stickRegion, [draftAt(bench, "rebate-12", [36, 14, 0])]);
    const place = marksFor(bench, made.cuts).find((mark) => mark.kind === "place");
    expect(place?.distance).toBeCloseTo(10, 5);
    expect(place?.fromGaugeEdge).toBeCloseTo(10, 5);
  });

  test("the wall that a sole's end was set to is no floor under it, though rounding lets it in under the sole", () => {
    const bench = layOutBench(STEP.outline, STEP.stick, shelfOf(rebate(12), rebate(32)), {
      toleranceMm: 0.2,
      gaugeEdge: "right",
    });
    // A slot from 6 to 18, then what stands left of it down to the same level, the sole's end at the slot's far wall.
    const slot = draftAt(bench, "rebate-12", [12, 14, 0], { work: "groove" });
    const level = draftAt(bench, "rebate-32", [2.000001, 14, 0]);
    const depth = marksFor(bench, makeAll(bench, bench.stickRegion, [slot, level]).cuts).filter(
      ({ before, kind }) => before === 2 && kind === "depth",
    );
    expect(depth.map(({ at }) => at)).toEqual([[6, 14]]);
  });

  test("a floor that runs out into the face has a line across there, and its depth at the other end", () => {
    const bench = benchOf(STEP, shelfOf(rebate(32)));
    // Tilted by 3° it leaves the face at 28 and comes down to the far edge.
    const fall = Math.tan((3 * Math.PI) / 180);
    const taper = draftAt(bench, "rebate-32", [28 + 16, 20 - 16 * fall, -3]);
    const marks = marksFor(bench, makeAll(bench, bench.stickRegion, [taper]).cuts);
    expect(marks.map(({ kind }) => kind)).toEqual(["place", "depth"]);
    // It is looked for a hair above the sole, and so slight a fall makes a tenth of a millimetre across of that.
    expect(Math.abs((marks[0]?.fromGaugeEdge ?? 0) - 28)).toBeLessThan(0.15);
    expect(marks[1]?.distance).toBeCloseTo((40 - 28) * fall, 2);
  });

  test("with the back up a rebate's depth is gauged from the back", () => {
    const bench = benchOf(STEP, shelf);
    const draft = draftAt(bench, "rebate-12", [2, 6, 180], { cantDeg: 180 });
    const marks = marksFor(bench, makeAll(bench, bench.stickRegion, [draft]).cuts);
    const depth = marks.find((mark) => mark.from === "back");
    expect(depth?.kind).toBe("depth");
    expect(depth?.distance).toBeCloseTo(6, 5);
  });
});

describe("lines lie on the wood as it stands", () => {
  test("a line a hair beside a standing wall is that wall: nothing can be scribed in the air beside it", () => {
    const bench = benchOf(STEP, shelfOf(rebate(12), ...SNIPE_BILLS));
    const wall = draftAt(bench, "rebate-12", [36, 14, 0]);
    const line = draftAt(bench, "snipe-right", [30.03, 17, 0], { work: "snipe line" });
    const mark = marksFor(bench, makeAll(bench, bench.stickRegion, [wall, line]).cuts).find(
      ({ before }) => before === 2,
    );
    expect(mark?.at).toEqual([30, 17]);
    expect(mark?.fromGaugeEdge).toBe(30);
  });

  test("under a crown that stands high over a groove the line lies on the groove's floor", () => {
    const bench = benchOf(STEP, shelfOf(hollow(RADIUS_MM), rebate(6)));
    const groove = draftAt(bench, "rebate-6", [20, 14, 0]);
    const crown = draftAt(bench, `hollow-${RADIUS_MM}-${RADIUS_MM}`, [20, 19, 0], { work: "curve" });
    const mark = marksFor(bench, makeAll(bench, bench.stickRegion, [groove, crown]).cuts).find(
      ({ before }) => before === 2,
    );
    expect(mark?.at).toEqual([20, 14]);
  });
});

describe("lines for neighbouring curves", () => {
  /** Both reeds, left one first, with lines beside them made first so that nothing is refused. */
  function reedsMade() {
    const bench = benchOf(TWO_REEDS, shelfOf(hollow(RADIUS_MM), ...SNIPE_BILLS));
    const reeds = bench.worked
      .filter((worked) => worked.curve)
      .sort((a, b) => a.piece.to.x - b.piece.to.x)
      .map((piece) => curveCovers(bench, piece)[0]?.drafts[0]);
    const [first, second] = reeds;
    if (!first || !second) throw new Error("the fixture's reeds have no plane");
    return { bench, made: makeAll(bench, bench.stickRegion, [first, second]) };
  }

  test("the first is placed from the edge, the next from the foot of the first", () => {
    const { bench, made } = reedsMade();
    const places = marksFor(bench, made.cuts).filter((mark) => mark.kind === "place");
    expect(places.map((mark) => mark.from)).toEqual(["gauge edge", "foot of cut 1"]);
    // The reeds' middles lie half a width, 6.35 mm, beyond the edge of the first and the foot of the second.
    expect(places[0]?.distance).toBeCloseTo(15 + 6.35, 4);
    expect(places[1]?.distance).toBeCloseTo(6.35, 4);
    expect(places[1]?.fromGaugeEdge).toBeCloseTo(15 + RADIUS_MM + 6.35, 4);
  });

  test("both errors are worked out, and the smaller is taken", () => {
    const { bench, made } = reedsMade();
    const second = marksFor(bench, made.cuts).find((mark) => mark.from === "foot of cut 1");
    // Gauge and knife 0.1, plane 0.2 sideways, half the 0.1 that its sole may be wider: √0.0525 = 0.229. From the edge
    // both reeds are off by line and plane, and a whole sole's width lies between their middles: √(0.1 + 0.01) = 0.332.
    expect(second?.errorFromFoot).toBe(0.229);
    expect(second?.errorFromEdge).toBe(0.332);
    expect(second?.error).toBe(0.229);
    expect(second?.serves).toBe("join");
  });

  test("where there is no foot yet only the edge is offered", () => {
    const { bench, made } = reedsMade();
    const [first] = marksFor(bench, made.cuts);
    expect(first?.errorFromFoot).toBeUndefined();
    expect(first?.error).toBe(0.224);
    expect(first?.errorFromEdge).toBe(0.224);
  });

  test("another hand has other errors", () => {
    const { bench, made } = reedsMade();
    const hand = { ...GOOD_HAND, gaugeMm: 0, lineMm: 0.3, sidewaysMm: 0.4, widthMm: 0 };
    const marks = marksFor(bench, made.cuts, hand);
    // 3, 4, 5 tenths; from the edge √2 times that, kept to a thousandth.
    expect(marks.map((mark) => mark.error)).toEqual([0.5, 0.5]);
    expect(marks[1]?.errorFromEdge).toBeCloseTo(0.5 * Math.SQRT2, 3);
  });
});
