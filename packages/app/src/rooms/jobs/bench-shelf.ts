/** What a new job takes over from the bench: its shelf, and the unit the maker works in. */
import type { Job } from "mouldwright/job";
import { useBench } from "../../bench/job-on-bench.ts";
import type { FromBench } from "../../keeping/drawn-job.ts";
import { exampleJobs } from "./example-jobs.ts";

export function fromBench(): FromBench {
  const { shelf, unit, inchStep } = useBench.getState().job;
  return fromJob({ shelf, unit, inchStep });
}

/** The shelf of the job on the bench, or where it has none the full one of the example. */
function fromJob({ shelf, unit, inchStep }: Partial<Pick<Job, "shelf" | "unit" | "inchStep">>): FromBench {
  const whole = shelf !== undefined && !("file" in shelf) ? shelf : exampleJobs()[0]?.shelf;
  return {
    ...(whole === undefined ? {} : { shelf: whole }),
    ...(unit === undefined ? {} : { unit }),
    ...(inchStep === undefined ? {} : { inchStep }),
  };
}
