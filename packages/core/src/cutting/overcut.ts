/** Overcut: wood of the planned section that is no longer there, by its depth. */
import { difference, type Region, type Ring, regionAreaMm2 } from "../curve/index.ts";
import { OVERCUT_MM } from "../measure/index.ts";
import { type Depth, deepestFrom, perimeterMm } from "./depth.ts";
import { offBoundaryMm } from "./face.ts";
import { isInWood } from "./wall.ts";

/**
 * How deep, and where, what is missing lies inside the planned section, mm; below `OVERCUT_MM` only roughly.
 *
 * The depth is that of the boundary of what is missing. Where the whole section is gone that boundary is its own outline
 * and tells nothing; then the depth is a lower bound: somewhere in a shape lies a place as far from its
 * outline as its area is to its perimeter. The tip of a cusp may lose much of its height and next to no area: the corners
 * of the section are asked by themselves how far off the wood they are.
 */
export function overcutOf(planned: Ring, plannedRegion: Region, left: Region): Depth {
  const missing = difference(plannedRegion, left);
  const found = deepestFrom(planned, missing, OVERCUT_MM);
  if (found.depthMm > OVERCUT_MM) return found;
  const tip = lostTip(planned, left);
  if (tip.depthMm > OVERCUT_MM || !found.at) return tip.depthMm > found.depthMm ? tip : found;
  const atLeastMm = regionAreaMm2(missing) / perimeterMm(missing);
  return atLeastMm > found.depthMm ? { depthMm: atLeastMm, at: found.at } : found;
}

/** The corner of the section that lies furthest off the wood, and how far; no wood at all tells nothing. */
function lostTip({ pieces }: Ring, left: Region): Depth {
  let lost: Depth = { depthMm: 0, at: null };
  if (left.length === 0) return lost;
  for (const { from } of pieces) {
    if (isInWood(left, from)) continue;
    const depthMm = offBoundaryMm(left, from);
    if (depthMm > Math.max(OVERCUT_MM, lost.depthMm)) lost = { depthMm, at: from };
  }
  return lost;
}
