/**
 * What is committed beside each example job is what the program makes of it today; `npm run examples` renews it.
 * Every plan holds when it is cut again, and the pictures are safe to open.
 */
import { readdirSync, readFileSync } from "node:fs";
import { beforeAll, describe, expect, test } from "vitest";
import { areaMm2 } from "../../packages/core/src/curve/index.ts";
import { readPlan, recutPlan } from "../../packages/core/src/cutting/index.ts";
import { OVERCUT_MM, sayTrouble } from "../../packages/core/src/measure/index.ts";
import { readSectionFile } from "../../packages/core/src/section/index.ts";
import {
  EXAMPLES,
  type ExampleFiles,
  exampleNames,
  filesOfExample,
  readExample,
} from "../../scripts/example-files.ts";
import { examine } from "../second-route/recut-by-polygons.ts";

/** The one section drawn in good faith that planes cannot make. */
const CANNOT_BE_MADE = "impossible";

/** Planning and drawing one example may wait this long on a machine that does much else. */
const MAKING_MS = 60_000;

/** What may change the picture's meaning or reach outside it, and characters no picture holds. */
const UNSAFE = /<script|<foreignObject|<!DOCTYPE|<!ENTITY|\bon[a-z]+=|(?:xlink:)?href=|url\(|@import/i;
// biome-ignore lint/suspicious/noControlCharactersInRegex: they are what is looked for
const CONTROL = /[\u0000-\u0008\u000b-\u001f\u007f-\u009f\u200e\u200f\u202a-\u202e\u2066-\u2069]/;

test("the pieces of the chart cabinet and the first lengths are there", () => {
  expect(exampleNames()).toEqual([
    "barometer-frame",
    "cavetto",
    "cornice",
    "cyma-recta",
    "glazing-bar",
    "impossible",
    "low-bead-and-cove",
    "pilaster",
    "plinth",
    "quarter-ovolo",
  ]);
});

describe.each(exampleNames())("example %s", (name) => {
  let made: ExampleFiles;
  beforeAll(() => {
    made = filesOfExample(readExample(name));
  }, MAKING_MS);

  const folder = new URL(`${name}/`, EXAMPLES);
  const stored = (file: string): string => readFileSync(new URL(file, folder), "utf8");

  test("is committed as it is made today, byte for byte (`npm run examples` renews it)", () => {
    expect(readdirSync(folder).sort()).toEqual([...made.files.keys()].sort());
    const changed = [...made.files].filter(([file, text]) => stored(file) !== text).map(([file]) => file);
    expect(changed).toEqual([]);
  });

  test("has a plan that holds when it is read from its file and cut again, with no overcut", () => {
    const plan = readPlan(stored("plan.json"));
    if (!plan.ok) throw new Error(JSON.stringify(plan.trouble));
    const report = recutPlan(plan.value);
    expect(report.findings.map((finding) => sayTrouble(finding, { unit: "mm" }))).toEqual([]);
    expect(report.cuts.map((cut) => cut.number)).toEqual(plan.value.cuts.map((cut) => cut.number));
    expect(Math.max(...report.cuts.map((cut) => cut.overcutMm))).toBeLessThanOrEqual(OVERCUT_MM);
  });

  test("has a plan that a second route with code of its own cuts again with the same areas, walls, guides and face", () => {
    const found = examine(JSON.parse(stored("plan.json")));
    expect(found).toEqual([]);
  });

  test("leaves nothing uncut, unless it cannot be made: then every place has its rule, its reason and a way out", () => {
    const { uncut } = made.plan;
    if (name !== CANNOT_BE_MADE) {
      expect(uncut).toEqual([]);
      return;
    }
    expect(uncut.length).toBeGreaterThan(0);
    for (const place of uncut) {
      expect(place.rule).not.toBe("");
      expect(place.why).toMatch(/\.$/);
      expect(place.try).toMatch(/\.$/);
    }
  });

  test("has pictures without scripts, links or control characters, and they say their size in millimetres", () => {
    const pictures = [...made.files].filter(([file]) => file.endsWith(".svg"));
    expect(pictures.length).toBe(made.plan.cuts.length + 3);
    for (const [file, text] of pictures) {
      expect(text, file).not.toMatch(UNSAFE);
      expect(text, file).not.toMatch(CONTROL);
      expect(text, file).toMatch(/<svg [^>]*width="[\d.]+(mm|in)"/);
    }
    expect(made.files.get("card.txt")).not.toMatch(CONTROL);
  });

  test("has a drawing that reads back to the section it was written from", () => {
    const read = readSectionFile({ fileName: "section.svg", text: stored("section.svg") });
    if (!read.ok) throw new Error(JSON.stringify(read.trouble));
    const built = readExample(name).section;
    expect(read.value.outline.pieces.length).toBe(built.outline.pieces.length);
    // The drawing holds millionths of a millimetre; over a face of 100 mm that is 1e-4 mm² at most.
    expect(areaMm2(read.value.outline)).toBeCloseTo(areaMm2(built.outline), 4);
  });
});

test("of the impossible one both bad places are named: the sunk fillet and the cove under its lip", () => {
  const { plan } = filesOfExample(readExample(CANNOT_BE_MADE));
  const acrossMm = plan.uncut.flatMap(({ from, to }) => [from[0], to[0]]);
  // By the job's own sizes: a fillet of 10 mm, then the one sunk 2 mm wide; the lip ends at 10 + 2 + 7 mm, and the
  // cove of 6.35 mm that starts there at 160° ends level, its lowest place 6.35 · sin 20° further on.
  const sunk = acrossMm.filter((x) => x >= 10 - OVERCUT_MM && x <= 12 + OVERCUT_MM);
  const cove = acrossMm.filter((x) => x > 14 && x <= 19 + 6.35 * Math.sin(Math.PI / 9) + OVERCUT_MM);
  expect(sunk.length).toBeGreaterThan(0);
  expect(cove.length).toBeGreaterThan(0);
  expect(sunk.length + cove.length).toBe(acrossMm.length);
});
