/** How much wood still stands on the pieces of the wanted section. */
import { pointAt, type Region } from "../curve/index.ts";
import { spansAlong } from "../cutting/index.ts";
import { along } from "./bench.ts";
import { outwardAt, type WorkedPiece } from "./worked-piece.ts";

export interface Standing {
  /** Place along the piece, 0 to 1. */
  readonly t: number;
  /** Height of wood standing on it there, square to it, mm. */
  readonly heightMm: number;
}

/** Height of the wood over a piece at evenly spread places; only wood that begins within `offMm` of it counts. */
export function standingOver(region: Region, piece: WorkedPiece, places: number, offMm: number): Standing[] {
  return Array.from({ length: places }, (_, i) => {
    const t = (i + 0.5) / places;
    const out = outwardAt(piece.piece, t);
    const start = along(pointAt(piece.piece, t), out, offMm);
    const first = spansAlong(region, start, out)[0];
    const heightMm = first && first[0] <= offMm ? first[1] + offMm : 0;
    return { t, heightMm };
  });
}

/** Whether wood stands on more than a tenth of a piece. */
export function standsOn(region: Region, piece: WorkedPiece, offMm: number): boolean {
  const places = standingOver(region, piece, 20, offMm);
  return places.filter((p) => p.heightMm > 0).length > places.length / 10;
}
