/** How the stick can lie on the bench, and which of these ways lets a hand hold a plane at a tilt. */
import { leanDeg } from "../cutting/index.ts";
import { POSE_ROUNDING } from "../measure/index.ts";
import type { Bench } from "./bench.ts";

/** Turned further than this the face no longer looks up, degrees. */
const FACE_UP_WITHIN_DEG = 60;

/** Whether the face still looks up when the stick is turned by a cant: flat on its back, or in a canted jaw. */
export function isFaceUp(cantDeg: number): boolean {
  return Math.abs(cantDeg) <= FACE_UP_WITHIN_DEG;
}

/**
 * The ways to lay the stick for a plane of this tilt, likeliest first: of those with the face up the one in which
 * the plane leans least, then the back up, then an edge.
 */
export function cantsFor(bench: Bench, tiltDeg: number): number[] {
  const lean = (cant: number) => Math.abs(leanDeg(tiltDeg, cant));
  const faceUp = bench.cantsDeg.filter(isFaceUp).sort((a, b) => lean(a) - lean(b));
  return [...faceUp, ...bench.cantsDeg.filter((cant) => !isFaceUp(cant))].filter(
    (cant) => lean(cant) <= bench.limits.leanDeg + POSE_ROUNDING,
  );
}

/** The likeliest way to lay the stick for a plane of this tilt, or null if no hand could hold it. */
export function cantFor(bench: Bench, tiltDeg: number): number | null {
  return cantsFor(bench, tiltDeg)[0] ?? null;
}

/** Tilt of a plane that stands upright in the hand when the stick is turned by a cant, in (-180, 180]. */
export function uprightTiltDeg(cantDeg: number): number {
  return leanDeg(-cantDeg, 0);
}
