/** The sections of the chart cabinet for a harbour office, as parts: what the tests of this folder build. */
import { INCH_MM } from "../../measure/index.ts";
import type { SectionSpec } from "../part-spec.ts";

/** Cornice: fillet, cyma recta, fillet, cavetto over an astragal; sprung 38° from the wall, moulded flat. */
export const CORNICE: SectionSpec = {
  name: "cornice",
  stick: { widthMm: 70, thicknessMm: 22 },
  startHeightMm: 10,
  parts: [
    { kind: "fillet", widthMm: 4 },
    { kind: "step", riseMm: 1.5 },
    { kind: "astragal", widthMm: 5 },
    { kind: "fillet", widthMm: 3 },
    { kind: "cavetto", acrossMm: 9, riseMm: 5 },
    { kind: "fillet", widthMm: 4 },
    { kind: "step", riseMm: 1.5 },
    { kind: "fillet", widthMm: 2 },
    { kind: "cyma recta", acrossMm: 30, riseMm: 4, name: "crown" },
    { kind: "fillet", widthMm: "rest" },
  ],
  back: [
    { kind: "bevel", edge: "gauge", riseMm: 6, fromBackDeg: 38 },
    { kind: "bevel", edge: "far", riseMm: 14, fromBackDeg: 52 },
  ],
};

/** Plinth: torus below, cavetto above it, up against a plain board. */
export const PLINTH: SectionSpec = {
  name: "plinth",
  stick: { widthMm: 90, thicknessMm: 20 },
  parts: [
    { kind: "fillet", widthMm: 58 },
    { kind: "step", riseMm: -8 },
    { kind: "torus", widthMm: 16 },
    { kind: "fillet", widthMm: 2 },
    { kind: "cavetto", acrossMm: 10, riseMm: -8, name: "cove" },
    { kind: "fillet", widthMm: "rest" },
  ],
};

/** Pilaster of five reeds, each the 60° segment that a 3/16 in hollow makes held upright: radius = width. */
export const REED_MM = (3 / 16) * INCH_MM;
export const PILASTER: SectionSpec = {
  name: "reeded pilaster",
  stick: { widthMm: 42, thicknessMm: 12 },
  parts: [
    { kind: "fillet", widthMm: (42 - 5 * REED_MM) / 2 },
    { kind: "step", riseMm: -0.75 },
    { kind: "reeds", count: 5, widthMm: REED_MM },
    { kind: "step", riseMm: 0.75 },
    { kind: "fillet", widthMm: "rest" },
  ],
};

/** Frame of the barometer's case: quirked bead at the sight edge, cyma reversa, glass rebate at the back. */
export const FRAME: SectionSpec = {
  name: "barometer frame",
  stick: { widthMm: 32, thicknessMm: 18 },
  startHeightMm: 12,
  parts: [
    { kind: "bead", widthMm: 5 },
    { kind: "quirk", widthMm: 1, depthMm: 2, walls: "both" },
    { kind: "fillet", widthMm: 2 },
    { kind: "cyma reversa", acrossMm: 12, riseMm: 6, construction: "thick" },
    { kind: "fillet", widthMm: "rest" },
  ],
  back: [{ kind: "rebate", edge: "gauge", widthMm: 6, depthMm: 5, name: "glass rebate" }],
};

/** Glazing bar: an ovolo to each side of a fillet, a glass rebate at each corner of the back. */
export const GLAZING_BAR: SectionSpec = {
  name: "glazing bar",
  stick: { widthMm: 22, thicknessMm: 32 },
  startHeightMm: 21,
  parts: [
    { kind: "ovolo", acrossMm: 8, riseMm: 11 },
    { kind: "fillet", widthMm: "rest" },
    { kind: "ovolo", acrossMm: 8, riseMm: -11 },
  ],
  back: [
    { kind: "rebate", edge: "gauge", widthMm: 8, depthMm: 12 },
    { kind: "rebate", edge: "far", widthMm: 8, depthMm: 12 },
  ],
};

export const CHART_CABINET: readonly SectionSpec[] = [CORNICE, PLINTH, PILASTER, FRAME, GLAZING_BAR];
