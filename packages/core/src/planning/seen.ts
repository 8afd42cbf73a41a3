/** The wood as a plane sees it from above, and whether it hangs clear of it. */
import type { Region } from "../curve/index.ts";
import { type Pose, type Profile, profileOf, restOn, turned, turnOf } from "../cutting/index.ts";
import type { PlaneDraft } from "./draft-cut.ts";

const SEEN = new WeakMap<Region, Map<number, Profile>>();

/** The wood seen by a plane of this tilt; the same wood at the same tilt is turned once. */
export function seenAt(wood: Region, tiltDeg: number): Profile {
  const known = SEEN.get(wood) ?? new Map<number, Profile>();
  SEEN.set(wood, known);
  const profile = known.get(tiltDeg) ?? profileOf(wood, tiltDeg);
  known.set(tiltDeg, profile);
  return profile;
}

/** Whether the plane hangs clear of the wood in a pose: much quicker told than by making the cut. */
export function hangsClear(before: Region, draft: PlaneDraft, pose: Pose): boolean {
  const at = turned(turnOf(pose[2]), { x: pose[0], y: pose[1] });
  const rest = restOn(seenAt(before, pose[2]), draft.cut.shape, at.x, { enoughAboveMm: at.y });
  return rest === null || rest.heightMm <= at.y;
}
