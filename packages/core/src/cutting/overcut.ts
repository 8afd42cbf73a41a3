/** Overcut: wood of the planned section that is no longer there, by its depth. */
import { difference, type Region, type Ring } from "../curve/index.ts";
import { OVERCUT_MM } from "../measure/index.ts";
import { type Depth, deepestFrom } from "./depth.ts";

/** How deep, and where, what is missing lies inside the planned section, mm; below `OVERCUT_MM` only roughly. */
export function overcutOf(planned: Ring, plannedRegion: Region, left: Region): Depth {
  return deepestFrom(planned, difference(plannedRegion, left), OVERCUT_MM);
}
