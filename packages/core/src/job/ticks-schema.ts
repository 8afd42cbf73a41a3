/** The `ticks` of a job: which cuts of its plan are done. */
import { z } from "zod";
import { closedObject } from "../cutting/index.ts";

const MOST_TICKS = 500;

export const ticksSchema = closedObject({
  /** Cuts are known by what they do, not by number alone: a new plan keeps the ticks of cuts that stand unchanged. */
  done: z.array(z.int().min(1).max(MOST_TICKS)).max(MOST_TICKS).describe("numbers of the cuts that are done"),
  cuts: z.int().min(0).max(MOST_TICKS).describe("how many cuts the plan had when they were ticked"),
}).describe("how far the work has come");
