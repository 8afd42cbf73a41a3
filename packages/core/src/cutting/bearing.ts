/** How much of a curved sole lies on the wanted section in its last pose: less, and the plane hangs by a corner. */
import { lengthMm, nearestOnRing, pointAt, type Ring } from "../curve/index.ts";
import { BEARS_MM } from "../measure/index.ts";
import type { CutShape } from "./simulate.ts";
import { placedSole } from "./sweep.ts";

/** Places looked at on each piece of a sole: what bears is known to about a hundredth of it. */
const PLACES = 96;

/**
 * Share (0 to 1) of the sole, by length, that lies on the planned section in the last pose of its last run. A cut in
 * several runs is one plane set several times, and it is where it ends that its shape is finished. `withinMm` is how
 * near counts as on it: half the maker's tolerance where a plane of another radius is laid on an arc.
 */
export function bearingRatio(
  planned: Ring,
  cut: Pick<CutShape, "sole" | "runs">,
  withinMm: number = BEARS_MM,
): number {
  const run = cut.runs[cut.runs.length - 1];
  const last = run?.[run.length - 1];
  if (last === undefined) return 0;
  let on = 0;
  let all = 0;
  for (const piece of placedSole(cut.sole, last).pieces) {
    const stretch = lengthMm(piece) / PLACES;
    for (let i = 0; i < PLACES; i++) {
      all += stretch;
      if (nearestOnRing(planned, pointAt(piece, (i + 0.5) / PLACES)).distanceMm <= withinMm) on += stretch;
    }
  }
  return all > 0 ? on / all : 0;
}
