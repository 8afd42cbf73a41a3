/** How much of a curved sole lies on the wanted section in its last pose: less, and the plane hangs by a corner. */
import { nearestOnRing, pointAt, type Ring } from "../curve/index.ts";
import { BEARS_MM } from "../measure/index.ts";
import type { CutShape } from "./simulate.ts";
import { placedSole } from "./sweep.ts";

const PLACES = 48;

/** Share (0 to 1) of the sole, by length, that lies on the planned section in the pose where most of it does. */
export function bearingRatio(
  planned: Ring,
  cut: Pick<CutShape, "sole" | "runs">,
  withinMm: number = BEARS_MM,
): number {
  let best = 0;
  for (const run of cut.runs) {
    const last = run[run.length - 1];
    const chain = placedSole(cut.sole, last);
    let on = 0;
    let all = 0;
    for (const piece of chain.pieces) {
      for (let i = 0; i < PLACES; i++) {
        all++;
        if (nearestOnRing(planned, pointAt(piece, (i + 0.5) / PLACES)).distanceMm <= withinMm) on++;
      }
    }
    best = Math.max(best, on / all);
  }
  return best;
}
