/** What lies on the bench at the start: the job of last time, or on the first visit the chart cabinet's cornice. */
import { startKeeping } from "../keeping/keeping.ts";
import { exampleJobs } from "../rooms/jobs/example-jobs.ts";

export async function openLastJob(): Promise<void> {
  await startKeeping(exampleJobs);
}
