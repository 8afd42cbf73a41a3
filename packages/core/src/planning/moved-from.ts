/** How far a section that is aimed at lies from the one drawn, piece by piece. */
import {
  insideRing,
  nearestOnPiece,
  nearestOnRing,
  type Piece,
  type Point,
  pointAt,
  type Ring,
} from "../curve/index.ts";
import { OVERCUT_MM } from "../measure/index.ts";
import type { MissSide } from "./request.ts";
import { outwardAt } from "./worked-piece.ts";

export interface Moved {
  /** Greatest distance between drawn and planned, either way, mm. */
  readonly movedMm: number;
  /** Greatest height over the drawing and greatest depth under it, mm. */
  readonly proudMm: number;
  readonly underMm: number;
}

/** Places looked at on each piece, both ends among them: between two of them an arc moves by no more to speak of. */
const PLACES = 12;
/** How many neighbours to either side a moved join may have come to lie on. */
const NEIGHBOURS = 2;

/** How far piece `index` of a run has moved from the drawn run of as many pieces. */
export function movedFrom(drawn: readonly Piece[], made: readonly Piece[], index: number): Moved {
  let [movedMm, proudMm, underMm] = [0, 0, 0];
  if (drawn[index] === made[index]) return { movedMm, proudMm, underMm };
  for (const p of placesOn(made[index] as Piece)) {
    const { off, piece, t } = nearest(drawn, index, p);
    const out = outwardAt(piece, t);
    const q = pointAt(piece, t);
    const isProud = (p.x - q.x) * out.x + (p.y - q.y) * out.y > 0;
    movedMm = Math.max(movedMm, off);
    if (isProud) proudMm = Math.max(proudMm, off);
    else underMm = Math.max(underMm, off);
  }
  for (const p of placesOn(drawn[index] as Piece)) movedMm = Math.max(movedMm, nearest(made, index, p).off);
  return { movedMm, proudMm, underMm };
}

/** Whether a piece keeps within what it may move, and on the side of the drawing that is allowed. */
export function staysWithin(moved: Moved | undefined, allowedMm: number, missSide: MissSide): boolean {
  if (!moved || moved.movedMm > allowedMm) return false;
  if (missSide === "proud") return moved.underMm <= OVERCUT_MM / 4;
  return missSide === "either" || moved.proudMm <= OVERCUT_MM / 4;
}

/** How far a piece runs out of the stick, mm: no planing puts wood there. */
export function outsideMm(piece: Piece, stick: Ring): number {
  let mm = 0;
  for (const p of placesOn(piece)) {
    if (insideRing(stick, p) === "out") mm = Math.max(mm, nearestOnRing(stick, p).distanceMm);
  }
  return mm;
}

function placesOn(piece: Piece): Point[] {
  return Array.from({ length: PLACES + 1 }, (_, i) => pointAt(piece, i / PLACES));
}

function nearest(pieces: readonly Piece[], index: number, p: Point) {
  let best = { off: Number.POSITIVE_INFINITY, piece: pieces[index] as Piece, t: 0 };
  for (let k = -NEIGHBOURS; k <= NEIGHBOURS; k++) {
    const piece = pieces[(index + k + 2 * pieces.length) % pieces.length] as Piece;
    const { distanceMm, t } = nearestOnPiece(piece, p);
    if (distanceMm < best.off) best = { off: distanceMm, piece, t };
  }
  return best;
}
