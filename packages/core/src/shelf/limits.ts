/**
 * How much standing wood a plane clears beside its sole, as a maker would set it: every figure is a default
 * that may be changed. Common practice, no source: the figures are what a trial on the bench has to confirm.
 */
import type { Hand, Plane } from "./types.ts";

/** A share of the sole's width, kept between a least and a most. */
export interface ShareOfWidth {
  /** Share of the sole's width, without unit. */
  readonly perWidthRatio: number;
  readonly leastMm: number;
  readonly mostMm: number;
}

export interface WallLimits {
  /** Wall a hollow's iron corner clears by itself; the sides of its body do not cut, and its corners are its thinnest part. */
  readonly besideHollow: ShareOfWidth;
  /** Wall a round's iron corner clears by itself; more than a hollow, because its corners stand up off the work. */
  readonly besideRound: ShareOfWidth;
  /** Wall the nose of a snipe bill leaves on its sloping side, mm: the flank of the beak is ground to clear, not to cut. */
  readonly besideNoseMm: number;
}

export const DEFAULT_WALL_LIMITS: WallLimits = {
  besideHollow: { perWidthRatio: 0.06, leastMm: 0.25, mostMm: 0.4 },
  besideRound: { perWidthRatio: 0.08, leastMm: 0.3, mostMm: 1 },
  besideNoseMm: 0.25,
};

/** How high a new wall may stand beside the sole after the cut; a value of its own kind, since JSON knows no infinity. */
export type WallAllowance =
  | { readonly kind: "unlimited" }
  | { readonly kind: "up to"; readonly allowanceMm: number };

const UNLIMITED: WallAllowance = { kind: "unlimited" };

/**
 * The new wall, mm, that may stand beside one side of a plane's sole after a cut with the plane upright.
 *
 * A flat plane's sides and the cutting side of a snipe bill, bead or side plane cut the wall themselves. A snipe
 * bill goes no deeper than its beak reaches. Everywhere else the sole has to be relieved first, except for the
 * little that the iron's corner clears; a plane's own measured `wallMm` goes before the default.
 * What a leaning flat plane or a deep slot allows depends on the cut, not on the plane: see cutting's limits.
 */
export function wallAllowanceMm(
  plane: Plane,
  side: Hand,
  limits: WallLimits = DEFAULT_WALL_LIMITS,
): WallAllowance {
  switch (plane.kind) {
    case "hollow":
      return upTo(plane.wallMm ?? shareMm(plane.widthMm, limits.besideHollow));
    case "round":
      return upTo(plane.wallMm ?? shareMm(plane.widthMm, limits.besideRound));
    case "snipe bill":
      return upTo(side === plane.hand ? plane.reachMm : limits.besideNoseMm);
    case "rebate":
    case "moving fillister":
    case "plough":
      return UNLIMITED;
    case "smoother":
      return upTo(0);
    case "side round":
    case "side snipe":
    case "side rebate":
      return side === plane.hand ? UNLIMITED : upTo(limits.besideNoseMm);
    case "bead":
      return side === (plane.hand ?? "right") ? UNLIMITED : upTo(shareMm(plane.widthMm, limits.besideHollow));
    case "shaped":
      return plane.cutsWall === "both" || plane.cutsWall === side
        ? UNLIMITED
        : upTo(shareMm(shapedWidthMm(plane.sole), limits.besideHollow));
  }
}

/** The share of a sole's width, kept within its bounds, mm. */
export function shareMm(widthMm: number, share: ShareOfWidth): number {
  return Math.min(share.mostMm, Math.max(share.leastMm, share.perWidthRatio * widthMm));
}

function upTo(allowanceMm: number): WallAllowance {
  return { kind: "up to", allowanceMm };
}

function shapedWidthMm(sole: Extract<Plane, { kind: "shaped" }>["sole"]): number {
  const pieces = sole.pieces;
  return pieces[pieces.length - 1]!.to.x - pieces[0]!.from.x;
}
