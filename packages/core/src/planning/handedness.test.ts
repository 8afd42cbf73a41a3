import { describe, expect, test } from "vitest";
import type { Plan, PlanCut } from "../cutting/index.ts";
import { mirrorSection, type Section } from "../section/index.ts";
import { CORNICE, FRAME, GLAZING_BAR, PILASTER, PLINTH } from "../section/testing/chart-cabinet.ts";
import { mirrorDraft, mirrorShelf } from "./handedness.ts";
import { benchOf, draftAt, drawnSection, planOf, sectionOf } from "./testing/benches.ts";
import { rebate, SNIPE_BILLS, shelfOf, WHOLE_SHELF } from "./testing/shelves.ts";

describe("a plan for the other hand is the mirror image", () => {
  test.each([CORNICE, PLINTH, PILASTER, FRAME, GLAZING_BAR])("$name", (spec) => {
    const section = sectionOf(spec);
    const plan = planOf(section, WHOLE_SHELF);
    const other = planOf(mirrorSection(section), mirrorShelf(WHOLE_SHELF), { gaugeEdge: "right" });
    expectMirrored(plan, other, section, spec.stick.widthMm);
  });
});

function expectMirrored(plan: Plan, other: Plan, section: Section, widthMm: number): void {
  expect(section.outline.pieces.length).toBeGreaterThan(4);
  expect(other.cuts.map((cut) => cut.plane.id)).toEqual(plan.cuts.map((cut) => cut.plane.id));
  plan.cuts.forEach((cut, i) => {
    const twin = other.cuts[i] as PlanCut;
    expect(posesOf(twin)).toHaveLength(posesOf(cut).length);
    posesOf(cut).forEach(([x, y, tilt], k) => {
      const [twinX, twinY, twinTilt] = posesOf(twin)[k] ?? [];
      expect(twinX).toBeCloseTo(widthMm - x, 5);
      expect(twinY).toBeCloseTo(y, 5);
      expect(Math.abs(twinTilt ?? 999)).toBeCloseTo(Math.abs(tilt), 5);
      if (Math.abs(tilt) !== 180) expect(twinTilt).toBeCloseTo(-tilt, 5);
    });
    expect(twin.takes).toBeCloseTo(cut.takes, 2);
    expect(twin.wall[0]).toBeCloseTo(cut.wall[1], 2);
    expect(twin.wall[1]).toBeCloseTo(cut.wall[0], 2);
    expect(twin.runsAgainst).toBe(cut.runsAgainst);
    expect([twin.setting, twin.passes, twin.minutes]).toEqual([cut.setting, cut.passes, cut.minutes]);
    expect(twin.seat === null).toBe(cut.seat === null);
    if (cut.seat && twin.seat) {
      expect(twin.seat.lift).toBeCloseTo(cut.seat.lift, 2);
      expect(twin.seat.shift).toBeCloseTo(-cut.seat.shift, 2);
    }
  });
  expect(other.marks.map((mark) => [mark.before, mark.kind, mark.from])).toEqual(
    plan.marks.map((mark) => [mark.before, mark.kind, mark.from]),
  );
  plan.marks.forEach((mark, i) => {
    expect(other.marks[i]?.distance).toBeCloseTo(mark.distance, 3);
    expect(other.marks[i]?.fromGaugeEdge).toBeCloseTo(mark.fromGaugeEdge, 3);
  });
  expect(other.uncut.map((place) => place.rule).sort()).toEqual(plan.uncut.map((place) => place.rule).sort());
}

function posesOf(cut: PlanCut) {
  return (cut.runs ?? []).flat();
}

describe("the pieces of it", () => {
  test("a shelf in the mirror: handed planes change hands, a drawn sole its side, the others stay", () => {
    const shelf = shelfOf(rebate(12), ...SNIPE_BILLS, {
      id: "drawn",
      name: "Drawn",
      kind: "shaped",
      cutsWall: "left",
      sole: {
        pieces: [
          { kind: "line", from: { x: -1, y: 0 }, to: { x: 2, y: 1 } },
          { kind: "arc", from: { x: 2, y: 1 }, to: { x: 5, y: 4 }, bulge: 0.2 },
        ],
      },
    });
    const [flat, left, right, drawn] = mirrorShelf(shelf).planes;
    expect(flat).toEqual(rebate(12));
    expect(left).toMatchObject({ id: "snipe-left", hand: "right" });
    expect(right).toMatchObject({ id: "snipe-right", hand: "left" });
    expect(drawn).toMatchObject({
      cutsWall: "right",
      sole: {
        pieces: [
          { kind: "arc", from: { x: -5, y: 4 }, to: { x: -2, y: 1 }, bulge: 0.2 },
          { kind: "line", from: { x: -2, y: 1 }, to: { x: 1, y: 0 } },
        ],
      },
    });
    expect(mirrorShelf(mirrorShelf(shelf))).toEqual(shelf);
  });

  test("a cut mirrored twice is itself; mirrored once it stands as far from the other edge, leaned the other way", () => {
    const bench = benchOf(
      drawnSection(40, 20, [
        [0, 0],
        [40, 0],
        [40, 12],
        [0, 12],
      ]),
      shelfOf(rebate(12)),
    );
    const mirror = { axisXMm: 20, pieces: bench.planned.pieces.length };
    const draft = { ...draftAt(bench, "rebate-12", [8, 15, 25], { shapes: [0] }), ridgeMm: 0.12 };
    const once = mirrorDraft(bench, draft, mirror);
    if (once.kind !== "plane") throw new Error("a plane's cut stays one");
    expect(once.runs).toEqual([[[32, 15, -25]]]);
    // Four pieces, walked backwards: the first is the last.
    expect(once.shapes).toEqual([3]);
    expect(once.ridgeMm).toBe(0.12);
    expect(mirrorDraft(bench, once, mirror)).toMatchObject({ key: draft.key, runs: draft.runs, shapes: [0] });
  });
});
