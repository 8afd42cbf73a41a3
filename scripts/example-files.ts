/** What is committed beside each example job: its drawing, plan, card and pictures, made from the job alone. */
import { readdirSync, readFileSync } from "node:fs";
import { basename } from "node:path";
import { type Plan, writePlan } from "mouldwright/cutting";
import { type Job, planRequestOf, readJob, sectionOfJob, shelfFileOfJob } from "mouldwright/job";
import { type LengthUnit, type Outcome, sayTrouble } from "mouldwright/measure";
import { planSection } from "mouldwright/planning";
import { type Section, writeSvgSection } from "mouldwright/section";
import { benchCardLines, drawCut, drawSection, drawStrip, writeSvg } from "mouldwright/sheets";
import { readShelf, type Shelf } from "mouldwright/shelf";

export const EXAMPLES = new URL("../examples/", import.meta.url);

/** Width of the cards, as on a terminal that does not say its own. */
const CARD_COLUMNS = 80;

export interface Example {
  readonly name: string;
  readonly job: Job;
  readonly section: Section;
  readonly shelf: Shelf;
}

export interface ExampleFiles {
  readonly plan: Plan;
  /** Name in the example's folder → what stands in it. */
  readonly files: ReadonlyMap<string, string>;
}

/** Names of the example jobs, in the alphabet's order. */
export function exampleNames(): readonly string[] {
  return readdirSync(EXAMPLES)
    .filter((file) => file.endsWith(".json"))
    .map((file) => basename(file, ".json"))
    .sort();
}

/** An example read as the command line reads it. Throws with the job's own troubles where it is refused. */
export function readExample(name: string): Example {
  const job = taken(name, readJob(readText(`${name}.json`)));
  const section = taken(name, sectionOfJob(job));
  const shelfFile = shelfFileOfJob(job);
  if (shelfFile === null) throw new Error(`${name}: an example names its shelf's file`);
  const shelf = taken(shelfFile, readShelf(readText(shelfFile)));
  return { name, job, section, shelf };
}

/** Plans an example; throws where it is refused. */
export function planOfExample({ name, job, section, shelf }: Example): Plan {
  return taken(name, planSection(planRequestOf(job, section, shelf)));
}

/** Everything that stands in `examples/<name>/`. The same job gives the same bytes. */
export function filesOfExample(example: Example): ExampleFiles {
  const plan = planOfExample(example);
  const unit: LengthUnit = example.job.unit ?? "mm";
  const files = new Map<string, string>([
    ["section.svg", writeSvgSection(example.section, { unit })],
    ["plan.json", writePlan(plan)],
    ["card.txt", `${benchCardLines(plan, { unit, columns: CARD_COLUMNS }).join("\n")}\n`],
    ["finished.svg", writeSvg(drawSection(plan, { unit }))],
    ["strip.svg", writeSvg(drawStrip(plan, { unit }))],
  ]);
  for (const { number } of plan.cuts) {
    files.set(cutFileName(number), writeSvg(drawCut(plan, number, { unit })));
  }
  return { plan, files };
}

/** Two figures, so that a file list keeps the cuts in their order. */
function cutFileName(number: number): string {
  return `cut-${String(number).padStart(2, "0")}.svg`;
}

function readText(name: string): string {
  return readFileSync(new URL(name, EXAMPLES), "utf8");
}

function taken<T>(name: string, outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  const said = sayTrouble(outcome.trouble, { unit: "mm" });
  throw new Error(`${name} ${outcome.trouble.where}: ${JSON.stringify(said)}`);
}
