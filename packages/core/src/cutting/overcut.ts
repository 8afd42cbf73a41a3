/** Overcut: wood of the planned section that is no longer there, by its depth. */
import { difference, type Region, type Ring, regionAreaMm2 } from "../curve/index.ts";
import { OVERCUT_MM } from "../measure/index.ts";
import { type Depth, deepestFrom, perimeterMm } from "./depth.ts";

/**
 * How deep, and where, what is missing lies inside the planned section, mm; below `OVERCUT_MM` only roughly.
 *
 * The depth is that of the boundary of what is missing. Where the whole section is gone that boundary is its own outline
 * and tells nothing; then the depth is a lower bound: somewhere in a shape lies a place as far from its
 * outline as its area is to its perimeter.
 */
export function overcutOf(planned: Ring, plannedRegion: Region, left: Region): Depth {
  const missing = difference(plannedRegion, left);
  const found = deepestFrom(planned, missing, OVERCUT_MM);
  if (found.depthMm > OVERCUT_MM || !found.at) return found;
  const atLeastMm = regionAreaMm2(missing) / perimeterMm(missing);
  return atLeastMm > found.depthMm ? { depthMm: atLeastMm, at: found.at } : found;
}
