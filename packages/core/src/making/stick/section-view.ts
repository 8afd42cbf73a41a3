/** What the stick's answers need to see of a section: its box, its back, where the face meets the edges. */
import { areaMm2, type Extents, extentsOf, type Piece, type Point } from "../../curve/index.ts";
import { DRAWING_NOISE_MM } from "../../measure/index.ts";
import { type Section, type WorkedFace, workedFaces } from "../../section/index.ts";

/** A worked face by its pieces, in the ring's order (the stick's top face runs from the far to the gauge edge). */
export interface FaceRun {
  readonly pieces: readonly Piece[];
  readonly face: WorkedFace;
}

export interface SectionView {
  readonly stick: Extents;
  readonly stickMm2: number;
  readonly sectionMm2: number;
  /** The stretch of the back that bears on the bench when all is cut; null where no flat of it is left. */
  readonly bed: { readonly fromMm: number; readonly toMm: number } | null;
  readonly faces: readonly FaceRun[];
  /** The face that is moulded: that with most curves, of several the longest. */
  readonly moulded: FaceRun | null;
  /** Highest wood left on each edge above the back, mm; null where the section does not reach that edge. */
  readonly gaugeEdgeHeightMm: number | null;
  readonly farEdgeHeightMm: number | null;
}

export function viewSection(section: Section): SectionView {
  const stick = extentsOf(section.stick);
  const { pieces } = section.outline;
  const faces = workedFaces(section).faces.map((face) => ({
    face,
    pieces: Array.from({ length: face.count }, (_, k) => pieces[(face.first + k) % pieces.length] as Piece),
  }));
  return {
    stick,
    stickMm2: areaMm2(section.stick),
    sectionMm2: areaMm2(section.outline),
    bed: bedOf(pieces, stick.minY),
    faces,
    moulded: mouldedOf(faces.filter(({ face }) => !isBackCorner(face, stick))),
    gaugeEdgeHeightMm: heightAt(pieces, stick.minX, stick.minY),
    farEdgeHeightMm: heightAt(pieces, stick.maxX, stick.minY),
  };
}

export function isAt(valueMm: number, lineMm: number): boolean {
  return Math.abs(valueMm - lineMm) <= DRAWING_NOISE_MM;
}

/** A bevel or rebate of the back: its run starts or ends on the back. */
export function isBackCorner(face: WorkedFace, stick: Extents): boolean {
  return isAt(face.from.y, stick.minY) || isAt(face.to.y, stick.minY);
}

function bedOf(pieces: readonly Piece[], backMm: number): SectionView["bed"] {
  const lying = pieces.filter(
    (piece) => piece.kind === "line" && isAt(piece.from.y, backMm) && isAt(piece.to.y, backMm),
  );
  if (lying.length === 0) return null;
  const xs = lying.flatMap((piece) => [piece.from.x, piece.to.x]);
  return { fromMm: Math.min(...xs), toMm: Math.max(...xs) };
}

function mouldedOf(faces: readonly FaceRun[]): FaceRun | null {
  const curved = (run: FaceRun) => run.pieces.filter((piece) => piece.kind === "arc").length;
  let best: FaceRun | null = null;
  for (const run of faces) {
    const isBetter =
      best === null ||
      curved(run) > curved(best) ||
      (curved(run) === curved(best) && run.pieces.length > best.pieces.length);
    if (isBetter) best = run;
  }
  return best;
}

function heightAt(pieces: readonly Piece[], edgeMm: number, backMm: number): number | null {
  const heights = pieces.flatMap((piece) => (isAt(piece.from.x, edgeMm) ? [piece.from.y - backMm] : []));
  return heights.length === 0 ? null : Math.max(...heights);
}

/** Lowest point of a run, mm above the back, arcs with their swell. */
export function lowestOf(points: readonly Point[], backMm: number): number {
  return Math.min(...points.map((p) => p.y - backMm));
}
