/** The pieces of the wanted section that have to be cut: each line and arc that does not lie on the stick's own sides. */
import {
  circleOf,
  lengthMm,
  nearestOnRing,
  type Piece,
  type Point,
  pointAt,
  type Ring,
  tangentRad,
} from "../curve/index.ts";
import { DRAWING_NOISE_MM, normaliseDeg, toDeg } from "../measure/index.ts";

export interface WorkedPiece {
  /** Place in the planned ring. */
  readonly index: number;
  readonly piece: Piece;
  readonly lengthMm: number;
  /** Tilt of a plane that stands square on the piece's start and end (outward normal), degrees; equal for a line. */
  readonly startTiltDeg: number;
  readonly endTiltDeg: number;
  /** Set for arcs: convex ones want a hollow, concave ones a round. */
  readonly curve?: {
    readonly centre: Point;
    readonly radiusMm: number;
    readonly convex: boolean;
    /** The same two tilts in rising order, without a jump of a full turn between them. */
    readonly lowTiltDeg: number;
    readonly highTiltDeg: number;
  };
}

/** Places looked at to tell whether a piece lies on the stick: a half circle may touch three sides and still be cut. */
const ON_STICK_PLACES = [0, 0.17, 0.33, 0.5, 0.67, 0.83, 1];

/** All worked pieces of a ring in its own order. */
export function workedPiecesOf(planned: Ring, stick: Ring): WorkedPiece[] {
  const worked: WorkedPiece[] = [];
  planned.pieces.forEach((piece, index) => {
    const onStick = ON_STICK_PLACES.every(
      (t) => nearestOnRing(stick, pointAt(piece, t)).distanceMm <= DRAWING_NOISE_MM,
    );
    if (!onStick) worked.push(workedPiece(piece, index));
  });
  return worked;
}

function workedPiece(piece: Piece, index: number): WorkedPiece {
  const startTiltDeg = outwardTiltDeg(piece, 0);
  const endTiltDeg = outwardTiltDeg(piece, 1);
  const base = { index, piece, lengthMm: lengthMm(piece), startTiltDeg, endTiltDeg };
  if (piece.kind === "line") return base;
  const { centre, radiusMm } = circleOf(piece);
  const convex = piece.bulge > 0;
  const turnDeg = toDeg(4 * Math.atan(piece.bulge));
  const lowTiltDeg = convex ? startTiltDeg : startTiltDeg + turnDeg;
  const highTiltDeg = convex ? startTiltDeg + turnDeg : startTiltDeg;
  // Tilts are kept within a half turn of upright, where the hand can hold them, as near as the arc's middle allows.
  const middle = (lowTiltDeg + highTiltDeg) / 2;
  const shift = normaliseDeg(middle) - middle;
  return {
    ...base,
    curve: { centre, radiusMm, convex, lowTiltDeg: lowTiltDeg + shift, highTiltDeg: highTiltDeg + shift },
  };
}

/** Tilt of a plane standing square on an anticlockwise ring's piece: 0 on a level top, 90 on a side facing left. */
export function outwardTiltDeg(piece: Piece, t: number): number {
  return normaliseDeg(toDeg(tangentRad(piece, t)) - 180);
}

/** The unit vector out of the wood at a place of a piece. */
export function outwardAt(piece: Piece, t: number): Point {
  const angle = tangentRad(piece, t);
  return { x: Math.sin(angle), y: -Math.cos(angle) };
}
