import { jsonText } from "../cutting/index.ts";
import { z } from "../measure/index.ts";
import { jobSchema } from "./job-schema.ts";

/**
 * The job file as a JSON Schema (draft 2020-12), for editors that complete and check while a job is typed. What no
 * schema can say (parts or a path but not both, a shelf file in the job's folder) only `readJob` refuses.
 */
export function jobJsonSchema(): Readonly<Record<string, unknown>> {
  return {
    title: "Mouldwright job file, version 1",
    ...z.toJSONSchema(jobSchema, { io: "input", reused: "inline" }),
  };
}

/** The text of `schema.json`, which `npm run schema` writes. */
export function jobSchemaText(): string {
  return `${jsonText(jobJsonSchema())}\n`;
}
