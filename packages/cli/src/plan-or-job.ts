/** A plan to work from: read from its file, or made from a job or a drawing that names its shelf. */
import { PLAN_FORMAT, type Plan, readJsonText, readPlan } from "mouldwright/cutting";
import type { InchDenominator, LengthUnit, Trouble } from "mouldwright/measure";
import { planSteps } from "mouldwright/planning";
import { type Command, note, troublesOfRefusal } from "./command.ts";
import { notRead, type Read, unitOfPlan, unitOfSentences } from "./input.ts";
import { onlyName } from "./names.ts";
import { readPlanInput } from "./plan-input.ts";
import { runSteps } from "./progress.ts";
import { MOST_PLAN_BYTES, readTextFile } from "./read-file.ts";

export interface PlanToUse {
  readonly plan: Plan;
  readonly unit: LengthUnit;
  /** What the plan's own sentences are written in. */
  readonly written: LengthUnit;
  /** Finest division of the maker's inch rule, where the job says it. */
  readonly inchStep: InchDenominator | undefined;
  /** Everything that was read, which nothing may be written over. */
  readonly files: readonly string[];
}

/** What stands in the way of writing, asked before a long planning; null for nothing. */
export type WritingCheck = (files: readonly string[]) => Promise<Trouble | null>;

/** Why there is no plan: refused, not writable, or interrupted. */
export type NoPlan =
  | { readonly kind: "refused"; readonly file: string; readonly troubles: readonly Trouble[] }
  | { readonly kind: "not writable"; readonly trouble: Trouble }
  | { readonly kind: "interrupted" };

/** The plan of the one file that the command names. Where that is no plan it is planned, which may take a while. */
export async function planToUse(command: Command, canWrite: WritingCheck): Promise<PlanToUse | NoPlan> {
  const path = onlyName(command.given, "a job or a plan");
  if (!path.ok) return { kind: "refused", file: "", troubles: [path.trouble] };
  const read = await readPlanFile(path.value);
  if (read !== null) {
    if (!read.ok) return { kind: "refused", file: read.file, troubles: read.troubles };
    const trouble = await canWrite([path.value]);
    if (trouble !== null) return { kind: "not writable", trouble };
    const unit = unitOfPlan(command.askedUnit, read.value);
    return {
      plan: read.value,
      unit,
      written: unitOfSentences(read.value),
      inchStep: undefined,
      files: [path.value],
    };
  }
  return planned(command, canWrite);
}

/** The plan in a file; null where the file is no plan but something to be planned. */
async function readPlanFile(path: string): Promise<Read<Plan> | null> {
  if (!path.toLowerCase().endsWith(".json")) return null;
  const text = await readTextFile(path, MOST_PLAN_BYTES);
  if (!text.ok) return notRead(path, text);
  const json = readJsonText(text.value, { mostCharacters: MOST_PLAN_BYTES });
  if (!json.ok) return notRead(path, json);
  if (!isPlan(json.value)) return null;
  const plan = readPlan(text.value);
  return plan.ok ? plan : notRead(path, plan);
}

function isPlan(value: unknown): boolean {
  return typeof value === "object" && value !== null && "format" in value && value.format === PLAN_FORMAT;
}

async function planned(command: Command, canWrite: WritingCheck): Promise<PlanToUse | NoPlan> {
  const input = await readPlanInput(command);
  if (!input.ok) return { kind: "refused", file: input.file, troubles: input.troubles };
  const { request, unit, file, files, noticed } = input.value;
  const trouble = await canWrite(files);
  if (trouble !== null) return { kind: "not writable", trouble };
  for (const { file: where, troubles } of noticed) note(command, where, troubles, unit);
  const plan = await runSteps(planSteps(request), command.io);
  if (plan === null) return { kind: "interrupted" };
  if (!plan.ok) return { kind: "refused", file, troubles: troublesOfRefusal(plan) };
  note(command, "", plan.warnings, unit);
  return { plan: plan.value, unit, written: unit, inchStep: request.inchStep, files };
}
