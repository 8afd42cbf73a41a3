/** The plans of the examples, as they are stored; sentences stand in the job's own unit. */
import { readdirSync, readFileSync } from "node:fs";
import { type Plan, readPlan } from "../../packages/core/src/cutting/index.ts";
import { type Page, type SheetOptions, sheetPages } from "../../packages/core/src/sheets/index.ts";

const EXAMPLES = new URL("../../examples/", import.meta.url);

export const EXAMPLE_NAMES: readonly string[] = readdirSync(EXAMPLES)
  .filter((file) => file.endsWith(".json"))
  .map((file) => file.replace(/\.json$/, ""))
  .sort();

export function examplePlan(name: string): Plan {
  const plan = readPlan(readFileSync(new URL(`${name}/plan.json`, EXAMPLES), "utf8"));
  if (!plan.ok) throw new Error(`${name}: ${plan.trouble.code}`);
  return plan.value;
}

export function pagesOf(plan: Plan, options: SheetOptions): readonly Page[] {
  const pages = sheetPages(plan, options);
  if (!pages.ok) throw new Error(pages.trouble.code);
  return pages.value;
}
