/**
 * Ovolo, cavetto and scotia.
 *
 * Sources of the constructions: P. Nicholson, Mechanic's Companion (figures of mouldings 1 to 12): quadrants, radius
 * equal to the height, scotia of two quadrants; R. G. Hatfield, American House Carpenter, art. 317: less than a quadrant,
 * centre on the level line through one end. Numbers: checks/area-d.json.
 */
import { distanceMm, type Piece, point } from "../../curve/index.ts";
import type { QuarterSpec, ScotiaSpec } from "../part-spec.ts";
import { arcBySweep, type Bend, START, sweepForRadiusRad } from "./strokes.ts";

/** Ovolo (round) or cavetto (hollow); at most a half circle. The radius, if given, is at least `leastQuarterRadiusMm`. */
export function quarter(spec: QuarterSpec): readonly Piece[] {
  const bend: Bend = spec.kind === "ovolo" ? "round" : "hollow";
  const end = point(spec.acrossMm, spec.riseMm);
  return [arcBySweep(START, end, quarterSweepRad(spec), bend)];
}

/** Half the joining line: no smaller circle passes through both ends. */
export function leastQuarterRadiusMm(spec: QuarterSpec): number {
  return distanceMm(START, point(spec.acrossMm, spec.riseMm)) / 2;
}

function quarterSweepRad(spec: QuarterSpec): number {
  const end = point(spec.acrossMm, spec.riseMm);
  const shorterMm = Math.min(spec.acrossMm, Math.abs(spec.riseMm));
  const longerMm = Math.max(spec.acrossMm, Math.abs(spec.riseMm));
  if (spec.radiusMm !== undefined) return sweepForRadiusRad(START, end, spec.radiusMm);
  if (spec.construction === "longer side") return sweepForRadiusRad(START, end, longerMm);
  // Tangent along the longer side at one end: R = (s² + l²) / 2s, whose sweep is twice the joining line's slope.
  return 2 * Math.atan2(shorterMm, longerMm);
}

/** Two quadrants that meet at the bottom on one upright line; the lips differ in height by the radii's difference. */
export function scotia(spec: ScotiaSpec): readonly Piece[] {
  const smallMm = spec.smallRadiusMm ?? spec.acrossMm / 3;
  const largeMm = spec.acrossMm - smallMm;
  const [firstMm, lastMm] = spec.small === "last" ? [largeMm, smallMm] : [smallMm, largeMm];
  const bottom = point(firstMm, -firstMm);
  const end = point(spec.acrossMm, lastMm - firstMm);
  return [arcBySweep(START, bottom, Math.PI / 2, "hollow"), arcBySweep(bottom, end, Math.PI / 2, "hollow")];
}
