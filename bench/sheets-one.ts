/** Makes the whole set of sheets of a job of 30 cuts in a process of its own, so that its memory is its own too. */
import { readFileSync } from "node:fs";
import { type Plan, type PlanCut, readPlan } from "../packages/core/src/cutting/index.ts";
import { sheetPages } from "../packages/core/src/sheets/index.ts";
import { writePdf } from "../packages/pdf/src/index.ts";
import { nodeFonts } from "../packages/pdf/src/node-fonts.ts";
import { EXAMPLES } from "../scripts/example-files.ts";
import { yardstickTimeMs } from "./timing.ts";

export interface SheetsMade {
  readonly cuts: number;
  readonly pages: number;
  readonly kilobytes: number;
  /** From the plan to the bytes, the first time in a process that was only just started. */
  readonly madeMs: number;
  readonly yardsticks: number;
  readonly peakMb: number;
  readonly beforeMb: number;
}

const CUTS = 30;

/** The cornice's cuts one after the other until there are 30, each with its marks: as long a card as any maker has. */
function longPlan(plan: Plan): Plan {
  const cuts: PlanCut[] = [];
  const marks = [...plan.marks];
  for (let number = 1; number <= CUTS; number++) {
    const cut = plan.cuts[(number - 1) % plan.cuts.length] as PlanCut;
    cuts.push({ ...cut, number });
    if (number <= plan.cuts.length) continue;
    for (const mark of plan.marks) {
      if (mark.before === cut.number) marks.push({ ...mark, id: `${mark.id}-${number}`, before: number });
    }
  }
  return { ...plan, cuts, marks };
}

const stored = readPlan(readFileSync(new URL("cornice/plan.json", EXAMPLES), "utf8"));
if (!stored.ok) throw new Error(stored.trouble.code);
const plan = longPlan(stored.value);
const beforeMb = process.resourceUsage().maxRSS / 1024;
const yardstickMs = yardstickTimeMs();
const startedMs = performance.now();
const pages = sheetPages(plan, { unit: "mm" });
if (!pages.ok) throw new Error(pages.trouble.code);
const bytes = await writePdf(pages.value, { title: plan.name, fonts: await nodeFonts() });
const madeMs = performance.now() - startedMs;
const made: SheetsMade = {
  cuts: plan.cuts.length,
  pages: pages.value.length,
  kilobytes: bytes.length / 1024,
  madeMs,
  yardsticks: madeMs / yardstickMs,
  peakMb: process.resourceUsage().maxRSS / 1024,
  beforeMb,
};
process.stdout.write(JSON.stringify(made));
