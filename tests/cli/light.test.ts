/** Light on a moulding as it is asked for on the command line. */
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Bench, newBench, runHere, STEP_SVG } from "./run.ts";

const example = (name: string): string => fileURLToPath(new URL(`../../examples/${name}`, import.meta.url));

let bench: Bench;
beforeAll(async () => {
  bench = await newBench();
  await bench.put("step.svg", STEP_SVG);
});
afterAll(() => bench.clear());

interface Numbers {
  readonly lamp: { readonly trueHeightDeg: number };
  readonly versions: readonly {
    readonly name: string;
    readonly hanging: Readonly<Record<string, unknown>>;
    readonly widthMm: number;
    readonly lightMm: number;
    readonly shadeMm: number;
    readonly shadowMm: number;
    readonly stretches: readonly { readonly state: string; readonly showsMm: number }[];
  }[];
}

async function numbersOf(...words: readonly string[]): Promise<Numbers> {
  const ran = await runHere(["light", ...words, "--json"]);
  expect(ran.code).toBe(0);
  return JSON.parse(ran.out) as Numbers;
}

const flat = (text: string): string => text.replace(/\s+/g, " ");

test("a step 4 mm deep, the gauge edge up: 4 mm of shadow by the drawing board's light", async () => {
  // Gwilt, Encyclopaedia of Architecture, art. 2460: a shadow is as deep as what casts it stands out.
  const { lamp, versions } = await numbersOf(bench.path("step.svg"));
  expect(lamp.trueHeightDeg).toBeCloseTo(35.2643897, 6);
  expect(versions[0]).toMatchObject({ widthMm: 30 });
  expect(versions[0]?.shadowMm).toBeCloseTo(4, 9);
  expect(versions[0]?.lightMm).toBeCloseTo(26, 9);
});

test("a lower lamp, an upright run, the other edge first", async () => {
  const step = bench.path("step.svg");
  const shadow = async (...words: readonly string[]): Promise<number> =>
    (await numbersOf(step, ...words)).versions[0]?.shadowMm ?? Number.NaN;
  expect(await shadow("--height", "20")).toBeCloseTo(4 * Math.tan(Math.PI / 9), 9);
  expect(await shadow("--height=-20")).toBe(0);
  expect(await shadow("--run", "upright", "--direction", "60", "--height", "10")).toBeCloseTo(
    4 * Math.sqrt(3),
    9,
  );
  expect(await shadow("--run", "upright", "--direction=-60")).toBe(0);
  expect(await shadow("--first", "far")).toBe(0);
});

test("a cornice hangs by its own bevel unless it is told otherwise", async () => {
  const own = await numbersOf(example("cornice.json"));
  expect(own.versions[0]?.hanging).toEqual({
    run: "level",
    firstEdge: "gauge edge",
    springFromWallDeg: 38,
  });
  const told = await numbersOf(example("cornice.json"), "--spring", "50", "--from", "ceiling");
  expect(told.versions[0]?.hanging.springFromWallDeg).toBeCloseTo(40, 9);
  const { out } = await runHere(["light", example("cornice.json")]);
  expect(flat(out)).toContain("gauge edge up, back 38° from the wall (from the bevel at that edge)");
});

test("widths of light, shade and shadow make up what shows", async () => {
  for (const name of ["cornice", "plinth", "glazing-bar", "barometer-frame", "pilaster"]) {
    const { versions } = await numbersOf(example(`${name}.json`), "--height", "30");
    const { widthMm = 0, lightMm = 0, shadeMm = 0, shadowMm = 0, stretches = [] } = versions[0] ?? {};
    expect(lightMm + shadeMm + shadowMm).toBeCloseTo(widthMm, 5);
    expect(stretches.reduce((sum, { showsMm }) => sum + showsMm, 0)).toBeCloseTo(widthMm, 5);
  }
});

describe("two sections", () => {
  test("are told apart and compared", async () => {
    const words = ["light", example("plinth.json"), "--first", "gauge", "--against", example("cornice.json")];
    const ran = await runHere([...words, "--picture", bench.path("two.svg")]);
    expect(ran).toMatchObject({ code: 0, err: "" });
    expect(flat(ran.out)).toMatch(/Against the first, Chart cabinet: cornice shows .* mm less in the light/);
    const drawn = await bench.read("two.svg");
    expect(drawn).toContain("In the same light");
    expect(drawn.match(/data-role="strip"/g)).toHaveLength(2);
  });

  test("of one name are told apart by their files", async () => {
    await bench.put("step-b.svg", STEP_SVG.replace("V4 H20", "V2 H20").replaceAll("step", "step-b"));
    const first = bench.path("step.svg");
    const { versions } = await numbersOf(first, "--against", first);
    expect(versions.map(({ name }) => name)).toEqual([
      expect.stringContaining("step.svg"),
      expect.stringContaining("step.svg"),
    ]);
    const other = await numbersOf(first, "--against", bench.path("step-b.svg"));
    expect(other.versions[1]?.shadowMm).toBeCloseTo(2, 9);
  });

  test("a picture over the second one is refused", async () => {
    const before = await bench.read("step.svg");
    const words = ["light", example("plinth.json"), "--against", bench.path("step.svg")];
    const ran = await runHere([...words, "--picture", bench.path("step.svg"), "--force"]);
    expect(ran.code).toBe(3);
    expect(await bench.read("step.svg")).toBe(before);
  });
});

describe("refused by name, with what to do", () => {
  const step = (): string => bench.path("step.svg");
  test.each<[string, () => readonly string[], readonly string[]]>([
    ["no file", () => [], ["a section file or a job"]],
    ["two files", () => [step(), "b.svg"], ["“b.svg” is one name more"]],
    ["a lamp behind the wall", () => [step(), "--direction", "120"], ["direction is 120°", "89°"]],
    [
      "a lamp straight above",
      () => [step(), "--height", "90"],
      ["height is 90°", "less than nought is from below"],
    ],
    ["a height of words", () => [step(), "--height", "noon"], ["“noon” of --height", "degrees"]],
    ["more than all the light", () => [step(), "--ambient", "140"], ["140 %", "from 0 to 100 %"]],
    ["a run askew", () => [step(), "--run", "raking"], ["“raking” of --run", "level or upright"]],
    ["an edge that is none", () => [step(), "--first", "top"], ["“top” of --first", "gauge or far"]],
    ["an upright cornice", () => [step(), "--run", "upright", "--spring", "38"], ["--spring", "--run level"]],
    ["a spring past the ceiling", () => [step(), "--spring", "120"], ["120°"]],
    ["no second section", () => [step(), "--against", bench.path("none.svg")], ["none.svg"]],
    ["an option misspelt", () => [step(), "--hieght", "45"], ["Was --height meant?"]],
  ])("%s", async (_, words, said) => {
    const picture = bench.path("refused.svg");
    const ran = await runHere(["light", ...words(), "--picture", picture]);
    expect(ran).toMatchObject({ code: 2, out: "" });
    for (const text of said) expect(flat(ran.err)).toContain(text);
    expect(await bench.names()).not.toContain("refused.svg");
  });
});
