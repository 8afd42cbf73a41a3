/** The `sheets` of a job: what is printed, on which paper, and what the printer makes of a hundred millimetres. */
import { closedObject } from "../cutting/index.ts";
import { z } from "../measure/index.ts";

/** What a printer may make of 100 mm, mm: further off than this it was scaled on purpose. */
const madeMm = z.number().min(90).max(110);

export const sheetsSchema = closedObject({
  paper: z.enum(["a4", "a3", "letter", "tabloid"]).optional().describe("name of the paper; A4 if absent"),
  kinds: z
    .array(z.enum(["bench", "ends", "story", "planes", "fit", "lesson"]))
    .max(6)
    .optional()
    .describe("the sheets wanted; all if absent"),
  made: closedObject({ acrossMm: madeMm, upMm: madeMm })
    .optional()
    .describe("what the printer made of 100 mm"),
}).describe("printing");
