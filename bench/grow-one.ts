/** Plans one section of the given number of parts in a process of its own, so that its memory is its own too. */
import { readFileSync } from "node:fs";
import { planSection } from "../packages/core/src/planning/index.ts";
import { readShelf } from "../packages/core/src/shelf/index.ts";
import { EXAMPLES } from "../scripts/example-files.ts";
import { sectionOfParts } from "./growing.ts";
import { timed } from "./timing.ts";

export interface Grown {
  readonly parts: number;
  readonly cuts: number;
  readonly uncut: number;
  readonly planMs: number;
  readonly yardsticks: number;
  /** Most memory the process ever held, MB, and what it held before planning. */
  readonly peakMb: number;
  readonly beforeMb: number;
}

const parts = Number(process.argv[2]);
const shelf = readShelf(readFileSync(new URL("shelves/full.json", EXAMPLES), "utf8"));
if (!shelf.ok) throw new Error(shelf.trouble.code);
const section = sectionOfParts(parts);
// The first plan also pays for the engine's learning; a small section teaches it most of that.
let plan = planSection({ section: sectionOfParts(2), shelf: shelf.value });
const beforeMb = process.resourceUsage().maxRSS / 1024;
const { medianMs, yardsticks } = timed(
  () => {
    plan = planSection({ section, shelf: shelf.value });
  },
  { warmUps: 0, runs: 1, budgetMs: 0 },
);
if (!plan.ok) throw new Error(plan.trouble.code);
const grown: Grown = {
  parts,
  cuts: plan.value.cuts.length,
  uncut: plan.value.uncut.length,
  planMs: medianMs,
  yardsticks,
  peakMb: process.resourceUsage().maxRSS / 1024,
  beforeMb,
};
process.stdout.write(JSON.stringify(grown));
