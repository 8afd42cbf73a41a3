/**
 * What a plan is held to, written down a second time from the file format and the cutting model, so that a slip in
 * the program's own table cannot hide itself. Millimetres, degrees, square millimetres.
 */
import type { PlaneJson } from "./plan-json.ts";

/** Chord error of flattened arcs; the file format asks for this or less. */
export const CHORD_MM = 1e-4;

/** Two routes must find the same areas within this, a cut. */
export const AREA_AGREES_MM2 = 0.02;

/** Overcut up to this depth is none. */
export const OVERCUT_MM = 0.01;

/** Greatest lean of a plane in the hand. */
export const LEAN_DEG = 60;

/** Poses of one run stand this near to each other. */
export const POSE_APART_MM = 0.2;
export const POSE_APART_DEG = 1;

/** Slack on the two above: poses in a file are rounded to a millionth. */
export const POSE_ROUNDING = 1e-5;

/** How near the surface a mark must lie. */
export const MARK_MM = 0.02;

/** What a piece that falls off may measure and still be a shaving. */
export const SHAVING_MM2 = 0.3;

/** Wood over the face whose area spread over its height is thinner than this comes away with the shaving. */
export const FIN_MM = 0.01;

/** A neck of wood thinner than this breaks as the plane leaves it. */
export const THREAD_MM = 0.02;

/** Body narrower than its sole on either side when it is let down to find its seat. */
export const CLEARANCE_MM = 0.05;

/** Lean from which a flat plane counts as leaning (the cutting model gives no number; a hand tells 3°). */
export const LEANING_FROM_DEG = 3;

/** How deep below the sole, as it is first set down, a fence or finger still finds an edge; and a plough's deep fence. */
export const FENCE_HANG_MM = 12;
export const PLOUGH_HANG_MM = 16;

/** Wood above the sole that the arms of a fence pass over. */
export const FENCE_ARMS_MM = 22;

/** Upright stretch of an edge that a fence or finger bears on. */
export const EDGE_BEARS_MM = 2;

/** New wall beside a leaning flat plane. */
export const LEANING_WALL_MM = 4;

/** Depth of a slot with both walls standing. */
export const SLOT_MM = 16;

/** Share of a curved sole that lies on the wanted section in the last pose. */
export const BEARS_RATIO = 0.3;

/** How near the planned face a place of the sole must lie to bear on it. */
export const BEARS_MM = 0.02;

/** How far two ways of measuring a wall may differ: both look a little beside the sole's end. */
export const WALL_AGREES_MM = 0.05;

/** How far two ways of measuring a seat's lift may differ. */
export const LIFT_AGREES_MM = 0.02;

/** Heights of a plane let down that differ by less are level: above what the flattening leaves. */
export const LEVEL_MM = 2e-4;

/** Circles whose centres lie this near are one: what rounding poses to a millionth leaves, and a margin. */
export const SAME_CENTRE_MM = 5e-5;

/** Numbers that say the same thing twice in the file. */
export const SAME_NUMBER = 1e-5;

/** New wall that may stand beside one side of a plane. */
export function allowedWallMm(plane: PlaneJson, side: "left" | "right"): number {
  const width = plane.width ?? 0;
  switch (plane.kind) {
    case "hollow":
      return plane.wall ?? Math.min(0.4, Math.max(0.25, 0.06 * width));
    case "round":
      return plane.wall ?? Math.min(1, Math.max(0.3, 0.08 * width));
    case "snipe bill":
      return side === plane.hand ? (plane.reach ?? 5) : 0.25;
    case "smoother":
      return 0;
    default:
      return Number.POSITIVE_INFINITY;
  }
}
