/**
 * The parts as a Zod schema: what the job file's reader validates with and what its JSON Schema is made from. Shapes and
 * types only; sizes that no part can have are refused by `buildSection`, in the maker's words.
 */
import { z } from "../measure/index.ts";
import type { BackSpec, PartSpec, SectionSpec } from "./part-spec.ts";

const mm = z.number();
const common = {
  name: z.string().optional(),
  smooth: z.boolean().optional(),
  leanDeg: z.number().optional(),
};
const acrossAndRise = { acrossMm: mm, riseMm: mm };
const rowOfArcs = {
  count: z.number().int(),
  widthMm: mm,
  sweepDeg: z.number().optional(),
  gapMm: mm.optional(),
};
const pair = z.tuple([mm, mm]).readonly();
const bend = z.enum(["round", "hollow"]);

export const partSchema = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("fillet"), ...common, widthMm: z.union([mm, z.literal("rest")]) }),
  z.strictObject({ kind: z.literal("step"), ...common, riseMm: mm }),
  z.strictObject({ kind: z.literal("bevel"), ...common, ...acrossAndRise }),
  z.strictObject({ kind: z.literal("chamfer"), ...common, acrossMm: mm, riseMm: mm.optional() }),
  z.strictObject({
    kind: z.literal("quirk"),
    ...common,
    widthMm: mm,
    depthMm: mm,
    walls: z.enum(["both", "first", "last"]).optional(),
  }),
  z.strictObject({
    kind: z.literal("vee quirk"),
    ...common,
    widthMm: mm,
    depthMm: mm,
    upright: z.enum(["first", "last", "neither"]).optional(),
  }),
  z.strictObject({ kind: z.enum(["bead", "astragal", "torus"]), ...common, widthMm: mm }),
  z.strictObject({ kind: z.literal("low bead"), ...common, widthMm: mm, sweepDeg: z.number().optional() }),
  z.strictObject({ kind: z.literal("reeds"), ...common, ...rowOfArcs }),
  z.strictObject({ kind: z.literal("flutes"), ...common, ...rowOfArcs }),
  z.strictObject({
    kind: z.literal("band"),
    ...common,
    of: z.enum(["reeds", "flutes"]),
    widthMm: mm,
    count: z.number().int().optional(),
    radiusMm: mm.optional(),
    sweepDeg: z.number().optional(),
    filletMm: mm.optional(),
    leastEndMm: mm.optional(),
  }),
  z.strictObject({
    kind: z.enum(["ovolo", "cavetto"]),
    ...common,
    ...acrossAndRise,
    construction: z.enum(["tangent", "longer side"]).optional(),
    radiusMm: mm.optional(),
  }),
  z.strictObject({
    kind: z.literal("scotia"),
    ...common,
    acrossMm: mm,
    small: z.enum(["first", "last"]).optional(),
    smallRadiusMm: mm.optional(),
  }),
  z.strictObject({
    kind: z.enum(["cyma recta", "cyma reversa"]),
    ...common,
    ...acrossAndRise,
    construction: z.enum(["flat", "thick"]).optional(),
    hollowRatio: z.number().optional(),
  }),
  z.strictObject({ kind: z.literal("arc"), ...common, ...acrossAndRise, radiusMm: mm, bend }),
  z.strictObject({ kind: z.literal("swept arc"), ...common, radiusMm: mm, sweepDeg: z.number(), bend }),
  z.strictObject({ kind: z.literal("running arc"), name: z.string().optional(), ...acrossAndRise }),
  z.strictObject({
    kind: z.literal("free curve"),
    ...common,
    beziers: z.array(z.strictObject({ control1: pair, control2: pair, to: pair })).readonly(),
  }),
]);

const edge = z.enum(["gauge", "far"]);

export const backSchema = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("rebate"), name: z.string().optional(), edge, widthMm: mm, depthMm: mm }),
  z.strictObject({
    kind: z.literal("bevel"),
    name: z.string().optional(),
    edge,
    riseMm: mm,
    fromBackDeg: z.number(),
  }),
]);

export const sectionSpecSchema = z.strictObject({
  name: z.string(),
  stick: z.strictObject({ widthMm: mm, thicknessMm: mm }),
  startHeightMm: mm.optional(),
  parts: z.array(partSchema).readonly(),
  back: z.array(backSchema).readonly().optional(),
});

/** Compiles only while schema and types say the same, both ways. */
type Same<A, B> = [A] extends [B] ? ([B] extends [Readonly<A>] ? true : never) : never;
const samePart: Same<z.infer<typeof partSchema>, PartSpec> = true;
const sameBack: Same<z.infer<typeof backSchema>, BackSpec> = true;
const sameSection: Same<z.infer<typeof sectionSpecSchema>, SectionSpec> = true;
void [samePart, sameBack, sameSection];
