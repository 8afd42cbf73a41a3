/** The job file: read, written, its JSON Schema; and what a job computes, in order. */
export {
  type ComputedJob,
  chainOfJob,
  computeJob,
  drawnSectionOfJob,
  type JobInputs,
  jobSteps,
  leftOutOf,
  planRequestOf,
  sectionOfJob,
  shelfFileOfJob,
  shelfOfJob,
} from "./compute-job.ts";
export {
  CORNICE_FORMAT,
  CORNICE_VERSION,
  type CorniceJob,
  corniceQuestionOf,
  readCorniceJob,
  type SectionSizes,
} from "./cornice-job.ts";
export { stemOf } from "./file-stem.ts";
export { JOB_FORMAT, JOB_LIMITS, JOB_VERSION, type Job, jobSchema } from "./job-schema.ts";
export { jobJsonSchema, jobSchemaText } from "./json-schema.ts";
export { planesMeant } from "./left-out.ts";
export { LENGTHS_FORMAT, LENGTHS_VERSION, type LengthsJob, readLengthsJob } from "./lengths-job.ts";
export {
  MEASURED_FORMAT,
  MEASURED_LIMITS,
  MEASURED_VERSION,
  type MeasuredPiece,
  measuredSchema,
  readMeasured,
} from "./measured-file.ts";
export { readJob, writeJob } from "./read-job.ts";
export { STANDING_LIMITS, type Stage } from "./standing-schema.ts";
export { cutsMade, startedOf } from "./started.ts";
export { type TicksOnPlan, ticksOn, withoutDropped, withTick } from "./ticks.ts";
export { readTimbers, TIMBERS_FORMAT, TIMBERS_VERSION } from "./timbers-file.ts";
export { handOf, type WayRequest, workingOf } from "./way-request.ts";
export { areShavingsInOrder, INCH_STEPS, WAY_LIMITS } from "./way-schema.ts";
