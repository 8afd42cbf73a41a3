/** Is this a section that can be worked on at all? What is refused, and what is only said. */
import {
  angleOnArc,
  circleOf,
  distanceMm,
  extentsOf,
  insideRing,
  lengthMm,
  nearestOnRing,
  type Piece,
  type Point,
  point,
  type Ring,
  samePoint,
  selfCrossings,
  tangentRad,
} from "../curve/index.ts";
import {
  cataloguedTrouble,
  DRAWING_NOISE_MM,
  exceedsMm,
  INCH_MM,
  LEAST_PIECE_MM,
  normaliseDeg,
  SAME_POINT_MM,
  type Trouble,
  type TroubleCode,
  toDeg,
} from "../measure/index.ts";
import { LARGEST_SECTION_MM } from "./sizes.ts";
import type { Section } from "./types.ts";
import { undercutPlaces } from "./way-out.ts";
import { workedFaces } from "./worked.ts";

export interface Inspection {
  /** With one of these no plan can be made. */
  readonly refusals: readonly Trouble<TroubleCode>[];
  /** A plan can be tried; the maker should look at these first. */
  readonly warnings: readonly Trouble<TroubleCode>[];
}

/** Nobody moulds a section smaller than this by hand, mm (common practice, no source). */
const SMALLEST_SECTION_MM = 2;

/** A section smaller than this is so rare that the drawing was more likely in inches, mm (common practice, no source). */
const DOUBTFUL_SECTION_MM = 8;

/** How many places of one kind are named; the count says how many there are. */
const MOST_NAMED = 3;

/**
 * Everything that can be said of a section before a plane is chosen. Refused: not closed, crossing itself, standing out
 * of the stick, nothing to cut, a size that no hand moulds. Warned of: undercut, pieces too short to be meant, a thin
 * stick, a size that looks like inches read as millimetres. Later checks are left out where an earlier one says that
 * the ring is no ring.
 */
export function inspectSection(section: Section): Inspection {
  const gaps = openJoints(section.outline);
  if (gaps.length > 0) return { refusals: gaps, warnings: [] };
  const sizes = checkSize(section);
  const crossings = checkCrossings(section.outline);
  const outside = checkInside(section);
  const shape = [...crossings, ...outside];
  const refusals = [...sizes.refusals, ...shape];
  const warnings = [...sizes.warnings, ...checkShortPieces(section)];
  if (shape.length > 0) return { refusals, warnings };
  if (workedFaces(section).faces.length === 0) {
    return { refusals: [...refusals, cataloguedTrouble("section-not-worked", "section", {})], warnings };
  }
  return { refusals, warnings: [...warnings, ...checkUndercut(section)] };
}

function openJoints(outline: Ring): readonly Trouble<TroubleCode>[] {
  const { pieces } = outline;
  return pieces
    .flatMap((piece, index) => {
      const next = pieces[(index + 1) % pieces.length] as Piece;
      if (samePoint(piece.to, next.from)) return [];
      const facts = { ...place(piece.to), gapMm: distanceMm(piece.to, next.from) };
      return [cataloguedTrouble("section-open", "section", facts)];
    })
    .slice(0, MOST_NAMED);
}

function checkSize(section: Section): Inspection {
  const { minX, maxX, minY, maxY } = extentsOf(section.outline);
  const widthMm = maxX - minX;
  const heightMm = maxY - minY;
  const greaterMm = Math.max(widthMm, heightMm);
  const size = { widthMm, heightMm };
  if (greaterMm < SMALLEST_SECTION_MM) {
    const facts = { ...size, leastMm: SMALLEST_SECTION_MM };
    return { refusals: [cataloguedTrouble("section-too-small", "section", facts)], warnings: [] };
  }
  if (exceedsMm(greaterMm, LARGEST_SECTION_MM)) {
    const facts = { ...size, mostMm: LARGEST_SECTION_MM };
    return { refusals: [cataloguedTrouble("section-too-large", "section", facts)], warnings: [] };
  }
  if (greaterMm < DOUBTFUL_SECTION_MM) {
    const facts = { ...size, inchesWidthMm: widthMm * INCH_MM, inchesHeightMm: heightMm * INCH_MM };
    return { refusals: [], warnings: [cataloguedTrouble("section-maybe-inches", "section", facts)] };
  }
  if (Math.min(widthMm, heightMm) < SMALLEST_SECTION_MM) {
    const facts = { thinMm: Math.min(widthMm, heightMm), leastMm: SMALLEST_SECTION_MM };
    return { refusals: [], warnings: [cataloguedTrouble("section-thin", "section", facts)] };
  }
  return { refusals: [], warnings: [] };
}

function checkCrossings(outline: Ring): readonly Trouble<TroubleCode>[] {
  const crossings = selfCrossings(outline, SAME_POINT_MM);
  return crossings
    .slice(0, MOST_NAMED)
    .map((at) =>
      cataloguedTrouble("section-crosses-itself", "section", { ...place(at), count: crossings.length }),
    );
}

/** One refusal for each side of the stick that the outline stands out of, with the worst place. */
function checkInside(section: Section): readonly Trouble<TroubleCode>[] {
  const worst = new Map<string, { at: Point; byMm: number }>();
  for (const piece of section.outline.pieces) {
    for (const at of farPoints(piece, section.stick)) {
      if (insideRing(section.stick, at) !== "out") continue;
      const nearest = nearestOnRing(section.stick, at);
      if (!exceedsMm(nearest.distanceMm, DRAWING_NOISE_MM)) continue;
      const side = sideName(Math.atan2(at.y - nearest.point.y, at.x - nearest.point.x));
      if (nearest.distanceMm > (worst.get(side)?.byMm ?? 0))
        worst.set(side, { at, byMm: nearest.distanceMm });
    }
  }
  return [...worst].map(([side, { at, byMm }]) =>
    cataloguedTrouble("section-outside-stick", "section", { side, byMm, ...place(at) }),
  );
}

/** Where a piece can stand furthest out of a stick: its ends, and an arc's outermost point for each straight side. */
function farPoints(piece: Piece, stick: Ring): readonly Point[] {
  const ends = [piece.from, piece.to];
  if (piece.kind === "line") return ends;
  const { centre, radiusMm } = circleOf(piece);
  const outermost = stick.pieces.flatMap((side) => {
    const outwardRad = outwardOf(side);
    if (!angleOnArc(piece, outwardRad)) return [];
    return [point(centre.x + radiusMm * Math.cos(outwardRad), centre.y + radiusMm * Math.sin(outwardRad))];
  });
  return [...ends, ...outermost];
}

/** Direction away from the wood at the middle of a side of an anticlockwise ring, radians. */
function outwardOf(side: Piece): number {
  return tangentRad(side, 0.5) - Math.PI / 2;
}

/** What a maker calls the side of the stick that looks this way. */
function sideName(outwardRad: number): string {
  const outwardDeg = normaliseDeg(toDeg(outwardRad));
  if (Math.abs(outwardDeg) <= 45) return "far edge";
  if (Math.abs(outwardDeg) >= 135) return "gauge edge";
  return outwardDeg > 0 ? "face" : "back";
}

function checkShortPieces(section: Section): readonly Trouble<TroubleCode>[] {
  const free = new Set(
    section.freeSpans.flatMap((span) =>
      Array.from({ length: span.count }, (_, k) => (span.first + k) % section.outline.pieces.length),
    ),
  );
  const short = section.outline.pieces.filter(
    (piece, index) => !free.has(index) && lengthMm(piece) < LEAST_PIECE_MM,
  );
  const first = short[0];
  if (first === undefined) return [];
  const facts = {
    ...place(first.from),
    shortMm: lengthMm(first),
    count: short.length,
    leastMm: LEAST_PIECE_MM,
  };
  return [cataloguedTrouble("section-short-pieces", "section", facts)];
}

function checkUndercut(section: Section): readonly Trouble<TroubleCode>[] {
  const places = undercutPlaces(section);
  return places.slice(0, MOST_NAMED).map((one) =>
    cataloguedTrouble("section-undercut", "section", {
      ...place(one.at),
      stretchMm: one.lengthMm,
      count: places.length,
    }),
  );
}

/** A place as a maker finds it: across from the gauge edge, up from the back. */
function place(at: Point): { readonly acrossMm: number; readonly upMm: number } {
  return { acrossMm: at.x, upMm: at.y };
}
