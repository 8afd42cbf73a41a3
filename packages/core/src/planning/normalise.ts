/**
 * From the section as drawn to the one that is aimed at: lines and arcs only, arcs of radii that are on the shelf
 * wherever that keeps within the tolerance.
 */
import {
  type Arc,
  arc,
  areaMm2,
  circleOf,
  distanceMm,
  lengthMm,
  line,
  type Piece,
  type Point,
  type Ring,
  ring,
  sagittaMm,
  selfCrossings,
} from "../curve/index.ts";
import { FLAT_SAGITTA_MM, LEAST_EDGE_MM, OVERCUT_MM, SAME_POINT_MM } from "../measure/index.ts";
import { fitArcs, type Section } from "../section/index.ts";
import type { Shelf } from "../shelf/index.ts";
import type { MissSide } from "./request.ts";

export interface Normalised {
  readonly planned: Ring;
  /** Greatest distance between drawn and planned, mm. */
  readonly movedMm: number;
  /** How many arcs stand for free curves. */
  readonly arcsForCurves: number;
}

/** Share of the tolerance spent on replacing what is drawn; the rest is for the hand and the ridges. */
const DRAWING_SHARE = 0.6;
/** Tiny curves get less: a share of their own height. */
const HEIGHT_SHARE = 0.06;

export function normalise(
  section: Section,
  shelf: Shelf,
  toleranceMm: number,
  missSide: MissSide = "either",
): Normalised {
  const radii = {
    hollow: radiiOf(shelf, "hollow"),
    round: radiiOf(shelf, "round"),
  };
  const pieces = section.outline.pieces;
  const out: Piece[] = [];
  let movedMm = 0;
  let arcsForCurves = 0;
  const freeFrom = new Map(section.freeSpans.map((span) => [span.first % pieces.length, span.count]));
  const start = firstOutsideFree(section);
  for (let k = 0; k < pieces.length; ) {
    const index = (start + k) % pieces.length;
    const count = freeFrom.get(index);
    if (count !== undefined) {
      const points = Array.from({ length: count + 1 }, (_, i) =>
        i === count
          ? (pieces[(index + count - 1) % pieces.length] as Piece).to
          : (pieces[(index + i) % pieces.length] as Piece).from,
      );
      // A free curve's arcs weave to both sides of it: where one side is forbidden they are fitted as near as arcs go.
      const tolMm = missSide === "either" ? fitTolMm(points, toleranceMm) : OVERCUT_MM;
      const fit = fitArcs(distinct(points), { tolMm, radiiMm: [...radii.hollow, ...radii.round] });
      movedMm = Math.max(movedMm, fit.deviationMm);
      arcsForCurves += fit.chain.pieces.length;
      out.push(...fit.chain.pieces);
      k += count;
      continue;
    }
    const piece = pieces[index] as Piece;
    k++;
    if (lengthMm(piece) < LEAST_EDGE_MM) continue;
    if (piece.kind === "line") {
      out.push(piece);
      continue;
    }
    const { piece: settled, movedMm: moved } = ontoShelf(piece, radii, toleranceMm, missSide);
    movedMm = Math.max(movedMm, moved);
    out.push(settled);
  }
  const planned = joined(out, section.outline);
  // Close neighbours may cross once both are moved: then the section is aimed at just as it is drawn.
  if (selfCrossings(planned, SAME_POINT_MM).length > 0) {
    return { planned: section.outline, movedMm: 0, arcsForCurves: 0 };
  }
  return { planned, movedMm, arcsForCurves };
}

function radiiOf(shelf: Shelf, kind: "hollow" | "round"): number[] {
  return [...new Set(shelf.planes.flatMap((p) => (p.kind === kind ? [p.radiusMm] : [])))].sort(
    (a, b) => a - b,
  );
}

/** A piece at which no free span is cut in two when the ring is walked from there. */
function firstOutsideFree(section: Section): number {
  const count = section.outline.pieces.length;
  const inside = new Set<number>();
  for (const span of section.freeSpans)
    for (let i = 1; i < span.count; i++) inside.add((span.first + i) % count);
  for (let i = 0; i < count; i++) if (!inside.has(i)) return i;
  return 0;
}

function fitTolMm(points: readonly Point[], toleranceMm: number): number {
  const a = points[0] as Point;
  const b = points[points.length - 1] as Point;
  const chord = distanceMm(a, b);
  let height = 0;
  for (const p of points) {
    const h =
      chord > 0 ? Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / chord : distanceMm(a, p);
    height = Math.max(height, h);
  }
  return Math.max(OVERCUT_MM, Math.min(toleranceMm * DRAWING_SHARE, height * HEIGHT_SHARE));
}

function distinct(points: readonly Point[]): Point[] {
  return points.filter((p, i) => i === 0 || distanceMm(p, points[i - 1] as Point) > LEAST_EDGE_MM);
}

/** The arc with the same ends and the nearest shelf radius, if that keeps within its share of the tolerance. */
function ontoShelf(
  piece: Arc,
  radii: { readonly hollow: readonly number[]; readonly round: readonly number[] },
  toleranceMm: number,
  missSide: MissSide,
): { readonly piece: Piece; readonly movedMm: number } {
  const chord = distanceMm(piece.from, piece.to);
  const { radiusMm } = circleOf(piece);
  const height = Math.abs(piece.bulge) * (chord / 2);
  if (height < FLAT_SAGITTA_MM) return { piece: line(piece.from, piece.to), movedMm: height };
  // Past a half circle there are two arcs to a chord and radius; pieces never go there.
  const allowed = Math.min(toleranceMm * DRAWING_SHARE, height * HEIGHT_SHARE);
  let best: { piece: Piece; movedMm: number } = { piece, movedMm: 0 };
  let nearest = Number.POSITIVE_INFINITY;
  for (const r of piece.bulge > 0 ? radii.hollow : radii.round) {
    if (2 * r < chord) continue;
    const shallow = sagittaMm(chord, r);
    const moved = Math.abs(shallow - height);
    // A shallower round part loses wood, a shallower hollow keeps some; the other way round for a deeper one.
    const leavesWood = shallow < height === piece.bulge < 0;
    if (moved > OVERCUT_MM / 4 && missSide !== "either" && leavesWood !== (missSide === "proud")) continue;
    if (moved > allowed || Math.abs(r - radiusMm) >= nearest) continue;
    nearest = Math.abs(r - radiusMm);
    const bulge = (Math.sign(piece.bulge) * 2 * shallow) / chord;
    best = { piece: arc(piece.from, piece.to, bulge), movedMm: moved };
  }
  return best;
}

/** A ring again, each piece starting exactly where the one before ends. */
function joined(pieces: readonly Piece[], drawn: Ring): Ring {
  const count = pieces.length;
  const made = ring(
    pieces.map((piece, i) => {
      const to = (pieces[(i + 1) % count] as Piece).from;
      return piece.kind === "line" ? line(piece.from, to) : arc(piece.from, to, piece.bulge);
    }),
  );
  return areaMm2(made) > 0 ? made : drawn;
}
