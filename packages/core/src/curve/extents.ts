import { bug } from "../measure/index.ts";
import { angleOnArc, circleOf, riseMm } from "./piece.ts";
import type { Chain, Piece, Ring } from "./types.ts";

/** The upright box around a shape, mm. */
export interface Extents {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** The least upright box around a piece, a chain or a ring, mm; arcs with their swell. Throws a bug if empty. */
export function extentsOf(shape: Piece | Chain | Ring): Extents {
  const pieces = "pieces" in shape ? shape.pieces : [shape];
  if (pieces.length === 0) bug("a chain without pieces has no extents");
  let minX = Number.POSITIVE_INFINITY;
  let minY = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  let maxY = Number.NEGATIVE_INFINITY;
  for (const piece of pieces) {
    minX = Math.min(minX, piece.from.x, piece.to.x);
    minY = Math.min(minY, piece.from.y, piece.to.y);
    maxX = Math.max(maxX, piece.from.x, piece.to.x);
    maxY = Math.max(maxY, piece.from.y, piece.to.y);
    if (piece.kind !== "arc") continue;
    const { centre, radiusMm } = circleOf(piece);
    // A flat arc's centre is far away and rough; no arc leaves the box of its ends by more than it rises.
    const rise = riseMm(piece);
    const { from, to } = piece;
    if (angleOnArc(piece, 0))
      maxX = Math.max(maxX, Math.min(centre.x + radiusMm, Math.max(from.x, to.x) + rise));
    if (angleOnArc(piece, Math.PI / 2)) {
      maxY = Math.max(maxY, Math.min(centre.y + radiusMm, Math.max(from.y, to.y) + rise));
    }
    if (angleOnArc(piece, Math.PI))
      minX = Math.min(minX, Math.max(centre.x - radiusMm, Math.min(from.x, to.x) - rise));
    if (angleOnArc(piece, -Math.PI / 2)) {
      minY = Math.min(minY, Math.max(centre.y - radiusMm, Math.min(from.y, to.y) - rise));
    }
  }
  return { minX, minY, maxX, maxY };
}
