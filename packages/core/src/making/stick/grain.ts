/** Which way the grain should rise, which flank it should serve, and from which end to push. */
import { type Piece, type Point, pointAt, tangentRad } from "../../curve/index.ts";
import type { Plan } from "../../cutting/index.ts";
import { toDeg, toRad } from "../../measure/index.ts";
import type { Section } from "../../section/index.ts";
import { viewSection } from "./section-view.ts";

/** How the grain of a real stick runs, looked at from the end where the stroke starts, degrees. */
export interface GrainSeen {
  /** On the gauge edge: rising towards the face in the direction of the push is positive. */
  readonly risesDeg: number;
  /** On the face: drifting towards the far edge in the direction of the push is positive. */
  readonly driftsDeg: number;
}

export type Drift = "towards the gauge edge" | "towards the far edge" | "straight";

export type BlankTurn = "as it lies" | "end for end" | "over, face to back" | "end for end and over";

export interface Flank {
  /** Steepest slope of the face on this side, from level, degrees; 0 if nothing faces this way. */
  readonly steepestDeg: number;
  readonly at: Point | null;
}

export interface GrainAdvice {
  readonly towardsGaugeEdge: Flank;
  readonly towardsFarEdge: Flank;
  readonly rises: "with the push";
  /** The drift that serves the steeper flank; straight where both are as steep. */
  readonly drift: Drift;
  /** With the grain of a real stick only. */
  readonly forStick: StickGrain | null;
  /** Pushing from the other end mirrors the section and swaps these hands: cut number and the plane's hand. */
  readonly handsFromOtherEnd: readonly {
    readonly cut: number;
    readonly was: string;
    readonly becomes: string;
  }[];
}

export interface StickGrain {
  /** Before face and gauge edge are chosen: how to turn the blank. */
  readonly turn: BlankTurn;
  /** Once face and gauge edge are chosen: from which end. */
  readonly pushFrom: "this end" | "the other end";
  /** How steeply the fibres run out of the surface where they run worst against the push, degrees: 0 if nowhere. */
  readonly worstFromThisEndDeg: number;
  readonly worstFromOtherEndDeg: number;
}

/** Flanks less steep than this from level are taken as level, degrees. */
const LEVEL_DEG = 10;

/** Flanks whose steepest slopes differ by less are as steep as each other, degrees. */
const AS_STEEP_DEG = 5;

const STEPS_ALONG = 8;

/**
 * Fibres that come up out of the surface ahead of the iron are planed with the grain. With the fibre's direction
 * (drift, rise, 1) and the surface's outward normal n, seen on its end, they come up by drift · n.x + rise · n.y. A
 * flank that faces the gauge edge therefore wants grain that drifts that way; an ogee has flanks facing both ways, so
 * the drift serves the steeper one.
 *
 * A square blank can be laid four ways. End for end keeps the drift and turns the rise over; over turns both: so
 * there is always one way in which the grain rises with the push and drifts as wanted.
 */
export function grainAdvice(
  section: Section,
  seen: GrainSeen | null = null,
  plan: Plan | null = null,
): GrainAdvice {
  const view = viewSection(section);
  const surfaces = view.moulded === null ? [] : view.moulded.pieces.flatMap(surfacesAlong);
  const towardsGaugeEdge = steepest(surfaces.filter(({ normal }) => normal.x < 0));
  const towardsFarEdge = steepest(surfaces.filter(({ normal }) => normal.x > 0));
  const drift = driftFor(towardsGaugeEdge.steepestDeg, towardsFarEdge.steepestDeg);
  return {
    towardsGaugeEdge,
    towardsFarEdge,
    rises: "with the push",
    drift,
    forStick: seen === null ? null : forStick(surfaces, seen, drift),
    handsFromOtherEnd: plan === null ? [] : swappedHands(plan),
  };
}

interface Surface {
  readonly at: Point;
  readonly normal: Point;
}

/** Outward normals along a piece, an arc's ends included. The ring runs anticlockwise: outward is right of the travel. */
function surfacesAlong(piece: Piece): Surface[] {
  const steps = piece.kind === "line" ? 0 : STEPS_ALONG;
  return Array.from({ length: steps + 1 }, (_, k) => {
    const t = steps === 0 ? 0 : k / steps;
    const alongRad = tangentRad(piece, t);
    return { at: pointAt(piece, t), normal: { x: Math.sin(alongRad), y: -Math.cos(alongRad) } };
  });
}

function slopeDeg({ normal }: Surface): number {
  return toDeg(Math.atan2(Math.abs(normal.x), Math.abs(normal.y)));
}

function isUpright(surface: Surface): boolean {
  // Walls are cut by rebate planes and snipe bills along their foot; no plane smooths them across their grain.
  return slopeDeg(surface) > 90 - LEVEL_DEG / 2;
}

function steepest(surfaces: readonly Surface[]): Flank {
  let best: Surface | null = null;
  for (const surface of surfaces) {
    if (isUpright(surface)) continue;
    if (best === null || slopeDeg(surface) > slopeDeg(best)) best = surface;
  }
  return best === null ? { steepestDeg: 0, at: null } : { steepestDeg: slopeDeg(best), at: best.at };
}

function driftFor(gaugeDeg: number, farDeg: number): Drift {
  if (Math.max(gaugeDeg, farDeg) < LEVEL_DEG || Math.abs(gaugeDeg - farDeg) < AS_STEEP_DEG) return "straight";
  return gaugeDeg > farDeg ? "towards the gauge edge" : "towards the far edge";
}

function forStick(surfaces: readonly Surface[], seen: GrainSeen, drift: Drift): StickGrain {
  const worstFromThisEndDeg = worstAgainst(surfaces, seen);
  const worstFromOtherEndDeg = worstAgainst(surfaces, {
    risesDeg: -seen.risesDeg,
    driftsDeg: -seen.driftsDeg,
  });
  return {
    turn: turnFor(seen, drift),
    pushFrom: worstFromOtherEndDeg < worstFromThisEndDeg ? "the other end" : "this end",
    worstFromThisEndDeg,
    worstFromOtherEndDeg,
  };
}

/** The four ways a blank can lie, and what each makes of its grain. */
function turnFor({ risesDeg, driftsDeg }: GrainSeen, drift: Drift): BlankTurn {
  const wantsDrift = drift === "straight" ? Math.sign(driftsDeg) : drift === "towards the far edge" ? 1 : -1;
  const isOver = driftsDeg !== 0 && Math.sign(driftsDeg) !== wantsDrift;
  const risesThenDeg = isOver ? -risesDeg : risesDeg;
  if (risesThenDeg < 0) return isOver ? "end for end and over" : "end for end";
  return isOver ? "over, face to back" : "as it lies";
}

function worstAgainst(surfaces: readonly Surface[], { risesDeg, driftsDeg }: GrainSeen): number {
  const rise = Math.tan(toRad(risesDeg));
  const drift = Math.tan(toRad(driftsDeg));
  const long = Math.hypot(rise, drift, 1);
  const against = surfaces
    .filter((surface) => !isUpright(surface))
    .map(({ normal }) => -(drift * normal.x + rise * normal.y) / long);
  return toDeg(Math.asin(Math.max(0, ...against)));
}

function swappedHands(plan: Plan): GrainAdvice["handsFromOtherEnd"] {
  return plan.cuts.flatMap((cut) => {
    const hand = cut.plane.hand;
    if (hand !== "left" && hand !== "right") return [];
    return [{ cut: cut.number, was: hand, becomes: hand === "left" ? "right" : "left" }];
  });
}
