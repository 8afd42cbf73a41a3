/**
 * The shelf FILE as a schema: which keys a plane of each kind has and what may stand in them. Whether the sizes make
 * sense together is `read-shelf.ts`'s business.
 */
import { z } from "../measure/index.ts";

/** Irons of one plough, and points of one drawn sole, at most. */
export const MOST_IRONS = 40;
export const MOST_POINTS = 2000;

/** A length as the file holds it: a number in the file's unit, or a string that carries its own. */
const length = z
  .union([z.number(), z.string()])
  .describe("a number in the file's unit, or text such as 1/2 in");
const angleDeg = z.number().describe("degrees");
const hand = z.enum(["left", "right"]).describe("side of the upright wall, looking along the stroke");
const named = {
  id: z.string().optional(),
  name: z.string().optional(),
  note: z.string().optional().describe("what the maker wants to remember about it"),
};

const vertex = z.union([z.tuple([z.number(), z.number()]), z.tuple([z.number(), z.number(), z.number()])]);

const curved = {
  ...named,
  radius: length,
  width: length,
  pitch: angleDeg.optional(),
  skew: angleDeg.optional(),
  shoulder: z.strictObject({ width: length, height: length }).optional(),
  wall: length.optional(),
};
const fenced = { ...named, fence: length.optional(), depth: length.optional() };
const flat = { ...named, width: length };
const sided = { ...named, hand, width: length.optional() };

/** One schema for each kind of plane. */
export const planeSchemas = {
  hollow: z.strictObject({ kind: z.literal("hollow"), ...curved }),
  round: z.strictObject({ kind: z.literal("round"), ...curved }),
  "snipe bill": z.strictObject({
    kind: z.literal("snipe bill"),
    ...sided,
    nose: length.optional(),
    slope: angleDeg.optional(),
    reach: length.optional(),
  }),
  rebate: z.strictObject({ kind: z.literal("rebate"), ...flat }),
  smoother: z.strictObject({ kind: z.literal("smoother"), ...flat }),
  "moving fillister": z.strictObject({ kind: z.literal("moving fillister"), ...fenced, width: length }),
  plough: z.strictObject({
    kind: z.literal("plough"),
    ...fenced,
    widths: z.array(length).min(1).max(MOST_IRONS),
  }),
  "side round": z.strictObject({ kind: z.literal("side round"), ...sided, radius: length.optional() }),
  "side snipe": z.strictObject({ kind: z.literal("side snipe"), ...sided }),
  "side rebate": z.strictObject({ kind: z.literal("side rebate"), ...sided }),
  bead: z.strictObject({
    kind: z.literal("bead"),
    ...flat,
    quirk: length.optional(),
    hand: hand.optional(),
  }),
  shaped: z.strictObject({
    kind: z.literal("shaped"),
    ...named,
    sole: z.array(vertex).min(2).max(MOST_POINTS),
    cutsWall: z.enum(["left", "right", "both", "none"]),
  }),
} as const;

export type FileKind = keyof typeof planeSchemas;

/** The kinds of plane, in the words of the trade. */
export const PLANE_KINDS = Object.keys(planeSchemas) as readonly FileKind[];

/** A plane as the file holds it. */
export type FilePlane = { [Kind in FileKind]: z.infer<(typeof planeSchemas)[Kind]> }[FileKind];

/** The whole shelf file, for other schemas to hold and for a JSON Schema to be made from. */
export const shelfFileSchema = z.strictObject({
  format: z.literal("mouldwright/shelf"),
  version: z.literal(1),
  unit: z.enum(["mm", "in"]),
  planes: z.array(
    z.discriminatedUnion("kind", [
      planeSchemas.hollow,
      planeSchemas.round,
      planeSchemas["snipe bill"],
      planeSchemas.rebate,
      planeSchemas.smoother,
      planeSchemas["moving fillister"],
      planeSchemas.plough,
      planeSchemas["side round"],
      planeSchemas["side snipe"],
      planeSchemas["side rebate"],
      planeSchemas.bead,
      planeSchemas.shaped,
    ]),
  ),
});

/** The unit of a file's bare numbers. */
export type FileUnit = z.infer<typeof shelfFileSchema>["unit"];

export type ShelfFile = z.infer<typeof shelfFileSchema>;

/** Keys of the whole file. */
export const SHELF_KEYS = Object.keys(shelfFileSchema.shape);
