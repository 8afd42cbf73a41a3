import { type Job, readJob, writeJob } from "mouldwright/job";
import { describe, expect, test } from "vitest";
import {
  COMMON_STOCK,
  choicesOf,
  withCorner,
  withFit,
  withStock,
  withTimber,
  withWall,
  withWallAdded,
  withWallRemoved,
  withWorking,
} from "./fit-choices.ts";

const PLAIN: Job = {
  format: "mouldwright/job",
  version: 1,
  name: "Barometer case: frame",
  section: {
    parts: [{ kind: "fillet", widthMm: "rest" }],
    back: [{ kind: "rebate", edge: "far", widthMm: 8, depthMm: 6 }],
  },
  stick: { widthMm: 40, thicknessMm: 23 },
};

describe("where nothing is said", () => {
  test("rail and rebate are the section's own", () => {
    const { frame } = choicesOf(PLAIN);
    expect([frame.widthMm, frame.rebateMm]).toEqual([40, 8]);
  });

  test("sticks are as many as needed of a common length", () => {
    const { stock, isStockSaid } = choicesOf(PLAIN);
    expect([stock, isStockSaid]).toEqual([[COMMON_STOCK], false]);
  });
});

describe("what is said", () => {
  const everything = [
    (job: Job) => withFit(job, "corner", { cornerDeg: 135, kind: "outside", springFromWallDeg: 38 }),
    (job: Job) => withFit(job, "frame", { sides: 6, sideMm: 120 }),
    (job: Job) => withTimber(job, "Cherry, black"),
    (job: Job) =>
      withStock(job, [{ lengthMm: 2700, count: 2, badPlaces: [{ fromMm: 10, toMm: 30, why: "knot" }] }]),
    (job: Job) => withFit(job, "allowances", { kerfMm: 1.5 }),
    withWallAdded,
    (job: Job) => withCorner(job, 2, { cornerDeg: 90, kind: "inside", joint: "scribe left" }),
    (job: Job) => withWorking(job, { lengthMm: 1349, sticks: 3 }),
  ].reduce((job, edit) => edit(job), PLAIN);

  test("is kept in the job's file and read back", () => {
    const read = readJob(writeJob(everything));
    expect(read.ok && read.value).toEqual(everything);
    const choices = choicesOf(everything);
    expect(choices.cornerDeg).toBe(135);
    expect(choices.timber).toBe("Cherry, black");
    expect(choices.stock[0]?.badPlaces).toEqual([{ fromMm: 10, toMm: 30, why: "knot" }]);
    expect(choices.sawing).toEqual({ kerfMm: 1.5, trimMm: 3, planingMm: 50 });
    expect([choices.lengthMm, choices.sticks]).toEqual([1349, 3]);
  });

  test("taken back it is the common again", () => {
    const job = withFit(everything, "corner", { springFromWallDeg: undefined });
    expect(choicesOf(job).springFromWallDeg).toBeNull();
    expect(job.fit?.corner).not.toHaveProperty("springFromWallDeg");
    expect(choicesOf(withTimber(everything, "")).timber).toBe("");
    expect(choicesOf(withStock(everything, [])).isStockSaid).toBe(false);
  });
});

describe("walls", () => {
  const three = withWall(withWall(withWallAdded(PLAIN), 0, 100), 3, 900);

  test("one more brings a square outside corner before it", () => {
    const { wallsMm, corners } = choicesOf(three).run;
    expect(wallsMm).toEqual([100, 1200, 400, 900]);
    expect(corners).toHaveLength(3);
    expect(corners[2]).toEqual({ cornerDeg: 90, kind: "outside", joint: undefined });
  });

  test.each([
    [0, [1200, 400, 900], [45, 60]],
    [1, [100, 400, 900], [45, 60]],
    [3, [100, 1200, 400], [30, 45]],
  ])("wall %i goes with the corner before it, or after the first", (index, walls, cornersDeg) => {
    const turned = [30, 45, 60].reduce((job, cornerDeg, at) => withCorner(job, at, { cornerDeg }), three);
    const { run } = choicesOf(withWallRemoved(turned, index));
    expect(run.wallsMm).toEqual(walls);
    expect(run.corners.map(({ cornerDeg }) => cornerDeg)).toEqual(cornersDeg);
  });

  test("the last one stays", () => {
    const one = withFit(PLAIN, "run", { wallsMm: [500], corners: [] });
    expect(withWallRemoved(one, 0)).toBe(one);
  });
});
