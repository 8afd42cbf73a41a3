import { describe, expect, test } from "vitest";
import { orderFlatsApart } from "./grooves-apart.ts";
import { orderFlats } from "./order.ts";
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

const ploughs = [3, 6, 10].map((widthMm) => ({ ...plough(widthMm), id: `plough-${widthMm}` }));
const bench = benchOf(PLATE, shelfOf(...ploughs, rebate(12)));
const groove = (width: number, x: number, y: number) =>
  draftAt(bench, `plough-${width}`, [x, y, 0], { purpose: "shape", work: "groove" });

/** For each cut in turn, whether its groove runs into an older one. */
const runInto = (...drafts: Parameters<typeof makeAll>[2]) =>
  makeAll(bench, bench.startRegion, drafts).cuts.map(({ intoGroove }) => intoGroove);

describe("a groove runs into an older one", () => {
  test("half in it and deeper; half in it and higher it is a step down into it, no groove", () => {
    expect(runInto(groove(6, 15, 16), groove(6, 19, 12))).toEqual([false, true]);
    expect(runInto(groove(6, 15, 12), groove(6, 19, 16))).toEqual([false, false]);
  });

  test("aslant through it", () => {
    const leaning = draftAt(bench, "rebate-12", [16, 14, 20]);
    expect(runInto(groove(6, 15, 10), leaning)).toEqual([false, true]);
  });

  test("not where the two stand side by side, make one floor, or the narrower lies in the wider's floor", () => {
    expect(runInto(groove(6, 15, 16), groove(6, 21, 12))).toEqual([false, false]);
    expect(runInto(groove(6, 15, 16), groove(6, 19, 16))).toEqual([false, false]);
    expect(runInto(groove(10, 15, 16), groove(3, 16, 12))).toEqual([false, false]);
  });

  test("not where the wood beside it is gone: a step over the edge is no groove", () => {
    const step = draftAt(bench, "rebate-12", [36, 12, 0]);
    expect(runInto(groove(6, 27, 14), step)).toEqual([false, false]);
  });

  test("nor where the older one was widened to a step before", () => {
    const step = draftAt(bench, "rebate-12", [34, 16, 0]);
    // From x = 28 to the edge all is down to 16: the second groove has no wood on its right.
    expect(runInto(step, groove(6, 27, 14))).toEqual([false, false]);
  });
});

describe("grooves are kept apart", () => {
  const deep = groove(6, 19, 12);
  const overlapping = groove(6, 15, 16);
  const beside = groove(6, 13, 16);

  test("by cutting the older one where the newer does not reach", () => {
    const flats = [{ ways: [overlapping, beside] }, { ways: [deep] }];
    expect(orderFlats(bench, bench.startRegion, flats).cuts.map(({ intoGroove }) => intoGroove)).toEqual([
      false,
      true,
    ]);
    const apart = orderFlatsApart(bench, bench.startRegion, flats);
    expect(apart.cuts.map(({ draft }) => draft.key)).toEqual([beside.key, deep.key]);
  });

  test("and where neither can be moved both are cut, at their cost", () => {
    const flats = [{ ways: [overlapping] }, { ways: [deep] }];
    const apart = orderFlatsApart(bench, bench.startRegion, flats);
    expect(apart.cuts.map(({ intoGroove }) => intoGroove)).toEqual([false, true]);
    expect(apart.cost).toBeGreaterThan(bench.weights.intoGroove);
  });

  test("waste waits until it runs into none, and is left where it always would", () => {
    const waste = draftAt(bench, "plough-6", [19, 15, 0], { purpose: "waste", work: "groove" });
    const left = orderFlatsApart(bench, bench.startRegion, [{ ways: [overlapping] }, { ways: [waste] }]);
    expect(left.cuts.map(({ draft }) => draft.key)).toEqual([overlapping.key]);
    expect(left.keptOff.map(({ draft }) => draft.key)).toEqual([waste.key]);
  });
});
