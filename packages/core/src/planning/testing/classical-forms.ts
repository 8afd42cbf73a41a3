/**
 * The classical forms on sticks of the harbour joiner, drawn with radii that are on `WHOLE_SHELF`, each with the most
 * cuts a bench hand would count for it by the order of work in common use (common practice, no source): the steps
 * beside it, two arrises or a V to hold each curved plane, the curved plane itself, a line where wood stands beside it.
 */
import { INCH_MM } from "../../measure/index.ts";
import type { SectionSpec } from "../../section/index.ts";

const QUARTER_INCH_MM = INCH_MM / 4;
const HALF_INCH_MM = INCH_MM / 2;
/** Height of a 60° arc over its chord: r (1 - cos 30°). */
const RISE_OF_60_DEG = 1 - Math.cos(Math.PI / 6);

export interface ClassicalForm {
  readonly name: string;
  readonly spec: SectionSpec;
  /** The most cuts, counted by hand as `counted` says. */
  readonly mostCuts: number;
  readonly counted: string;
}

/** A 60° cyma on a line as long as two radii: `slopeDeg` is what that line makes with the face. */
function flatCyma(kind: "cyma recta" | "cyma reversa", radiusMm: number, slopeDeg: number): SectionSpec {
  const acrossMm = 2 * radiusMm * Math.cos((slopeDeg * Math.PI) / 180);
  const fallMm = 2 * radiusMm * Math.sin((slopeDeg * Math.PI) / 180);
  return {
    name: kind,
    stick: { widthMm: acrossMm + 8, thicknessMm: fallMm + 6 },
    parts: [
      { kind: "fillet", widthMm: 4 },
      { kind, acrossMm, riseMm: -fallMm },
      { kind: "fillet", widthMm: "rest" },
    ],
  };
}

/** Two quadrants. */
function thickCyma(kind: "cyma recta" | "cyma reversa", radiusMm: number): SectionSpec {
  return {
    name: kind,
    stick: { widthMm: 2 * radiusMm + 8, thicknessMm: 2 * radiusMm + 6 },
    parts: [
      { kind: "fillet", widthMm: 4 },
      { kind, acrossMm: 2 * radiusMm, riseMm: -2 * radiusMm, construction: "thick" },
      { kind: "fillet", widthMm: "rest" },
    ],
  };
}

/** A half-round whose crown is level with the stick's face, between two fillets a radius lower. */
function halfRoundBetweenFillets(kind: "torus" | "astragal", radiusMm: number): SectionSpec {
  return {
    name: kind,
    stick: { widthMm: 2 * radiusMm + 12, thicknessMm: 24 },
    startHeightMm: 24 - radiusMm,
    parts: [
      { kind: "fillet", widthMm: 6 },
      { kind, widthMm: 2 * radiusMm },
      { kind: "fillet", widthMm: "rest" },
    ],
  };
}

export const CLASSICAL_FORMS: readonly ClassicalForm[] = [
  {
    name: "low bead into cove",
    mostCuts: 8,
    counted:
      "fillet on each side 2, line at the bead's far foot 1, V for the round 4 at most, hollow and round 2; one line serves two",
    spec: {
      name: "low bead into cove",
      stick: { widthMm: 40, thicknessMm: 20 },
      startHeightMm: 20 - HALF_INCH_MM * RISE_OF_60_DEG,
      parts: [
        { kind: "fillet", widthMm: 5 },
        { kind: "low bead", widthMm: HALF_INCH_MM },
        { kind: "flutes", count: 1, widthMm: HALF_INCH_MM, name: "cove" },
        { kind: "fillet", widthMm: "rest" },
      ],
    },
  },
  {
    name: "five reeds",
    mostCuts: 15,
    counted: "a line at each of six feet, four more on the near side, five runs of the hollow",
    spec: {
      name: "five reeds",
      stick: { widthMm: 48, thicknessMm: 12 },
      parts: [
        { kind: "fillet", widthMm: 8 },
        { kind: "step", riseMm: -QUARTER_INCH_MM * RISE_OF_60_DEG },
        { kind: "reeds", count: 5, widthMm: QUARTER_INCH_MM },
        { kind: "step", riseMm: QUARTER_INCH_MM * RISE_OF_60_DEG },
        { kind: "fillet", widthMm: "rest" },
      ],
    },
  },
  {
    name: "quarter ovolo",
    mostCuts: 4,
    counted: "fillet below 1, chamfer or two 2, hollow 1",
    spec: {
      name: "quarter ovolo",
      stick: { widthMm: 30, thicknessMm: 20 },
      parts: [
        { kind: "fillet", widthMm: 12 },
        { kind: "ovolo", acrossMm: HALF_INCH_MM, riseMm: -HALF_INCH_MM },
        { kind: "fillet", widthMm: "rest" },
      ],
    },
  },
  {
    name: "cavetto",
    mostCuts: 6,
    counted: "steps from the edge 3, chamfer or two 2, round 1",
    spec: {
      name: "cavetto",
      stick: { widthMm: 30, thicknessMm: 20 },
      parts: [
        { kind: "fillet", widthMm: 12 },
        { kind: "cavetto", acrossMm: HALF_INCH_MM, riseMm: -HALF_INCH_MM },
        { kind: "fillet", widthMm: "rest" },
      ],
    },
  },
  {
    name: "cyma recta on 45°",
    mostCuts: 9,
    counted: "lower fillet 1, steps 2, chamfers or V for the round 3, for the hollow 1, round and hollow 2",
    spec: flatCyma("cyma recta", HALF_INCH_MM, 45),
  },
  {
    name: "cyma recta, flat",
    mostCuts: 9,
    counted: "as on 45°",
    spec: flatCyma("cyma recta", HALF_INCH_MM, 30),
  },
  {
    name: "cyma reversa, flat",
    mostCuts: 9,
    counted: "as on 45°",
    spec: flatCyma("cyma reversa", HALF_INCH_MM, 30),
  },
  {
    name: "cyma recta, thick",
    mostCuts: 9,
    counted: "as on 45°",
    spec: thickCyma("cyma recta", HALF_INCH_MM),
  },
  {
    name: "cyma reversa, thick",
    mostCuts: 9,
    counted: "as on 45°",
    spec: thickCyma("cyma reversa", HALF_INCH_MM),
  },
  {
    name: "open scotia",
    mostCuts: 9,
    counted: "fillet 1, groove and steps 4, chamfer 2, two rounds 2",
    spec: {
      name: "open scotia",
      stick: { widthMm: 48, thicknessMm: 30 },
      // From the lower lip down half the small radius, and up half the large one to the face.
      startHeightMm: 30 - (3 * INCH_MM) / 16,
      parts: [
        { kind: "fillet", widthMm: 6 },
        { kind: "swept arc", radiusMm: (3 * INCH_MM) / 8, sweepDeg: 60, bend: "hollow", leanDeg: -60 },
        { kind: "swept arc", radiusMm: (3 * INCH_MM) / 4, sweepDeg: 60, bend: "hollow" },
        { kind: "fillet", widthMm: "rest" },
      ],
    },
  },
  {
    name: "scotia of two quadrants",
    mostCuts: 9,
    counted: "as an open scotia",
    spec: {
      name: "scotia of two quadrants",
      stick: { widthMm: 48, thicknessMm: 30 },
      // The large lip stands a third of the width above the small one.
      startHeightMm: 30 - (3 * INCH_MM) / 8,
      parts: [
        { kind: "fillet", widthMm: 6 },
        { kind: "scotia", acrossMm: (9 * INCH_MM) / 8 },
        { kind: "fillet", widthMm: "rest" },
      ],
    },
  },
  {
    name: "torus",
    mostCuts: 9,
    counted: "a step on each side 2, two chamfers on each side 4, hollow on each side and on top 3",
    spec: halfRoundBetweenFillets("torus", (3 * INCH_MM) / 8),
  },
  {
    name: "astragal",
    mostCuts: 9,
    counted: "as a torus",
    spec: halfRoundBetweenFillets("astragal", (3 * INCH_MM) / 16),
  },
  {
    name: "three flutes",
    mostCuts: 12,
    counted: "for each a groove or V 3 at most, and the round 1",
    spec: {
      name: "three flutes",
      stick: { widthMm: 60, thicknessMm: 16 },
      parts: [
        { kind: "fillet", widthMm: 8 },
        { kind: "flutes", count: 3, widthMm: HALF_INCH_MM, gapMm: 3 },
        { kind: "fillet", widthMm: "rest" },
      ],
    },
  },
  {
    name: "glazing bar",
    mostCuts: 10,
    counted: "two rebates, and for each ovolo a fillet 1, chamfers 2, hollow 1",
    spec: {
      name: "glazing bar",
      stick: { widthMm: 28, thicknessMm: 36 },
      startHeightMm: 36 - (3 * INCH_MM) / 8,
      parts: [
        { kind: "ovolo", acrossMm: (3 * INCH_MM) / 8, riseMm: (3 * INCH_MM) / 8 },
        { kind: "fillet", widthMm: "rest" },
        { kind: "ovolo", acrossMm: (3 * INCH_MM) / 8, riseMm: (-3 * INCH_MM) / 8 },
      ],
      back: [
        { kind: "rebate", edge: "gauge", widthMm: 8, depthMm: 12 },
        { kind: "rebate", edge: "far", widthMm: 8, depthMm: 12 },
      ],
    },
  },
  {
    name: "frame with rebate",
    mostCuts: 7,
    counted: "glass rebate 1, fillet 1, steps and chamfers 3, cavetto's round 1, one to spare for its seat",
    spec: {
      name: "frame with rebate",
      stick: { widthMm: 40, thicknessMm: 22 },
      startHeightMm: 22 - (3 * INCH_MM) / 8,
      parts: [
        { kind: "fillet", widthMm: 4 },
        { kind: "cavetto", acrossMm: (3 * INCH_MM) / 8, riseMm: (3 * INCH_MM) / 8 },
        { kind: "fillet", widthMm: "rest" },
      ],
      back: [{ kind: "rebate", edge: "gauge", widthMm: 6, depthMm: 6, name: "glass rebate" }],
    },
  },
  {
    name: "sprung cornice",
    mostCuts: 15,
    counted: "two bevels sawn, fillets 3, cavetto 4, cyma recta 6",
    spec: {
      name: "sprung cornice",
      stick: { widthMm: 70, thicknessMm: 24 },
      startHeightMm: 12,
      parts: [
        { kind: "fillet", widthMm: 6 },
        { kind: "cavetto", acrossMm: QUARTER_INCH_MM, riseMm: QUARTER_INCH_MM },
        { kind: "fillet", widthMm: 5 },
        // Two arcs of 60° with half-inch radius: the line between their ends is an inch long, and rises 4 mm.
        { kind: "cyma recta", acrossMm: Math.sqrt(INCH_MM ** 2 - 16), riseMm: 4 },
        { kind: "fillet", widthMm: "rest" },
      ],
      back: [
        { kind: "bevel", edge: "gauge", riseMm: 8, fromBackDeg: 38 },
        { kind: "bevel", edge: "far", riseMm: 14, fromBackDeg: 52 },
      ],
    },
  },
];
