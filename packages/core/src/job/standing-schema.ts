/**
 * The `standing` of a job: how far the stick is worked, as it really came out. Stage after stage, each with the plan that
 * its cuts were made by, so that the rest can be planned again on any machine, whatever has been changed since.
 */

import { closedObject, PLAN_LIMITS, type Plan } from "../cutting/index.ts";
import { z } from "../measure/index.ts";
import { MEASURED_LIMITS } from "./measured-file.ts";

export const STANDING_LIMITS = {
  mostStages: 20,
  mostPlanes: 500,
  largestMm: 1000,
  mostIdCharacters: 200,
} as const;

const offMm = z.number().min(-MEASURED_LIMITS.farthestOffMm).max(MEASURED_LIMITS.farthestOffMm);
const sizeMm = z.number().gt(0).max(STANDING_LIMITS.largestMm);

// The plan's own reader judges it (`started.ts`): a plan file may hold keys that are not known here.
const planSchema = z
  .unknown()
  .describe(
    "the plan that the cuts were made by: a plan file (mouldwright/plan)",
  ) as unknown as z.ZodType<Plan>;

const stageSchema = closedObject({
  plan: planSchema,
  after: z.int().min(1).max(PLAN_LIMITS.mostCuts).describe("how many cuts of that plan are made"),
  planes: z
    .array(
      closedObject({
        id: z.string().min(1).max(STANDING_LIMITS.mostIdCharacters),
        widthMm: sizeMm.optional(),
        radiusMm: sizeMm.optional(),
      }),
    )
    .max(STANDING_LIMITS.mostPlanes)
    .optional()
    .describe("planes as they were measured to cut, mm"),
  cuts: z
    .array(
      closedObject({
        number: z.int().min(1).max(PLAN_LIMITS.mostCuts),
        acrossMm: offMm.optional().describe("away from the left edge, mm"),
        deeperMm: offMm.optional().describe("into the wood, mm"),
      }),
    )
    .max(PLAN_LIMITS.mostCuts)
    .optional()
    .describe("how far cuts came out from their places, mm"),
});

export const standingSchema = z
  .array(stageSchema)
  .min(1)
  .max(STANDING_LIMITS.mostStages)
  .describe("how far the stick is worked, as it came out; the rest is planned from there");

export type Stage = z.infer<typeof stageSchema>;
