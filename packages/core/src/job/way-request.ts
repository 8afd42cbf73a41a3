/** What a job says about its way of working, as the planner is asked for it. */
import {
  COMMON_WORKING,
  GOOD_HAND,
  type HandAccuracy,
  type PlanRequest,
  type Working,
} from "../planning/index.ts";
import type { Job } from "./job-schema.ts";
import { withoutGaps } from "./lengths-job.ts";

/** Everything of a request that says how the work is done: all but section, shelf, name, unit and standing wood. */
export type WayRequest = Omit<PlanRequest, "section" | "shelf" | "name" | "unit" | "limits" | "from">;

const MM_PER_METRE = 1000;

/** What a job or a command may say of the minutes; lengths in mm. */
type WorkingSaid = {
  readonly [Key in Exclude<keyof Working, "lengthM" | "testPieceM"> | "lengthMm" | "testPieceMm"]?:
    | number
    | undefined;
};

/** What is said of the minutes, laid over what is known already; the rest is common practice. */
export function workingOf(said: WorkingSaid, own: Working = COMMON_WORKING): Working {
  const { lengthMm, testPieceMm, ...rest } = said;
  return {
    ...own,
    ...withoutGaps(rest),
    ...(lengthMm === undefined ? {} : { lengthM: lengthMm / MM_PER_METRE }),
    ...(testPieceMm === undefined ? {} : { testPieceM: testPieceMm / MM_PER_METRE }),
  };
}

/** How true the maker works; what is not said is a good hand's. */
export function handOf(said: { readonly [Key in keyof HandAccuracy]?: number | undefined }): HandAccuracy {
  return { ...GOOD_HAND, ...withoutGaps(said) };
}

/** The job's `way` and `working`. Planes in `way.without` are taken as ids: `planesMeant` turns names into them. */
export function wayRequestOf(job: Job): WayRequest {
  return {
    ...(withoutGaps(job.way ?? {}) as WayRequest),
    ...(job.working === undefined ? {} : { working: workingOf(job.working) }),
    ...(job.hand === undefined ? {} : { hand: handOf(job.hand) }),
    ...(job.inchStep === undefined ? {} : { inchStep: job.inchStep }),
  };
}
