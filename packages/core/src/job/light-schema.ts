/** The `light` of a job: how the moulding hangs and where the lamp stands, when it is looked at. */
import { closedObject } from "../cutting/index.ts";
import { MOST_LAMP_DEG, MOST_SPRING_DEG } from "../light/index.ts";
import { z } from "../measure/index.ts";

const lampDeg = z.number().min(-MOST_LAMP_DEG).max(MOST_LAMP_DEG);

export const lightSchema = closedObject({
  lamp: closedObject({
    heightDeg: lampDeg.describe("above level, as seen on the end of a level run, degrees"),
    directionDeg: lampDeg.describe("in plan from straight in front, to the viewer's left, degrees"),
    ambientRatio: z.number().min(0).max(1).describe("share of light that comes from the whole room"),
  }).optional(),
  hanging: closedObject({
    run: z.enum(["level", "upright"]),
    firstEdge: z
      .enum(["gauge edge", "far edge"])
      .describe("the upper edge of a level run, the left of an upright"),
    springFromWallDeg: z.number().min(-MOST_SPRING_DEG).max(MOST_SPRING_DEG).describe("degrees"),
  }).optional(),
}).describe("how it is looked at");
