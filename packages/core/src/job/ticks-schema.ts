/** The `ticks` of a job: which cuts of its plan are done. */
import { closedObject } from "../cutting/index.ts";
import { z } from "../measure/index.ts";

const MOST_TICKS = 500;
const MOST_CHARACTERS = 300;

const words = z.string().max(MOST_CHARACTERS);

export const ticksSchema = closedObject({
  /** Cuts are known by what they do, not by number alone: a new plan keeps the ticks of cuts that stand unchanged. */
  done: z.array(z.int().min(1).max(MOST_TICKS)).max(MOST_TICKS).describe("numbers of the cuts that are done"),
  cuts: z.int().min(0).max(MOST_TICKS).describe("how many cuts the plan had when they were ticked"),
  known: z
    .array(
      closedObject({
        number: z.int().min(1).max(MOST_TICKS),
        cut: words.describe("what the cut does: plane, how the stick lies, where the plane begins and ends"),
        name: words.describe("what the cut was called"),
      }),
    )
    .max(MOST_TICKS)
    .optional()
    .describe("what the done cuts do, so that they are found again in another plan"),
}).describe("how far the work has come");
