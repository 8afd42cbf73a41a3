import { describe, expect, test } from "vitest";
import { type Plan, readPlan, recutPlan, writePlan } from "../cutting/index.ts";
import type { Section } from "../section/index.ts";
import { mirrorSection } from "../section/index.ts";
import { readShelf, type Shelf } from "../shelf/index.ts";
import { drawnSection, held, planOf } from "./testing/benches.ts";
import { hollow, plough, rebate, round, SNIPE_BILLS, shelfOf, smoother } from "./testing/shelves.ts";

const NBSP = "\u00a0";

/** Two slots 2 mm wide and 3 mm deep. */
const TWO_SLOTS = drawnSection(40, 20, [
  [0, 0],
  [40, 0],
  [40, 20],
  [30, 20],
  [30, 17],
  [28, 17],
  [28, 20],
  [12, 20],
  [12, 17],
  [10, 17],
  [10, 20],
  [0, 20],
]);

/** A half-round of 5 mm radius standing on two flats 3 mm wide, its crown level with the face. */
const HALF_ROUND = drawnSection(40, 20, [
  [0, 0],
  [40, 0],
  [40, 20],
  [28, 20],
  [28, 15],
  [25, 15, 1],
  [15, 15],
  [12, 15],
  [12, 20],
  [0, 20],
]);

/** A slot 5 mm wide and 18 mm deep: a plough may be sunk 16 mm with both walls standing. */
const DEEP_SLOT = drawnSection(40, 30, [
  [0, 0],
  [40, 0],
  [40, 30],
  [22, 30],
  [22, 12],
  [17, 12],
  [17, 30],
  [0, 30],
]);

/** The shelf with the planes of a cure, read from the plan file as any program would. */
function withPlanesOf(plan: Plan, shelf: Shelf, index: number): Shelf {
  const planes = held(readPlan(writePlan(plan))).cures?.[index]?.planes;
  const more = held(readShelf({ format: "mouldwright/shelf", version: 1, unit: "mm", planes }));
  return { ...shelf, planes: [...shelf.planes, ...more.planes] };
}

describe("what would cure the places that stay", () => {
  test("the narrow plane for two slots cures both, and a plan with it says the same", () => {
    const shelf = shelfOf(rebate(6), rebate(32));
    const plan = planOf(TWO_SLOTS, shelf);
    expect(plan.uncut.length).toBeGreaterThan(0);
    const [cure] = plan.cures ?? [];
    expect(cure).toMatchObject({
      kind: "plane",
      says: `Borrow or buy a rebate plane 2${NBSP}mm wide.`,
      placesBefore: plan.uncut.length,
      placesAfter: 0,
      cutsBefore: plan.cuts.length,
    });
    expect(cure?.places).toEqual(plan.uncut.map((_, i) => i));
    for (const place of plan.uncut) expect(place.try).toBe(`${cure?.says} Planned so: nothing stays uncut.`);
    const cured = planOf(TWO_SLOTS, withPlanesOf(plan, shelf, 0));
    expect(cured.uncut).toEqual([]);
    expect(cured.cuts.length).toBeLessThanOrEqual(cure?.cutsAfter ?? 0);
    expect(recutPlan(cured).holds).toBe(true);
  });

  test("a flat that can be made wider: by how much, and it is planned so", () => {
    const plan = planOf(TWO_SLOTS, shelfOf(rebate(6), rebate(32)));
    const widths = (plan.cures ?? []).filter((cure) => cure.change?.what === "width");
    expect(widths).toHaveLength(2);
    for (const cure of widths) {
      expect(cure.change?.toMm).toBe(6);
      expect(cure.placesAfter).toBeLessThan(cure.placesBefore);
      expect(cure.places.length).toBe(cure.placesBefore - cure.placesAfter);
    }
  });

  test("a half-round between flats asks for its bead plane", () => {
    const plan = planOf(HALF_ROUND, shelfOf(hollow(5), plough(3), rebate(12), smoother(50), ...SNIPE_BILLS));
    expect(plan.uncut.length).toBeGreaterThan(0);
    expect(plan.cures?.[0]).toMatchObject({
      kind: "plane",
      planes: [{ kind: "bead", width: 10 }],
      placesAfter: 0,
    });
  });

  test("a groove too deep for any plough is cured by a shallower one", () => {
    const plan = planOf(DEEP_SLOT, shelfOf(plough(5), rebate(20)));
    const [cure] = plan.cures ?? [];
    expect(cure?.change).toMatchObject({ what: "flat", from: [22, 12], to: [17, 12] });
    // 18 mm deep, 16 allowed: two, and the tenth that keeps clear of the limit.
    expect(cure?.change?.byMm).toBeCloseTo(2.1, 6);
    expect(cure?.placesAfter).toBe(0);
  });

  test("nothing that stands on the shelf is named, whatever stays uncut", () => {
    const cases: readonly (readonly [Section, Shelf])[] = [
      [HALF_ROUND, shelfOf(hollow(5), rebate(3), rebate(12), smoother(50), ...SNIPE_BILLS)],
      [TWO_SLOTS, shelfOf(rebate(6))],
      [DEEP_SLOT, shelfOf(plough(5), rebate(20))],
    ];
    for (const [section, shelf] of cases) {
      const sizes = (plane: { kind?: unknown; radius?: unknown; width?: unknown }) =>
        `${plane.kind} ${plane.radius} ${plane.width}`;
      const there = shelf.planes.map((plane) =>
        sizes({
          kind: plane.kind,
          radius: "radiusMm" in plane ? plane.radiusMm : undefined,
          width: "widthMm" in plane ? plane.widthMm : undefined,
        }),
      );
      for (const cure of planOf(section, shelf).cures ?? [])
        for (const plane of cure.planes ?? []) expect(there).not.toContain(sizes(plane as object));
    }
  });

  test("the mirrored section with the gauge edge on the right is cured alike", () => {
    const shelf = shelfOf(rebate(6), rebate(32));
    const plan = planOf(TWO_SLOTS, shelf);
    const other = planOf(mirrorSection(TWO_SLOTS), shelf, { gaugeEdge: "right" });
    const told = ({ says, placesAfter, cutsAfter }: NonNullable<Plan["cures"]>[number]) => ({
      says,
      placesAfter,
      cutsAfter,
    });
    expect(other.cures?.map(told)).toEqual(plan.cures?.map(told));
    for (const cure of other.cures ?? []) expect(cure.places.length).toBeGreaterThan(0);
  });
});

describe("the one plane that saves most", () => {
  /** An ovolo of 7 mm radius on a step; the shelf has 9 mm. */
  const OVOLO = drawnSection(40, 20, [
    [0, 0],
    [40, 0],
    [40, 9],
    [30, 9, Math.tan(Math.PI / 8)],
    [23, 16],
    [23, 20],
    [0, 20],
  ]);
  const SMALL = shelfOf(hollow(9), round(9), rebate(6), rebate(20), smoother(50), ...SNIPE_BILLS);

  test("is looked for only when it is asked for", () => {
    expect(planOf(OVOLO, SMALL).cures).toBeUndefined();
  });

  test("is the curve's own hollow where another creeps over it", () => {
    const plan = planOf(OVOLO, SMALL, { advise: true });
    expect(plan.uncut).toEqual([]);
    const [saver] = plan.cures ?? [];
    expect(saver).toMatchObject({ kind: "plane", places: [], planes: [{ kind: "hollow", radius: 7 }] });
    const saves = (saver?.cutsBefore ?? 0) - (saver?.cutsAfter ?? 0);
    const sets = (saver?.settingsBefore ?? 0) - (saver?.settingsAfter ?? 0);
    expect(saves > 0 || (saves === 0 && sets > 0)).toBe(true);
    expect(planOf(OVOLO, withPlanesOf(plan, SMALL, 0)).cuts).toHaveLength(saver?.cutsAfter ?? -1);
  });
});
