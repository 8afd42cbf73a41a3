/** Overcut: wood of the planned section that is no longer there, by its depth. */
import {
  difference,
  nearestOnRing,
  type Point,
  type Region,
  type Ring,
  regionAreaMm2,
} from "../curve/index.ts";
import { SLIVER_MM2 } from "../measure/index.ts";

export interface Overcut {
  readonly depthMm: number;
  /** Where it is deepest. */
  readonly at: Point | null;
}

/** How deep, and where, `left` lies inside the planned section. */
export function overcutOf(planned: Ring, plannedRegion: Region, left: Region): Overcut {
  const missing = difference(plannedRegion, left);
  let depthMm = 0;
  let at: Point | null = null;
  for (const ring of missing) {
    if (regionAreaMm2([ring]) < SLIVER_MM2) continue;
    for (let i = 0; i < ring.xs.length; i++) {
      const p = { x: ring.xs[i], y: ring.ys[i] };
      const d = nearestOnRing(planned, p).distanceMm;
      if (d > depthMm) {
        depthMm = d;
        at = p;
      }
    }
  }
  return { depthMm, at };
}
