/** Writes the published JSON Schema of the job file; `job/json-schema.test.ts` fails while it is out of date. */
import { writeFile } from "node:fs/promises";
import { jobSchemaText } from "../packages/core/src/job/index.ts";

await writeFile(new URL("../packages/core/src/job/schema.json", import.meta.url), jobSchemaText());
