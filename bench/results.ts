/** What one run of the bench measured, kept per machine, and two such results held against each other. */
import { createHash } from "node:crypto";
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { arch, cpus, hostname, platform } from "node:os";
import { fileURLToPath } from "node:url";
import { hasDoubled, type Ratio } from "./judge.ts";

export interface Figure {
  /** What is measured, and of what: `plan cornice`. Never renamed, so that years can be compared. */
  readonly name: string;
  readonly medianMs: number;
  readonly p95Ms: number;
  readonly runs: number;
  /** Median divided by that of the yardstick run beside it. */
  readonly yardsticks: number;
  /** Most memory that the process held, MB, where it had a process of its own. */
  readonly peakMb?: number;
}

export interface BenchResult {
  readonly at: string;
  readonly machine: string;
  readonly node: string;
  readonly yardstickMs: number;
  readonly figures: readonly Figure[];
  /** Least times for the gate of continuous integration (gate.ts), in yardsticks; only in a baseline. */
  readonly gate?: readonly Ratio[];
}

const RESULTS = new URL("results/", import.meta.url);
/** The result that others are held against, committed; the figures of README.md are its own. */
export const BASELINE = new URL("baseline.json", import.meta.url);

/** Cores and kind of processor; the name of the machine stays out of it. */
export function machineClass(): string {
  const all = cpus();
  return `${all.length} cores, ${all[0]?.model.trim() ?? "unknown processor"}, ${platform()} ${arch()}`;
}

/** Where this machine keeps its results: one folder each, so that nobody compares one machine with another unawares. */
function machineFolder(): URL {
  const mark = createHash("sha256").update(`${hostname()} ${machineClass()}`).digest("hex").slice(0, 12);
  return new URL(`${mark}/`, RESULTS);
}

/** Keeps a result beside the earlier ones of this machine, and as its latest. Gives the path of the file. */
export function keep(result: BenchResult): string {
  const folder = machineFolder();
  mkdirSync(folder, { recursive: true });
  const text = `${JSON.stringify(result, null, 2)}\n`;
  const file = new URL(`${result.at.replace(/[:.]/g, "-")}.json`, folder);
  writeFileSync(file, text);
  writeFileSync(new URL("latest.json", folder), text);
  return fileURLToPath(file);
}

export function readResult(path: string | URL): BenchResult {
  return JSON.parse(readFileSync(path, "utf8")) as BenchResult;
}

export interface Compared {
  readonly name: string;
  readonly before: number;
  readonly now: number;
  /** Now divided by before, both in yardsticks. */
  readonly ratio: number;
  readonly hasDoubled: boolean;
}

/** Figures of two results by name, in yardsticks, so that the two need not come from one machine. */
export function compare(before: BenchResult, now: BenchResult): readonly Compared[] {
  const known = new Map(before.figures.map((figure) => [figure.name, figure.yardsticks]));
  return now.figures.flatMap(({ name, yardsticks }) => {
    const earlier = known.get(name);
    if (earlier === undefined) return [];
    const ratio = yardsticks / earlier;
    return [{ name, before: earlier, now: yardsticks, ratio, hasDoubled: hasDoubled(earlier, yardsticks) }];
  });
}
