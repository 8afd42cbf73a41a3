/** What a job may say about how it is worked: the `way` and `working` of its file, and the bounds of each figure. */
import { COMMON_LIMITS, closedObject } from "../cutting/index.ts";
import { LEAST_TOLERANCE_MM, z } from "../measure/index.ts";

/** Bounds of what a maker may ask for, on the command line as in a job. Common practice, no source. */
export const WAY_LIMITS = {
  /** The cutting model holds no plane further over than this, degrees. */
  greatestLeanDeg: COMMON_LIMITS.leanDeg,
  /** The shortest piece a plane finds room on, and the longest stick that is run in one piece, mm. */
  shortestStickMm: 50,
  longestStickMm: 10_000,
  mostSticks: 1000,
  /** Thinner than any iron takes, and thicker than any mouth lets through, mm. */
  thinnestShavingMm: 0.01,
  thickestShavingMm: 2,
  mostSetMinutes: 240,
  mostSecondsPerMetre: 600,
  mostSharpForM: 100_000,
  /** No hand that keeps to less is worth reckoning with, mm. */
  largestHandMm: 5,
  /** A metre's board: nothing wanted of it stands further off than it is wide, mm. */
  largestToleranceMm: 1000,
  mostPlanesLeftOut: 500,
  mostIdCharacters: 200,
  mostCuts: 200,
  mostSwaps: 40,
} as const;

const shavingMm = z
  .number()
  .min(WAY_LIMITS.thinnestShavingMm)
  .max(WAY_LIMITS.thickestShavingMm)
  .describe("mm");

const planeId = z.string().min(1).max(WAY_LIMITS.mostIdCharacters);

export const waySchema = closedObject({
  toleranceMm: z
    .number()
    .min(LEAST_TOLERANCE_MM)
    .max(WAY_LIMITS.largestToleranceMm)
    .optional()
    .describe("how far the finished face may stand from the drawing, mm"),
  missSide: z
    .enum(["either", "proud", "under"])
    .optional()
    .describe("side of the drawing to lie on where it cannot be met: wood left, or wood taken"),
  ways: z
    .array(z.enum(["flat", "bevelled", "canted"]))
    .min(1)
    .max(3)
    .optional()
    .describe("ways of holding the stick to compare; lying flat is always among them"),
  gaugeEdge: z
    .enum(["left", "right"])
    .optional()
    .describe("side of the drawing that the gauge edge lies on; left if absent"),
  keepSquare: z
    .enum(["gauge", "far", "both"])
    .optional()
    .describe("edge that must stay square and untouched as long as can be: cuts that touch it come last"),
  greatestLeanDeg: z
    .number()
    .min(0)
    .max(WAY_LIMITS.greatestLeanDeg)
    .optional()
    .describe("greatest lean of a plane in the hand, degrees"),
  prefer: z
    .enum(["fewer planes", "fewer settings", "fewer strokes"])
    .optional()
    .describe("what to save on where several orders would do"),
  without: z
    .array(z.string().min(1).max(WAY_LIMITS.mostIdCharacters))
    .max(WAY_LIMITS.mostPlanesLeftOut)
    .optional()
    .describe("planes of the shelf that are not to be used, by id or name"),
  swaps: z
    .array(
      closedObject({
        first: z.int().min(1).max(WAY_LIMITS.mostCuts),
        second: z.int().min(1).max(WAY_LIMITS.mostCuts),
        cuts: z.int().min(2).max(WAY_LIMITS.mostCuts).describe("how many cuts the plan has"),
        planes: z.tuple([planeId, planeId]).describe("ids of the planes of both cuts"),
      }),
    )
    .max(WAY_LIMITS.mostSwaps)
    .optional()
    .describe("cuts of the plan that are to change places, one swap after the other"),
  shavings: closedObject({ heavyMm: shavingMm, ordinaryMm: shavingMm, lastMm: shavingMm })
    .optional()
    .describe("thickness of the shavings for waste, for shaping and of the last ones"),
}).describe("way of working");

export const workingSchema = closedObject({
  setMinutes: z.number().min(0).max(WAY_LIMITS.mostSetMinutes).optional().describe("to set a plane, minutes"),
  carryMinutes: z
    .number()
    .min(0)
    .max(WAY_LIMITS.mostSetMinutes)
    .optional()
    .describe("to carry a plane on to its next line or seat at the same lean, minutes"),
  secondsPerMetre: z
    .number()
    .gt(0)
    .max(WAY_LIMITS.mostSecondsPerMetre)
    .optional()
    .describe("of one stroke, there and back"),
  lengthMm: z
    .number()
    .min(WAY_LIMITS.shortestStickMm)
    .max(WAY_LIMITS.longestStickMm)
    .optional()
    .describe("length of a stick, mm"),
  sticks: z.int().min(1).max(WAY_LIMITS.mostSticks).optional().describe("sticks run at each setting"),
  testPieceMm: z
    .number()
    .min(0)
    .max(WAY_LIMITS.longestStickMm)
    .optional()
    .describe("length of the test piece that is run first at each setting, mm; 0 for none"),
  sharpenMinutes: z
    .number()
    .min(0)
    .max(WAY_LIMITS.mostSetMinutes)
    .optional()
    .describe("to sharpen an iron, minutes"),
  sharpForM: z
    .number()
    .min(1)
    .max(WAY_LIMITS.mostSharpForM)
    .optional()
    .describe("metres of stroke that an iron stays sharp for"),
  sawSetMinutes: z
    .number()
    .min(0)
    .max(WAY_LIMITS.mostSetMinutes)
    .optional()
    .describe("to set a saw, minutes"),
  sawSecondsPerMetre: z.number().gt(0).max(WAY_LIMITS.mostSecondsPerMetre).optional().describe("of sawing"),
}).describe("what the minutes are reckoned with");

const handMm = z.number().min(0).max(WAY_LIMITS.largestHandMm).optional();

export const handSchema = closedObject({
  gaugeMm: handMm.describe("setting a gauge or dividers, mm"),
  lineMm: handMm.describe("a knife line, mm"),
  sidewaysMm: handMm.describe("a plane guided by hand along a line, mm"),
  fenceMm: handMm.describe("a fence set to a line, mm"),
  sawMm: handMm.describe("a saw along a line, mm"),
  depthMm: handMm.describe("where a cut is stopped, mm"),
  widthMm: handMm.describe("the width of a sole as the shelf has it, mm"),
}).describe("what the maker keeps within 95 times in 100");

/** The divisions of an inch that a rule may have. */
export const INCH_STEPS = [16, 32, 64] as const;

/** Whether each shaving is no heavier than the one before it: heavy, ordinary, last. */
export function areShavingsInOrder(shavings: z.infer<typeof waySchema>["shavings"]): boolean {
  if (shavings === undefined) return true;
  return shavings.heavyMm >= shavings.ordinaryMm && shavings.ordinaryMm >= shavings.lastMm;
}
