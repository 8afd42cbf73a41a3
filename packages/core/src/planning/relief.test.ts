import { describe, expect, test } from "vitest";
import type { Region } from "../curve/index.ts";
import type { Bench } from "./bench.ts";
import { curveCovers } from "./curves.ts";
import type { PlaneDraft } from "./draft-cut.ts";
import { reliefsAt, seatMakers } from "./relief.ts";
import { makeAll } from "./sequence.ts";
import { benchOf, drawnSection } from "./testing/benches.ts";
import { hollow, plough, round, SNIPE_BILLS, shelfOf } from "./testing/shelves.ts";
import { tryCut } from "./try-cut.ts";

const RADIUS_MM = 12.7;
const SAG_MM = RADIUS_MM * (1 - Math.sqrt(3) / 2);
const BULGE_60 = Math.tan(Math.PI / 12);

/** One flute of 60°, sunk into a bare face from x = 24 to 24 + r. */
const FLUTE = drawnSection(60, 16, [
  [0, 0],
  [60, 0],
  [60, 16],
  [24 + RADIUS_MM, 16, -BULGE_60],
  [24, 16],
  [0, 16],
]);

/** One low bead whose crown is level with the face, wood standing to both sides of it. */
const SUNK_BEAD = drawnSection(60, 16, [
  [0, 0],
  [60, 0],
  [60, 16],
  [24 + RADIUS_MM, 16],
  [24 + RADIUS_MM, 16 - SAG_MM, BULGE_60],
  [24, 16 - SAG_MM],
  [24, 16],
  [0, 16],
]);

function onlyCurve(bench: Bench): PlaneDraft {
  const piece = bench.worked.find((worked) => worked.curve);
  const draft = piece && curveCovers(bench, piece)[0]?.drafts[0];
  if (!draft) throw new Error("the fixture's curve has no plane");
  return draft;
}

describe("a seat for a round on a bare face", () => {
  test("a V opened with both snipe bills holds it within 0.2 mm of its line", () => {
    const bench = benchOf(FLUTE, shelfOf(round(RADIUS_MM), ...SNIPE_BILLS));
    const draft = onlyCurve(bench);
    expect(tryCut(bench, bench.stickRegion, draft).seat).toBeNull();
    const seats = seatMakers(bench, bench.stickRegion, draft).map((set) => {
      const made = makeAll(bench, bench.stickRegion, set);
      return { made, set, tried: tryCut(bench, made.wood, draft) };
    });
    const held = seats.find(({ made, tried }) => made.allowed && tried.seat);
    expect(held?.set.length).toBeGreaterThanOrEqual(2);
    expect(new Set(held?.set.map((cut) => cut.tool.plane.id))).toEqual(
      new Set(["snipe-left", "snipe-right"]),
    );
    expect(Math.abs(held?.tried.seat?.shift ?? 9)).toBeLessThanOrEqual(0.2);
    // Lifted by a hundredth of the width at the least.
    expect(held?.tried.seat?.lift).toBeGreaterThanOrEqual(RADIUS_MM / 100);
  });

  test("no line of the V goes below the flute", () => {
    const bench = benchOf(FLUTE, shelfOf(round(RADIUS_MM), ...SNIPE_BILLS));
    for (const set of seatMakers(bench, bench.stickRegion, onlyCurve(bench)))
      for (const cut of set) for (const [pose] of cut.runs) expect(pose[1]).toBeGreaterThan(16 - SAG_MM);
  });

  test("a plough's groove is centred on the round's axis and a shaving clear of the flute", () => {
    const bench = benchOf(FLUTE, shelfOf(round(RADIUS_MM), plough(6)));
    const [[groove] = []] = seatMakers(bench, bench.stickRegion, onlyCurve(bench));
    expect(groove?.work).toBe("groove");
    const pose = groove?.runs[0]?.[0] ?? [0, 0, 0];
    expect(pose[0]).toBeCloseTo(24 + RADIUS_MM / 2, 6);
    // 3 mm off the axis the flute is sqrt(r² - 9) below its centre: the groove's corners stand 0.15 mm over that.
    const centreY = 16 + RADIUS_MM * (Math.sqrt(3) / 2);
    const fluteAtCorner = centreY - Math.sqrt(RADIUS_MM ** 2 - 9);
    expect(pose[1]).toBeGreaterThan(fluteAtCorner + 0.1);
    expect(pose[1]).toBeLessThan(fluteAtCorner + 0.2);
  });

  test("with neither snipe bills nor plough nor flat plane there is nothing to make one with", () => {
    const bench = benchOf(FLUTE, shelfOf(round(RADIUS_MM)));
    expect(seatMakers(bench, bench.stickRegion, onlyCurve(bench))).toEqual([]);
  });
});

describe("room beside a hollow", () => {
  const walls = (bench: Bench, wood: Region, draft: PlaneDraft) =>
    tryCut(bench, wood, draft)
      .refusals.filter((refusal) => refusal.rule === "wall")
      .map((refusal) => refusal.side);

  test("wood standing on both sides forbids it; a line with each snipe bill allows it", () => {
    const bench = benchOf(SUNK_BEAD, shelfOf(hollow(RADIUS_MM), ...SNIPE_BILLS));
    const draft = onlyCurve(bench);
    expect(walls(bench, bench.stickRegion, draft)).toEqual(["left", "right"]);
    const left = reliefsAt(bench, bench.stickRegion, draft, "left")[0];
    expect(left?.tool.plane.id).toBe("snipe-left");
    const afterLeft = makeAll(bench, bench.stickRegion, left ? [left] : []);
    expect(walls(bench, afterLeft.wood, draft)).toEqual(["right"]);
    const right = reliefsAt(bench, afterLeft.wood, draft, "right")[0];
    expect(right?.tool.plane.id).toBe("snipe-right");
    const afterBoth = makeAll(bench, afterLeft.wood, right ? [right] : []);
    expect(walls(bench, afterBoth.wood, draft)).toEqual([]);
  });

  test("each line's upright side stands where the hollow's side will", () => {
    const bench = benchOf(SUNK_BEAD, shelfOf(hollow(RADIUS_MM), ...SNIPE_BILLS));
    const draft = onlyCurve(bench);
    const at = (side: "left" | "right") =>
      reliefsAt(bench, bench.stickRegion, draft, side)[0]?.runs[0]?.[0] ?? [0, 0, 0];
    expect(at("left")[0]).toBeCloseTo(24, 4);
    expect(at("right")[0]).toBeCloseTo(24 + RADIUS_MM, 4);
  });

  test("without snipe bills, rebate plane or plough there is no line to cut", () => {
    const bench = benchOf(SUNK_BEAD, shelfOf(hollow(RADIUS_MM)));
    const draft = onlyCurve(bench);
    expect(reliefsAt(bench, bench.stickRegion, draft, "left")).toEqual([]);
    expect(reliefsAt(bench, bench.stickRegion, draft, "right")).toEqual([]);
  });
});
