import { readFileSync } from "node:fs";
import type { Plan } from "mouldwright/cutting";
import { type Job, readJob, writeJob } from "mouldwright/job";
import { describe, expect, test } from "vitest";
import {
  type CameOut,
  cutsBehind,
  cutsMeasured,
  goingOn,
  planesUsed,
  stageOf,
  takenBack,
} from "./came-out.ts";

const EXAMPLES = new URL("../../../../../examples/", import.meta.url);
const text = (file: string): string => readFileSync(new URL(file, EXAMPLES), "utf8");
const PLAN = JSON.parse(text("cornice/plan.json")) as Plan;

function cornice(): Job {
  const job = readJob(text("cornice.json"));
  if (!job.ok) throw new Error(job.trouble.code);
  return job.value;
}

const cameOut = (after: number, more: Partial<CameOut> = {}): CameOut => ({
  after,
  planes: {},
  cuts: {},
  ...more,
});

function codeOf(wish: CameOut): string {
  const stage = stageOf(PLAN, wish);
  return stage.ok ? "" : stage.trouble.code;
}

/** The cornice's last cut saws a bevel of the spring. */
const SAWN = PLAN.cuts.length;

describe("it came out so", () => {
  test("planes that made the cuts are measured, ploughs and saws are not", () => {
    const used = planesUsed(PLAN, PLAN.cuts.length);
    expect(used.every(({ widthMm }) => widthMm !== null && widthMm > 0)).toBe(true);
    expect(used.filter(({ radiusMm }) => radiusMm !== null).map(({ name }) => name)).toEqual(
      expect.arrayContaining(["⅝ in hollow", "⅝ in round", "⅜ in hollow"]),
    );
    expect(planesUsed(PLAN, 2)).toEqual([]);
    expect(cutsMeasured(PLAN, PLAN.cuts.length).map(({ number }) => number)).not.toContain(SAWN);
  });

  test("the stage keeps the plan, how far it is made, and only what was measured", () => {
    const hollow = planesUsed(PLAN, 8).find(({ name }) => name === "⅝ in hollow");
    const id = hollow?.id ?? "";
    const widthMm = (hollow?.widthMm ?? 0) - 0.3;
    const stage = stageOf(
      PLAN,
      cameOut(8, { planes: { [id]: { widthMm } }, cuts: { "3": { acrossMm: 0.2 } } }),
    );
    expect(stage.ok && stage.value).toEqual({
      plan: PLAN,
      after: 8,
      planes: [{ id, widthMm }],
      cuts: [{ number: 3, acrossMm: 0.2 }],
    });
  });

  test("what was typed for cuts and planes beyond the last made one goes with them", () => {
    const stage = stageOf(
      PLAN,
      cameOut(2, { planes: { "no-such": { widthMm: 3 } }, cuts: { "9": { deeperMm: 1 } } }),
    );
    expect(stage.ok && stage.value).toEqual({ plan: PLAN, after: 2 });
  });

  test("what cannot be is refused with its reason", () => {
    const id = planesUsed(PLAN, 8).find(({ radiusMm }) => radiusMm !== null)?.id ?? "";
    expect(codeOf(cameOut(3, { cuts: { "3": { deeperMm: 25 } } }))).toBe("measured-cut-far-off");
    expect(codeOf(cameOut(8, { planes: { [id]: { widthMm: 90 } } }))).toBe("shelf-wider-than-circle");
    expect(codeOf(cameOut(SAWN, { cuts: { [SAWN]: { deeperMm: 1 } } }))).toBe("measured-cut-sawn");
  });

  test("the job goes on without the ticks and swaps of the plan behind it, and can be taken back", () => {
    const stage = stageOf(PLAN, cameOut(3));
    if (!stage.ok) throw new Error(stage.trouble.code);
    const job: Job = { ...cornice(), ticks: { done: [1, 2, 3], cuts: 14 } };
    const swapped: Job = {
      ...job,
      way: { ...job.way, swaps: [{ first: 1, second: 2, cuts: 14, planes: ["a", "b"] }] },
    };
    const on = goingOn(swapped, stage.value);
    expect(on.ticks).toBe(undefined);
    expect(on.way?.swaps).toBe(undefined);
    expect(cutsBehind(on)).toBe(3);
    expect(cutsBehind(goingOn(on, stage.value))).toBe(6);
    const read = readJob(writeJob(on));
    expect(read.ok && read.value).toEqual(on);
    expect(takenBack(goingOn(on, stage.value))).toEqual(on);
    expect("standing" in takenBack(on)).toBe(false);
  });
});
