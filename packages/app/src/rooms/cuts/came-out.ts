/** How the stick came out part-way: what was measured, held against the plan, and the job that goes on from there. */
import type { Plan } from "mouldwright/cutting";
import {
  cutsMade,
  type Job,
  MEASURED_FORMAT,
  MEASURED_VERSION,
  readMeasured,
  type Stage,
} from "mouldwright/job";
import { fine, type Outcome } from "mouldwright/measure";
import { planeName } from "mouldwright/sheets";
import { readShelf } from "mouldwright/shelf";

export interface PlaneSizes {
  readonly widthMm?: number;
  readonly radiusMm?: number;
}

export interface CutOff {
  readonly acrossMm?: number;
  readonly deeperMm?: number;
}

/** What was typed in; only what differs from the plan. */
export interface CameOut {
  /** Cuts that are made, counted from the first. */
  readonly after: number;
  readonly planes: Readonly<Record<string, PlaneSizes>>;
  readonly cuts: Readonly<Record<string, CutOff>>;
}

/** A plane that made some of the cuts, with the sizes that can be measured on it. */
export interface MeasuredPlane {
  readonly id: string;
  readonly name: string;
  readonly widthMm: number | null;
  readonly radiusMm: number | null;
}

/** The planes of the first `after` cuts, each once, with the sizes that the plan reckons with. */
export function planesUsed(plan: Plan, after: number): readonly MeasuredPlane[] {
  const shelf = readShelf(plan.shelf, { at: "shelf" });
  if (!shelf.ok) return [];
  const used = new Set(plan.cuts.slice(0, after).map(({ plane }) => plane.id));
  return shelf.value.planes.flatMap((plane): readonly MeasuredPlane[] => {
    if (!used.has(plane.id) || plane.kind === "plough" || plane.kind === "shaped") return [];
    const isCurved = plane.kind === "hollow" || plane.kind === "round";
    return [
      {
        id: plane.id,
        name: plane.name,
        widthMm: plane.widthMm,
        radiusMm: isCurved ? plane.radiusMm : null,
      },
    ];
  });
}

/** Made cuts that can have come out elsewhere: a saw's cannot be told so. */
export function cutsMeasured(
  plan: Plan,
  after: number,
): readonly { readonly number: number; readonly name: string }[] {
  return plan.cuts
    .slice(0, after)
    .filter(({ line }) => line === undefined)
    .map((cut) => ({ number: cut.number, name: planeName(cut) }));
}

/** The stage as the job keeps it. Refused, with its reason, where a plane or a cut cannot have come out so. */
export function stageOf(plan: Plan, cameOut: CameOut): Outcome<Stage> {
  const shelf = readShelf(plan.shelf, { at: "shelf" });
  if (!shelf.ok) return shelf;
  const made = plan.cuts.slice(0, cameOut.after).map(({ number }) => String(number));
  // What was typed for cuts that are not made after all is left out with them.
  const cuts = Object.entries(cameOut.cuts).filter(([number]) => made.includes(number));
  const used = new Set(planesUsed(plan, cameOut.after).map(({ id }) => id));
  const planes = Object.entries(cameOut.planes).filter(([id]) => used.has(id));
  const file = {
    format: MEASURED_FORMAT,
    version: MEASURED_VERSION,
    planes: Object.fromEntries(
      planes.map(([id, { widthMm, radiusMm }]) => [id, { width: widthMm, radius: radiusMm }]),
    ),
    cuts: Object.fromEntries(
      cuts.map(([number, { acrossMm, deeperMm }]) => [number, { across: acrossMm, deeper: deeperMm }]),
    ),
  };
  const measured = readMeasured(JSON.stringify(file), { plan, shelf: shelf.value, after: cameOut.after });
  if (!measured.ok) return measured;
  const stage: Stage = {
    plan,
    after: cameOut.after,
    ...(planes.length === 0 ? {} : { planes: planes.map(([id, sizes]) => ({ id, ...sizes })) }),
    ...(cuts.length === 0 ? {} : { cuts: cuts.map(([number, off]) => ({ number: Number(number), ...off })) }),
  };
  return fine(stage, measured.warnings);
}

/** The job with its stick worked so far: ticks and swaps were of the plan that is now behind it. */
export function goingOn(job: Job, stage: Stage): Job {
  const { ticks: _, ...rest } = withoutSwaps(job);
  return { ...rest, standing: [...(job.standing ?? []), stage] };
}

function withoutSwaps(job: Job): Job {
  if (job.way?.swaps === undefined) return job;
  const { swaps: _, ...way } = job.way;
  return { ...job, way };
}

/** The job before its last stage was told, its made cuts ticked no more. */
export function takenBack(job: Job): Job {
  const { standing = [], ticks: _, ...rest } = job;
  const left = standing.slice(0, -1);
  return left.length === 0 ? rest : { ...rest, standing: left };
}

/** How many cuts are made before the plan on show begins. */
export function cutsBehind(job: Pick<Job, "standing">): number {
  return (job.standing ?? []).reduce((sum, stage) => sum + cutsMade(stage).length, 0);
}
