/**
 * The `fit` of a job: what the maker has chosen about stick, corner, frame, cornice and lengths. Every answer is reckoned
 * again from it; whether a size or an angle can be is the question's to say, with its own words.
 */
import { closedObject } from "../cutting/index.ts";
import { z } from "../measure/index.ts";
import { lengthsAllowancesSchema, stickAtHandSchema } from "./lengths-job.ts";

const LIMITS = {
  /** The longest wall or stick, mm. */
  longestMm: 100_000,
  mostSides: 100,
  mostWalls: 100,
  mostSticks: 100,
  mostNameCharacters: 200,
} as const;

const sizeMm = z.number().min(0).max(LIMITS.longestMm).describe("mm");
const degrees = z.number().min(-360).max(360).describe("degrees");
const percent = z.number().min(0).max(100).describe("percent");

const wallEdge = z.enum(["gauge edge", "far edge"]).describe("the edge of the stick that lies at the wall");
const cornerKind = z.enum(["inside", "outside"]);

const stickSchema = closedObject({
  way: z.enum(["flat", "bevelled first", "canted"]).optional(),
  cantDeg: degrees.optional().describe("of a canted stick; the best cant if absent"),
  pieces: z
    .enum(["lengths", "frame", "cornice"])
    .optional()
    .describe("what is to come out of the sticks: so many alike, the frame's rails, or the cornice's pieces"),
  allowances: closedObject({
    sawnWidthMm: sizeMm.optional(),
    sawnThicknessMm: sizeMm.optional(),
    planingMm: sizeMm.optional(),
    endChecksMm: sizeMm.optional(),
  })
    .optional()
    .describe("bought and planed over the planed stick"),
  atHand: closedObject({ widthMm: sizeMm, thicknessMm: sizeMm })
    .optional()
    .describe("the timber at hand where the section is to be built up of it"),
});

const timberSchema = closedObject({
  name: z.string().max(LIMITS.mostNameCharacters),
  sawn: z.enum(["flat", "quarter"]).optional(),
  fittedPercent: percent.optional().describe("moisture when it is fitted"),
  driestPercent: percent.optional(),
  wettestPercent: percent.optional(),
});

const cornerSchema = closedObject({
  springFromWallDeg: degrees.optional().describe("the section's own if absent"),
  wallEdge: wallEdge.optional(),
  cornerDeg: degrees.optional().describe("between the walls; at an outside corner through the solid"),
  triangleMm: closedObject({ alongFirstMm: sizeMm, alongSecondMm: sizeMm, acrossMm: sizeMm })
    .optional()
    .describe("instead of the angle: along one wall, along the other, across"),
  kind: cornerKind.optional(),
  bladeLeans: z.enum(["left", "right"]).optional(),
});

const frameSchema = closedObject({
  stated: z.enum(["sight", "rebate", "glass", "outside"]).optional(),
  acrossMm: sizeMm.optional(),
  upMm: sizeMm.optional(),
  sides: z
    .int()
    .min(3)
    .max(LIMITS.mostSides)
    .optional()
    .describe("of a regular frame instead of a rectangle"),
  sideMm: sizeMm.optional(),
  widthMm: sizeMm.optional().describe("of the rails; the stick's if absent"),
  rebateMm: sizeMm.optional().describe("the section's own if absent"),
  allowanceMm: sizeMm.optional().describe("how much larger the rebate's opening is than the glass"),
});

const runEnd = z.enum(["square", "against a wall", "return"]);

const runSchema = closedObject({
  wallsMm: z.array(sizeMm).min(1).max(LIMITS.mostWalls),
  corners: z
    .array(
      closedObject({
        cornerDeg: degrees,
        kind: cornerKind,
        joint: z.enum(["mitre", "scribe left", "scribe right"]).optional(),
      }),
    )
    .max(LIMITS.mostWalls),
  start: runEnd.optional(),
  end: runEnd.optional(),
}).describe("walls and corners from left to right as one faces them");

const slopesSchema = closedObject({
  shown: z.enum(["rake", "hip", "box"]).optional(),
  rakeDeg: degrees.optional().describe("slope that the moulding runs up, from level"),
  mainDeg: degrees.optional().describe("slope of a hip's main side, from level"),
  adjacentDeg: degrees.optional().describe("slope of the side next to it; the same if absent"),
  planDeg: degrees.optional().describe("between the two eaves, seen from above"),
  boxSides: z.int().min(3).max(LIMITS.mostSides).optional(),
  boxDeg: degrees.optional().describe("of the sides of a box from level; 90 stands plumb"),
  boxWidthMm: sizeMm.optional().describe("of a side, along its slope"),
  boxFootMm: sizeMm.optional().describe("length of a side along its narrow edge"),
}).describe("a moulding up a slope, a hip, a box with sloping sides");

const unlikeSchema = closedObject({
  projectionMm: sizeMm.optional().describe("how far the other moulding comes out"),
  heightMm: sizeMm.optional().describe("of the other moulding; the section's own if absent"),
  springFromWallDeg: degrees.optional().describe("of the other moulding; the section's own if absent"),
}).describe("another moulding that the section's meets at the corner, the section's on the left");

const sideSchema = closedObject({
  depthMm: sizeMm.optional().describe("of the side from front to back, across its grain"),
  screwsMm: z.array(sizeMm).max(LIMITS.mostSticks).optional().describe("from the front mitre"),
  screwMm: sizeMm.optional().describe("shank of the screws"),
}).describe("a solid side that the moulding runs along; its timber is the job's");

export const fitSchema = closedObject({
  stick: stickSchema.optional(),
  timber: timberSchema.optional(),
  corner: cornerSchema.optional(),
  frame: frameSchema.optional(),
  run: runSchema.optional(),
  slopes: slopesSchema.optional(),
  unlike: unlikeSchema.optional(),
  side: sideSchema.optional(),
  sticks: z
    .array(stickAtHandSchema)
    .max(LIMITS.mostSticks)
    .optional()
    .describe("sticks at hand or to be bought, that frame and cornice are cut from"),
  allowances: lengthsAllowancesSchema
    .optional()
    .describe("of saw and trimming where pieces are cut from sticks"),
}).describe("stick, corner, frame and cornice");
