import { z } from "zod";
import { jobSchema } from "./job-schema.ts";

/** The job file as a JSON Schema (draft 2020-12), for editors that complete and check while a job is typed. */
export function jobJsonSchema(): Readonly<Record<string, unknown>> {
  return {
    title: "Mouldwright job file, version 1",
    ...z.toJSONSchema(jobSchema, { io: "input", reused: "inline" }),
  };
}
