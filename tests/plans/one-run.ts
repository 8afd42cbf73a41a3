/** One run of the long run: a section and a shelf drawn from its number alone, planned, and held to everything. */
import fc from "fast-check";
import { verticesOf } from "../../packages/core/src/curve/index.ts";
import type { Plan } from "../../packages/core/src/cutting/index.ts";
import type { Outcome } from "../../packages/core/src/measure/index.ts";
import { type PlanRequest, planSteps } from "../../packages/core/src/planning/index.ts";
import type { Section } from "../../packages/core/src/section/index.ts";
import { planeEntry } from "../../packages/core/src/shelf/index.ts";
import type { PlanJson } from "../second-route/plan-json.ts";
import { type Fault, faultsOf } from "./faults.ts";
import { anySections } from "./random-sections.ts";
import { anyPlanes, type PlaneEntry, shelfOf } from "./random-shelves.ts";

export interface Drawn {
  readonly section: Section;
  readonly planes: readonly PlaneEntry[];
}

/** What is remembered of a run; a line of the tally. */
export interface Ran {
  readonly run: number;
  /** Which state of the planner made it. */
  readonly code: string;
  readonly pieces: number;
  readonly planes: number;
  /** Null where there is nothing to cut, or no plan was made. */
  readonly cuts: number | null;
  readonly uncut: number | null;
  /** Processor time of the plan alone, ms. */
  readonly planMs: number;
  /** Why the run failed, each as one line; nothing where the plan holds. */
  readonly failures: readonly string[];
  /** Faults of a kind that is known, the same way. */
  readonly known: readonly string[];
}

/** A plan is to end within this, processor time in ms. */
export const LONGEST_PLAN_MS = 10_000;
/** A plan that has not ended by then is broken off at its next step. */
const BROKEN_OFF_MS = 20 * LONGEST_PLAN_MS;

/** Spreads neighbouring numbers over all seeds (an odd number near 2^32 divided by the golden ratio). */
const SPREAD = 0x9e3779b1;

/** The section and the shelf of a run. Every other run draws from the ends of its ranges more often than from within. */
export function drawnFor(run: number): Drawn {
  const both = fc.tuple(anySections, anyPlanes);
  const parameters = { seed: Math.imul(run, SPREAD), numRuns: 1 };
  let drawn = fc.sample(both, parameters)[0];
  if (run % 2 === 0) {
    const keep = fc.property(both, (value) => {
      drawn = value;
    });
    fc.check(keep, parameters);
  }
  if (drawn === undefined) throw new Error(`nothing was drawn for run ${run}`);
  return { section: drawn[0], planes: drawn[1] };
}

/** The case as `found/` keeps it: vertices and planes in full precision, all in millimetres. */
export function caseOf({ section, planes }: Drawn): unknown {
  return {
    stick: verticesOf(section.stick),
    section: verticesOf(section.outline),
    planes: shelfOf(planes).planes.map(planeEntry),
  };
}

/** Plans and holds the plan to everything. Never throws for what the planner does. */
export function ran(run: number, code: string, { section, planes }: Drawn): Ran {
  const shelf = shelfOf(planes);
  const about = { run, code, pieces: section.outline.pieces.length, planes: planes.length };
  const from = process.cpuUsage();
  const spentMs = (): number => {
    const { user, system } = process.cpuUsage(from);
    return (user + system) / 1000;
  };
  try {
    const made = endedPlan({ section, shelf }, spentMs);
    const planMs = Math.round(spentMs());
    const slow = planMs > LONGEST_PLAN_MS ? [`slow: ${planMs} ms`] : [];
    if (made === null) {
      return {
        ...about,
        cuts: null,
        uncut: null,
        planMs,
        failures: [`never ended: ${planMs} ms`],
        known: [],
      };
    }
    if (!made.ok) {
      const failures =
        made.trouble.code === "section-nothing-to-cut" ? slow : [...slow, `refused: ${made.trouble.code}`];
      return { ...about, cuts: null, uncut: null, planMs, failures, known: [] };
    }
    const plan = JSON.parse(JSON.stringify(made.value)) as PlanJson;
    const faults = faultsOf(plan);
    const told = (isKnown: boolean) => faults.filter((fault) => fault.isKnown === isKnown).map(lineOf);
    const { length: cuts } = plan.cuts;
    const { length: uncut } = plan.uncut;
    return { ...about, cuts, uncut, planMs, failures: [...slow, ...told(false)], known: told(true) };
  } catch (error) {
    const message = error instanceof Error ? error.message : String(error);
    const failures = [`thrown: ${message.split("\n")[0]}`];
    return { ...about, cuts: null, uncut: null, planMs: Math.round(spentMs()), failures, known: [] };
  }
}

/** Null where the plan takes so long that it is broken off. */
function endedPlan(request: PlanRequest, spentMs: () => number): Outcome<Plan> | null {
  const steps = planSteps(request);
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done) return step.value;
    if (spentMs() > BROKEN_OFF_MS) return null;
  }
}

function lineOf({ by, rule, says }: Fault): string {
  return `${by}, ${rule}: ${says}`;
}
