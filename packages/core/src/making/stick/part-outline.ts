/** The outline of a section, or of a part of it, whose pieces still know where they came from. */
import { extentsOf, moveRing, type Piece, type Ring, ring } from "../../curve/index.ts";
import { type NamedSpan, type Section, stickRing, workedFaces } from "../../section/index.ts";
import { isBackCorner, viewSection } from "./section-view.ts";

/** `side`: the stick's own side. `back`: a bevel or rebate of the back. `joint`: a face that is glued. */
export type PieceOrigin = "face" | "side" | "back" | "joint";

export interface TracedPiece {
  readonly piece: Piece;
  readonly origin: PieceOrigin;
  /** Its place in the whole section's outline; null for a joint. */
  readonly index: number | null;
}

/** Anticlockwise, closed. */
export type PartOutline = readonly TracedPiece[];

export function traced(section: Section): PartOutline {
  const { faces, pieces: worked } = workedFaces(section);
  const { stick } = viewSection(section);
  const total = section.outline.pieces.length;
  const back = new Set(
    faces
      .filter((face) => isBackCorner(face, stick))
      .flatMap((face) => Array.from({ length: face.count }, (_, k) => (face.first + k) % total)),
  );
  return section.outline.pieces.map((piece, index) => ({
    piece,
    origin: back.has(index) ? "back" : worked[index] ? "face" : "side",
    index,
  }));
}

export function ringOf(outline: PartOutline): Ring {
  return ring(outline.map(({ piece }) => piece));
}

export interface PartSize {
  readonly widthMm: number;
  readonly thicknessMm: number;
}

export function sizeOf(outline: PartOutline): PartSize {
  const { minX, minY, maxX, maxY } = extentsOf(ringOf(outline));
  return { widthMm: maxX - minX, thicknessMm: maxY - minY };
}

/** A part as a section of its own, in the smallest square stick, lower left corner at (0, 0). */
export function partSection(whole: Section, outline: PartOutline, name: string): Section {
  const shape = ringOf(outline);
  const { minX, minY, maxX, maxY } = extentsOf(shape);
  return {
    name,
    stick: stickRing(maxX - minX, maxY - minY),
    outline: moveRing(shape, -minX, -minY),
    freeSpans: spansIn(whole.freeSpans, whole, outline).map(({ first, count }) => ({ first, count })),
    named: spansIn(whole.named, whole, outline),
  };
}

/** The spans of the whole that lie in a part unbroken, by their new places. */
function spansIn<S extends Pick<NamedSpan, "first" | "count">>(
  spans: readonly S[],
  whole: Section,
  outline: PartOutline,
): S[] {
  const total = whole.outline.pieces.length;
  return spans.flatMap((span) => {
    const first = outline.findIndex(({ index }) => index === span.first);
    if (first < 0) return [];
    const isWhole = Array.from({ length: span.count }, (_, k) => k).every(
      (k) => outline[(first + k) % outline.length]?.index === (span.first + k) % total,
    );
    return isWhole ? [{ ...span, first }] : [];
  });
}
