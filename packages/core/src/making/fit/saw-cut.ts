/** How a cut that is known in the room is made at the saw: settings, and which way round the stick lies. */
import { asinRad, SAME_POINT_DEG, toDeg, toRad } from "../../measure/index.ts";
import type { CornerKind } from "./corner.ts";
import { type Direction, dotOf } from "./space.ts";

export type StickEdge = "ceiling edge" | "wall edge";

/** The saw's two scales, degrees. */
export interface SawSettings {
  readonly mitreDeg: number;
  readonly bevelDeg: number;
}

export interface SawCut extends SawSettings {
  /** Which edge of the stick lies at the fence; the stick's face is up when it lies flat. */
  readonly edgeAtFence: StickEdge;
  readonly turnHandleTo: "left" | "right" | "neither";
  /** Which way the blade's top leans, seen by the operator. */
  readonly bladeLeans: "left" | "right" | "upright";
  /** On which side of the blade the piece that is used lies. */
  readonly keep: "left" | "right";
}

/** A stick in its place: along it to the right, across its back from the wall's edge to the ceiling's, out of its face. */
export interface StickFrame {
  readonly run: Direction;
  readonly across: Direction;
  readonly faceward: Direction;
}

/** A level stick at a spring from the wall, degrees. */
export function levelFrame(springFromWallDeg: number): StickFrame {
  return slopingFrame(springFromWallDeg, 0);
}

/** A stick that runs up to the right at a slope, its spring measured square to its run; degrees. */
export function slopingFrame(springFromWallDeg: number, slopeDeg: number): StickFrame {
  const sine = Math.sin(toRad(springFromWallDeg));
  const cosine = Math.cos(toRad(springFromWallDeg));
  const run = { x: Math.cos(toRad(slopeDeg)), y: 0, z: Math.sin(toRad(slopeDeg)) };
  const up = { x: -run.z, y: 0, z: run.x };
  return {
    run,
    across: { x: up.x * cosine, y: -sine, z: up.z * cosine },
    faceward: { x: -up.x * sine, y: -cosine, z: -up.z * sine },
  };
}

/**
 * The upright plane that ends a stick at a corner, as the direction out of the wood. `halfDeg` is the angle in plan
 * between the wall and the plane: half the corner for a mitre, the whole corner for an end that butts against the other
 * wall. `end` is the stick's end as seen from the room.
 */
export function cornerPlane(end: "left" | "right", halfDeg: number, kind: CornerKind): Direction {
  const sine = Math.sin(toRad(halfDeg));
  const cosine = Math.cos(toRad(halfDeg));
  return { x: end === "right" ? sine : -sine, y: kind === "inside" ? -cosine : cosine, z: 0 };
}

/**
 * The stick laid flat on its back, face up, and cut along a plane (its direction out of the wood that is kept). Of the
 * two ways the stick can lie the one is given for which the blade leans as this saw's does.
 *
 * With the plane's direction n in the stick's frame, the saw's swing is atan(|n·across / n·run|) and the blade's lean
 * asin(|n·faceward|). For a level stick at a mitre these are the closed forms atan(sin s / tan(C/2)) and
 * asin(cos s cos(C/2)).
 */
export function cutLaidFlat(
  plane: Direction,
  frame: StickFrame,
  saw: { readonly leans: "left" | "right" },
): SawCut {
  const along = dotOf(plane, frame.run);
  const across = dotOf(plane, frame.across);
  const up = dotOf(plane, frame.faceward);
  const leanDeg = toDeg(asinRad(Math.min(1, Math.abs(up))));
  const isUpright = leanDeg <= SAME_POINT_DEG;
  // With the ceiling edge at the fence the stick's own right is the operator's; the other way about, both turn.
  const leansWithCeiling = along * up > 0 ? "left" : "right";
  const ceilingAtFence = isUpright || leansWithCeiling === saw.leans;
  const turn = ceilingAtFence ? 1 : -1;
  return {
    ...swingOf(along * turn, across * turn),
    bevelDeg: isUpright ? 0 : leanDeg,
    edgeAtFence: ceilingAtFence ? "ceiling edge" : "wall edge",
    bladeLeans: isUpright ? "upright" : saw.leans,
  };
}

/**
 * The stick held in the saw as it will hang, but upside down: the wall's side against the fence, the ceiling's side on
 * the table. Only for upright planes: then the blade is upright too, and left and right change places.
 */
export function cutHeldAtSpring(plane: Direction): SawCut {
  return {
    ...swingOf(-plane.x, plane.y),
    bevelDeg: 0,
    edgeAtFence: "wall edge",
    bladeLeans: "upright",
  };
}

/** Swing and side from the plane's direction on the table: x to the right, y to the fence. */
function swingOf(x: number, y: number): Pick<SawCut, "mitreDeg" | "turnHandleTo" | "keep"> {
  const swingDeg = toDeg(Math.atan2(Math.abs(y), Math.abs(x)));
  const isSquare = swingDeg <= SAME_POINT_DEG;
  const farEndLeft = x > 0 ? y > 0 : y < 0;
  return {
    mitreDeg: isSquare ? 0 : swingDeg,
    turnHandleTo: isSquare ? "neither" : farEndLeft ? "right" : "left",
    keep: x > 0 ? "left" : "right",
  };
}
