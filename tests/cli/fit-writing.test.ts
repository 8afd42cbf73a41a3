/** Pictures and help of the fitting commands: written whole or not at all, never over another file unasked. */
import { mkdir } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { FIT_COMMANDS } from "../../packages/cli/src/fit-help.ts";
import { type Bench, newBench, runHere } from "./run.ts";

const example = (name: string): string => fileURLToPath(new URL(`../../examples/${name}`, import.meta.url));

const ASKED: readonly (readonly [string, readonly string[]])[] = [
  ["mitre", ["--spring", "38", "--corner", "90"]],
  ["hopper", ["--sides", "4", "--slope", "60"]],
  ["unlike", ["--first", "54x50", "--second", "30x50", "--spring", "38", "--corner", "90"]],
  ["frame", ["--sight", "300x400", "--width", "30"]],
  ["hip", ["--slope", "30"]],
  [
    "side",
    ["--timber", "black cherry", "--sawn", "flat", "--depth", "380", "--fitted", "9", "--driest", "6"].concat(
      ["--wettest", "12"],
    ),
  ],
  ["timber", ["black", "cherry"]],
  ["cornice", [example("fit/cabinet-cornice.json"), "--section", example("cornice.json")]],
  ["rake", [example("cornice.json"), "--slope", "22.5"]],
  ["rake", ["--slope", "22.5", "--projection", "25", "--height", "25"]],
  ["movement", ["--timber", "black cherry", "--width", "60", "--from", "12", "--to", "6", "--sawn", "flat"]],
  ["moisture", ["--temperature", "21", "--humidity", "50"]],
  ["stick", [example("cornice.json"), "--length", "1355"]],
  ["light", [example("cornice.json")]],
  ["light", [example("pilaster.json"), "--run", "upright", "--against", example("plinth.json")]],
  ["lengths", [example("fit/barometer-lengths.json")]],
];

let bench: Bench;
beforeAll(async () => {
  bench = await newBench();
});
afterAll(() => bench.clear());

describe.each(ASKED)("%s %j", (command, words) => {
  test("one JSON value on the paper, whatever is asked beside it", async () => {
    const { code, out } = await runHere([
      command,
      ...words,
      "--json",
      "--picture",
      bench.path("beside.svg"),
      "--force",
    ]);
    expect(code).toBe(0);
    const value = JSON.parse(out) as Record<string, unknown>;
    for (const key of ["warnings", "assumed", "cautions"]) expect(value[key]).toBeInstanceOf(Array);
    expect(out).not.toContain("NaN");
  });

  test("a picture is written once, kept on the second try, replaced when told", async () => {
    const name = `${command}-${words.length}.svg`;
    const asked = [command, ...words, "--picture", bench.path(name)];
    const first = await runHere(asked);
    expect(first.code).toBe(0);
    expect(first.out).toContain(`The picture stands in ${bench.path(name)}`);
    const drawn = await bench.read(name);
    expect(drawn).toMatch(/^<\?xml[\s\S]*<svg [\s\S]*<\/svg>\n$/);
    await bench.put(name, "mine");
    const second = await runHere(asked);
    expect(second.code).toBe(3);
    expect(second.out).not.toContain("The picture stands");
    expect(await bench.read(name)).toBe("mine");
    expect((await runHere([...asked, "--force"])).code).toBe(0);
    expect(await bench.read(name)).toBe(drawn);
  });

  test("no line of words is wider than the paper, and inches are understood", async () => {
    const { code, out } = await runHere([command, ...words, "--unit", "in"], { columns: 60 });
    expect(code).toBe(0);
    for (const line of out.split("\n")) expect([...line].length).toBeLessThanOrEqual(60);
  });

  test("an interrupt before the writing leaves nothing", async () => {
    const stopped = AbortSignal.abort();
    const path = bench.path("stopped.svg");
    const ran = await runHere([command, ...words, "--picture", path], { interrupted: stopped });
    expect(ran.code).toBe(130);
    expect(await bench.names()).not.toContain("stopped.svg");
  });
});

test("all files of one answer or none", async () => {
  await mkdir(bench.path("ped"));
  await bench.put("ped/upper-return.svg", "mine");
  const words = ["rake", example("cornice.json"), "--slope", "20", "--sections", bench.path("ped")];
  const ran = await runHere([...words, "--picture", bench.path("ped.svg")]);
  expect(ran.code).toBe(3);
  const names = await bench.names();
  expect(names.filter((name) => name.startsWith("ped"))).toEqual(["ped", "ped/upper-return.svg"]);
});

test("what was read is never written over, even when told", async () => {
  const content = {
    format: "mouldwright/lengths",
    version: 1,
    name: "x",
    runs: [{ name: "R", pieces: [{ lengthMm: 100 }] }],
    sticks: [{ lengthMm: 900 }],
  };
  const job = await bench.put("job.json", JSON.stringify(content));
  const before = await bench.read("job.json");
  const ran = await runHere(["lengths", job, "--picture", job, "--force"]);
  expect(ran.code).toBe(3);
  expect(await bench.read("job.json")).toBe(before);
});

test.each(FIT_COMMANDS)("%s --help shows its options and is no wider than 100", async (command) => {
  const { code, out } = await runHere([command, "--help"]);
  expect(code).toBe(0);
  for (const option of ["--json", "--picture", "--force", "--unit"]) expect(out).toContain(option);
  for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(100);
});
