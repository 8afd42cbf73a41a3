/** Where a maker would hide a joint, and what the section becomes when it is parted there. */
import {
  distanceMm,
  intersect,
  lengthMm,
  line,
  type Piece,
  type Point,
  samePoint,
  splitPiece,
  tangentRad,
} from "../../curve/index.ts";
import { SAME_POINT_MM, toDeg, toRad } from "../../measure/index.ts";
import { joinsOf, type Section } from "../../section/index.ts";
import type { JointLimits } from "./defaults.ts";
import type { PartOutline, TracedPiece } from "./part-outline.ts";

/** From best hidden to least: in a dark line, in a corner, under a flat's edge. */
export const HIDING_PLACES = ["quirk", "step", "fillet"] as const;
export type HidingPlace = (typeof HIDING_PLACES)[number];

export interface JointPlace {
  readonly at: Point;
  readonly hiddenBy: HidingPlace;
}

/** A straight glued face, from the face of the moulding to where it comes out unseen. */
export interface Joint {
  readonly from: Point;
  readonly to: Point;
  readonly hiddenBy: HidingPlace;
  readonly runs: "upright" | "level";
}

/** A flat wider than this is no fillet: a joint at its edge would be seen, mm. Common practice, no source. */
const WIDEST_FILLET_MM = 25;

/** Sunk joins, and the arrises where a level or upright fillet ends. */
export function jointPlaces(section: Section): JointPlace[] {
  const { pieces } = section.outline;
  return joinsOf(section.outline, section.freeSpans).flatMap(({ piece, at, kind }): JointPlace[] => {
    if (kind === "quirk" || kind === "step") return [{ at, hiddenBy: kind }];
    if (kind !== "arris") return [];
    const before = pieces[(piece + pieces.length - 1) % pieces.length] as Piece;
    return [before, pieces[piece] as Piece].some(isFillet) ? [{ at, hiddenBy: "fillet" }] : [];
  });
}

function isFillet(piece: Piece): boolean {
  if (piece.kind !== "line" || lengthMm(piece) > WIDEST_FILLET_MM) return false;
  const dx = Math.abs(piece.to.x - piece.from.x);
  const dy = Math.abs(piece.to.y - piece.from.y);
  return Math.min(dx, dy) <= SAME_POINT_MM;
}

export interface Parting {
  readonly joint: Joint;
  readonly parts: readonly [PartOutline, PartOutline];
}

const DIRECTIONS_DEG = [0, 90, 180, 270] as const;

/** Every way to part an outline by one level or upright joint from a hiding place on its face. */
export function partings(
  outline: PartOutline,
  places: readonly JointPlace[],
  limits: JointLimits,
): Parting[] {
  return outline.flatMap(({ piece, origin }, index) => {
    const before = outline[(index + outline.length - 1) % outline.length] as TracedPiece;
    if (origin !== "face" && before.origin !== "face") return [];
    const place = places.find(({ at }) => samePoint(at, piece.from));
    if (place === undefined) return [];
    return DIRECTIONS_DEG.flatMap((directionDeg) => {
      const parting = partFrom(outline, index, place, directionDeg, limits);
      return parting === null ? [] : [parting];
    });
  });
}

/** Parts the outline from where piece `start` begins; null if the joint would be seen, feathered or too narrow. */
function partFrom(
  outline: PartOutline,
  start: number,
  place: JointPlace,
  directionDeg: number,
  limits: JointLimits,
): Parting | null {
  const count = outline.length;
  const next = (outline[start] as TracedPiece).piece;
  const before = (outline[(start + count - 1) % count] as TracedPiece).piece;
  const outDeg = toDeg(tangentRad(next, 0));
  const woodDeg = turnedDeg(toDeg(tangentRad(before, 1)) + 180 - outDeg);
  const fromOutDeg = turnedDeg(directionDeg - outDeg);
  if (fromOutDeg < limits.leastEdgeDeg || woodDeg - fromOutDeg < limits.leastEdgeDeg) return null;
  const exit = exitOf(outline, next.from, directionDeg);
  if (exit === null || exit.traced.origin === "face") return null;
  if (distanceMm(next.from, exit.at) < limits.leastJointMm) return null;
  const slantDeg = turnedDeg(toDeg(tangentRad(exit.traced.piece, exit.t)) - directionDeg) % 180;
  if (Math.min(slantDeg, 180 - slantDeg) < limits.leastEdgeDeg) return null;
  return parted(outline, start, exit, {
    from: next.from,
    to: exit.at,
    hiddenBy: place.hiddenBy,
    runs: directionDeg % 180 === 0 ? "level" : "upright",
  });
}

/** 0 up to a full turn. */
function turnedDeg(angleDeg: number): number {
  const full = 360;
  return ((angleDeg % full) + full) % full;
}

interface Exit {
  readonly at: Point;
  readonly index: number;
  readonly t: number;
  readonly traced: TracedPiece;
}

/** Longer than any section is across, mm. */
const BEYOND_MM = 1e4;

/** Where a straight line from a corner through the wood first meets the outline again; null if it runs along it. */
function exitOf(outline: PartOutline, from: Point, directionDeg: number): Exit | null {
  const rad = toRad(directionDeg);
  const ray = line(from, {
    // Level and upright lines keep their height or place exactly.
    x: directionDeg % 180 === 0 ? from.x + BEYOND_MM * Math.cos(rad) : from.x,
    y: directionDeg % 180 === 0 ? from.y : from.y + BEYOND_MM * Math.sin(rad),
  });
  let nearest: (Exit & { readonly awayMm: number }) | null = null;
  for (const [index, traced] of outline.entries()) {
    const crossing = intersect(ray, traced.piece, SAME_POINT_MM);
    if (crossing.kind === "none") continue;
    const hits =
      crossing.kind === "points"
        ? crossing.hits.map((hit) => ({ at: hit.point, t: hit.tB }))
        : [crossing.from, crossing.to].map((at) => ({ at, t: samePoint(at, traced.piece.from) ? 0 : 1 }));
    for (const { at, t } of hits) {
      if (samePoint(at, from)) continue;
      const awayMm = distanceMm(from, at);
      if (nearest === null || awayMm < nearest.awayMm) nearest = { at, index, t, traced, awayMm };
    }
  }
  if (nearest === null) return null;
  // A joint that ends in a corner is no clean one: neither part would have a square edge there to work to.
  return nearest.t > 0 && nearest.t < 1 ? nearest : null;
}

function parted(outline: PartOutline, start: number, exit: Exit, joint: Joint): Parting {
  const turned = [...outline.slice(start), ...outline.slice(0, start)];
  const at = (exit.index - start + outline.length) % outline.length;
  const [head, tail] = splitPiece(exit.traced.piece, exit.t);
  // Both halves and both joint faces end in the very same point.
  const first: TracedPiece[] = [
    ...turned.slice(0, at),
    { ...exit.traced, piece: { ...head, to: joint.to } },
    { piece: line(joint.to, joint.from), origin: "joint", index: null },
  ];
  const second: TracedPiece[] = [
    { ...exit.traced, piece: { ...tail, from: joint.to } },
    ...turned.slice(at + 1),
    { piece: line(joint.from, joint.to), origin: "joint", index: null },
  ];
  return { joint, parts: [first, second] };
}
