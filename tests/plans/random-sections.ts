/** Random sections: composed of one to twelve parts, and raw rings of lines and arcs that no part would make. */
import fc from "fast-check";
import { ringFromVertices } from "../../packages/core/src/curve/index.ts";
import {
  buildSection,
  inspectSection,
  type PartSpec,
  type Section,
} from "../../packages/core/src/section/index.ts";
import type { BulgedVertex } from "../second-route/plan-json.ts";

const SIXTEENTH_MM = 25.4 / 16;

/** Sizes as makers choose them: sixteenths of an inch, half millimetres, and any number at all. */
function size(leastMm: number, mostMm: number): fc.Arbitrary<number> {
  return fc.oneof(
    fc
      .integer({ min: Math.ceil(leastMm / SIXTEENTH_MM), max: Math.floor(mostMm / SIXTEENTH_MM) })
      .map((n) => n * SIXTEENTH_MM),
    fc.integer({ min: Math.ceil(leastMm * 2), max: Math.floor(mostMm * 2) }).map((n) => n / 2),
    fc.double({ min: leastMm, max: mostMm, noNaN: true }).map((mm) => Math.round(mm * 1e6) / 1e6),
  );
}

/** Sinks the part's start, so that what stands up from it stays in the stick. */
type Laid = readonly PartSpec[];

const down = (riseMm: number): PartSpec => ({ kind: "step", riseMm: -riseMm });

const anyParts: fc.Arbitrary<Laid> = fc.oneof(
  size(2, 12).map((widthMm): Laid => [{ kind: "fillet", widthMm }]),
  size(1, 8).map((riseMm): Laid => [down(riseMm)]),
  fc
    .tuple(size(2, 12), size(1, 8))
    .map(([acrossMm, riseMm]): Laid => [{ kind: "bevel", acrossMm, riseMm: -riseMm }]),
  size(2, 8).map((acrossMm): Laid => [{ kind: "chamfer", acrossMm }]),
  fc.tuple(size(2, 8), size(2, 6)).map(([widthMm, depthMm]): Laid => [{ kind: "quirk", widthMm, depthMm }]),
  fc
    .tuple(size(2, 4), size(2, 4), fc.constantFrom("first" as const, "last" as const, "neither" as const))
    .map(([widthMm, depthMm, upright]): Laid => [{ kind: "vee quirk", widthMm, depthMm, upright }]),
  fc
    .tuple(fc.constantFrom("bead" as const, "astragal" as const, "torus" as const), size(4, 12))
    .map(([kind, widthMm]): Laid => [down(widthMm / 2), { kind, widthMm }]),
  size(4, 16).map((widthMm): Laid => [down(widthMm * 0.15), { kind: "low bead", widthMm }]),
  fc
    .tuple(fc.integer({ min: 2, max: 4 }), size(3, 8), fc.constantFrom(0, 1))
    .map(([count, widthMm, gapMm]): Laid => [down(widthMm * 0.14), { kind: "reeds", count, widthMm, gapMm }]),
  fc
    .tuple(fc.integer({ min: 1, max: 3 }), size(3, 12), fc.constantFrom(0, 1, 3))
    .map(([count, widthMm, gapMm]): Laid => [{ kind: "flutes", count, widthMm, gapMm }]),
  fc
    .tuple(fc.constantFrom("ovolo" as const, "cavetto" as const), size(4, 16), size(4, 16))
    .map(([kind, acrossMm, riseMm]): Laid => [{ kind, acrossMm, riseMm: -riseMm }]),
  fc
    .tuple(fc.constantFrom("ovolo" as const, "cavetto" as const), size(4, 16))
    .map(([kind, mm]): Laid => [{ kind, acrossMm: mm, riseMm: -mm }]),
  fc
    .tuple(
      fc.constantFrom("cyma recta" as const, "cyma reversa" as const),
      size(8, 24),
      size(6, 16),
      fc.constantFrom("flat" as const, "thick" as const),
    )
    .map(
      ([kind, acrossMm, riseMm, construction]): Laid => [{ kind, acrossMm, riseMm: -riseMm, construction }],
    ),
  fc
    .tuple(size(6, 20), fc.constantFrom("first" as const, "last" as const))
    .map(([acrossMm, small]): Laid => [down(acrossMm * 0.4), { kind: "scotia", acrossMm, small }]),
);

/** Built sections of so many parts; a chain that cannot be built is drawn again. */
function builtOf(fewest: number, most: number): fc.Arbitrary<Section> {
  return fc
    .tuple(fc.array(anyParts, { minLength: fewest, maxLength: most }), size(2, 10), size(6, 16), fc.boolean())
    .map(([chain, marginMm, spareMm, isRising]) => sectionFrom(chain.flat(), marginMm, spareMm, isRising))
    .filter((section) => section !== null);
}

/** One to five parts. */
export const smallSections: fc.Arbitrary<Section> = builtOf(1, 5);
/** Six to twelve parts: cornices and the like. */
export const largeSections: fc.Arbitrary<Section> = builtOf(6, 12);

/** One to twelve parts; most of the time few, since a large section takes ten times as long to plan and to examine. */
export const builtSections: fc.Arbitrary<Section> = fc.oneof(
  { weight: 9, arbitrary: smallSections },
  { weight: 1, arbitrary: largeSections },
);

/** Sticks larger than this are glued up, not planned from one. */
const THICKEST_MM = 100;
const WIDEST_MM = 240;

function sectionFrom(parts: Laid, marginMm: number, spareMm: number, isRising: boolean): Section | null {
  const widest = parts.reduce((sum, part) => sum + acrossOf(part), 0);
  const fall = parts.reduce((sum, part) => sum + fallOf(part), 0);
  const widthMm = Math.round((marginMm + widest + spareMm) * 1e6) / 1e6;
  const thicknessMm = Math.round((fall + spareMm) * 1e6) / 1e6;
  if (thicknessMm > THICKEST_MM || widthMm > WIDEST_MM) return null;
  const chain: PartSpec[] = [
    { kind: "fillet", widthMm: marginMm },
    ...parts,
    { kind: "fillet", widthMm: "rest" },
  ];
  const built = buildSection({ name: "random section", stick: { widthMm, thicknessMm }, parts: chain });
  if (!built.ok) return null;
  return isRising ? turnedRound(built.value, widthMm) : built.value;
}

/** The same face rising from the gauge edge: the ring mirrored by hand, so as not to lean on the program's own. */
function turnedRound(section: Section, widthMm: number): Section {
  const vertices = section.outline.pieces.map((piece): BulgedVertex => {
    const bulge = piece.kind === "arc" ? piece.bulge : 0;
    return [widthMm - piece.to.x, piece.to.y, bulge];
  });
  return { ...section, outline: ringFromVertices(vertices.reverse()), named: [], freeSpans: [] };
}

function acrossOf(part: PartSpec): number {
  switch (part.kind) {
    case "fillet":
      return part.widthMm === "rest" ? 0 : part.widthMm;
    case "step":
      return 0;
    case "quirk":
    case "vee quirk":
    case "bead":
    case "astragal":
    case "torus":
    case "low bead":
      return part.widthMm;
    case "reeds":
    case "flutes":
      return part.count * part.widthMm + (part.count - 1) * (part.gapMm ?? 0);
    default:
      return "acrossMm" in part ? part.acrossMm : 0;
  }
}

function fallOf(part: PartSpec): number {
  switch (part.kind) {
    case "chamfer":
      return part.acrossMm;
    case "quirk":
    case "vee quirk":
      return part.depthMm;
    case "flutes":
      return part.widthMm * 0.14;
    case "scotia":
      return part.acrossMm;
    default:
      return "riseMm" in part ? Math.max(0, -(part.riseMm ?? 0)) : 0;
  }
}

/**
 * A face of up to seven vertices at any height and bulge, from gauge edge to far edge: coves, beads, arrises and
 * undercuts as they come. What crosses itself or leaves the stick is drawn again.
 */
export const rawSections: fc.Arbitrary<Section> = fc
  .tuple(
    fc.integer({ min: 20, max: 50 }),
    fc.integer({ min: 14, max: 30 }),
    fc.array(
      fc.tuple(
        fc.double({ min: 0.3, max: 1, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        fc.oneof(fc.constant(0), fc.double({ min: -0.9, max: 0.9, noNaN: true })),
      ),
      { minLength: 2, maxLength: 7 },
    ),
  )
  .map(([widthMm, thicknessMm, places]) => rawSection(widthMm, thicknessMm, places))
  .filter((section) => section !== null);

function rawSection(
  widthMm: number,
  thicknessMm: number,
  places: readonly (readonly [number, number, number])[],
): Section | null {
  const total = places.reduce((sum, [share]) => sum + share, 0);
  let x = widthMm;
  const face: BulgedVertex[] = [];
  for (const [i, [share, height, bulge]] of places.entries()) {
    const y = thicknessMm * (0.45 + 0.5 * height);
    const vertex = [rounded(x), rounded(y), bulge] as const;
    face.push(vertex);
    if (i + 2 === places.length) x = 0;
    else x -= (widthMm * share) / total;
  }
  const ring: BulgedVertex[] = [[0, 0], [widthMm, 0], ...face];
  // The gauge edge closes the ring with a line.
  ring[ring.length - 1] = [ring[ring.length - 1][0], ring[ring.length - 1][1]];
  const section: Section = {
    name: "random ring",
    stick: ringFromVertices([
      [0, 0],
      [widthMm, 0],
      [widthMm, thicknessMm],
      [0, thicknessMm],
    ]),
    outline: ringFromVertices(ring),
    freeSpans: [],
    named: [],
  };
  return inspectSection(section).refusals.length === 0 ? section : null;
}

function rounded(mm: number): number {
  return Math.round(mm * 1e6) / 1e6;
}

export const anySections: fc.Arbitrary<Section> = fc.oneof(
  { weight: 3, arbitrary: builtSections },
  { weight: 1, arbitrary: rawSections },
);
