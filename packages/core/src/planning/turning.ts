/** How the stick can lie on the bench, and which of these ways lets a hand hold a plane at a tilt. */
import { leanDeg } from "../cutting/index.ts";
import type { Bench } from "./bench.ts";

/** Face up, back up, and either edge up: few ways to lie matter. In the order they are preferred. */
export const CANTS_DEG: readonly number[] = [0, 180, 90, -90];

/**
 * The way to lay the stick, by how far it is turned, in which a plane of this tilt leans least and no more than the
 * hand can hold. Face up goes before every other way, back up before an edge. Null if there is none.
 */
export function cantFor(bench: Bench, tiltDeg: number): number | null {
  for (const cant of CANTS_DEG) {
    if (Math.abs(leanDeg(tiltDeg, cant)) <= bench.limits.leanDeg + LEAN_SLACK_DEG) return cant;
  }
  return null;
}

/** A tilt read off a drawing may lie this far over a round figure, degrees; far below what a hand can hold. */
const LEAN_SLACK_DEG = 0.005;
