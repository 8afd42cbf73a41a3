/**
 * `npm run bench`: how long planning, re-cutting and planning again take, held against a fixed yardstick run beside
 * them. Nothing here fails for being slow, except on request: `--gate` measures a few figures only and ends with exit
 * code 1 where one has doubled against bench/baseline.json; `--against FILE` compares all of them with a stored result.
 * `--whole` drops the limit on growth and on the number of re-plans, and takes many minutes. `--baseline` writes the
 * result, and the ratios of the gate, to bench/baseline.json.
 */
import { spawnSync } from "node:child_process";
import { existsSync, writeFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { recutPlan, writePlan } from "../packages/core/src/cutting/index.ts";
import { planRequestOf } from "../packages/core/src/job/index.ts";
import { planSection } from "../packages/core/src/planning/index.ts";
import { type Example, exampleNames, planOfExample, readExample } from "../scripts/example-files.ts";
import { gateRatios, passesGate } from "./gate.ts";
import type { Grown } from "./grow-one.ts";
import { PART_COUNTS } from "./growing.ts";
import { movedSections } from "./moved.ts";
import {
  BASELINE,
  type BenchResult,
  compare,
  type Figure,
  keep,
  machineClass,
  readResult,
} from "./results.ts";
import type { SheetsMade } from "./sheets-one.ts";
import { type Timed, timed, yardstickTimeMs } from "./timing.ts";

const { values: asked } = parseArgs({
  options: {
    against: { type: "string" },
    baseline: { type: "boolean", default: false },
    gate: { type: "boolean", default: false },
    whole: { type: "boolean", default: false },
  },
});

if (asked.gate) {
  const stored = readResult(BASELINE).gate ?? [];
  process.exit(passesGate(stored, (line) => console.log(line)) ? 0 : 1);
}

const REPLANS = 100;
/** The simple ogee, a small one and the large cornice. */
const REPLANNED = ["cyma-recta", "low-bead-and-cove", "cornice"];
/** Unless the whole is asked for, the run ends within about three minutes on two cores. */
const REPLAN_BUDGET_MS = asked.whole ? Number.POSITIVE_INFINITY : 45_000;
const GROWTH_BUDGET_MS = asked.whole ? Number.POSITIVE_INFINITY : 40_000;
const EXAMPLE_BUDGET_MS = 3000;
const SECOND_BUDGET_MS = 1200;

const figures: Figure[] = [];

function note(name: string, took: Timed): Timed {
  figures.push({ name, ...took });
  return took;
}

interface SecondRoute {
  readonly examine: (plan: unknown) => readonly unknown[];
}

const secondRouteFile = new URL("../tests/second-route/recut-by-polygons.ts", import.meta.url);
const secondRoute = existsSync(secondRouteFile)
  ? ((await import(secondRouteFile.href)) as SecondRoute)
  : undefined;

function measureExample(example: Example): readonly string[] {
  const plan = planOfExample(example);
  const text = writePlan(plan);
  const json: unknown = JSON.parse(text);
  const budget = { warmUps: 1, budgetMs: EXAMPLE_BUDGET_MS };
  const planned = note(
    `plan ${example.name}`,
    timed(() => planOfExample(example), { ...budget, runs: 7 }),
  );
  const recut = note(
    `re-cut ${example.name}`,
    timed(() => recutPlan(plan), { ...budget, runs: 15 }),
  );
  const second = secondRoute
    ? note(
        `second route ${example.name}`,
        timed(() => secondRoute.examine(json), { warmUps: 0, runs: 3, budgetMs: SECOND_BUDGET_MS }),
      )
    : undefined;
  return [
    example.name,
    String(plan.parts.length),
    String(plan.cuts.length),
    String(plan.cuts.at(-1)?.setting ?? 0),
    (text.length / 1024).toFixed(0),
    planned.medianMs.toFixed(0),
    planned.yardsticks.toFixed(1),
    recut.medianMs.toFixed(0),
    second === undefined ? "-" : `${(second.medianMs / recut.medianMs).toFixed(1)} ×`,
  ];
}

function measureReplanning(name: string): readonly string[] {
  const { job, section, shelf } = readExample(name);
  const moved = movedSections(section, REPLANS);
  // As while a drawing is dragged: the plan before is followed, and held against no others until the finger lifts.
  const before = planSection(planRequestOf(job, section, shelf));
  if (!before.ok) throw new Error(before.trouble.code);
  const quick = (run: number) => ({
    ...planRequestOf(job, moved[run % moved.length] ?? section, shelf),
    quick: true,
    like: before.value,
  });
  const took = timed((run) => planSection(quick(run)), {
    warmUps: 1,
    runs: REPLANS,
    budgetMs: REPLAN_BUDGET_MS,
  });
  note(`re-plan ${name}`, took);
  return [name, String(took.runs), took.medianMs.toFixed(0), took.p95Ms.toFixed(0)];
}

/** Each count in a process of its own. Once one takes longer than may be spent, it and the larger ones are left out. */
function measureGrowth(): readonly (readonly string[])[] {
  const rows: (readonly string[])[] = [];
  for (const parts of PART_COUNTS) {
    const grown = grow(parts);
    if (grown === null) {
      rows.push([String(parts), "", "", `over ${GROWTH_BUDGET_MS}, broken off`, ""]);
      break;
    }
    const { cuts, uncut, planMs, yardsticks, peakMb, beforeMb } = grown;
    figures.push({ name: `grow ${parts}`, medianMs: planMs, p95Ms: planMs, runs: 1, yardsticks, peakMb });
    rows.push([
      String(parts),
      String(cuts),
      String(uncut),
      planMs.toFixed(0),
      `${peakMb.toFixed(0)} (${beforeMb.toFixed(0)})`,
    ]);
  }
  return rows;
}

/** Null if the process had to be ended for taking too long. */
function grow(parts: number): Grown | null {
  const file = fileURLToPath(new URL("grow-one.ts", import.meta.url));
  const ended = spawnSync(process.execPath, ["--import", "tsx", file, String(parts)], {
    encoding: "utf8",
    stdio: ["ignore", "pipe", "inherit"],
    killSignal: "SIGKILL",
    ...(asked.whole ? {} : { timeout: GROWTH_BUDGET_MS }),
  });
  if (ended.signal !== null) return null;
  if (ended.status !== 0) throw new Error(`planning ${parts} parts ended with ${ended.status}`);
  return JSON.parse(ended.stdout) as Grown;
}

/** The whole set of sheets of a job of 30 cuts, three times, each in a process of its own; the middle one. */
function measureSheets(): readonly string[] {
  const file = fileURLToPath(new URL("sheets-one.ts", import.meta.url));
  const runs = Array.from({ length: 3 }, () => {
    const ended = spawnSync(process.execPath, ["--import", "tsx", file], {
      encoding: "utf8",
      stdio: ["ignore", "pipe", "inherit"],
    });
    if (ended.status !== 0) throw new Error(`making the sheets ended with ${ended.status}`);
    return JSON.parse(ended.stdout) as SheetsMade;
  }).sort((a, b) => a.madeMs - b.madeMs);
  const [quickest, middle, slowest] = runs as [SheetsMade, SheetsMade, SheetsMade];
  const { cuts, pages, kilobytes, madeMs, yardsticks, peakMb, beforeMb } = middle;
  figures.push({
    name: "sheets of 30 cuts",
    medianMs: madeMs,
    p95Ms: slowest.madeMs,
    runs: 3,
    yardsticks,
    peakMb,
  });
  return [
    String(cuts),
    String(pages),
    kilobytes.toFixed(0),
    `${madeMs.toFixed(0)} (${quickest.madeMs.toFixed(0)} to ${slowest.madeMs.toFixed(0)})`,
    `${peakMb.toFixed(0)} (${beforeMb.toFixed(0)})`,
  ];
}

function print(title: string, rows: readonly (readonly string[])[]): void {
  const widths = rows[0]?.map((_, column) => Math.max(...rows.map((row) => row[column]?.length ?? 0))) ?? [];
  console.log(`\n${title}`);
  for (const row of rows) {
    console.log(
      row
        .map((cell, i) => (i === 0 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0)))
        .join("  "),
    );
  }
}

const yardstickMs = yardstickTimeMs();
console.log(`${machineClass()}, Node ${process.version}; one yardstick is ${yardstickMs.toFixed(1)} ms`);
print("Examples: medians; the second route's time as a multiple of the re-cut's", [
  [
    "example",
    "parts",
    "cuts",
    "settings",
    "plan kB",
    "plan ms",
    "in yardsticks",
    "re-cut ms",
    "second route",
  ],
  ...exampleNames().map((name) => measureExample(readExample(name))),
]);
print("Planned again as while dragging (quick), one vertex moved by 0.1 mm", [
  ["example", "times", "median ms", "95 in 100 below, ms"],
  ...REPLANNED.map(measureReplanning),
]);
print("Growth: beads and coves in a row, each count planned once", [
  ["parts", "cuts", "uncut", "plan ms", "peak MB (before)"],
  ...measureGrowth(),
]);

print("Sheets for the bench, from the plan to the PDF's bytes", [
  ["cuts", "pages", "kB", "ms", "peak MB (before)"],
  measureSheets(),
]);

const result: BenchResult = {
  at: new Date().toISOString(),
  machine: machineClass(),
  node: process.version,
  yardstickMs,
  figures,
};
console.log(`\nKept in ${keep(result)}`);
if (asked.baseline) {
  const baseline: BenchResult = { ...result, gate: gateRatios() };
  writeFileSync(BASELINE, `${JSON.stringify(baseline, null, 2)}\n`);
}
if (asked.against !== undefined) {
  const rows = compare(readResult(asked.against), result);
  print("Against the stored result, in yardsticks", [
    ["figure", "before", "now", "ratio", ""],
    ...rows.map(({ name, before, now, ratio, hasDoubled }) => [
      name,
      before.toFixed(2),
      now.toFixed(2),
      ratio.toFixed(2),
      hasDoubled ? "DOUBLED" : "",
    ]),
  ]);
  process.exitCode = rows.some(({ hasDoubled }) => hasDoubled) ? 1 : 0;
}
