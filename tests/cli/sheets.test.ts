/** `sheets` and `export` as they are typed: what they write, what they refuse, and that nothing is written by halves. */
import { chmod, mkdir, readdir, readFile, symlink, writeFile } from "node:fs/promises";
import { fileURLToPath } from "node:url";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { readPdf } from "../sheets/tools.ts";
import { type Bench, newBench, runHere } from "./run.ts";

const example = (name: string): string => fileURLToPath(new URL(`../../examples/${name}`, import.meta.url));
const PLAN = example("cavetto/plan.json");

let bench: Bench;
beforeAll(async () => {
  bench = await newBench();
});
afterAll(() => bench.clear());

describe("sheets", () => {
  test("from a plan: a PDF with the pages that are told, the same bytes the second time", async () => {
    const out = bench.path("cavetto.pdf");
    const first = await runHere(["sheets", PLAN, "--out", out]);
    expect(first).toMatchObject({ code: 0, err: "" });
    expect(`${first.out.replace(/\s+/g, " ").trim()}\n`).toMatch(
      /^\d+ pages stand in .*cavetto\.pdf: bench 1-\d+, ends \d.*, lesson \d+-\d+\n$/,
    );
    const bytes = await readFile(out);
    expect(bytes.subarray(0, 5).toString()).toBe("%PDF-");
    const again = await runHere(["sheets", PLAN, "--out", out, "--force"]);
    expect(again.code).toBe(0);
    expect((await readFile(out)).equals(bytes)).toBe(true);
  });

  test("from a plan in another unit: its sentences stay as they were written, and that is said", async () => {
    const ran = await runHere(["sheets", PLAN, "--out", bench.path("millimetres.pdf"), "--unit", "mm"]);
    expect(ran.code).toBe(0);
    expect(ran.err.replace(/\s+/g, " ")).toContain(
      "The sentences of this plan were written in inches and stay so; all figures beside them are in millimetres.",
    );
  });

  test("from a job: planned first, in its own unit; pages, paper and pieces as asked", async () => {
    const out = bench.path("job.pdf");
    const words = ["--pages", "fit,story", "--paper", "letter", "--length", "800 mm", "--unit", "in"];
    const rod = ["--lengths", example("fit/barometer-lengths.json"), "--date", "12 March"];
    const ran = await runHere(["sheets", example("cavetto.json"), "--out", out, ...words, ...rod]);
    expect(ran.code).toBe(0);
    expect(ran.out.replace(/\s+/g, " ").trim()).toMatch(/story 1-2, fit 3-\d$/);
  });

  test("a run round the office is drawn on the fit sheet, its scribes at full size on a page of their own", async () => {
    const out = bench.path("run.pdf");
    const words = ["--pages", "fit", "--cornice", example("fit/office-plinth.json"), "--wall", "gauge"];
    const alone = await runHere([
      "sheets",
      example("plinth/plan.json"),
      "--out",
      bench.path("alone.pdf"),
      "--pages",
      "fit",
    ]);
    const ran = await runHere(["sheets", example("plinth/plan.json"), "--out", out, ...words]);
    expect([alone.code, ran.code]).toEqual([0, 0]);
    const count = (said: string): number => Number(/^(\d+) pages/.exec(said)?.[1]);
    expect(count(ran.out)).toBeGreaterThan(count(alone.out));
    const text = readPdf("pdftotext", await readFile(out), ["-enc", "UTF-8"], ["-"]).toString("utf8");
    expect(text).toMatch(/Fit, full size/);
    expect(text).toMatch(/scribes, full size/);
    expect(text).toMatch(/print at 100 %, measure this bar/);
  });

  test("a plan that leaves wood uncut is printed, and ends with 1", async () => {
    const out = bench.path("impossible.pdf");
    expect((await runHere(["sheets", example("impossible/plan.json"), "--out", out])).code).toBe(1);
    expect((await readFile(out)).length).toBeGreaterThan(10_000);
  });

  test.each([
    ["no file", [], ["needs a job or a plan"]],
    ["no place", [PLAN], ["--out is missing"]],
    ["a place that is no PDF", [PLAN, "--out", "card.txt"], ["“card.txt” of --out", "ends in .pdf"]],
    [
      "a sheet that does not exist",
      [PLAN, "--out", "a.pdf", "--pages", "bench,ogee"],
      ["bench,ogee", "lesson"],
    ],
    [
      "a paper that does not exist",
      [PLAN, "--out", "a.pdf", "--paper", "a5"],
      ["“a5” of --paper", "tabloid"],
    ],
    ["a correction of words", [PLAN, "--out", "a.pdf", "--correct", "too big"], ["--correct", "100.4x99.8"]],
    [
      "a correction of one side",
      [PLAN, "--out", "a.pdf", "--correct", "100.4"],
      ["--correct", "across x up"],
    ],
    ["a correction beyond reason", [PLAN, "--out", "a.pdf", "--correct", "100x89"], ["89 mm", "100 %"]],
    ["a correction in the other direction", [PLAN, "--out", "a.pdf", "--correct", "111x100"], ["111 mm"]],
    ["a plan that is missing", ["gone.json", "--out", "a.pdf"], ["gone.json"]],
    ["a length of nothing", [PLAN, "--out", "a.pdf", "--length", "0"], ["--length"]],
    ["a run that is missing", [PLAN, "--out", "a.pdf", "--cornice", "gone.json"], ["gone.json"]],
    ["a run of another kind", [PLAN, "--out", "a.pdf", "--cornice", PLAN], ["plan.json"]],
    ["pieces that are missing", [PLAN, "--out", "a.pdf", "--lengths", "gone.json"], ["gone.json"]],
  ] as const)("%s is refused, and nothing is written", async (_, words, said) => {
    const folder = await emptyFolder();
    const inFolder = words.map((word) => (/^(a\.pdf|card\.txt)$/.test(word) ? `${folder}/${word}` : word));
    const ran = await runHere(["sheets", ...inFolder]);
    expect(ran.code).toBe(2);
    const complaint = ran.err.replace(/\s+/g, " ").replaceAll(`${folder}/`, "");
    for (const part of said) expect(complaint).toContain(part);
    expect(ran.err).not.toMatch(/\bat .*:\d+:\d+|NaN|undefined/);
    expect(await readdir(folder)).toEqual([]);
  });

  test("files that are broken or of another kind are refused by name", async () => {
    const broken = bench.path("broken.json");
    await writeFile(broken, '{ "format": "mouldwright/plan", "version": 1, "cuts": [');
    const newer = bench.path("newer.json");
    await writeFile(newer, '{ "format": "mouldwright/plan", "version": 99 }');
    for (const file of [broken, newer, example("shelves/full.json")]) {
      const ran = await runHere(["sheets", file, "--out", bench.path("never.pdf")]);
      expect(ran.code).toBe(2);
      expect(ran.err).toContain(file.split("/").at(-1));
    }
    expect(await readdir(bench.path("."))).not.toContain("never.pdf");
  });

  test("a section wider than any piecing allows is refused with its size", async () => {
    const plan = JSON.parse(await readFile(PLAN, "utf8")) as Record<string, unknown>;
    const wide = [
      [0, 0],
      [4000, 0],
      [4000, 20],
      [0, 20],
    ];
    const file = bench.path("wide.json");
    await writeFile(
      file,
      JSON.stringify({
        ...plan,
        stick: wide,
        section: wide,
        planned: wide,
        cuts: [],
        marks: [],
        parts: [],
        uncut: [],
      }),
    );
    const ran = await runHere(["sheets", file, "--out", bench.path("wide.pdf"), "--pages", "ends"]);
    expect(ran.code).toBe(2);
    expect(ran.err.replace(/\s+/g, " ")).toMatch(/4\d\d\d(\.\d)? mm × .* sheets of A4 .* 12 are the most/);
    expect(await readdir(bench.path("."))).not.toContain("wide.pdf");
  });

  test("a file that stands there, a missing folder, the plan itself and a locked folder are left alone", async () => {
    const folder = await emptyFolder();
    const standing = `${folder}/standing.pdf`;
    await writeFile(standing, "mine");
    const copied = `${folder}/plan.pdf`;
    await symlink(PLAN, copied);
    const locked = `${folder}/locked`;
    await mkdir(locked);
    await chmod(locked, 0o500);
    const isRoot = process.getuid?.() === 0;
    for (const [out, said] of [
      [standing, "stands there already"],
      [`${folder}/none/a.pdf`, "does not exist"],
      ...(isRoot ? [] : [[`${locked}/a.pdf`, "may not"]]),
    ] as const) {
      const ran = await runHere(["sheets", PLAN, "--out", out ?? ""]);
      expect(ran.code).toBe(3);
      expect(ran.err.replace(/\s+/g, " ")).toContain(said);
    }
    expect((await runHere(["sheets", PLAN, "--out", copied, "--force"])).code).toBe(3);
    expect(await readFile(standing, "utf8")).toBe("mine");
    expect((await readdir(folder)).sort()).toEqual(["locked", "plan.pdf", "standing.pdf"]);
  });

  test("interrupted before the writing, nothing stands there", async () => {
    const folder = await emptyFolder();
    const ran = await runHere(["sheets", PLAN, "--out", `${folder}/a.pdf`], {
      interrupted: AbortSignal.abort(),
    });
    expect(ran.code).toBe(130);
    expect(await readdir(folder)).toEqual([]);
  });
});

describe("export", () => {
  test("all three kinds at once, each where it was asked for", async () => {
    const folder = await emptyFolder();
    const words = ["--svg", `${folder}/c.svg`, "--dxf", `${folder}/c.dxf`, "--stl", `${folder}/solids`];
    const ran = await runHere(["export", example("cornice/plan.json"), ...words, "--length", "50"]);
    expect(ran).toMatchObject({ code: 0, err: "" });
    expect((await readdir(folder)).sort()).toEqual(["c.dxf", "c.svg", "solids"]);
    expect((await readdir(`${folder}/solids`)).sort()).toEqual([
      "chart-cabinet-cornice-depth-gauge.stl",
      "chart-cabinet-cornice-moulding.stl",
      "chart-cabinet-cornice-sanding-block.stl",
    ]);
    expect(ran.out).toContain("tongues, from left to right");
    expect(await readFile(`${folder}/c.dxf`, "utf8")).toContain("CENTRE LINES");
    const again = await runHere(["export", example("cornice/plan.json"), ...words]);
    expect(again.code).toBe(3);
  });

  test("a moulding without depths has no gauge, and that is only noted", async () => {
    const folder = await emptyFolder();
    const ran = await runHere(["export", example("pilaster/plan.json"), "--stl", folder]);
    expect(ran.code).toBe(0);
    expect(ran.err.replace(/\s+/g, " ")).toContain("no depth measured from the face");
    expect(await readdir(folder)).toHaveLength(2);
  });

  test.each([
    ["nothing asked for", [PLAN], ["--svg, --dxf or --stl is missing"]],
    ["one place for two files", [PLAN, "--svg", "a.svg", "--dxf", "a.svg"], ["a.svg"]],
    ["a length of nothing", [PLAN, "--stl", "solids", "--length", "0"], ["--length"]],
    ["a plan that is missing", ["gone.json", "--dxf", "a.dxf"], ["gone.json"]],
  ] as const)("%s is refused, and nothing is written", async (_, words, said) => {
    const folder = await emptyFolder();
    const inFolder = words.map((word) =>
      /^(a\.svg|a\.dxf|solids)$/.test(word) ? `${folder}/${word}` : word,
    );
    const ran = await runHere(["export", ...inFolder]);
    expect(ran.code).toBeGreaterThan(1);
    for (const part of said) expect(ran.err.replace(/\s+/g, " ")).toContain(part);
    expect(await readdir(folder)).toEqual([]);
  });
});

let folders = 0;
async function emptyFolder(): Promise<string> {
  folders += 1;
  const folder = bench.path(`folder-${folders}`);
  await mkdir(folder);
  return folder;
}
