/**
 * Whether an edge of the stick, as it then stands, guides a plane. A fence or a finger hangs only so deep below the sole, a
 * fence on arms passes only so much wood under them, and either wants a stretch of edge that is upright in the lay of the
 * stick. Common practice, no source.
 */
import type { Point, Region } from "../curve/index.ts";
import { toRad } from "../measure/index.ts";
import type { Plane } from "../shelf/index.ts";
import type { CuttingLimits } from "./limits.ts";
import { type Profile, restOn, topBetween, turned, turnedBack, turnOf } from "./profile.ts";
import type { CutShape } from "./simulate.ts";
import { placed } from "./sweep.ts";
import { leanDeg } from "./turning.ts";
import type { Pose } from "./types.ts";
import { spansAlong } from "./wall.ts";

/** A side of the stick as it is turned for a cut: the wood lies right of the left one, left of the right one. */
export interface StickSide {
  readonly side: "left" | "right";
  /** Where it stands across, in the frame turned for the cut, mm. */
  readonly atMm: number;
}

/** What a plane finds at an edge when it is first set down there. */
export interface EdgeAsItStands {
  /** How far the sole hangs over it, mm; below 0 where it lies inside. */
  readonly overhangMm: number;
  /** How far below the sole, as it is first set down, the upright edge begins, mm. */
  readonly hangMm: number;
  /** How much of it is upright below that, mm. */
  readonly uprightMm: number;
  /** Whether the edge leans because the stick is held canted: the fence is then given a strip planed to that lean. */
  readonly isCanted: boolean;
  /** How high above the sole, in its last place, wood stands on the way to the edge, mm; 0 where the sole hangs over it. */
  readonly underArmsMm: number;
}

/** A plane in a pose, and how the stick is turned for it. */
export type PlaneInPlace = Pick<CutShape, "shape" | "ends" | "cantDeg">;

/**
 * What the plane finds at the edge, on the wood before the cut; `seen` is that wood at the pose's own tilt, and `armsMm`
 * how high above its sole the plane's fence reaches up.
 */
export function edgeAsItStands(
  before: Region,
  seen: Profile,
  plane: PlaneInPlace,
  pose: Pose,
  { side, atMm }: StickSide,
  limits: CuttingLimits,
  armsMm = 0,
): EdgeAsItStands {
  const lay = turnOf(-plane.cantDeg);
  const [a, b] = [plane.ends.left, plane.ends.right].map((end) => turned(lay, placed(pose, end)));
  const [left, right] = a.x <= b.x ? [a, b] : [b, a];
  const near = side === "left" ? left : right;
  const isOver = side === "left" ? near.x < atMm : near.x > atMm;
  const slope = right.x > left.x ? (right.y - left.y) / (right.x - left.x) : 0;
  const levelMm = isOver ? near.y + slope * (atMm - near.x) : near.y;
  const axis = turned(turnOf(pose[2]), { x: pose[0], y: pose[1] });
  // A body just clears the wall that it was set to.
  const rest = restOn(seen, plane.shape, axis.x, { narrowMm: limits.bodyClearanceMm });
  const liftMm = Math.max(0, (rest?.heightMm ?? axis.y) - axis.y);
  const firstMm = levelMm + liftMm / Math.cos(toRad(leanDeg(pose[2], plane.cantDeg)));
  // So far in, what leans no more than an upright plane may still stands over the length that has to bear.
  const inMm = limits.edgeBearsMm * Math.tan(toRad(limits.leaningFromDeg));
  const start = turnedBack(lay, {
    x: side === "left" ? atMm + inMm : atMm - inMm,
    y: firstMm + (isOver ? 0 : armsMm),
  });
  const spans = spansAlong(before, start, turnedBack(lay, { x: 0, y: -1 }));
  return {
    overhangMm: side === "left" ? atMm - near.x : near.x - atMm,
    hangMm: spans.length === 0 ? Number.POSITIVE_INFINITY : Math.max(0, spans[0][0] - (isOver ? 0 : armsMm)),
    uprightMm: spans.reduce((sum, [from, to]) => sum + to - from, 0),
    isCanted: !isSquareLay(plane.cantDeg),
    underArmsMm: isOver
      ? 0
      : overSoleMm(seen, pose, turnedBack(lay, near), turnedBack(lay, { x: atMm, y: levelMm })),
  };
}

/** Whether the stick lies on its back, its face or an edge, so that its own edges stand upright. */
export function isSquareLay(cantDeg: number): boolean {
  return Number.isInteger(cantDeg / 90);
}

/** How high above its sole a plane's fence lies on its arms, mm: never lower than the plane itself can be sunk. */
export function armsMmOf(plane: Plane, limits: CuttingLimits): number {
  return plane.kind === "plough" ? Math.max(limits.fenceArmsMm, plane.depthMm) : limits.fenceArmsMm;
}

/** Whether such an edge guides the plane; a margin may be kept within the limits. */
export function edgeGuides(
  { hangMm, uprightMm, isCanted, underArmsMm }: EdgeAsItStands,
  plane: Plane,
  limits: CuttingLimits,
  marginMm = 0,
): boolean {
  const mostHangMm = plane.kind === "plough" ? limits.ploughFenceHangMm : limits.fenceHangMm;
  return (
    hangMm <= mostHangMm - marginMm &&
    (isCanted || uprightMm >= limits.edgeBearsMm + marginMm) &&
    underArmsMm <= armsMmOf(plane, limits) - marginMm
  );
}

/** How high above the sole's end the wood stands between it and the edge, as the plane sees it, mm. */
function overSoleMm(seen: Profile, pose: Pose, end: Point, edge: Point): number {
  const turn = turnOf(pose[2]);
  const from = turned(turn, end);
  const to = turned(turn, edge);
  return Math.max(0, topBetween(seen, Math.min(from.x, to.x), Math.max(from.x, to.x)) - from.y);
}
