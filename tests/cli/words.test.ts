import { afterAll, beforeAll, describe, expect, test } from "vitest";
import type { Io } from "../../packages/cli/src/io.ts";
import { main } from "../../packages/cli/src/main.ts";
import { runSteps, type Step } from "../../packages/cli/src/progress.ts";
import { type Bench, newBench, runHere, SHELF_JSON, STEP_SVG } from "./run.ts";

let bench: Bench;
beforeAll(async () => {
  bench = await newBench();
  await bench.put("step.svg", STEP_SVG);
  await bench.put("planes.json", SHELF_JSON);
});
afterAll(() => bench.clear());

describe("help", () => {
  test.each([[], ["plan"], ["recut"], ["section"], ["shelf"]])("%s --help", async (...words) => {
    const ran = await runHere([...words, "--help"]);
    expect(ran).toMatchObject({ code: 0, err: "" });
    expect(ran.out).toContain("mouldwright");
    for (const line of ran.out.split("\n")) expect(line.length).toBeLessThanOrEqual(100);
  });

  test("every option a command takes stands in its help", async () => {
    const known = {
      plan: ["shelf", "stick", "at", "tolerance", "out", "pictures", "json", "unit", "force"],
      section: ["stick", "at", "out", "force", "unit"],
      recut: ["unit"],
      shelf: ["unit"],
    };
    for (const [command, options] of Object.entries(known)) {
      const { out } = await runHere([command, "--help"]);
      for (const option of options) expect(out).toContain(`--${option}`);
    }
  });

  test("the version is that of the package", async () => {
    const ran = await runHere(["--version"]);
    expect(ran).toEqual({ code: 0, out: "mouldwright 0.1.0\n", err: "" });
  });
});

describe("words that do not fit", () => {
  test.each<[string, readonly string[], readonly string[]]>([
    ["no command", [], ["No command was given", "plan, recut, section, shelf, sheets, export, stick"]],
    ["a misspelt command", ["paln"], ["“paln” is no command", "Was “plan” meant?"]],
    ["an option of another command", ["shelf", "x.json", "--stick", "1x1"], ["--stick is not known here"]],
    [
      "a misspelt option",
      ["plan", "x.svg", "--shelff", "y"],
      ["--shelff is not known", "Was --shelf meant?"],
    ],
    ["a value forgotten", ["plan", "x.svg", "--shelf"], ["--shelf needs a value", "--shelf planes.json"]],
    [
      "a value forgotten before another option",
      ["plan", "x.svg", "--shelf", "--json"],
      ["--shelf needs a value"],
    ],
    ["a value where none belongs", ["plan", "x.svg", "--json=yes"], ["--json takes no value"]],
    ["a unit of another trade", ["shelf", "x.json", "--unit", "ft"], ["“ft” of --unit", "mm or in"]],
    ["no file", ["plan"], ["needs a section file or a job"]],
    ["two files", ["shelf", "a.json", "b.json"], ["“b.json” is one name more"]],
    [
      "section without an action",
      ["section", "a.svg"],
      ["“a.svg” is no command", "describe, convert and check"],
    ],
    ["section without a file", ["section", "check"], ["needs a section file"]],
    ["convert without a place", ["section", "convert", "a.svg"], ["--out is missing"]],
    [
      "convert to another kind",
      ["section", "convert", "a.svg", "--out", "a.pdf"],
      ["a.pdf", ".svg and .dxf"],
    ],
    ["describe with a place", ["section", "describe", "a.svg", "--out", "b.svg"], ["--out is not known"]],
    ["a stick of one size", ["plan", "x.svg", "--stick", "42"], ["“42” of --stick", "42x18"]],
    ["a stick of no width", ["plan", "x.svg", "--stick", "0x18"], ["“0x18” of --stick"]],
    ["a stick of words", ["plan", "x.svg", "--stick", "wide x thick"], ["--stick", "wide"]],
    ["a place of one distance", ["plan", "x.svg", "--at", "3"], ["“3” of --at"]],
    [
      "a tolerance finer than the program holds",
      ["plan", "x.svg", "--tolerance", "0.01mm"],
      ["0.02 mm or more"],
    ],
    ["a tolerance of words", ["plan", "x.svg", "--tolerance", "fine"], ["--tolerance", "fine"]],
  ])("%s", async (_, words, said) => {
    const ran = await runHere(words);
    expect(ran).toMatchObject({ code: 2, out: "" });
    for (const text of said) expect(ran.err.replace(/\s+/g, " ")).toContain(text);
  });

  test("a command that steers the terminal is not echoed raw", async () => {
    const ran = await runHere(["\u001b[2Jplan\u009b31m"]);
    expect(ran.code).toBe(2);
    for (const steering of ["\u001b", "\u009b"]) expect(ran.err).not.toContain(steering);
  });
});

test("what is said is wrapped to the columns there are", async () => {
  const narrow = await runHere(["paln"], { columns: 40 });
  for (const line of narrow.err.split("\n")) expect(line.length).toBeLessThanOrEqual(40);
  const wide = await runHere(["paln"], { columns: 110 });
  expect(wide.err.split("\n").length).toBeLessThanOrEqual(narrow.err.split("\n").length);
});

describe("progress of long work", () => {
  /** Steps of `stepMs` each by a clock of its own, and what was complained meanwhile. */
  async function watch(stepMs: number, count: number, isWatched: boolean): Promise<string> {
    let now = 0;
    let said = "";
    function* steps(): Generator<Step, string> {
      for (let done = 1; done <= count; done += 1) {
        now += stepMs;
        yield { done, of: count, says: "finding an order" };
      }
      return "plan";
    }
    const io: Io = {
      print: () => {},
      complain: (text) => {
        said += text;
      },
      columns: 80,
      complaintColumns: 80,
      isWatched,
      interrupted: new AbortController().signal,
      now: () => now,
      breathe: async () => {},
    };
    expect(await runSteps(steps(), io)).toBe("plan");
    return said;
  }

  test("under a second: silence", async () => {
    expect(await watch(10, 99, true)).toBe("");
    expect(await watch(10, 99, false)).toBe("");
  });

  test("longer, and nobody watches: one line", async () => {
    expect((await watch(100, 50, false)).match(/\n/g)).toHaveLength(1);
  });

  test("longer, on a terminal: one line drawn over itself and wiped at the end", async () => {
    const said = await watch(100, 50, true);
    expect(said).not.toContain("\n");
    // First after ten steps of a tenth of a second, then every fifth of a second.
    expect(said).toContain("\r20 %  finding an order\r24 %  finding an order");
    expect(said.endsWith(`\r${" ".repeat("100 %  finding an order".length)}\r`)).toBe(true);
  });
});

test("the program's own fault: 70, the files to keep, no trace of its insides", async () => {
  let said = "";
  const io: Io = {
    print: () => {
      throw new Error("the printer is\n    at fault (print.ts:1:1)");
    },
    complain: (text) => {
      said += text;
    },
    columns: 80,
    complaintColumns: 80,
    isWatched: false,
    interrupted: new AbortController().signal,
    now: () => 0,
    breathe: async () => {},
  };
  expect(await main(["shelf", bench.path("planes.json")], io)).toBe(70);
  expect(said).toMatch(/^Program fault: .*planes\.json/);
  expect(said).toContain("Keep the files");
  expect(said.split("\n").length).toBeLessThanOrEqual(6);
});
