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
import { normaliseDeg, normaliseRad, SMOOTH_JOIN_DEG, toDeg } from "../measure/index.ts";
import type { FreeSpan, JoinKind } from "./types.ts";

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
  /** Radii of the piece before and of the piece after, mm; null for a flat and for a free curve. */
  readonly radiusBeforeMm: number | null;
  readonly radiusAfterMm: number | null;
}

/** A groove's floor up to this width is a quirk's, not a step's, mm (common practice, no source). */
export const WIDEST_QUIRK_MM = 3;

/** Surfaces that stand this close, seen through the air, make a quirk even beside a flat, degrees (common practice, no source). */
export const OPENEST_QUIRK_DEG = 75;

/**
 * Classifies every join of a ring, in the ring's order.
 *
 * Smooth: tangents differ by `SMOOTH_JOIN_DEG` or less. Arris: wood stands out. Sunk joins: a quirk where two curved
 * surfaces meet, where the angle is narrow, or at the floor of a narrow groove; otherwise a step.
 * The short lines of a free curve are one surface: joins between them are left out, and at its ends it is taken as
 * curved, with the tangent of the circle through its first (last) three points. It has no radius of its own.
 */
export function joinsOf(ring: Ring, freeSpans: readonly FreeSpan[] = []): readonly Join[] {
  const surfaces = surfacesOf(ring, freeSpans);
  const turnsDeg = surfaces.map((surface, index) => turnBetweenDeg(neighbour(surfaces, index, -1), surface));
  return surfaces.map((surface, index): Join => {
    const turnDeg = turnsDeg[index] ?? 0;
    return {
      piece: surface.first,
      at: surface.from,
      kind: kindOfJoin(surfaces, turnsDeg, index),
      angleDeg: Math.abs(turnDeg) <= SMOOTH_JOIN_DEG ? 180 : 180 - Math.abs(turnDeg),
      turnDeg,
      radiusBeforeMm: neighbour(surfaces, index, -1).radiusMm,
      radiusAfterMm: surface.radiusMm,
    };
  });
}

/** A piece of the ring, or all the lines of a free curve, as its joins see it. */
interface Surface {
  /** Its first piece in the ring. */
  readonly first: number;
  readonly from: Point;
  readonly isCurved: boolean;
  readonly radiusMm: number | null;
  readonly lengthMm: number;
  readonly startRad: number;
  readonly endRad: number;
  /** First and last piece: what is looked at near the joins. */
  readonly head: Piece;
  readonly tail: Piece;
}

function surfacesOf(ring: Ring, freeSpans: readonly FreeSpan[]): readonly Surface[] {
  const { pieces } = ring;
  const spanAt = new Map(freeSpans.map((span) => [span.first, span]));
  const inFree = new Set(
    freeSpans.flatMap((span) =>
      Array.from({ length: span.count }, (_, k) => (span.first + k) % pieces.length),
    ),
  );
  return pieces.flatMap((piece, index) => {
    const span = spanAt.get(index);
    if (span !== undefined) {
      const run = Array.from({ length: span.count }, (_, k) => pieces[(index + k) % pieces.length] as Piece);
      return [freeSurface(run, index)];
    }
    return inFree.has(index) ? [] : [pieceSurface(piece, index)];
  });
}

function pieceSurface(piece: Piece, first: number): Surface {
  return {
    first,
    from: piece.from,
    isCurved: piece.kind === "arc",
    radiusMm: piece.kind === "arc" ? circleOf(piece).radiusMm : null,
    lengthMm: lengthMm(piece),
    startRad: tangentRad(piece, 0),
    endRad: tangentRad(piece, 1),
    head: piece,
    tail: piece,
  };
}

function freeSurface(run: readonly Piece[], first: number): Surface {
  const head = run[0] as Piece;
  const tail = run.at(-1) as Piece;
  return {
    first,
    from: head.from,
    isCurved: true,
    radiusMm: null,
    lengthMm: run.reduce((sum, piece) => sum + lengthMm(piece), 0),
    startRad: tangentRad(head, 0) - halfTurnRad(head, run[1] ?? head),
    endRad: tangentRad(tail, 1) + halfTurnRad(tail, run.at(-2) ?? tail, -1),
    head,
    tail,
  };
}

/**
 * How far the circle through three points turns between the outer one and the middle of its chord, radians: two chords
 * of a circle turn by half the sum of what they span, so the outer one's half is its share of the turn by length.
 */
function halfTurnRad(outer: Piece, inner: Piece, walked: 1 | -1 = 1): number {
  const turnRad = walked * normaliseRad(tangentRad(inner, 0) - tangentRad(outer, 0));
  return (turnRad * lengthMm(outer)) / (lengthMm(outer) + lengthMm(inner));
}

function kindOfJoin(surfaces: readonly Surface[], turnsDeg: readonly number[], index: number): JoinKind {
  const turnDeg = turnsDeg[index] ?? 0;
  if (Math.abs(turnDeg) <= SMOOTH_JOIN_DEG) return "smooth";
  if (turnDeg > 0) return "arris";
  const bothCurved = neighbour(surfaces, index, -1).isCurved && neighbour(surfaces, index, 0).isCurved;
  const isNarrow = 180 + turnDeg < OPENEST_QUIRK_DEG;
  if (bothCurved || isNarrow) return "quirk";
  const before = (index + surfaces.length - 1) % surfaces.length;
  return isQuirkFloor(surfaces, turnsDeg, before) || isQuirkFloor(surfaces, turnsDeg, index)
    ? "quirk"
    : "step";
}

/** A narrow flat, sunk at both its ends. */
function isQuirkFloor(surfaces: readonly Surface[], turnsDeg: readonly number[], index: number): boolean {
  const surface = neighbour(surfaces, index, 0);
  if (surface.isCurved || surface.lengthMm > WIDEST_QUIRK_MM) return false;
  const after = (index + 1) % surfaces.length;
  return (turnsDeg[index] ?? 0) < -SMOOTH_JOIN_DEG && (turnsDeg[after] ?? 0) < -SMOOTH_JOIN_DEG;
}

function turnBetweenDeg(before: Surface, after: Surface): number {
  const turnDeg = normaliseDeg(toDeg(after.startRad - before.endRad));
  return Math.abs(turnDeg) < 180 - SMOOTH_JOIN_DEG
    ? turnDeg
    : turnAtCuspDeg(before.tail, after.head, turnDeg);
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

function neighbour(surfaces: readonly Surface[], index: number, steps: number): Surface {
  return surfaces[(index + steps + surfaces.length) % surfaces.length] as Surface;
}
