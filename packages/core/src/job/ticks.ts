/** Ticks held against a plan: cuts that stand in it unchanged stay ticked, the others are told. */
import type { Plan, PlanCut, Pose } from "../cutting/index.ts";
import { printable } from "../measure/index.ts";
import type { Job } from "./job-schema.ts";

type Ticks = NonNullable<Job["ticks"]>;
type KnownTick = NonNullable<Ticks["known"]>[number];

export interface TicksOnPlan {
  /** Numbers of this plan's cuts that are done. */
  readonly done: ReadonlySet<number>;
  /** Ticked cuts that do not stand in this plan: the number they had, and what they were called. */
  readonly dropped: readonly { readonly number: number; readonly name: string }[];
}

/** Which cuts of this plan are done. Ticks that only have their numbers hold for a plan of as many cuts. */
export function ticksOn(plan: Plan, ticks: Ticks | undefined): TicksOnPlan {
  const done = new Set<number>();
  const dropped: { number: number; name: string }[] = [];
  const cutsBy = new Map(plan.cuts.map((cut) => [whatCutDoes(cut), cut.number]));
  for (const number of ticks?.done ?? []) {
    const known = ticks?.known?.find((one) => one.number === number);
    const found = known === undefined ? numberIn(plan, ticks, number) : cutsBy.get(known.cut);
    if (found === undefined) dropped.push({ number, name: known?.name ?? "" });
    else done.add(found);
  }
  return { done, dropped };
}

function numberIn(plan: Plan, ticks: Ticks | undefined, number: number): number | undefined {
  const isSameCount = ticks?.cuts === plan.cuts.length;
  return isSameCount && plan.cuts.some((cut) => cut.number === number) ? number : undefined;
}

/** The job with one cut of its plan ticked or not; ticks of cuts that the plan does not have are gone afterwards. */
export function withTick(job: Job, plan: Plan, cutNumber: number, isDone: boolean): Job {
  const { done, dropped } = ticksOn(plan, job.ticks);
  if (done.has(cutNumber) === isDone && dropped.length === 0) return job;
  const next = plan.cuts.filter(({ number }) => (number === cutNumber ? isDone : done.has(number)));
  return withTicks(job, next.length === 0 ? undefined : ticksOf(plan, next));
}

/** The job without ticks of cuts that its plan does not have. */
export function withoutDropped(job: Job, plan: Plan): Job {
  const { done, dropped } = ticksOn(plan, job.ticks);
  if (dropped.length === 0) return job;
  const kept = plan.cuts.filter(({ number }) => done.has(number));
  return withTicks(job, kept.length === 0 ? undefined : ticksOf(plan, kept));
}

function withTicks(job: Job, ticks: Ticks | undefined): Job {
  const { ticks: _, ...rest } = job;
  return ticks === undefined ? rest : { ...rest, ticks };
}

function ticksOf(plan: Plan, cuts: readonly PlanCut[]): Ticks {
  return {
    done: cuts.map(({ number }) => number),
    cuts: plan.cuts.length,
    known: cuts.map(
      (cut): KnownTick => ({ number: cut.number, cut: whatCutDoes(cut), name: shortened(nameOf(cut)) }),
    ),
  };
}

/** Long names are a maker's own: cut to what the file keeps. */
const MOST_NAME_CHARACTERS = 200;

function shortened(words: string): string {
  return [...words].slice(0, MOST_NAME_CHARACTERS).join("");
}

function nameOf(cut: PlanCut): string {
  return printable(cut.plane.name ?? cut.plane.kind).trim();
}

/**
 * The same words for the same work: plane, how the stick lies, where the plane begins and ends, to a hundredth of a
 * millimetre and a tenth of a degree. What was worked before does not change what a cut does.
 */
function whatCutDoes(cut: PlanCut): string {
  const runs = cut.runs ?? [];
  const places = runs.flatMap((run) => [run[0], run[run.length - 1]]).flatMap((pose) => (pose ? [pose] : []));
  const ends =
    places.length <= MOST_PLACES ? places : [...places.slice(0, MOST_PLACES - 1), ...places.slice(-1)];
  const work =
    cut.line === undefined ? ends.map(poseWords).join(" > ") : cut.line.map(placeWords).join(" > ");
  return `${shortened(cut.plane.id).slice(0, MOST_ID_CHARACTERS)} ${figure(cut.cant, 1)}: ${runs.length}, ${work}`;
}

const MOST_PLACES = 6;
const MOST_ID_CHARACTERS = 60;

function poseWords([x, y, tiltDeg]: Pose): string {
  return `${figure(x, 2)} ${figure(y, 2)} ${figure(tiltDeg, 1)}`;
}

function placeWords([x, y]: readonly [number, number]): string {
  return `${figure(x, 2)} ${figure(y, 2)}`;
}

/** No "-0.00": it would be another cut. */
function figure(value: number, decimals: number): string {
  const written = value.toFixed(decimals);
  return Number(written) === 0 ? (0).toFixed(decimals) : written;
}
