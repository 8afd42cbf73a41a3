export { type PlanRequest, planSteps } from "../../core/src/job/planner.ts";
