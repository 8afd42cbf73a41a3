import { describe, expect, test } from "vitest";
import { closedUp } from "./closed-up.ts";
import type { PlaneDraft } from "./draft-cut.ts";
import { makeAll } from "./sequence.ts";
import { benchOf, draftAt, drawnSection } from "./testing/benches.ts";
import { plough, rebate, shelfOf } from "./testing/shelves.ts";

/** A 40 × 20 mm stick of which nothing but a thin sole plate is wanted, so that no cut is an overcut. */
const PLATE = drawnSection(40, 20, [
  [0, 0],
  [40, 0],
  [40, 0.5],
  [0, 0.5],
]);

/** The same stick with a fin of 1 mm between two grooves as its section. */
const FINNED = drawnSection(40, 20, [
  [0, 0],
  [40, 0],
  [40, 20],
  [25, 20],
  [25, 12],
  [19, 12],
  [19, 20],
  [18, 20],
  [18, 12],
  [12, 12],
  [12, 20],
  [0, 20],
]);

const ploughs = [3, 6, 10].map((widthMm) => ({ ...plough(widthMm), id: `plough-${widthMm}` }));
const bench = benchOf(PLATE, shelfOf(...ploughs, plough(4, 6), rebate(12)));
const groove = (width: number, x: number, y: number) =>
  draftAt(bench, `plough-${width}`, [x, y, 0], { purpose: "waste", work: "groove" });

const finsOf = (...drafts: readonly PlaneDraft[]) =>
  makeAll(bench, bench.startRegion, drafts).cuts.map(({ fin }) => fin);

describe("a fin is left", () => {
  test("between two grooves a millimetre apart, on the later one's side, with the opening beyond it", () => {
    const [first, second] = finsOf(groove(6, 15, 12), groove(6, 22, 12));
    expect(first).toBeNull();
    expect(second?.side).toBe("left");
    expect(second?.thickMm).toBeCloseTo(1, 2);
    // Beyond the fin lies the older groove, from 12 to 18.
    expect(second?.beyond.x).toBeCloseTo(18 - 0.05, 1);
  });

  test("and between a groove and a step over the edge", () => {
    const [, step] = finsOf(groove(6, 26, 12), draftAt(bench, "rebate-12", [36.5, 12, 0]));
    expect(step).toMatchObject({ side: "left" });
    expect(step?.thickMm).toBeCloseTo(1.5, 2);
  });

  test("and a hair, however low: half a millimetre thick and 2 mm high", () => {
    const [, second] = finsOf(groove(6, 15, 18), groove(6, 21.5, 18));
    expect(second).toMatchObject({ side: "left" });
    expect(second?.thickMm).toBeCloseTo(0.5, 2);
  });

  test("not where what stands is 3 mm thick, lower than three times that, or a film", () => {
    expect(finsOf(groove(6, 15, 12), groove(6, 24.1, 12))).toEqual([null, null]);
    expect(finsOf(groove(6, 15, 16), groove(6, 22.5, 16))).toEqual([null, null]);
    expect(finsOf(groove(6, 15, 12), groove(6, 21.15, 12))).toEqual([null, null]);
  });

  test("not where the section itself is so thin", () => {
    const wanted = benchOf(FINNED, shelfOf(plough(6)));
    const at = (x: number) => draftAt(wanted, "plough", [x, 12, 0], { work: "groove" });
    const made = makeAll(wanted, wanted.startRegion, [at(15), at(22)]);
    expect(made.cuts.map(({ fin }) => fin)).toEqual([null, null]);
  });
});

describe("a cut is moved over its fin", () => {
  test("with the same plane, and with the narrower irons of its plough, each meeting the opening", () => {
    const own = draftAt(bench, "plough", [22, 12, 0], { purpose: "waste", work: "groove" });
    const wide = bench.tools.filter(({ plane }) => plane.id === "plough").at(-1);
    if (!wide) throw new Error("the plough has no irons");
    const draft: PlaneDraft = { ...own, tool: wide };
    const closed = closedUp(bench, draft, { side: "left", thickMm: 1, beyond: { x: 17.9, y: 16 } });
    expect(closed.map(({ tool, runs }) => [tool.sole.widthMm, runs[0][0][0] + tool.sole.leftMm])).toEqual([
      [6, 18],
      [4, 18],
    ]);
  });
});
