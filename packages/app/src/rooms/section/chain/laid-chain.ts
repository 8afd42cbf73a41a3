/** Where each part of the chain stands, and which pieces of the outline are its own. */
import type { Piece, Point } from "mouldwright/curve";
import { lengthMm, pointAt, tangentRad } from "mouldwright/curve";
import type { Job } from "mouldwright/job";
import type { LaidPart, Section } from "mouldwright/section";

export interface PlacedPart {
  /** Its place in the chain, from the gauge edge. */
  readonly index: number;
  /** Walked from the gauge edge to the far edge, the wood on the right. */
  readonly pieces: readonly Piece[];
  readonly from: Point;
  readonly to: Point;
  readonly turnedRad: number;
}

export function placedParts(laid: readonly LaidPart[]): readonly PlacedPart[] {
  return laid.flatMap(({ pieces, turnedRad }, index) => {
    const first = pieces[0];
    const last = pieces.at(-1);
    return first === undefined || last === undefined
      ? []
      : [{ index, pieces, from: first.from, to: last.to, turnedRad }];
  });
}

/** The point half way along a part, and the direction across its surface there, out of the wood. */
export function middleOf(pieces: readonly Piece[]): { readonly at: Point; readonly out: Point } {
  const wholeMm = pieces.reduce((sum, piece) => sum + lengthMm(piece), 0);
  let leftMm = wholeMm / 2;
  for (const piece of pieces) {
    const ownMm = lengthMm(piece);
    if (leftMm <= ownMm) {
      const t = ownMm === 0 ? 0 : leftMm / ownMm;
      return { at: pointAt(piece, t), out: outOf(piece, t) };
    }
    leftMm -= ownMm;
  }
  return { at: { x: 0, y: 0 }, out: { x: 0, y: 1 } };
}

/** Square to the surface, away from the wood that lies on the right. */
function outOf(piece: Piece, t: number): Point {
  const alongRad = tangentRad(piece, t);
  return { x: -Math.sin(alongRad), y: Math.cos(alongRad) };
}

/**
 * For each piece of a section's outline the part of the chain that it belongs to, −1 for the stick's own sides and what is
 * taken off the back. The outline runs from the far edge to the gauge edge, so the chain stands in it backwards, after
 * what is taken off the far corner.
 */
export function partOfPiece(
  section: Section,
  chain: { readonly partCount: number; readonly hasFarCorner: boolean },
): readonly number[] {
  const owners = section.outline.pieces.map(() => -1);
  const first = chain.hasFarCorner ? 1 : 0;
  section.named.slice(first, first + chain.partCount).forEach((span, place) => {
    for (let piece = span.first; piece < span.first + span.count; piece++) {
      owners[piece] = chain.partCount - 1 - place;
    }
  });
  return owners;
}

export function chainCounts(job: Job): { readonly partCount: number; readonly hasFarCorner: boolean } {
  const hasFarCorner = (job.section.back ?? []).some(({ edge }) => edge === "far");
  return { partCount: job.section.parts?.length ?? 0, hasFarCorner };
}
