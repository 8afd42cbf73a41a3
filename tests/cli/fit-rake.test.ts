/** Raking mouldings: one point and a whole section, back and forth, and the broken pediment from end to end. */
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Bench, newBench, runHere, STEP_SVG } from "./run.ts";

const CORNICE = fileURLToPath(new URL("../../examples/cornice.json", import.meta.url));
const SHELF = fileURLToPath(new URL("../../examples/shelves/full.json", import.meta.url));

let bench: Bench;
beforeAll(async () => {
  bench = await newBench();
  await bench.put("step.svg", STEP_SVG);
});
afterAll(() => bench.clear());

async function numbersOf(...words: readonly string[]): Promise<Record<string, number>> {
  const ran = await runHere(["rake", ...words, "--json"]);
  expect(ran).toMatchObject({ code: 0 });
  return JSON.parse(ran.out) as Record<string, number>;
}

describe("one point", () => {
  test("25 out and 25 up on 22.5°: h cos a + p sin a, and h + 2 p tan a", async () => {
    const point = await numbersOf("--projection", "25", "--height", "25", "--slope", "22.5");
    expect(point.rakeHeightMm).toBeCloseTo(32.664, 3);
    expect(point.upperReturnHeightMm).toBeCloseTo(45.711, 3);
    expect(point.levelHeightMm).toBe(25);
  });

  test("a rake's height goes back to the level one", async () => {
    const there = await numbersOf("--projection", "25", "--height", "25", "--slope", "22.5");
    const height = String(there.rakeHeightMm);
    const back = await numbersOf(
      "--projection",
      "25",
      "--height",
      height,
      "--slope",
      "22.5",
      "--given",
      "rake",
    );
    expect(back.levelHeightMm).toBeCloseTo(25, 9);
  });

  test("no slope, no change", async () => {
    const point = await numbersOf("--projection", "25", "--height", "40", "--slope", "0");
    expect(point).toMatchObject({ levelHeightMm: 40, rakeHeightMm: 40, upperReturnHeightMm: 40 });
  });
});

describe("a section", () => {
  test("the step of 30 × 12 stands flat against the wall: 12 out, 30 high, raked by hand", async () => {
    const step = bench.path("step.svg");
    // Far edge at the wall: the lower end of the stick is its far edge, where 8 mm of wood is left.
    const raked = await numbersOf(step, "--slope", "30");
    expect(raked.projectionMm).toBeCloseTo(12, 6);
    expect(raked.levelHeightMm).toBeCloseTo(30, 6);
    // The top front corner (12, 30) comes to 30 cos 30° + 12 sin 30°; the lowest stays at the wall (0, 0).
    expect(raked.rakeHeightMm).toBeCloseTo(30 * Math.cos(Math.PI / 6) + 6, 6);
    expect(raked.upperReturnHeightMm).toBeCloseTo(30 + 24 * Math.tan(Math.PI / 6), 6);
  });

  test("the run at the wall gives both lengths of the rake", async () => {
    const raked = await numbersOf(bench.path("step.svg"), "--slope", "30", "--run", "300");
    expect(raked.rakeBackMm).toBeCloseTo(300 / Math.cos(Math.PI / 6), 6);
    expect(raked.rakeFrontMm).toBeCloseTo(324 / Math.cos(Math.PI / 6), 6);
  });

  test("the spring comes from the section's own bevel, unless another is given", async () => {
    const own = await runHere(["rake", CORNICE, "--slope", "20"], { columns: 110 });
    expect(own.out.replace(/\s+/g, " ")).toContain("the back 38° from it (from the bevel at that edge)");
    const given = await runHere(["rake", CORNICE, "--slope", "20", "--spring", "40"], { columns: 110 });
    expect(given.out.replace(/\s+/g, " ")).toContain("the back 40° from it (as given)");
  });
});

test("the broken pediment, end to end: sections raked, written, planned with the shelf, cut again", async () => {
  const folder = bench.path("pediment");
  const picture = bench.path("pediment.svg");
  const words = [
    "rake",
    CORNICE,
    "--slope",
    "22.5",
    "--run",
    "300",
    "--sections",
    folder,
    "--picture",
    picture,
  ];
  expect(await runHere(words)).toMatchObject({ code: 0 });
  expect(await bench.names()).toEqual(
    expect.arrayContaining([
      "pediment.svg",
      "pediment/level.svg",
      "pediment/rake.svg",
      "pediment/upper-return.svg",
    ]),
  );
  const rake = bench.path("pediment/rake.svg");
  const plan = bench.path("rake-plan.json");
  const planned = await runHere(["plan", rake, "--shelf", SHELF, "--out", plan]);
  // A shelf without the ovals' own planes may leave something uncut; it must then say so, and not claim a whole plan.
  expect(planned.code === 0 || (planned.code === 1 && /uncut|stays/i.test(planned.out))).toBe(true);
  expect((await runHere(["recut", plan])).code).toBe(0);
}, 180_000);
