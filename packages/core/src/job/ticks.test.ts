import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import type { Plan } from "../cutting/index.ts";
import type { Job } from "./job-schema.ts";
import { readJob, writeJob } from "./read-job.ts";
import { ticksOn, withoutDropped, withTick } from "./ticks.ts";

const EXAMPLES = new URL("../../../../examples/", import.meta.url);
const text = (file: string): string => readFileSync(new URL(file, EXAMPLES), "utf8");
const PLAN = JSON.parse(text("cornice/plan.json")) as Plan;

function cornice(): Job {
  const job = readJob(text("cornice.json"));
  if (!job.ok) throw new Error(job.trouble.code);
  return job.value;
}

/** The same plan with the cuts in another order, renumbered. */
function reordered(order: readonly number[]): Plan {
  const cuts = order.map((number, index) => {
    const cut = PLAN.cuts.find((one) => one.number === number);
    if (cut === undefined) throw new Error(`no cut ${number}`);
    return { ...cut, number: index + 1 };
  });
  return { ...PLAN, cuts };
}

function ticked(...numbers: readonly number[]): Job {
  return numbers.reduce((job, number) => withTick(job, PLAN, number, true), cornice());
}

describe("ticks on a plan", () => {
  test("a cut is ticked and unticked; the job is then as it was", () => {
    const job = ticked(1, 3);
    expect(ticksOn(PLAN, job.ticks).done).toEqual(new Set([1, 3]));
    const back = withTick(withTick(job, PLAN, 1, false), PLAN, 3, false);
    expect(back).toEqual(cornice());
    expect("ticks" in back).toBe(false);
  });

  test("ticking what is ticked changes nothing", () => {
    const job = ticked(2);
    expect(withTick(job, PLAN, 2, true)).toBe(job);
  });

  test("they come back from the job's file as they were", () => {
    const job = ticked(1, 8, 13);
    const read = readJob(writeJob(job));
    expect(read.ok && read.value.ticks).toEqual(job.ticks);
  });

  test("cuts that stand in another order keep theirs", () => {
    const { done, dropped } = ticksOn(reordered([2, 1, 3, 4]), ticked(1, 3).ticks);
    expect(done).toEqual(new Set([2, 3]));
    expect(dropped).toEqual([]);
  });

  test("a cut that is gone is told by its number and name, and goes with the next tick", () => {
    const plan = reordered([1, 2, 4, 5]);
    const job = ticked(1, 3);
    const { done, dropped } = ticksOn(plan, job.ticks);
    expect(done).toEqual(new Set([1]));
    expect(dropped).toEqual([{ number: 3, name: "32 mm rebate plane" }]);
    expect(withoutDropped(job, plan).ticks?.done).toEqual([1]);
    expect(withTick(job, plan, 2, true).ticks?.done).toEqual([1, 2]);
    expect(withoutDropped(ticked(1), plan)).toEqual(ticked(1));
  });

  test("a cut moved by a tenth of a millimetre is another cut", () => {
    const moved = PLAN.cuts.map((cut) =>
      cut.number === 6
        ? { ...cut, runs: (cut.runs ?? []).map((run) => run.map(([x, y, t]) => [x + 0.1, y, t] as const)) }
        : cut,
    );
    expect(ticksOn({ ...PLAN, cuts: moved }, ticked(6).ticks).dropped.map(({ number }) => number)).toEqual([
      6,
    ]);
  });

  test("ticks known by number alone hold for a plan of as many cuts, and for no other", () => {
    const ticks = { done: [1, 2], cuts: PLAN.cuts.length };
    expect(ticksOn(PLAN, ticks).done).toEqual(new Set([1, 2]));
    expect(ticksOn(reordered([1, 2, 3]), ticks).done).toEqual(new Set());
    expect(ticksOn(PLAN, { done: [PLAN.cuts.length + 1], cuts: PLAN.cuts.length }).dropped).toHaveLength(1);
  });

  test("without ticks nothing is done", () => {
    expect(ticksOn(PLAN, undefined)).toEqual({ done: new Set(), dropped: [] });
  });
});
