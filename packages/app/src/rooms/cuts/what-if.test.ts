import { readFileSync } from "node:fs";
import type { Plan } from "mouldwright/cutting";
import { type Job, readJob, writeJob } from "mouldwright/job";
import { describe, expect, test } from "vitest";
import { compared, jobWith, planesOf, type Wish, wishWords } from "./what-if.ts";

const EXAMPLES = new URL("../../../../../examples/", import.meta.url);
const text = (file: string): string => readFileSync(new URL(file, EXAMPLES), "utf8");
const PLAN = JSON.parse(text("cornice/plan.json")) as Plan;

function cornice(): Job {
  const job = readJob(text("cornice.json"));
  if (!job.ok) throw new Error(job.trouble.code);
  const { way: _, ...rest } = job.value;
  return rest;
}

const WISHES: readonly Wish[] = [
  { kind: "without", planeId: "hollow-5-8", name: "⅝ in hollow" },
  { kind: "way", way: "canted" },
  { kind: "save", on: "fewer planes" },
  { kind: "lean", greatestDeg: 20 },
  { kind: "swap", first: 6, second: 7 },
];

describe("what if", () => {
  test("every wish makes a job that can be kept and read again, and says what it is", () => {
    for (const wish of WISHES) {
      const job = jobWith(cornice(), PLAN, wish);
      const read = readJob(writeJob(job));
      expect(read.ok && read.value).toEqual(job);
      expect(wishWords(wish).length).toBeGreaterThan(3);
    }
  });

  test("wishes add up, and what is taken back leaves nothing behind", () => {
    const twice = jobWith(jobWith(cornice(), PLAN, { kind: "save", on: "fewer planes" }), PLAN, {
      kind: "way",
      way: "flat",
    });
    expect(twice.way).toEqual({ prefer: "fewer planes", ways: ["flat"] });
    const once = jobWith(twice, PLAN, { kind: "save", on: null });
    expect(jobWith(once, PLAN, { kind: "way", way: null })).toEqual(cornice());
    const without = jobWith(cornice(), PLAN, { kind: "without", planeId: "a", name: "A" });
    expect(jobWith(without, PLAN, { kind: "with", planeId: "a", name: "A" })).toEqual(cornice());
    const swapped = jobWith(cornice(), PLAN, { kind: "swap", first: 6, second: 7 });
    expect(jobWith(swapped, PLAN, { kind: "unswap" })).toEqual(cornice());
  });

  test("a swap names the planes of both cuts, so that it holds in no other plan", () => {
    const { way } = jobWith(cornice(), PLAN, { kind: "swap", first: 8, second: 10 });
    const [eighth, tenth] = [PLAN.cuts[7]?.plane.id, PLAN.cuts[9]?.plane.id];
    expect(way?.swaps).toEqual([{ first: 8, second: 10, cuts: PLAN.cuts.length, planes: [eighth, tenth] }]);
  });

  test("each plane once, no saw", () => {
    const planes = planesOf(PLAN);
    expect(new Set(planes.map(({ id }) => id)).size).toBe(planes.length);
    expect(planes.map(({ name }) => name)).not.toContain("saw");
    expect(planes.map(({ name }) => name)).toContain("plough");
  });

  test("fewer cuts are better, more are worse, alike is neither", () => {
    const shorter = { ...PLAN, cuts: PLAN.cuts.slice(0, -1) };
    const rowOf = (what: string, after: Plan) => compared(PLAN, after).find((row) => row.what === what);
    expect(rowOf("Cuts", shorter)).toEqual({
      what: "Cuts",
      before: String(PLAN.cuts.length),
      after: String(shorter.cuts.length),
      isBetter: true,
    });
    expect(rowOf("Places uncut", shorter)?.isBetter).toBe(null);
    expect(compared(shorter, PLAN).find(({ what }) => what === "Cuts")?.isBetter).toBe(false);
  });
});
