/** Whether the wood as it stands holds a curved plane, and in which of its leans best. */
import type { Region } from "../curve/index.ts";
import { leanDeg, type Pose, type Run, type Seat, seatOn } from "../cutting/index.ts";
import type { Bench } from "./bench.ts";
import { poseOnArc, rockRun } from "./curves.ts";
import { type PlaneDraft, withRuns } from "./draft-cut.ts";
import { MOST_FREE_LEAN_DEG } from "./leans.ts";
import { seenAt } from "./seen.ts";

/** Leans of a rock at which a seat is looked for. */
const SEAT_TRIES = 6;

/** Whether any lean of a curved draft is held by the wood as it stands. */
export function seatedOn(bench: Bench, before: Region, draft: PlaneDraft): boolean {
  return seatedRuns(bench, before, draft) !== null;
}

interface Seated {
  readonly draft: PlaneDraft;
  readonly seat: Seat;
}

const SEATED = new WeakMap<Region, Map<PlaneDraft, Seated | null>>();

/** The draft begun in the pose that is held best, or null if no lean of it is held; looked for once on the same wood. */
export function seatedRuns(bench: Bench, before: Region, draft: PlaneDraft): Seated | null {
  const known = SEATED.get(before) ?? new Map<PlaneDraft, Seated | null>();
  SEATED.set(before, known);
  const found = known.get(draft);
  if (found !== undefined) return found;
  const seated = newlySeated(bench, before, draft);
  known.set(draft, seated);
  return seated;
}

function newlySeated(bench: Bench, before: Region, draft: PlaneDraft): Seated | null {
  const rock = draft.rock;
  const lean = (tilt: number) => Math.abs(leanDeg(tilt, draft.cantDeg));
  if (!rock) {
    const tilt = draft.runs[0][0][2];
    const seat = seatAtPose(bench, before, draft, draft.runs[0][0]);
    const isHeld = seat && (lean(tilt) <= MOST_FREE_LEAN_DEG || seat.ratio >= bench.limits.seatWellHeldRatio);
    return isHeld ? { draft, seat } : null;
  }
  const own = draft.tool.sole.arc as NonNullable<typeof draft.tool.sole.arc>;
  const pose = (tilt: number): Pose => poseOnArc(rock.centre, own.radiusMm, own.sign < 0, tilt);
  const tilts = Array.from(
    { length: SEAT_TRIES + 1 },
    (_, i) => rock.lowDeg + ((rock.highDeg - rock.lowDeg) * i) / SEAT_TRIES,
  );
  // Upright is easiest to hold true, so the rock is begun as near to it as a seat allows.
  tilts.sort((a, b) => lean(a) - lean(b) || a - b);
  let best: { seat: Seat; tilt: number } | null = null;
  for (const tilt of tilts) {
    const seat = seatAtPose(bench, before, draft, pose(tilt));
    // Leaned far, a plane that is not held well is held by nothing: no hand keeps such a lean by eye.
    if (seat && lean(tilt) > MOST_FREE_LEAN_DEG && seat.ratio < bench.limits.seatWellHeldRatio) continue;
    if (seat && (!best || seat.ratio > best.seat.ratio * 1.25)) best = { seat, tilt };
    if (best && best.seat.ratio >= bench.limits.seatWellHeldRatio) break;
  }
  if (!best) return null;
  return { draft: begunAt(bench, draft, best.tilt, rock, pose, own.radiusMm), seat: best.seat };
}

/** The same rock, begun at one of its leans: first to one end, then from there again to the other. */
function begunAt(
  bench: Bench,
  draft: PlaneDraft,
  tilt: number,
  rock: NonNullable<PlaneDraft["rock"]>,
  pose: (tiltDeg: number) => Pose,
  radiusMm: number,
): PlaneDraft {
  const runs: Run[] = [];
  if (tilt > rock.lowDeg) runs.push(rockRun(pose, tilt, rock.lowDeg, radiusMm));
  if (rock.highDeg > tilt) runs.push(rockRun(pose, tilt, rock.highDeg, radiusMm));
  return withRuns(bench, draft, runs);
}

function seatAtPose(bench: Bench, before: Region, draft: PlaneDraft, pose: Pose): Seat | null {
  return seatOn(seenAt(before, pose[2]), draft.cut.shape, pose, bench.limits);
}
