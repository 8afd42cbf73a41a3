/** Raking mouldings, one point at a time: what the slope makes of a height at a projection. */
import { toRad } from "../../measure/index.ts";
import type { Corner } from "./corner.ts";
import type { LinearMap } from "./placed-section.ts";

/** The slope and what stands at the two ends of the raking length. */
export interface Rise {
  /** From level, degrees. */
  readonly slopeDeg: number;
  /** At the foot of the slope, to the level moulding. */
  readonly lower: Corner;
  /** At the head of the slope, to the upper return. */
  readonly upper: Corner;
}

/** Which of the three sections a figure belongs to. */
export type RakeMember = "level" | "rake" | "upper return";

export interface RakePoint {
  readonly projectionMm: number;
  readonly levelHeightMm: number;
  /** Square to the slope. */
  readonly rakeHeightMm: number;
  readonly upperReturnHeightMm: number;
}

/** How far along the raking wall a point of one projection stands past its corner, for each mm of projection; inside corners the other way. */
function pastCornerRatio({ cornerDeg, kind }: Corner): number {
  const ratio = 1 / Math.tan(toRad(cornerDeg / 2));
  return kind === "outside" ? ratio : -ratio;
}

/**
 * From (projection, level height) to (projection, that member's height).
 *
 * A point with projection p stands p cot(C/2) past the corner at the foot of the slope, so its line reaches the corner
 * p cot(C/2) tan a higher; square to the slope that is h cos a + p cot(C/2) sin a. At the head it stands as much past
 * the other corner, uphill, and has risen again. For square corners: h cos a + p sin a, and h + 2 p tan a.
 * Source: Hatfield, American House Carpenter, art. 323; formula derived (checks/area-d-rake). Domain: slopes under 90°.
 */
export function rakeMap({ slopeDeg, lower, upper }: Rise, member: RakeMember): LinearMap {
  const slopeRad = toRad(slopeDeg);
  const foot = pastCornerRatio(lower);
  if (member === "level") return { a: 1, b: 0, c: 0, d: 1 };
  if (member === "rake") return { a: 1, b: 0, c: foot * Math.sin(slopeRad), d: Math.cos(slopeRad) };
  return { a: 1, b: 0, c: (foot + pastCornerRatio(upper)) * Math.tan(slopeRad), d: 1 };
}

/** One point's heights in all three members from its height in one of them, mm. */
export function rakePoint(projectionMm: number, heightMm: number, given: RakeMember, rise: Rise): RakePoint {
  const from = rakeMap(rise, given);
  const levelHeightMm = (heightMm - from.c * projectionMm) / from.d;
  const heightIn = (member: RakeMember) => {
    const map = rakeMap(rise, member);
    return map.c * projectionMm + map.d * levelHeightMm;
  };
  return {
    projectionMm,
    levelHeightMm,
    rakeHeightMm: heightIn("rake"),
    upperReturnHeightMm: heightIn("upper return"),
  };
}
