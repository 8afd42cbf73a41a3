/** What stands where two pieces of a ring meet: nothing to see (smooth), an arris, a quirk or a step. */
import {
  circleOf,
  cross,
  lengthMm,
  type Piece,
  type Point,
  pointAt,
  type Ring,
  subtractPoints,
  tangentRad,
} from "../curve/index.ts";
import { normaliseDeg, SMOOTH_JOIN_DEG, toDeg } from "../measure/index.ts";
import type { JoinKind } from "./types.ts";

export interface Join {
  /** The join stands where this piece of the ring starts (and the one before it ends). */
  readonly piece: number;
  readonly at: Point;
  readonly kind: JoinKind;
  /**
   * Angle between the two surfaces, degrees, 0 to 180: through the wood at an arris, through the air at a quirk or
   * step; 180 where they run on.
   */
  readonly angleDeg: number;
  /** Turn of the outline, degrees, −180 to 180: positive where wood stands out, negative where it is sunk. */
  readonly turnDeg: number;
  /** Radii of the piece before and of the piece after, mm; null for a flat. */
  readonly radiusBeforeMm: number | null;
  readonly radiusAfterMm: number | null;
}

/** A groove's floor up to this width is a quirk's, not a step's, mm (common practice, no source). */
export const WIDEST_QUIRK_MM = 3;

/** Surfaces that stand this close, seen through the air, make a quirk even beside a flat, degrees (common practice, no source). */
export const OPENEST_QUIRK_DEG = 75;

/**
 * Classifies every join of a ring, in the ring's order (join i stands where piece i starts).
 *
 * Smooth: tangents differ by `SMOOTH_JOIN_DEG` or less. Arris: wood stands out. Sunk joins: a quirk where two curved
 * surfaces meet, where the angle is narrow, or at the floor of a narrow groove; otherwise a step.
 */
export function joinsOf(ring: Ring): readonly Join[] {
  const { pieces } = ring;
  const turnsDeg = pieces.map((piece, index) => turnBetweenDeg(pieceBefore(pieces, index), piece));
  return pieces.map((piece, index): Join => {
    const before = pieceBefore(pieces, index);
    const turnDeg = turnsDeg[index] ?? 0;
    return {
      piece: index,
      at: piece.from,
      kind: kindOfJoin(pieces, turnsDeg, index),
      angleDeg: Math.abs(turnDeg) <= SMOOTH_JOIN_DEG ? 180 : 180 - Math.abs(turnDeg),
      turnDeg,
      radiusBeforeMm: radiusMmOf(before),
      radiusAfterMm: radiusMmOf(piece),
    };
  });
}

function kindOfJoin(pieces: readonly Piece[], turnsDeg: readonly number[], index: number): JoinKind {
  const turnDeg = turnsDeg[index] ?? 0;
  if (Math.abs(turnDeg) <= SMOOTH_JOIN_DEG) return "smooth";
  if (turnDeg > 0) return "arris";
  const before = (index + pieces.length - 1) % pieces.length;
  const bothCurved = pieces[before]?.kind === "arc" && pieces[index]?.kind === "arc";
  const narrow = 180 + turnDeg < OPENEST_QUIRK_DEG;
  if (bothCurved || narrow) return "quirk";
  return isQuirkFloor(pieces, turnsDeg, before) || isQuirkFloor(pieces, turnsDeg, index) ? "quirk" : "step";
}

/** A narrow flat, sunk at both its ends. */
function isQuirkFloor(pieces: readonly Piece[], turnsDeg: readonly number[], index: number): boolean {
  const piece = pieces[index];
  if (piece?.kind !== "line" || lengthMm(piece) > WIDEST_QUIRK_MM) return false;
  const after = (index + 1) % pieces.length;
  return (turnsDeg[index] ?? 0) < -SMOOTH_JOIN_DEG && (turnsDeg[after] ?? 0) < -SMOOTH_JOIN_DEG;
}

function turnBetweenDeg(before: Piece, after: Piece): number {
  const turnDeg = normaliseDeg(toDeg(tangentRad(after, 0) - tangentRad(before, 1)));
  return Math.abs(turnDeg) < 180 - SMOOTH_JOIN_DEG ? turnDeg : turnAtCuspDeg(before, after, turnDeg);
}

/**
 * Where the outline turns straight back (half-round reeds side by side; a feather edge), rounding decides the turn's
 * sign. The surfaces a little way off say it: in a slit the outline comes back on its right, round a feather on its left.
 */
function turnAtCuspDeg(before: Piece, after: Piece, turnDeg: number): number {
  const awayMm = Math.min(lengthMm(before), lengthMm(after)) / 4;
  const came = pointAt(before, 1 - awayMm / lengthMm(before));
  const goes = pointAt(after, awayMm / lengthMm(after));
  const inward = subtractPoints(before.to, came);
  const isFeather = cross(inward, subtractPoints(goes, came)) > 0;
  return isFeather ? Math.abs(turnDeg) : -Math.abs(turnDeg);
}

function radiusMmOf(piece: Piece): number | null {
  return piece.kind === "arc" ? circleOf(piece).radiusMm : null;
}

function pieceBefore(pieces: readonly Piece[], index: number): Piece {
  return pieces[(index + pieces.length - 1) % pieces.length] as Piece;
}
