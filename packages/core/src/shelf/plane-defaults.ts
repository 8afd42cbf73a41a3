/**
 * What is filled in where a plane's entry leaves a size out, and the sizes beyond which the maker is asked to look
 * again. Common practice, no source; what is filled in is said to the maker, who can measure and enter it.
 */
import type { FileKind } from "./file-schema.ts";

export interface Range {
  readonly least: number;
  readonly most: number;
}

export const SNIPE_BILL_DEFAULTS = { widthMm: 6, noseMm: 0.4, slopeDeg: 60, reachMm: 5 } as const;
export const PLOUGH_DEFAULTS = { fenceMm: 100, depthMm: 20 } as const;
/** A moving fillister's fence slides under its own sole, so it reaches no further than the sole is wide. */
export const FILLISTER_DEFAULTS = { depthMm: 20 } as const;
export const SIDE_PLANE_WIDTH_MM = { "side round": 10, "side snipe": 3, "side rebate": 3 } as const;

/** A quirk about a fifth as wide as its bead, but never so thin that the nib would break nor wider than reads as a line. */
const QUIRK = { perWidthRatio: 0.2, leastMm: 0.8, mostMm: 3 } as const;

export function defaultQuirkMm(beadWidthMm: number): number {
  return Math.min(QUIRK.mostMm, Math.max(QUIRK.leastMm, QUIRK.perWidthRatio * beadWidthMm));
}

/** Larger than this is no plane but a slip of the digits or of the unit, mm. */
export const LARGEST_SIZE_MM = 1000;

/** Angles, degrees, outside which the geometry of a plane breaks down. */
export const POSSIBLE_DEG: Readonly<Record<string, Range>> = {
  pitch: { least: 20, most: 90 },
  skew: { least: -60, most: 60 },
  slope: { least: 10, most: 85 },
};

/** Angles, degrees, in ordinary use. */
export const USUAL_DEG: Readonly<Record<string, Range>> = {
  pitch: { least: 35, most: 65 },
  skew: { least: -35, most: 35 },
  slope: { least: 40, most: 80 },
};

/** Arc of a sole in ordinary use, degrees: a sixth of the circle, sometimes a third (checks/area-e.json, E-A02). */
export const USUAL_ARC_DEG: Range = { least: 30, most: 125 };

/** Sizes in ordinary use whatever the kind, mm. */
const USUAL_MM: Readonly<Record<string, Range>> = {
  radius: { least: 1, most: 200 },
  nose: { least: 0, most: 1.5 },
  reach: { least: 1, most: 15 },
  fence: { least: 5, most: 250 },
  depth: { least: 1, most: 60 },
  quirk: { least: 0.3, most: 5 },
  wall: { least: 0, most: 3 },
};

/** Widths in ordinary use, mm. */
const USUAL_WIDTH_MM: Readonly<Record<FileKind, Range>> = {
  hollow: { least: 1, most: 100 },
  round: { least: 1, most: 100 },
  "snipe bill": { least: 2, most: 15 },
  rebate: { least: 2, most: 60 },
  smoother: { least: 20, most: 90 },
  "moving fillister": { least: 10, most: 70 },
  plough: { least: 2, most: 25 },
  "side round": { least: 1, most: 40 },
  "side snipe": { least: 1, most: 15 },
  "side rebate": { least: 1, most: 15 },
  bead: { least: 1.5, most: 40 },
  shaped: { least: 1, most: 100 },
};

/** The usual range of a size, mm; `undefined` where none is known. */
export function usualMm(kind: FileKind, key: string): Range | undefined {
  return key === "width" || key.startsWith("widths") ? USUAL_WIDTH_MM[kind] : USUAL_MM[key];
}
