/** A cure for a place that stays uncut, before it is known whether it is one. */
import type { PlanCureChange } from "../cutting/index.ts";
import type { Plane } from "../shelf/index.ts";
import type { PlanRequest } from "./request.ts";

/** A cure that may be tried, on the real bench. */
export interface Attempt {
  /** Says the same for the same cure. */
  readonly key: string;
  /** What a maker is told to do, as a sentence. */
  readonly says: string;
  readonly planes: readonly Plane[];
  readonly change?: PlanCureChange;
  readonly request: PlanRequest;
  /** Places in the planned ring whose cuts are made anew. */
  readonly changed: readonly number[];
  /** Whether the outline has another number of parts, so that no cut that was found can stay: only a plan of its own proves it. */
  readonly isAnew?: true;
  /** For a bead plane, which the search does not use: the half-round it is let down on, by its place in the ring. */
  readonly bead?: { readonly plane: Plane; readonly index: number };
}
