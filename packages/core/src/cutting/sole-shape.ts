/** A sole as a height above its origin: what a plane being let down is stopped by. */
import { type Arc, type Chain, circleOf, extentsOf, type Piece } from "../curve/index.ts";

export interface SoleShape {
  readonly leftMm: number;
  readonly rightMm: number;
  readonly widthMm: number;
  /** Height of the sole over its origin at this place across; the lower one where it stands upright. */
  heightAt(xMm: number): number;
  /** Places strictly between two others where an edge of the given slope may touch the sole from below. */
  stopsBetween(fromMm: number, toMm: number, slope: number): readonly number[];
}

const NONE: readonly number[] = [];

/**
 * The height function of a sole given as a chain running from left to right.
 * An upright piece of the chain counts with its lower end.
 */
export function soleShape(sole: Chain): SoleShape {
  const { minX, maxX } = extentsOf(sole);
  const pieces = sole.pieces.filter((piece) => piece.to.x > piece.from.x);
  const single = pieces.length === 1 ? (pieces[0] as Piece) : null;
  const vertices = pieces.slice(1).map((piece) => piece.from.x);
  const heights = pieces.map(heightOfPiece);
  return {
    leftMm: minX,
    rightMm: maxX,
    widthMm: maxX - minX,
    heightAt: single ? (heights[0] as (x: number) => number) : heightAt,
    stopsBetween,
  };

  function heightAt(x: number): number {
    let best = Number.POSITIVE_INFINITY;
    for (let i = 0; i < pieces.length; i++) {
      const piece = pieces[i];
      const inside = x >= piece.from.x && x <= piece.to.x;
      const beyond = (i === 0 && x < piece.from.x) || (i === pieces.length - 1 && x > piece.to.x);
      if (!inside && !beyond) continue;
      const h = heights[i](x);
      if (h < best) best = h;
    }
    return best;
  }

  function stopsBetween(from: number, to: number, slope: number): readonly number[] {
    let stops: number[] | null = null;
    for (const x of vertices) {
      if (x > from && x < to) {
        stops ??= [];
        stops.push(x);
      }
    }
    for (const piece of pieces) {
      if (piece.kind !== "arc" || piece.bulge <= 0) continue;
      // A convex arc b touches a line of slope m where b' = m: x = m r / sqrt(1 + m^2) from its centre.
      const circle = circleOf(piece);
      const x = circle.centre.x + (slope * circle.radiusMm) / Math.sqrt(1 + slope * slope);
      if (x > from && x < to && x > piece.from.x && x < piece.to.x) {
        stops ??= [];
        stops.push(x);
      }
    }
    return stops ?? NONE;
  }
}

function heightOfPiece(piece: Piece): (x: number) => number {
  if (piece.kind === "line") {
    const slope = (piece.to.y - piece.from.y) / (piece.to.x - piece.from.x);
    return (x) => piece.from.y + (clamp(x, piece.from.x, piece.to.x) - piece.from.x) * slope;
  }
  return heightOfArc(piece);
}

function heightOfArc(arc: Arc): (x: number) => number {
  const { centre, radiusMm } = circleOf(arc);
  // Left to right, an anticlockwise arc hangs below its centre (a round), a clockwise one stands above it (a hollow).
  const side = arc.bulge > 0 ? -1 : 1;
  return (x) => {
    const off = clamp(x, arc.from.x, arc.to.x) - centre.x;
    return centre.y + side * Math.sqrt(Math.max(0, (radiusMm - off) * (radiusMm + off)));
  };
}

function clamp(x: number, low: number, high: number): number {
  return Math.max(low, Math.min(high, x));
}
