/** The planner's face, until `planning/` stands beside this folder: then these names come from its index. */
import type { Plan } from "../cutting/index.ts";
import { bug, type Outcome } from "../measure/index.ts";
import type { Section } from "../section/index.ts";
import type { Shelf } from "../shelf/index.ts";

export interface PlanRequest {
  readonly section: Section;
  readonly shelf: Shelf;
  readonly toleranceMm?: number;
  readonly unit?: "mm" | "in";
  readonly name?: string;
}

export interface PlanProgress {
  readonly done: number;
  readonly of: number;
  readonly says: string;
}

// biome-ignore lint/correctness/useYield: the planner's face only.
export function* planSteps(request: PlanRequest): Generator<PlanProgress, Outcome<Plan>> {
  return bug("the planner is not there yet", { name: request.name ?? "" });
}
