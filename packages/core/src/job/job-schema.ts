/**
 * The job file as one schema: the types, the validation and the published JSON Schema (`schema.json`) all come from
 * here. Lengths are millimetres and angles degrees, as everywhere in our files; `unit` is what the maker reads in.
 */
import type { Vertex } from "../curve/index.ts";
import { closedObject } from "../cutting/index.ts";
import { LEAST_PIECE_MM, z } from "../measure/index.ts";
import type { BackSpec, PartSpec } from "../section/index.ts";
import { shelfFileSchema } from "../shelf/index.ts";
import { fitSchema } from "./fit-schema.ts";
import { lightSchema } from "./light-schema.ts";
import { sheetsSchema } from "./sheets-schema.ts";
import { standingSchema } from "./standing-schema.ts";
import { ticksSchema } from "./ticks-schema.ts";
import { handSchema, INCH_STEPS, waySchema, workingSchema } from "./way-schema.ts";

export const JOB_FORMAT = "mouldwright/job";
export const JOB_VERSION = 1;

/** Bounds of a job file. */
export const JOB_LIMITS = {
  mostCharacters: 5_000_000,
  mostParts: 200,
  mostVertices: 20_000,
  mostNameCharacters: 200,
  mostNoteCharacters: 20_000,
  /** Largest size of a stick across, mm: a metre's board. */
  largestMm: 1000,
} as const;

const sizeMm = z.number().gt(0).max(JOB_LIMITS.largestMm).describe("mm");
const stickMm = z.number().min(LEAST_PIECE_MM).max(JOB_LIMITS.largestMm).describe("mm");
const signedMm = z.number().min(-JOB_LIMITS.largestMm).max(JOB_LIMITS.largestMm).describe("mm");
const turnDeg = z.number().min(-180).max(180).describe("degrees, anticlockwise");
const sweepDeg = z.number().gt(0).max(360).describe("degrees");
const name = z.string().max(JOB_LIMITS.mostNameCharacters);

const common = { name: name.optional(), smooth: z.boolean().optional(), leanDeg: turnDeg.optional() };

const row = {
  count: z.int().min(1).max(100),
  widthMm: sizeMm,
  sweepDeg: sweepDeg.optional(),
  gapMm: z.number().min(0).max(JOB_LIMITS.largestMm).optional(),
  ...common,
};
const quarter = {
  acrossMm: signedMm,
  riseMm: signedMm,
  construction: z.enum(["tangent", "longer side"]).optional(),
  radiusMm: sizeMm.optional(),
  ...common,
};
const cyma = {
  acrossMm: signedMm,
  riseMm: signedMm,
  construction: z.enum(["flat", "thick"]).optional(),
  hollowRatio: z.number().gt(0).lt(1).optional(),
  ...common,
};
const bend = z.enum(["round", "hollow"]);
const point = z.tuple([signedMm, signedMm]);

const partSchema = z.discriminatedUnion("kind", [
  closedObject({ kind: z.literal("fillet"), widthMm: z.union([sizeMm, z.literal("rest")]), ...common }),
  closedObject({ kind: z.literal("step"), riseMm: signedMm, ...common }),
  closedObject({ kind: z.literal("bevel"), acrossMm: signedMm, riseMm: signedMm, ...common }),
  closedObject({ kind: z.literal("chamfer"), acrossMm: signedMm, riseMm: signedMm.optional(), ...common }),
  closedObject({
    kind: z.literal("quirk"),
    widthMm: sizeMm,
    depthMm: sizeMm,
    walls: z.enum(["both", "first", "last"]).optional(),
    ...common,
  }),
  closedObject({
    kind: z.literal("vee quirk"),
    widthMm: sizeMm,
    depthMm: sizeMm,
    upright: z.enum(["first", "last", "neither"]).optional(),
    ...common,
  }),
  closedObject({ kind: z.enum(["bead", "astragal", "torus"]), widthMm: sizeMm, ...common }),
  closedObject({ kind: z.literal("low bead"), widthMm: sizeMm, sweepDeg: sweepDeg.optional(), ...common }),
  closedObject({ kind: z.literal("reeds"), ...row }),
  closedObject({ kind: z.literal("flutes"), ...row }),
  closedObject({
    kind: z.literal("band"),
    of: z.enum(["reeds", "flutes"]),
    widthMm: sizeMm.describe("of the whole band, mm"),
    count: z.int().min(1).max(100).optional(),
    radiusMm: sizeMm.optional(),
    sweepDeg: sweepDeg.optional(),
    filletMm: z.number().min(0).max(JOB_LIMITS.largestMm).optional().describe("flat between neighbours, mm"),
    leastEndMm: z.number().min(0).max(JOB_LIMITS.largestMm).optional().describe("flat at each end, mm"),
    ...common,
  }),
  closedObject({ kind: z.enum(["ovolo", "cavetto"]), ...quarter }),
  closedObject({
    kind: z.literal("scotia"),
    acrossMm: signedMm,
    small: z.enum(["first", "last"]).optional(),
    smallRadiusMm: sizeMm.optional(),
    ...common,
  }),
  closedObject({ kind: z.enum(["cyma recta", "cyma reversa"]), ...cyma }),
  closedObject({
    kind: z.literal("arc"),
    acrossMm: signedMm,
    riseMm: signedMm,
    radiusMm: sizeMm,
    bend,
    ...common,
  }),
  closedObject({ kind: z.literal("swept arc"), radiusMm: sizeMm, sweepDeg, bend, ...common }),
  closedObject({
    kind: z.literal("running arc"),
    name: name.optional(),
    acrossMm: signedMm,
    riseMm: signedMm,
  }),
  closedObject({
    kind: z.literal("free curve"),
    beziers: z
      .array(closedObject({ control1: point, control2: point, to: point }))
      .min(1)
      .max(JOB_LIMITS.mostParts),
    ...common,
  }),
]);

const edge = z.enum(["gauge", "far"]);
const backSchema = z.discriminatedUnion("kind", [
  closedObject({
    kind: z.literal("rebate"),
    name: name.optional(),
    edge,
    widthMm: sizeMm,
    depthMm: sizeMm,
  }),
  closedObject({
    kind: z.literal("bevel"),
    name: name.optional(),
    edge,
    riseMm: sizeMm,
    fromBackDeg: z.number().gt(0).lt(180).describe("degrees"),
  }),
]);

// A list of two or three numbers, as in the plan file: x, y and the bulge of the arc to the next vertex.
const vertexSchema = z
  .array(signedMm)
  .min(2)
  .max(3)
  .describe("x and y in mm, and the bulge of an arc to the next vertex: tan(sweep / 4)");

const sectionSchema = closedObject({
  parts: z.array(partSchema).min(1).max(JOB_LIMITS.mostParts).optional(),
  startHeightMm: sizeMm.optional().describe("height of the first part's start on the gauge edge, mm"),
  back: z.array(backSchema).max(2).optional(),
  path: z
    .array(vertexSchema)
    .min(2)
    .max(JOB_LIMITS.mostVertices)
    .optional()
    .describe("the whole outline instead of parts, anticlockwise, the stick's lower left corner at 0, 0"),
}).describe("the section wanted: parts along the face from the gauge edge, or a path");

export const jobSchema = closedObject({
  format: z.literal(JOB_FORMAT),
  version: z.literal(JOB_VERSION),
  name,
  unit: z.enum(["mm", "in"]).optional().describe("what the maker reads and types in; mm if absent"),
  notes: z.string().max(JOB_LIMITS.mostNoteCharacters).optional(),
  section: sectionSchema,
  stick: closedObject({ widthMm: stickMm, thicknessMm: stickMm }).describe("the stick before any cut"),
  shelf: z
    .union([closedObject({ file: z.string().min(1).max(JOB_LIMITS.mostNameCharacters) }), shelfFileSchema])
    .optional()
    .describe("the shelf itself, or the name of its file in the job's folder"),
  way: waySchema.optional(),
  working: workingSchema.optional(),
  hand: handSchema.optional(),
  inchStep: z
    .union(INCH_STEPS.map((step) => z.literal(step)))
    .optional()
    .describe("finest division of the maker's inch rule; 32 if absent"),
  fit: fitSchema.optional(),
  standing: standingSchema.optional(),
  ticks: ticksSchema.optional(),
  light: lightSchema.optional(),
  sheets: sheetsSchema.optional(),
});

/** A job as its file holds it. */
export type Job = z.infer<typeof jobSchema>;

/** The schema's parts are the very parts that `section/` builds from; the compiler holds the two together. */
export function partsOf(section: Job["section"]): readonly PartSpec[] | undefined {
  return section.parts;
}

export function backOf(section: Job["section"]): readonly BackSpec[] | undefined {
  return section.back;
}

/** The path's vertices; the schema has counted the numbers of each. */
export function pathOf(section: Job["section"]): readonly Vertex[] | undefined {
  return section.path as readonly Vertex[] | undefined;
}
