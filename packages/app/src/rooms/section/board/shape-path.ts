/** Outlines as SVG paths, in millimetres, y up: whoever shows them turns y over by a matrix, which turns the arcs too. */
import { circleOf, type Piece, type Ring, type Vertex, verticesOf } from "mouldwright/curve";
import type { FreeSpan, Section } from "mouldwright/section";

/** Lines and arcs stay what they are; a closed path ends with Z. */
export function pathOfPieces(pieces: readonly Piece[], isClosed: boolean): string {
  const first = pieces[0];
  if (first === undefined) return "";
  const steps = pieces.map((piece) => {
    const end = `${text(piece.to.x)} ${text(piece.to.y)}`;
    if (piece.kind === "line") return `L${end}`;
    const radius = text(circleOf(piece).radiusMm);
    return `A${radius} ${radius} 0 0 ${piece.bulge > 0 ? 1 : 0} ${end}`;
  });
  return `M${text(first.from.x)} ${text(first.from.y)}${steps.join("")}${isClosed ? "Z" : ""}`;
}

export function pathOfRing(ring: Ring): string {
  return pathOfPieces(ring.pieces, true);
}

function text(value: number): string {
  return String(Math.round(value * 1e5) / 1e5);
}

/** The outline's vertices with each free curve as one straight run: what is dimensioned. */
export function plainVertices({ outline, freeSpans }: Section): readonly Vertex[] {
  if (freeSpans.length === 0) return verticesOf({ pieces: outline.pieces });
  const inside = new Set(freeSpans.flatMap(innerOf));
  return verticesOf({ pieces: outline.pieces }).filter((_, index) => !inside.has(index));
}

function innerOf({ first, count }: FreeSpan): readonly number[] {
  return Array.from({ length: count - 1 }, (_, step) => first + step + 1);
}
