/** The chart cabinet for a harbour office: its own mouldings. Sizes in mm. */
import { fillet, type GalleryEntry, rest, step } from "./entry.ts";

export const CHART_CABINET: readonly GalleryEntry[] = [
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
