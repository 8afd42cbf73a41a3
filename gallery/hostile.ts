/** Odd and hostile sections: free curves, undercuts, thin, tiny and far from any edge. Sizes in mm. */
import { fillet, type GalleryEntry, rest, rise60Mm, step } from "./entry.ts";

export const HOSTILE: readonly GalleryEntry[] = [
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
    id: "cornice-fourteen",
    shelf: "full",
    section: {
      name: "Cornice of fourteen parts",
      stick: { widthMm: 140, thicknessMm: 48 },
      parts: [
        fillet(8),
        step(-3),
        { kind: "cyma recta", acrossMm: 34, riseMm: -15 },
        fillet(4),
        step(-3),
        { kind: "cavetto", acrossMm: 12.7, riseMm: -12.7 },
        fillet(6),
        { kind: "quirk", widthMm: 3, depthMm: 3, walls: "first" },
        { kind: "ovolo", acrossMm: 12.7, riseMm: -6 },
        fillet(5),
        step(-rise60Mm(7.9375)),
        { kind: "low bead", widthMm: 7.9375 },
        rest,
      ],
      back: [{ kind: "bevel", edge: "gauge", riseMm: 30, fromBackDeg: 45 }],
    },
  },
  {
    id: "attic-base",
    shelf: "full",
    section: {
      name: "Base: torus, scotia of two radii and a smaller torus",
      stick: { widthMm: 72, thicknessMm: 36 },
      startHeightMm: 24,
      parts: [
        fillet(6),
        { kind: "torus", widthMm: 19.05 },
        fillet(3),
        { kind: "scotia", acrossMm: 19.05, small: "last" },
        fillet(3),
        { kind: "bead", widthMm: 9.525 },
        rest,
      ],
    },
  },
  {
    id: "quarter-ellipse-steep",
    shelf: "full",
    section: {
      name: "Nosing: a quarter ellipse of 10 by 24 mm as a free curve",
      stick: { widthMm: 24, thicknessMm: 32 },
      parts: [
        fillet(6),
        step(-2),
        {
          kind: "free curve",
          // Cubic with the usual handle of a quarter circle, 0.5522847498 of each half axis.
          beziers: [{ control1: [5.522847, 0], control2: [10, -10.745166], to: [10, -24] }],
        },
        rest,
      ],
    },
  },
  {
    id: "free-serpentine",
    shelf: "full",
    section: {
      name: "Free curve with three bends",
      stick: { widthMm: 64, thicknessMm: 26 },
      parts: [
        fillet(6),
        step(-1.5),
        {
          kind: "free curve",
          beziers: [
            { control1: [9, 1], control2: [8, -8], to: [17, -8] },
            { control1: [26, -8], control2: [27, -3], to: [34, -5] },
            { control1: [41, -7], control2: [40, -15], to: [48, -15] },
          ],
        },
        rest,
      ],
    },
  },
  {
    id: "half-round-reeds",
    shelf: "full",
    section: {
      name: "Three half-round reeds of ⅜ in standing side by side",
      stick: { widthMm: 40.575, thicknessMm: 20 },
      startHeightMm: 15.2375,
      parts: [
        fillet(6),
        { kind: "bead", widthMm: 9.525 },
        { kind: "bead", widthMm: 9.525 },
        { kind: "bead", widthMm: 9.525 },
        rest,
      ],
    },
  },
  {
    id: "tiny-reeds",
    shelf: "full",
    section: {
      name: "Four reeds of 2 mm, smaller than every hollow",
      stick: { widthMm: 16, thicknessMm: 10 },
      parts: [
        fillet(4),
        step(-rise60Mm(2)),
        { kind: "reeds", count: 4, widthMm: 2 },
        step(rise60Mm(2)),
        rest,
      ],
    },
  },
  {
    id: "fin-between-coves",
    shelf: "full",
    section: {
      name: "Fin of 1 mm between two coves of ½ in",
      stick: { widthMm: 44, thicknessMm: 24 },
      startHeightMm: 8,
      parts: [
        fillet(8.8),
        { kind: "cavetto", acrossMm: 12.7, riseMm: 12.7 },
        fillet(1),
        { kind: "cavetto", acrossMm: 12.7, riseMm: -12.7 },
        rest,
      ],
    },
  },
  {
    id: "dovetail-edge",
    shelf: "full",
    section: {
      name: "Tongue with sides undercut by 10 degrees",
      stick: { widthMm: 36, thicknessMm: 22 },
      startHeightMm: 12,
      parts: [
        fillet(11.76327),
        // 10 mm up at 10° from upright, out over its own foot, and down again the same way.
        { kind: "step", riseMm: 10.154266, leanDeg: 10 },
        fillet(16),
        { kind: "step", riseMm: -10.154266, leanDeg: -10 },
        rest,
      ],
    },
  },
  {
    id: "deep-groove",
    shelf: "full",
    section: {
      name: "Groove of 5 mm, deeper than the plough goes",
      stick: { widthMm: 30, thicknessMm: 40 },
      parts: [fillet(12), { kind: "quirk", widthMm: 5, depthMm: 26 }, rest],
    },
  },
  {
    id: "thin-strip-cove",
    shelf: "full",
    section: {
      name: "Strip of 8 by 3 mm with a cove of ⅛ in",
      stick: { widthMm: 8, thicknessMm: 3 },
      parts: [fillet(3), { kind: "cavetto", acrossMm: 2, riseMm: -2, radiusMm: 3.175 }, rest],
    },
  },
];
