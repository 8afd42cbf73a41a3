/**
 * The gallery's sections: classical forms in several sizes, the chart cabinet's pieces, and odd and hostile ones.
 * Each is planned by `npm run gallery` with one of the example shelves. Sizes in mm.
 */
import type { SectionSpec } from "mouldwright/section";

export interface GalleryEntry {
  /** Name of its folder. */
  readonly id: string;
  readonly shelf: "full" | "small";
  readonly section: SectionSpec;
}

const rest = { kind: "fillet", widthMm: "rest" } as const;
const fillet = (widthMm: number) => ({ kind: "fillet", widthMm }) as const;
const step = (riseMm: number) => ({ kind: "step", riseMm }) as const;

/** Height of a 60° arc of this radius over its ends: r(1 − cos 30°). */
const rise60Mm = (radiusMm: number) => radiusMm * (1 - Math.cos(Math.PI / 6));

const CLASSICAL: readonly GalleryEntry[] = [
  {
    id: "ovolo-small",
    shelf: "full",
    section: {
      name: "Ovolo of ¼ in",
      stick: { widthMm: 16, thicknessMm: 12 },
      parts: [fillet(5), step(-1.5), { kind: "ovolo", acrossMm: 6.35, riseMm: -6.35 }, rest],
    },
  },
  {
    id: "ovolo-and-fillet",
    shelf: "small",
    section: {
      name: "Ovolo of ⅝ in between fillets",
      stick: { widthMm: 38, thicknessMm: 25 },
      parts: [fillet(8), step(-2.5), { kind: "ovolo", acrossMm: 15.875, riseMm: -15.875 }, rest],
    },
  },
  {
    id: "ovolo-large",
    shelf: "full",
    section: {
      name: "Ovolo of 1¼ in on the corner",
      stick: { widthMm: 50, thicknessMm: 45 },
      parts: [fillet(12), step(-3), { kind: "ovolo", acrossMm: 31.75, riseMm: -31.75 }, rest],
    },
  },
  {
    id: "ovolo-flat",
    shelf: "full",
    section: {
      name: "Ovolo of less than a quarter, radius not on the shelf",
      stick: { widthMm: 32, thicknessMm: 18 },
      parts: [fillet(6), step(-2), { kind: "ovolo", acrossMm: 18, riseMm: -10 }, rest],
    },
  },
  {
    id: "cavetto-small",
    shelf: "small",
    section: {
      name: "Cavetto of ⅜ in",
      stick: { widthMm: 20, thicknessMm: 16 },
      parts: [fillet(6), { kind: "cavetto", acrossMm: 9.525, riseMm: -9.525 }, rest],
    },
  },
  {
    id: "cavetto-large",
    shelf: "full",
    section: {
      name: "Cavetto of 1½ in",
      stick: { widthMm: 54, thicknessMm: 46 },
      parts: [fillet(8), { kind: "cavetto", acrossMm: 38.1, riseMm: -38.1 }, rest],
    },
  },
  {
    id: "cove-and-bead",
    shelf: "small",
    section: {
      name: "Cove of ⅝ in and low bead of ⅜ in",
      stick: { widthMm: 42, thicknessMm: 20 },
      parts: [
        fillet(4),
        step(-rise60Mm(9.525)),
        { kind: "low bead", widthMm: 9.525 },
        { kind: "cavetto", acrossMm: 15.875, riseMm: -15.875 },
        rest,
      ],
    },
  },
  {
    id: "cyma-recta-flat-small",
    shelf: "small",
    section: {
      name: "Cyma recta, flat, ⅜ in",
      stick: { widthMm: 24, thicknessMm: 18 },
      parts: [fillet(5), step(-1.5), { kind: "cyma recta", acrossMm: 13.470384, riseMm: -13.470384 }, rest],
    },
  },
  {
    id: "cyma-recta-flat-large",
    shelf: "full",
    section: {
      name: "Cyma recta, flat, 1 in",
      stick: { widthMm: 56, thicknessMm: 42 },
      parts: [fillet(10), step(-3), { kind: "cyma recta", acrossMm: 35.921024, riseMm: -35.921024 }, rest],
    },
  },
  {
    id: "cyma-recta-thick",
    shelf: "full",
    section: {
      name: "Cyma recta of two quadrants of ½ in",
      stick: { widthMm: 40, thicknessMm: 32 },
      parts: [
        fillet(7),
        step(-2),
        { kind: "cyma recta", acrossMm: 25.4, riseMm: -25.4, construction: "thick" },
        rest,
      ],
    },
  },
  {
    id: "cyma-recta-uneven",
    shelf: "full",
    section: {
      name: "Cyma recta with the larger hollow",
      stick: { widthMm: 46, thicknessMm: 26 },
      parts: [
        fillet(6),
        step(-2),
        { kind: "cyma recta", acrossMm: 32, riseMm: -15.454813, hollowRatio: 0.6 },
        rest,
      ],
    },
  },
  {
    id: "cyma-reversa-flat",
    shelf: "small",
    section: {
      name: "Cyma reversa, flat, ⅝ in",
      stick: { widthMm: 36, thicknessMm: 28 },
      parts: [fillet(7), step(-2), { kind: "cyma reversa", acrossMm: 22.45064, riseMm: -22.45064 }, rest],
    },
  },
  {
    id: "cyma-reversa-thick",
    shelf: "full",
    section: {
      name: "Cyma reversa of two quadrants of ⅜ in",
      stick: { widthMm: 32, thicknessMm: 24 },
      parts: [
        fillet(6),
        step(-2),
        { kind: "cyma reversa", acrossMm: 19.05, riseMm: -19.05, construction: "thick" },
        rest,
      ],
    },
  },
  {
    id: "scotia-small",
    shelf: "full",
    section: {
      name: "Scotia, small radius by the gauge edge",
      stick: { widthMm: 34, thicknessMm: 28 },
      parts: [fillet(6), { kind: "scotia", acrossMm: 19.05, small: "first" }, rest],
      startHeightMm: 21.65,
    },
  },
  {
    id: "scotia-large",
    shelf: "full",
    section: {
      name: "Scotia, large radius by the gauge edge",
      stick: { widthMm: 56, thicknessMm: 40 },
      parts: [fillet(8), { kind: "scotia", acrossMm: 38.1, small: "last" }, rest],
    },
  },
  {
    id: "torus",
    shelf: "full",
    section: {
      name: "Torus of 1 in between fillets",
      stick: { widthMm: 46, thicknessMm: 30 },
      startHeightMm: 17.3,
      parts: [fillet(10.3), { kind: "torus", widthMm: 25.4 }, fillet(10.3)],
    },
  },
  {
    id: "astragal",
    shelf: "full",
    section: {
      name: "Astragal of ⅜ in between fillets",
      stick: { widthMm: 25.525, thicknessMm: 16 },
      startHeightMm: 11.2375,
      parts: [fillet(8), { kind: "astragal", widthMm: 9.525 }, fillet(8)],
    },
  },
  {
    id: "quirked-bead",
    shelf: "full",
    section: {
      name: "Bead of ⅜ in on the edge with a quirk",
      stick: { widthMm: 40, thicknessMm: 18 },
      parts: [
        rest,
        // Down to where the bead's side stands at 75°, so that its top is level with the face.
        step(-3.52988),
        { kind: "swept arc", radiusMm: 4.7625, sweepDeg: 165, bend: "round", leanDeg: 75 },
      ],
    },
  },
  {
    id: "low-bead",
    shelf: "small",
    section: {
      name: "Low bead of ⅜ in sunk in a face",
      stick: { widthMm: 30, thicknessMm: 16 },
      parts: [
        fillet(10),
        step(-rise60Mm(9.525)),
        { kind: "low bead", widthMm: 9.525 },
        step(rise60Mm(9.525)),
        rest,
      ],
    },
  },
  {
    id: "reeds-3",
    shelf: "small",
    section: {
      name: "Three reeds of ⅜ in over the whole stick",
      stick: { widthMm: 28.575, thicknessMm: 14 },
      startHeightMm: 14 - rise60Mm(9.525),
      parts: [{ kind: "reeds", count: 3, widthMm: 9.525 }],
    },
  },
  {
    id: "reeds-7",
    shelf: "full",
    section: {
      name: "Seven reeds of ⅛ in sunk between margins",
      stick: { widthMm: 36, thicknessMm: 20 },
      parts: [
        fillet(6.8875),
        step(-rise60Mm(3.175)),
        { kind: "reeds", count: 7, widthMm: 3.175 },
        step(rise60Mm(3.175)),
        rest,
      ],
    },
  },
  {
    id: "flutes-3",
    shelf: "small",
    section: {
      name: "Three flutes of ⅜ in",
      stick: { widthMm: 50, thicknessMm: 20 },
      parts: [fillet(6.7125), { kind: "flutes", count: 3, widthMm: 9.525, gapMm: 4 }, rest],
    },
  },
  {
    id: "flutes-5-deep",
    shelf: "full",
    section: {
      name: "Five flutes of half a circle, ½ in wide",
      stick: { widthMm: 92, thicknessMm: 24 },
      parts: [fillet(6.25), { kind: "flutes", count: 5, widthMm: 12.7, sweepDeg: 180, gapMm: 4 }, rest],
    },
  },
  {
    id: "thumb",
    shelf: "full",
    section: {
      name: "Thumb of two radii with a fillet",
      stick: { widthMm: 30, thicknessMm: 18 },
      parts: [
        fillet(8),
        step(-2),
        { kind: "swept arc", radiusMm: 25.4, sweepDeg: 35, bend: "round" },
        { kind: "swept arc", radiusMm: 6.35, sweepDeg: 45, bend: "round", smooth: true },
        rest,
      ],
    },
  },
];

const CHART_CABINET: readonly GalleryEntry[] = [
  {
    id: "chart-cornice",
    shelf: "full",
    section: {
      name: "Chart cabinet: cornice",
      stick: { widthMm: 68, thicknessMm: 22 },
      parts: [
        fillet(7),
        step(-2.5),
        { kind: "cyma recta", acrossMm: 30.667, riseMm: -8.217 },
        fillet(3),
        step(-2),
        { kind: "low bead", widthMm: 9.525 },
        rest,
      ],
      back: [
        { kind: "bevel", edge: "gauge", riseMm: 14, fromBackDeg: 52 },
        { kind: "bevel", edge: "far", riseMm: 6, fromBackDeg: 38 },
      ],
    },
  },
  {
    id: "chart-plinth",
    shelf: "full",
    section: {
      name: "Chart cabinet: plinth moulding",
      stick: { widthMm: 36, thicknessMm: 27 },
      parts: [fillet(9), step(-2), { kind: "cyma reversa", acrossMm: 17.960512, riseMm: -17.960512 }, rest],
    },
  },
  {
    id: "chart-pilaster",
    shelf: "full",
    section: {
      name: "Chart cabinet: reeded pilaster",
      stick: { widthMm: 41.275, thicknessMm: 28.575 },
      parts: [
        fillet(8.73125),
        step(-0.638054),
        { kind: "reeds", count: 5, widthMm: 4.7625 },
        step(0.638054),
        rest,
      ],
    },
  },
  {
    id: "barometer-frame",
    shelf: "full",
    section: {
      name: "Barometer case: frame",
      stick: { widthMm: 40, thicknessMm: 23 },
      parts: [
        fillet(5),
        step(-1.276108),
        { kind: "low bead", widthMm: 9.525 },
        { kind: "cavetto", acrossMm: 17, riseMm: -9, radiusMm: 19.05 },
        step(-2),
        rest,
      ],
      back: [{ kind: "rebate", edge: "far", widthMm: 8, depthMm: 6 }],
    },
  },
  {
    id: "glazing-bar",
    shelf: "full",
    section: {
      name: "Chart cabinet: glazing bar",
      stick: { widthMm: 18, thicknessMm: 25 },
      startHeightMm: 17.65,
      parts: [
        { kind: "ovolo", acrossMm: 6.35, riseMm: 6.35 },
        step(1),
        fillet(5.3),
        step(-1),
        { kind: "ovolo", acrossMm: 6.35, riseMm: -6.35 },
      ],
      back: [
        { kind: "rebate", edge: "gauge", widthMm: 6, depthMm: 12 },
        { kind: "rebate", edge: "far", widthMm: 6, depthMm: 12 },
      ],
    },
  },
];

const ODD: readonly GalleryEntry[] = [
  {
    id: "cornice-ten",
    shelf: "full",
    section: {
      name: "Cornice of ten parts",
      stick: { widthMm: 112, thicknessMm: 45 },
      parts: [
        fillet(8),
        step(-3),
        { kind: "cyma recta", acrossMm: 38, riseMm: -14 },
        fillet(4),
        step(-3),
        { kind: "cavetto", acrossMm: 19.05, riseMm: -10, radiusMm: 19.05 },
        fillet(3),
        step(-2),
        { kind: "low bead", widthMm: 9.525 },
        rest,
      ],
      back: [
        { kind: "bevel", edge: "gauge", riseMm: 30, fromBackDeg: 52 },
        { kind: "bevel", edge: "far", riseMm: 8, fromBackDeg: 38 },
      ],
    },
  },
  {
    id: "cornice-sixteen",
    shelf: "full",
    section: {
      name: "Cornice of sixteen parts",
      stick: { widthMm: 165, thicknessMm: 50 },
      parts: [
        fillet(9),
        step(-3),
        { kind: "cyma recta", acrossMm: 40, riseMm: -16 },
        fillet(4),
        step(-2),
        { kind: "low bead", widthMm: 9.525 },
        { kind: "cavetto", acrossMm: 22.225, riseMm: -11, radiusMm: 22.225 },
        fillet(3.5),
        step(-3),
        { kind: "ovolo", acrossMm: 15.875, riseMm: -8 },
        fillet(4),
        step(-rise60Mm(6.35)),
        { kind: "low bead", widthMm: 6.35 },
        { kind: "swept arc", radiusMm: 12.7, sweepDeg: 60, bend: "hollow", smooth: true },
        rest,
      ],
      back: [{ kind: "bevel", edge: "gauge", riseMm: 34, fromBackDeg: 52 }],
    },
  },
  {
    id: "quarter-ellipse",
    shelf: "full",
    section: {
      name: "Thumb: a quarter ellipse of 24 by 10 mm as a free curve",
      stick: { widthMm: 36, thicknessMm: 18 },
      parts: [
        fillet(6),
        step(-2),
        {
          kind: "free curve",
          // Cubic with the usual handle of a quarter circle, 0.5522847498 of each half axis.
          beziers: [{ control1: [13.2548, 0], control2: [24, -4.4772], to: [24, -10] }],
        },
        rest,
      ],
    },
  },
  {
    id: "free-ogee-small-shelf",
    shelf: "small",
    section: {
      name: "Ogee drawn freehand",
      stick: { widthMm: 44, thicknessMm: 22 },
      parts: [
        fillet(6),
        step(-1.5),
        { kind: "free curve", beziers: [{ control1: [16, 2], control2: [14, -15], to: [30, -13] }] },
        rest,
      ],
    },
  },
  {
    id: "low-bead-on-bevel",
    shelf: "small",
    section: {
      name: "Low bead of ⅜ in leaning on a bevel",
      stick: { widthMm: 40, thicknessMm: 24 },
      parts: [
        fillet(8),
        { kind: "bevel", acrossMm: 8, riseMm: -4.618802 },
        { kind: "low bead", widthMm: 9.525, leanDeg: -30 },
        { kind: "bevel", acrossMm: 8, riseMm: -4.618802 },
        rest,
      ],
    },
  },
  {
    id: "half-round-between-fillets",
    shelf: "full",
    section: {
      name: "Half-round bead of ½ in, fillets of 3 mm sunk beside it",
      stick: { widthMm: 42.7, thicknessMm: 20 },
      parts: [
        fillet(12),
        step(-6.35),
        fillet(3),
        { kind: "bead", widthMm: 12.7 },
        fillet(3),
        step(6.35),
        fillet(12),
      ],
    },
  },
  {
    id: "narrow-fillets",
    shelf: "full",
    section: {
      name: "Low beads parted by sunk fillets of 1.5 mm",
      stick: { widthMm: 36, thicknessMm: 16 },
      parts: [
        fillet(6),
        { kind: "quirk", widthMm: 1.5, depthMm: 3 },
        { kind: "low bead", widthMm: 9.525 },
        { kind: "quirk", widthMm: 1.5, depthMm: 3 },
        rest,
      ],
      startHeightMm: 16 - rise60Mm(9.525),
    },
  },
  {
    id: "undercut",
    shelf: "full",
    section: {
      name: "Base after the stone doorway",
      stick: { widthMm: 44, thicknessMm: 30 },
      parts: [
        fillet(10),
        { kind: "quirk", widthMm: 2, depthMm: 6 },
        fillet(7),
        { kind: "swept arc", radiusMm: 6.35, sweepDeg: 160, bend: "hollow", leanDeg: -160 },
        rest,
      ],
    },
  },
  {
    id: "radii-not-on-shelf",
    shelf: "small",
    section: {
      name: "Bead of 7 mm radius and cove of 13 mm radius",
      stick: { widthMm: 44, thicknessMm: 22 },
      parts: [
        fillet(7),
        step(-3),
        { kind: "ovolo", acrossMm: 7, riseMm: -7 },
        fillet(5),
        { kind: "cavetto", acrossMm: 13, riseMm: -6, radiusMm: 13 },
        rest,
      ],
    },
  },
  {
    id: "thin-lath",
    shelf: "small",
    section: {
      name: "Lath of 3 mm with a low bead",
      stick: { widthMm: 24, thicknessMm: 3 },
      parts: [
        fillet(6),
        step(-rise60Mm(9.525)),
        { kind: "low bead", widthMm: 9.525 },
        step(rise60Mm(9.525)),
        rest,
      ],
    },
  },
  {
    id: "small-square",
    shelf: "full",
    section: {
      name: "Quarter round on a stick of 6 mm",
      stick: { widthMm: 6, thicknessMm: 6 },
      parts: [{ kind: "ovolo", acrossMm: 4.7625, riseMm: -4.7625 }, rest],
    },
  },
  {
    id: "wide-skirting",
    shelf: "full",
    section: {
      name: "Skirting of 250 mm with an ogee on its upper edge",
      stick: { widthMm: 250, thicknessMm: 25 },
      parts: [fillet(208), step(-3), { kind: "cyma recta", acrossMm: 28, riseMm: -13 }, rest],
    },
  },
  {
    id: "wide-two-bands",
    shelf: "full",
    section: {
      name: "Board of 250 mm with a low bead far from both edges",
      stick: { widthMm: 250, thicknessMm: 20 },
      parts: [
        fillet(118),
        step(-rise60Mm(12.7)),
        { kind: "low bead", widthMm: 12.7 },
        step(rise60Mm(12.7)),
        rest,
      ],
    },
  },
  {
    id: "reeds-on-board-edge",
    shelf: "small",
    section: {
      name: "Three reeds of ⅜ in on the edge of a wide board",
      stick: { widthMm: 36, thicknessMm: 180 },
      parts: [
        fillet(3.7125),
        step(-rise60Mm(9.525)),
        { kind: "reeds", count: 3, widthMm: 9.525 },
        step(rise60Mm(9.525)),
        rest,
      ],
    },
  },
  {
    id: "frame-two-rebates",
    shelf: "full",
    section: {
      name: "Frame with a rebate on both sides of the back",
      stick: { widthMm: 48, thicknessMm: 26 },
      startHeightMm: 14,
      parts: [
        { kind: "ovolo", acrossMm: 9.525, riseMm: 9.525 },
        step(2.475),
        fillet(28.95),
        step(-2.475),
        { kind: "ovolo", acrossMm: 9.525, riseMm: -9.525 },
      ],
      back: [
        { kind: "rebate", edge: "gauge", widthMm: 9, depthMm: 8 },
        { kind: "rebate", edge: "far", widthMm: 9, depthMm: 8 },
      ],
    },
  },
  {
    id: "bolection",
    shelf: "full",
    section: {
      name: "Bolection with a rebate at the back",
      stick: { widthMm: 58, thicknessMm: 30 },
      startHeightMm: 16,
      parts: [
        { kind: "ovolo", acrossMm: 12.7, riseMm: 12.7 },
        step(1.3),
        fillet(6),
        step(-2),
        { kind: "cyma recta", acrossMm: 30, riseMm: -14 },
        rest,
      ],
      back: [{ kind: "rebate", edge: "gauge", widthMm: 14, depthMm: 10 }],
    },
  },
  {
    id: "chamfers",
    shelf: "small",
    section: {
      name: "Post with two chamfers",
      stick: { widthMm: 30, thicknessMm: 30 },
      startHeightMm: 23,
      parts: [
        { kind: "chamfer", acrossMm: 7, riseMm: 7 },
        rest,
        { kind: "chamfer", acrossMm: 7, riseMm: -7 },
      ],
    },
  },
  {
    id: "fielded-panel",
    shelf: "full",
    section: {
      name: "Edge of a fielded panel",
      stick: { widthMm: 90, thicknessMm: 18 },
      parts: [fillet(50), step(-2), { kind: "bevel", acrossMm: 32, riseMm: -8 }, rest],
    },
  },
  {
    id: "picture-rail",
    shelf: "full",
    section: {
      name: "Picture rail: round nose over a cove and an ogee",
      stick: { widthMm: 56, thicknessMm: 24 },
      startHeightMm: 16,
      parts: [
        fillet(5),
        { kind: "swept arc", radiusMm: 6.35, sweepDeg: 75, bend: "hollow", leanDeg: -15 },
        { kind: "swept arc", radiusMm: 6.35, sweepDeg: 120, bend: "round", smooth: true },
        step(-2),
        { kind: "cyma recta", acrossMm: 22, riseMm: -11 },
        rest,
      ],
    },
  },
  {
    id: "stair-nosing",
    shelf: "full",
    section: {
      name: "Nosing: half-round edge with a cove under it",
      stick: { widthMm: 70, thicknessMm: 25.4 },
      startHeightMm: 25.4,
      parts: [fillet(57.3), { kind: "swept arc", radiusMm: 12.7, sweepDeg: 180, bend: "round" }],
    },
  },
  {
    id: "three-coves",
    shelf: "full",
    section: {
      name: "Three coves falling, one into the next",
      stick: { widthMm: 60, thicknessMm: 34 },
      parts: [
        fillet(6),
        { kind: "cavetto", acrossMm: 9.525, riseMm: -9.525 },
        fillet(3),
        { kind: "cavetto", acrossMm: 12.7, riseMm: -12.7 },
        fillet(3),
        { kind: "cavetto", acrossMm: 7.9375, riseMm: -7.9375 },
        rest,
      ],
    },
  },
  {
    id: "architrave",
    shelf: "full",
    section: {
      name: "Architrave: two fascias, ogee and edge bead",
      stick: { widthMm: 95, thicknessMm: 28 },
      parts: [
        fillet(7),
        step(-3),
        { kind: "cyma reversa", acrossMm: 17, riseMm: -9 },
        fillet(25),
        step(-3),
        fillet(30),
        step(-2),
        { kind: "low bead", widthMm: 7.9375 },
        rest,
      ],
    },
  },
];

export const GALLERY: readonly GalleryEntry[] = [...CLASSICAL, ...CHART_CABINET, ...ODD];
