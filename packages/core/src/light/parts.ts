/** An outline cut where it turns past a ray: parts that face the lamp, face away, or lie along the light. */
import {
  cross,
  dot,
  lengthMm,
  type Piece,
  type Point,
  pointAt,
  sweepRad,
  tangentRad,
} from "../curve/index.ts";
import { GRAZING_RATIO, SAME_POINT_MM } from "../measure/index.ts";
import type { SectionRay } from "./lamp.ts";

/** Which way a part of the outline looks as the light meets it. */
export type Facing = "towards" | "away" | "along";

/** A length of one piece between two ratios of its length, that the ray meets at most once. */
export interface Part {
  readonly piece: number;
  readonly fromT: number;
  readonly toT: number;
  readonly from: Point;
  readonly to: Point;
  readonly facing: Facing;
  /** Places of the ends across the light, mm. */
  readonly fromAcrossMm: number;
  readonly toAcrossMm: number;
}

/** The place of a point across the light, mm: all points of one ray share it. */
export function acrossMm({ way }: SectionRay, place: Point): number {
  return cross(way, place);
}

/** How near to the lamp a point stands along its ray, mm. */
export function nearnessMm({ way }: SectionRay, place: Point): number {
  return 0 - dot(way, place);
}

/**
 * Sine of the angle between the light and the outline's own direction at `t`, the outline running anticlockwise:
 * the cosine at which the light meets the face, 1 square on, 0 grazing, less than 0 from behind.
 */
export function meetingRatio(piece: Piece, t: number, ray: SectionRay): number {
  if (piece.kind === "arc") return 0 - Math.sin(tangentRad(piece, t) - ray.angleRad);
  const { from, to } = piece;
  const length = lengthMm(piece);
  return length === 0 ? 0 : 0 - cross(ray.way, { x: to.x - from.x, y: to.y - from.y }) / length;
}

/** The parts of every piece in the ring's order; arcs are cut at their tangent points. */
export function partsOf(pieces: readonly Piece[], ray: SectionRay): readonly Part[] {
  return pieces.flatMap((piece, index) => {
    const cuts = [0, ...turnsOf(piece, ray), 1];
    return cuts.slice(1).map((toT, place): Part => {
      const fromT = cuts[place] ?? 0;
      const from = placeOn(piece, fromT);
      const to = placeOn(piece, toT);
      return {
        piece: index,
        fromT,
        toT,
        from,
        to,
        facing: facingOf(meetingRatio(piece, (fromT + toT) / 2, ray)),
        fromAcrossMm: acrossMm(ray, from),
        toAcrossMm: acrossMm(ray, to),
      };
    });
  });
}

/** The point at `t`, the stored ends at 0 and 1. */
export function placeOn(piece: Piece, t: number): Point {
  return t === 0 ? piece.from : t === 1 ? piece.to : pointAt(piece, t);
}

function facingOf(meeting: number): Facing {
  if (meeting > GRAZING_RATIO) return "towards";
  return meeting < -GRAZING_RATIO ? "away" : "along";
}

/** Where an arc runs along the light: its direction at t is that of its chord, turned by (t − ½) of its sweep. */
function turnsOf(piece: Piece, ray: SectionRay): readonly number[] {
  if (piece.kind === "line") return [];
  const sweep = sweepRad(piece);
  const chordRad = tangentRad(piece, 0.5) - ray.angleRad;
  const slackT = SAME_POINT_MM / lengthMm(piece);
  const turns: number[] = [];
  // A half circle turns by π about its chord, which itself lies within 2π of the light.
  for (let half = -3; half <= 3; half++) {
    const t = 0.5 + (half * Math.PI - chordRad) / sweep;
    if (t > slackT && t < 1 - slackT) turns.push(t);
  }
  return turns.sort((a, b) => a - b);
}

/** The ratio at which the ray `atAcrossMm` meets a part that faces the lamp; null where it passes beside it. */
export function metAt(part: Part, piece: Piece, ray: SectionRay, atAcrossMm: number): number | null {
  // The outline runs anticlockwise, so what faces the lamp runs down across the light.
  if (atAcrossMm > part.fromAcrossMm || atAcrossMm < part.toAcrossMm) return null;
  if (piece.kind === "line") {
    const wholeMm = part.toAcrossMm - part.fromAcrossMm;
    return wholeMm === 0 ? part.fromT : (atAcrossMm - part.fromAcrossMm) / wholeMm;
  }
  return metOnArc(part, piece, ray, atAcrossMm);
}

/**
 * On an arc of radius r the place across the light changes by r (cos a − cos b) between directions a and b off the
 * light; what faces the lamp has them between −π and 0.
 */
function metOnArc(part: Part, piece: Piece & { kind: "arc" }, ray: SectionRay, atAcrossMm: number): number {
  const sweep = sweepRad(piece);
  const chordRad = tangentRad(piece, 0.5) - ray.angleRad;
  const startRad = chordRad + (part.fromT - 0.5) * sweep;
  const signedRadiusMm = lengthMm(piece) / sweep;
  const cosine = Math.cos(startRad) - (atAcrossMm - part.fromAcrossMm) / signedRadiusMm;
  const wantedRad = 0 - Math.acos(Math.max(-1, Math.min(1, cosine)));
  // The same direction a full turn on or back, whichever lies on the part.
  const middleRad = chordRad + ((part.fromT + part.toT) / 2 - 0.5) * sweep;
  const turns = Math.round((middleRad - wantedRad) / (2 * Math.PI));
  const t = 0.5 + (wantedRad + turns * 2 * Math.PI - chordRad) / sweep;
  return Math.max(part.fromT, Math.min(part.toT, t));
}
