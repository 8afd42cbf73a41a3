/** A stick that is begun: what stands of it, and the planes as they really cut. */
import { type PlanCut, readPlan } from "../cutting/index.ts";
import { cataloguedTrouble, fine, type Outcome, type Trouble } from "../measure/index.ts";
import { type Measured, measuredShelf, type StartedStick, standingAfter } from "../planning/index.ts";
import { readShelf, type Shelf, shelfFile } from "../shelf/index.ts";
import type { Job } from "./job-schema.ts";
import { withoutGaps } from "./lengths-job.ts";
import type { Stage } from "./standing-schema.ts";

/**
 * The stick as it stands after the job's last stage, and the shelf with every plane as it was last measured; null for a
 * stick that is not begun. Refused where a plane cannot have the sizes it is said to have been measured with.
 */
export function startedOf(job: Pick<Job, "standing">, shelf: Shelf): Outcome<StartedStick | null> {
  const stages = job.standing ?? [];
  const last = stages[stages.length - 1];
  if (last === undefined) return fine(null);
  let real = shelf;
  for (const stage of stages) real = measuredShelf(real, measuredIn(stage));
  const possible = readShelf(shelfFile(real), { at: "shelf" });
  if (!possible.ok) return possible;
  const { wood } = standingAfter(last.plan, real, last.after, measuredIn(last));
  return fine({ wood, shelf: real });
}

/** What a stage says was measured, as the planner is told it. */
function measuredIn({ planes = [], cuts = [] }: Stage): Measured {
  return {
    planes: Object.fromEntries(planes.map(({ id, ...sizes }) => [id, withoutGaps(sizes)])),
    cuts: Object.fromEntries(cuts.map(({ number, ...off }) => [String(number), withoutGaps(off)])),
  };
}

/** The cuts of a stage that are made, in order. */
export function cutsMade({ plan, after }: Stage): readonly PlanCut[] {
  return plan.cuts.slice(0, after);
}

/** What is wrong with the stages of a job from a file: each plan is read as a plan file is. */
export function standingFaults(job: Pick<Job, "standing">): readonly Trouble[] {
  return (job.standing ?? []).flatMap((stage, index) => stageFaults(stage, `standing[${index}]`));
}

function stageFaults(stage: Stage, where: string): readonly Trouble[] {
  const plan = readPlan(JSON.stringify(stage.plan ?? null));
  if (!plan.ok) {
    return [plan.trouble, ...(plan.more ?? [])].map((trouble) => ({
      ...trouble,
      where: trouble.where === "" ? `${where}.plan` : `${where}.plan.${trouble.where}`,
    }));
  }
  const made = plan.value.cuts.length;
  if (stage.after > made) {
    const facts = { found: String(stage.after), wanted: `no more than the ${made} cuts of its plan` };
    return [cataloguedTrouble("file-value-wrong", `${where}.after`, facts)];
  }
  return (stage.cuts ?? []).flatMap(({ number }, index): readonly Trouble[] => {
    const cut = cutsMade(stage).find((one) => one.number === number);
    if (cut === undefined) {
      const facts = { number: String(number), nearest: stage.after, made: stage.after };
      return [cataloguedTrouble("measured-cut-unknown", `${where}.cuts[${index}].number`, facts)];
    }
    return cut.line === undefined
      ? []
      : [cataloguedTrouble("measured-cut-sawn", `${where}.cuts[${index}].number`, { number: cut.number })];
  });
}
