/**
 * The gate of continuous integration: a few figures, each beside the yardstick, held against the ratios stored in
 * baseline.json. It fails where a figure has doubled, and only when it has doubled again on being measured anew.
 */
import { readFileSync } from "node:fs";
import { recutPlan } from "../packages/core/src/cutting/index.ts";
import { planRequestOf } from "../packages/core/src/job/index.ts";
import { planSection } from "../packages/core/src/planning/index.ts";
import { readSectionFile } from "../packages/core/src/section/index.ts";
import { readShelf } from "../packages/core/src/shelf/index.ts";
import { EXAMPLES, planOfExample, readExample } from "../scripts/example-files.ts";
import { sectionOfParts } from "./growing.ts";
import { doubtful, isPassed, type Ratio, type Verdict, verdicts } from "./judge.ts";
import { movedSections } from "./moved.ts";
import { leastBeside } from "./timing.ts";

/** What is run for a figure. Names are never changed: stored ratios go by them. */
interface Work {
  readonly name: string;
  readonly run: () => unknown;
}

/** Moved sections that are planned for one run of a re-plan: different vertices, so that no luck decides. */
const MOVED = 8;
const GROWN_PARTS = 8;

function works(): readonly Work[] {
  const shelf = readShelf(readFileSync(new URL("shelves/full.json", EXAMPLES), "utf8"));
  if (!shelf.ok) throw new Error(shelf.trouble.code);
  const ogee = readExample("cyma-recta");
  const cornice = readExample("cornice");
  const cornicePlan = planOfExample(cornice);
  const drawing = readFileSync(new URL("cornice/section.svg", EXAMPLES), "utf8");
  const grown = sectionOfParts(GROWN_PARTS);
  const moved = movedSections(ogee.section, MOVED);
  return [
    {
      name: "read cornice",
      run: () => repeated(20, () => readSectionFile({ fileName: "cornice.svg", text: drawing })),
    },
    { name: "plan cyma-recta", run: () => planOfExample(ogee) },
    { name: "plan cornice", run: () => planOfExample(cornice) },
    {
      name: `re-plan cyma-recta, ${MOVED} times`,
      run: () => {
        for (const section of moved) planSection(planRequestOf(ogee.job, section, ogee.shelf));
      },
    },
    { name: "re-cut cornice", run: () => recutPlan(cornicePlan) },
    { name: `grow ${GROWN_PARTS}`, run: () => planSection({ section: grown, shelf: shelf.value }) },
  ];
}

function repeated(times: number, work: () => unknown): void {
  for (let i = 0; i < times; i++) work();
}

/** Each figure is run this often, or until this is spent on it, ms; at least twice. */
const ROUNDS = 9;
const BUDGET_MS = 4000;

/** The ratios of this machine as it is now; some 20 seconds on two cores. */
export function gateRatios(only?: readonly string[]): readonly Ratio[] {
  return works()
    .filter(({ name }) => only === undefined || only.includes(name))
    .map(({ name, run }) => ({ name, yardsticks: leastBeside(run, { runs: ROUNDS, budgetMs: BUDGET_MS }) }));
}

/** Measures, measures again what seems to have doubled, tells each figure, and gives whether none has. */
export function passesGate(stored: readonly Ratio[], print: (line: string) => void): boolean {
  const measured = gateRatios();
  const doubted = doubtful(stored, measured);
  if (doubted.length > 0) print(`Measured again: ${doubted.join("; ")}`);
  const judged = verdicts(stored, measured, doubted.length > 0 ? gateRatios(doubted) : []);
  for (const verdict of judged) print(verdictLine(verdict));
  return isPassed(judged);
}

function verdictLine(verdict: Verdict): string {
  switch (verdict.kind) {
    case "new":
      return `${verdict.name}: ${verdict.now.toFixed(2)} yardsticks, none stored`;
    case "gone":
      return `${verdict.name}: stored with ${verdict.before.toFixed(2)} yardsticks, measured no longer`;
    default: {
      const { name, kind, before, now } = verdict;
      const told = { held: "", recovered: " on being measured again", doubled: ": DOUBLED" }[kind];
      return `${name}: ${now.toFixed(2)} yardsticks, ${(now / before).toFixed(2)} of the stored ${before.toFixed(2)}${told}`;
    }
  }
}
