/** How deep a plane goes whose side runs along a wall: the wall does not stop it, a tip that ends under its sole does. */
import { OVERCUT_MM, SAME_POINT_MM } from "../measure/index.ts";
import { type DropOptions, type Profile, type Rest, restOn } from "./profile.ts";
import type { SoleShape } from "./sole-shape.ts";

export interface BesideWalls extends Pick<DropOptions, "clearance"> {
  /** How far a wall may stand in under either end of the sole without stopping it, mm. */
  readonly gapMm: number;
}

/** What the rounding of a pose may push a wall in under the sole that is laid along it, mm. */
const ROUNDED_MM = 2 * SAME_POINT_MM;

/**
 * Where the plane, its origin at `shiftMm` across, is stopped when its ends may touch walls. What stands within the gap
 * of an end is a wall if it stands on beyond that end, and is passed by. If it ends there it is the tip of a cusp: it has
 * hardly any thickness, but the sole would take all its height, and so it stops the plane.
 */
export function restBesideWalls(
  profile: Profile,
  sole: SoleShape,
  shiftMm: number,
  { gapMm, clearance }: BesideWalls,
): Rest | null {
  const drop = clearance ? { clearance } : {};
  const between = restOn(profile, sole, shiftMm, { ...drop, narrowMm: gapMm });
  const tips = [tipAt(sole.leftMm, -1), tipAt(sole.rightMm, 1)];
  return tips.reduce((high, tip) => (tip && tip.heightMm > heightOf(high) ? tip : high), between);

  function tipAt(endMm: number, side: -1 | 1): Rest | null {
    const [outer, inner] = [endMm - side * ROUNDED_MM, endMm - side * gapMm];
    const within = { fromMm: Math.min(outer, inner), toMm: Math.max(outer, inner) };
    const tip = restOn(profile, sole, shiftMm, { ...drop, ...within });
    if (!tip || tip.heightMm <= heightOf(between) + OVERCUT_MM / 4) return null;
    const beyondMm = endMm + side * gapMm;
    const beyond = restOn(profile, sole, shiftMm, { ...drop, fromMm: beyondMm, toMm: beyondMm });
    return heightOf(beyond) > tip.heightMm - OVERCUT_MM ? null : tip;
  }
}

function heightOf(rest: Rest | null): number {
  return rest ? rest.heightMm : Number.NEGATIVE_INFINITY;
}
