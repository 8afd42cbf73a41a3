/** How hollows and rounds begin: a curved sole set on a bare flat wanders. */

import type { FlatRegion } from "../second-route/flat.ts";
import { heldIn } from "../second-route/let-down.ts";
import type { BulgedVertex, PoseXyt } from "../second-route/plan-json.ts";
import { stretches } from "../second-route/rays.ts";
import { axisOf, inPlace } from "../second-route/strips.ts";
import { CURVED_KINDS, type CutOnBench } from "./bench.ts";
import type { Said } from "./rules.ts";

/** What is as straight as this under the whole sole is a bare flat, mm. */
const STRAIGHT_MM = 0.05;

const PLACES = 60;

/** Depth under the sole from where the wood is looked for, mm. */
const BELOW_MM = 1;

/** What steers a curved plane from outside. A line scribed on the wood does not: its sole covers it. */
const STEERS = /^(batten|gauge edge|far edge|face|back|wall of cut \d+|standing wall)$/;

/** Curved cuts whose first run begins on a flat, or where nothing holds the plane, and nothing steers it from outside. */
export function startsOnBareFlat(cuts: readonly CutOnBench[]): readonly Said[] {
  return cuts.flatMap(({ cut, sole, runs, before }): Said[] => {
    if (!CURVED_KINDS.includes(cut.plane.kind) || STEERS.test(cut.runsAgainst ?? "")) return [];
    const first = runs[0][0];
    if (isStraightUnder(before, sole, first))
      return [{ cut: cut.number, says: `the ${cut.plane.kind} begins on a bare flat` }];
    return heldIn(before, sole, first) === null
      ? [{ cut: cut.number, says: `nothing holds the ${cut.plane.kind} where it begins` }]
      : [];
  });
}

/** Whether the wood under the sole, seen along the plane's axis, is one straight line over nine tenths of its width. */
function isStraightUnder(wood: FlatRegion, sole: readonly BulgedVertex[], pose: PoseXyt): boolean {
  const from = 0.95 * sole[0][0];
  const to = 0.95 * sole[sole.length - 1][0];
  const heights: number[] = [];
  for (let i = 0; i <= PLACES; i++) {
    const start = inPlace(pose, [from + ((to - from) * i) / PLACES, -BELOW_MM]);
    const last = stretches(wood, start, axisOf(pose[2])).at(-1);
    if (!last) return false;
    heights.push(last[1]);
  }
  const [first, end] = [heights[0], heights[PLACES]];
  return heights.every((height, i) => Math.abs(height - first - ((end - first) * i) / PLACES) < STRAIGHT_MM);
}
