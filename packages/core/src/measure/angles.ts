/**
 * The only place where degrees become radians and back. Degrees stand in files and on screens, radians in the
 * kernel (`curve/`); both anticlockwise. Each brand is its own symbol, so one cannot pass for the other.
 */
import { requireBetween, requireFinite } from "./compare.ts";
import { RATIO_OVERSHOOT } from "./tolerance.ts";

declare const degrees: unique symbol;
declare const radians: unique symbol;

export type Deg = number & { readonly [degrees]: true };
export type Rad = number & { readonly [radians]: true };

const FULL_TURN_DEG = 360;
const HALF_TURN_DEG = 180;
const FULL_TURN_RAD = 2 * Math.PI;

/** Marks a plain number as degrees. Throws a bug if it is not finite. */
export function deg(angleDeg: number): Deg {
  return withoutMinusZero(requireFinite("angleDeg", angleDeg)) as Deg;
}

/** Marks a plain number as radians. Throws a bug if it is not finite. */
export function rad(angleRad: number): Rad {
  return withoutMinusZero(requireFinite("angleRad", angleRad)) as Rad;
}

/** Degrees to radians; within one unit in the last place. Throws a bug if the angle is not finite. */
export function toRad(angleDeg: number): Rad {
  return rad((requireFinite("angleDeg", angleDeg) * Math.PI) / HALF_TURN_DEG);
}

/** Radians to degrees; within one unit in the last place. Throws a bug if the angle is not finite. */
export function toDeg(angleRad: number): Deg {
  return deg((requireFinite("angleRad", angleRad) * HALF_TURN_DEG) / Math.PI);
}

/** The same direction in (−180, 180] degrees: half a turn is +180, never −180. Exact for whole degrees. */
export function normaliseDeg(angleDeg: number): Deg {
  const rest = requireFinite("angleDeg", angleDeg) % FULL_TURN_DEG;
  if (rest > HALF_TURN_DEG) return deg(rest - FULL_TURN_DEG);
  if (rest <= -HALF_TURN_DEG) return deg(rest + FULL_TURN_DEG);
  return deg(rest);
}

/**
 * The same direction in (−π, π] radians. A full turn is not a whole number of floating-point steps, so the
 * error grows with the number of turns taken off (about 2e-16 rad for each).
 */
export function normaliseRad(angleRad: number): Rad {
  const rest = requireFinite("angleRad", angleRad) % FULL_TURN_RAD;
  if (rest > Math.PI) return rad(rest - FULL_TURN_RAD);
  if (rest <= -Math.PI) return rad(rest + FULL_TURN_RAD);
  return rad(rest);
}

/** The turn from one direction to another by the shorter way, in (−180, 180] degrees, anticlockwise positive. */
export function turnDeg(fromDeg: number, toDirectionDeg: number): Deg {
  return normaliseDeg(toDirectionDeg - fromDeg);
}

/**
 * Arc sine with its argument held within −1 to 1, radians: a ratio of two computed lengths may overshoot by a few
 * units in the last place. What lies further out than that is a caller's bug and throws.
 */
export function asinRad(ratio: number): Rad {
  return rad(Math.asin(heldRatio(ratio)));
}

/** Arc cosine with its argument held within −1 to 1, radians (see `asinRad`). */
export function acosRad(ratio: number): Rad {
  return rad(Math.acos(heldRatio(ratio)));
}

function heldRatio(ratio: number): number {
  requireBetween("ratio", ratio, -1 - RATIO_OVERSHOOT, 1 + RATIO_OVERSHOOT);
  return Math.max(-1, Math.min(1, ratio));
}

function withoutMinusZero(value: number): number {
  return value === 0 ? 0 : value;
}
