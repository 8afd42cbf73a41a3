/** Slots: cuts of flat planes with wood standing on both sides of the sole. */

import { mm } from "../second-route/finding.ts";
import { turnedBy } from "../second-route/flat.ts";
import type { PoseXyt, Xy } from "../second-route/plan-json.ts";
import { type CutOnBench, endsInPlace, FLAT_KINDS, leanDeg, newWallBeside, standingBeside } from "./bench.ts";
import type { Said } from "./rules.ts";

/** Lower than this on either side it is a scratch, no slot, mm. */
const SLOT_FROM_MM = 0.5;

/** Slots share a place from this much across on, mm: less is what gauging makes of two that touch. */
const SHARED_MM = 0.3;

/** Floors that differ by less are one, mm. */
const SAME_FLOOR_MM = 0.1;

/** Planes that lean within this of each other cut in one frame, degrees. */
const SAME_LEAN_DEG = 1;

/** Depth of a slot that no depth stop limits, both walls standing, mm. */
const DEEPEST_MM = 16;

/** Lean from which a hand tells it, degrees. */
const LEANING_DEG = 3;

/** New wall on both sides of a leaning flat plane, mm: beyond a line's depth it is plunged into solid wood. */
const ASLANT_MM = 0.5;

interface Slot {
  readonly cut: number;
  readonly tilt: number;
  readonly leftMm: number;
  readonly rightMm: number;
  readonly floorMm: number;
  readonly depthMm: number;
}

/** Slots that run into an older one: beside it at another depth, through it aslant, or twice in one place. */
export function overlappingSlots(cuts: readonly CutOnBench[]): readonly Said[] {
  const older: Slot[] = [];
  const found: Said[] = [];
  for (const made of cuts) {
    const slots = slotsOf(made);
    for (const slot of slots)
      for (const other of older) {
        const how = overlapOf(slot, other);
        if (how !== null) found.push({ cut: slot.cut, says: `its slot ${how} that of cut ${other.cut}` });
      }
    older.push(...slots);
  }
  return found;
}

function slotsOf(made: CutOnBench): readonly Slot[] {
  const { cut, sole, runs, after } = made;
  if (!FLAT_KINDS.includes(cut.plane.kind)) return [];
  return runs.flatMap((run) => {
    const pose = run[run.length - 1];
    const depthMm = Math.min(...standingBeside(after, sole, pose));
    if (depthMm < SLOT_FROM_MM || Math.max(...newWallBeside(made, pose)) < SLOT_FROM_MM) return [];
    return [slotAt(cut.number, made, pose, depthMm)];
  });
}

function slotAt(cut: number, { sole }: CutOnBench, pose: PoseXyt, depthMm: number): Slot {
  const [left, right] = endsInPlace(sole, pose).map((end): Xy => turnedBy(-pose[2], end));
  return { cut, tilt: pose[2], leftMm: left[0], rightMm: right[0], floorMm: left[1], depthMm };
}

function overlapOf(slot: Slot, older: Slot): string | null {
  if (Math.abs(slot.tilt - older.tilt) > SAME_LEAN_DEG)
    return crosses(slot, older) ? "runs aslant through" : null;
  const sharedMm = Math.min(slot.rightMm, older.rightMm) - Math.max(slot.leftMm, older.leftMm);
  if (sharedMm < SHARED_MM || slot.floorMm > older.floorMm + older.depthMm) return null;
  // One wide groove of two narrower ones, floor at one level.
  if (Math.abs(slot.floorMm - older.floorMm) < SAME_FLOOR_MM) return null;
  // A narrower groove let into the floor of a wide one.
  const isWithin = slot.leftMm > older.leftMm - SHARED_MM && slot.rightMm < older.rightMm + SHARED_MM;
  const isNarrower = slot.rightMm - slot.leftMm < older.rightMm - older.leftMm - SHARED_MM;
  if (isWithin && isNarrower && slot.floorMm < older.floorMm) return null;
  return `shares ${mm(sharedMm)} across, ${mm(Math.abs(slot.floorMm - older.floorMm))} ${slot.floorMm < older.floorMm ? "deeper" : "higher"}, with`;
}

/** Whether two slots of different leans share more than a corner: places of the one lie in the other. */
function crosses(slot: Slot, older: Slot): boolean {
  const steps = 40;
  let inside = 0;
  for (let i = 0; i <= steps; i++)
    for (let k = 0; k <= steps; k++) {
      const p: Xy = [
        slot.leftMm + ((slot.rightMm - slot.leftMm) * i) / steps,
        slot.floorMm + (slot.depthMm * k) / steps,
      ];
      const [x, y] = turnedBy(slot.tilt - older.tilt, p);
      if (x > older.leftMm && x < older.rightMm && y > older.floorMm && y < older.floorMm + older.depthMm)
        inside++;
    }
  const areaMm2 = ((slot.rightMm - slot.leftMm) * slot.depthMm * inside) / (steps + 1) ** 2;
  return areaMm2 > SHARED_MM;
}

/** Slots deeper than the plane goes, and flat planes let aslant into solid wood. */
export function plungedSlots(cuts: readonly CutOnBench[]): readonly Said[] {
  return cuts.flatMap((made) => {
    const { cut, sole, runs, after } = made;
    if (!FLAT_KINDS.includes(cut.plane.kind)) return [];
    return runs.flatMap((run): Said[] => {
      const pose = run[run.length - 1];
      const beside = standingBeside(after, sole, pose);
      const fresh = newWallBeside(made, pose);
      const deepMm = Math.min(...beside);
      const found: Said[] = [];
      const tell = (says: string) => found.push({ cut: cut.number, says });
      const { depth } = cut.plane;
      if (depth !== undefined && Math.max(...fresh) > depth)
        tell(
          `the ${cut.plane.kind} goes ${mm(depth)} deep at most, and leaves a wall of ${mm(Math.max(...fresh))}`,
        );
      else if (depth === undefined && deepMm > DEEPEST_MM && Math.min(...fresh) > SLOT_FROM_MM)
        tell(`a slot ${mm(deepMm)} deep with a ${cut.plane.kind} plane`);
      if (Math.abs(leanDeg(cut, pose)) >= LEANING_DEG && Math.min(...fresh) > ASLANT_MM)
        tell(
          `leaned ${Math.round(Math.abs(leanDeg(cut, pose)))}° it is let ${mm(Math.min(...fresh))} into solid wood`,
        );
      return found;
    });
  });
}
