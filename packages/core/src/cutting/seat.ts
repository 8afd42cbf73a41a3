/**
 * The seat of a curved plane: whether the wood holds it where it is meant to run.
 *
 * At the cut's tilt, h(shift) is the height at which the plane, let down shifted sideways, is first stopped. The
 * plane is held when the aim lies in a valley of h: from the resting place, near enough to the aim, a shift to either
 * side must lift it. A plateau is no seat. The body is taken a little narrower than the sole, since a body just
 * clears the wall it was scribed to.
 */
import type { Region } from "../curve/index.ts";
import { SAME_POINT_MM, SEAT_LEVEL_MM } from "../measure/index.ts";
import type { CuttingLimits } from "./limits.ts";
import { type Profile, profileOf, restOn, turned, turnOf } from "./profile.ts";
import type { SoleShape } from "./sole-shape.ts";
import type { Pose, SeatFigures } from "./types.ts";

export interface Seat extends SeatFigures {
  /** Lift over the width: what `seatHeldRatio` and `seatWellHeldRatio` are held against. */
  readonly ratio: number;
  readonly heightMm: number;
}

const STEPS_TO_A_SIDE = 24;
/** Looked at just beside the resting place, as shares of the way to a side: a dip there means it has not come to rest. */
const CLOSE_BY = [0.002, 0.005, 0.01, 0.02];
const STEPS_OF_REST = 8;

/** The plane's seat on the wood in this pose, or null if it comes to rest nowhere near the aim or nothing holds it. */
export function seatOf(region: Region, sole: SoleShape, pose: Pose, limits: CuttingLimits): Seat | null {
  return seatOn(profileOf(region, pose[2]), sole, pose, limits);
}

/** As `seatOf`, on a profile already turned to the pose's tilt. */
export function seatOn(profile: Profile, sole: SoleShape, pose: Pose, limits: CuttingLimits): Seat | null {
  const aim = turned(turnOf(pose[2]), { x: pose[0], y: pose[1] }).x;
  const options = { narrowMm: limits.bodyClearanceMm };
  const heightAt = (shift: number): number =>
    restOn(profile, sole, aim + shift, options)?.heightMm ?? Number.NEGATIVE_INFINITY;
  const off = Math.max(limits.seatOffMm, sole.widthMm * limits.seatOffRatio);
  const rest = lowestNear(heightAt, off);
  if (!Number.isFinite(rest.height)) return null;
  const reach = sole.widthMm * limits.seatShiftRatio;
  // Most that slide off do so to the left already: the other side need not be looked at then.
  const left = liftTo(heightAt, rest, -reach);
  if (left / sole.widthMm < limits.seatHeldRatio) return null;
  const lift = Math.min(left, liftTo(heightAt, rest, reach));
  const ratio = lift / sole.widthMm;
  if (ratio < limits.seatHeldRatio) return null;
  return { lift, shift: rest.shift, ratio, heightMm: rest.height };
}

interface RestingPlace {
  readonly shift: number;
  readonly height: number;
}

/** The lowest place within `off` of the aim; of equal ones the nearest to it. */
function lowestNear(heightAt: (shift: number) => number, off: number): RestingPlace {
  let best: RestingPlace = { shift: 0, height: heightAt(0) };
  for (let i = 1; i <= STEPS_OF_REST; i++) {
    for (const side of [-1, 1]) {
      const shift = (side * off * i) / STEPS_OF_REST;
      const height = heightAt(shift);
      if (height < best.height - SEAT_LEVEL_MM) best = { shift, height };
    }
  }
  return nearestLevel(heightAt, refined(heightAt, best, off / STEPS_OF_REST, off), off);
}

/** On a level floor the place nearest to the aim: from there both lifts are told, whichever place was looked at first. */
function nearestLevel(heightAt: (shift: number) => number, place: RestingPlace, off: number): RestingPlace {
  const isLevel = (shift: number) => heightAt(shift) <= place.height + SAME_POINT_MM;
  const nearer = Math.sign(place.shift) * Math.max(0, Math.abs(place.shift) - off * LEVEL_LOOKED_AT);
  if (place.shift === 0 || !isLevel(nearer)) return place;
  if (isLevel(0)) return { shift: 0, height: place.height };
  let [level, above] = [nearer, 0];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (level + above) / 2;
    if (isLevel(middle)) level = middle;
    else above = middle;
  }
  return { shift: level, height: place.height };
}

/** How far towards the aim it is looked whether a floor goes on level, share of the way a plane may rest off it. */
const LEVEL_LOOKED_AT = 0.001;
/** Halvings that leave less than a thousandth of a millimetre. */
const HALVINGS = 10;

/** Ternary narrowing around a sampled lowest place; h is single-valleyed within one step. Capped; the cap leaves less than 1e-4 of a step. */
function refined(
  heightAt: (shift: number) => number,
  place: RestingPlace,
  stepMm: number,
  off: number,
): RestingPlace {
  let low = Math.max(-off, place.shift - stepMm);
  let high = Math.min(off, place.shift + stepMm);
  for (let i = 0; i < 14; i++) {
    const a = low + (high - low) / 3;
    const b = high - (high - low) / 3;
    if (heightAt(a) <= heightAt(b)) high = b;
    else low = a;
  }
  const shift = (low + high) / 2;
  const height = heightAt(shift);
  return height < place.height - SAME_POINT_MM ? { shift, height } : place;
}

/** The greatest lift on the way to one side, as long as the plane has not dropped below where it rested. */
function liftTo(heightAt: (shift: number) => number, rest: RestingPlace, reach: number): number {
  let lift = 0;
  let at = 0;
  for (let i = -CLOSE_BY.length; i <= STEPS_TO_A_SIDE; i++) {
    if (i === 0) continue;
    const share = i < 0 ? (CLOSE_BY[i + CLOSE_BY.length] ?? 0) : i / STEPS_TO_A_SIDE;
    const height = heightAt(rest.shift + reach * share);
    if (height < rest.height - SEAT_LEVEL_MM) break;
    if (height - rest.height > lift) {
      lift = height - rest.height;
      at = share;
    }
  }
  // Where an arris slips off the sole's end the height falls at once: its peak lies between two steps.
  return Math.max(lift, peakNear(heightAt, rest, reach, at));
}

/** The lift at the top of a peak beside a share of the way, by halving towards the higher side. */
function peakNear(
  heightAt: (shift: number) => number,
  rest: RestingPlace,
  reach: number,
  at: number,
): number {
  if (at <= 0 || at >= 1) return 0;
  let best = heightAt(rest.shift + reach * at);
  let share = at;
  for (let step = 0.5 / STEPS_TO_A_SIDE; step > LEAST_STEP; step /= 2) {
    for (const side of [1, -1]) {
      const tried = share + side * step;
      // Across the resting place lies the other side, whose lift is not this one's.
      if (tried <= 0 || tried > 1) continue;
      const height = heightAt(rest.shift + reach * tried);
      if (height <= best) continue;
      best = height;
      share = tried;
      break;
    }
  }
  return best - rest.height;
}

/** Peaks are looked for down to this share of the way. */
const LEAST_STEP = 0.001;
