/**
 * Room for a sole on its arc. A plane whose sole is a little wider than its arc digs a corner into what stands beside it:
 * into the fillet at its foot, or, past the join of an ogee, a hollow into the cove. A maker lets the join slide, or
 * the foot move along the fillet, by as little as it takes.
 */
import { type Arc, type Circle, circleOf, distanceMm, type Piece, sweepRad } from "../curve/index.ts";
import { OVERCUT_MM, SAME_POINT_MM, toDeg, toRad } from "../measure/index.ts";
import { type Shelf, soleAngleDeg } from "../shelf/index.ts";
import { circleThroughEnds, isConvex, isOgeeJoin, onCircles } from "./arc-circles.ts";
import type { MissSide } from "./request.ts";

/** Radii of a shelf's hollows and rounds, and the arcs that their soles carry. */
export interface ShelfSoles {
  /** All radii, hollows' and rounds', rising, mm. */
  readonly all: readonly number[];
  /** Radii of the planes for an arc: hollows for a convex one, rounds for a concave one; rising, mm. */
  of(piece: Arc): readonly number[];
  /** Whether an arc has the radius of a plane for it. */
  has(piece: Arc): boolean;
  /** The least angle that a sole of this radius carries, degrees; 0 where there is none. */
  leastAngleDeg(piece: Arc, radiusMm: number): number;
}

export function solesOnShelf(shelf: Shelf): ShelfSoles {
  const anglesOf = (kind: "hollow" | "round"): ReadonlyMap<number, number> => {
    const angles = new Map<number, number>();
    for (const plane of shelf.planes) {
      if (plane.kind !== kind) continue;
      const angleDeg = soleAngleDeg(plane);
      angles.set(plane.radiusMm, Math.min(angles.get(plane.radiusMm) ?? angleDeg, angleDeg));
    }
    return angles;
  };
  const angles = { hollow: anglesOf("hollow"), round: anglesOf("round") };
  const rising = (values: Iterable<number>) => [...new Set(values)].sort((a, b) => a - b);
  const radii = { hollow: rising(angles.hollow.keys()), round: rising(angles.round.keys()) };
  const kindFor = (piece: Arc) => (isConvex(piece) ? "hollow" : "round");
  const near = (piece: Arc, radiusMm: number) =>
    radii[kindFor(piece)].find((r) => Math.abs(r - radiusMm) <= OVERCUT_MM / 4);
  return {
    all: rising([...radii.hollow, ...radii.round]),
    of: (piece) => radii[kindFor(piece)],
    has: (piece) => near(piece, circleOf(piece).radiusMm) !== undefined,
    leastAngleDeg: (piece, radiusMm) => {
      const own = near(piece, radiusMm);
      return own === undefined ? 0 : (angles[kindFor(piece)].get(own) ?? 0);
    },
  };
}

/** Only arcs short of their sole by less than this are given room: more could never be had within a tolerance, degrees. */
const MOST_SHORT_DEG = 8;

/** The circles of a run's arcs with those of them moved whose planes then find room. */
export function roomForSoles(
  pieces: readonly Piece[],
  circles: ReadonlyMap<number, Circle>,
  soles: ShelfSoles,
  missSide: MissSide,
): ReadonlyMap<number, Circle> {
  const roomy = new Map(circles);
  const count = pieces.length;
  pieces.forEach((piece, i) => {
    if (piece.kind === "line") return;
    const shortDeg = shortOfSoleDeg(piece, soles);
    if (shortDeg <= 0 || shortDeg > MOST_SHORT_DEG) return;
    const before = (i + count - 1) % count;
    const after = (i + 1) % count;
    const [left, right] = [pieces[before] as Piece, pieces[after] as Piece];
    if (isConvex(piece) && isOgeeJoin(left, piece)) overlap(roomy, pieces, i, before, shortDeg, missSide);
    else if (isConvex(piece) && isOgeeJoin(piece, right))
      overlap(roomy, pieces, i, after, shortDeg, missSide);
    else if (left.kind === "line" && right.kind === "line") {
      const wider = widened(pieces, i, shortDeg);
      if (wider) roomy.set(i, wider);
    }
  });
  return roomy;
}

function shortOfSoleDeg(piece: Arc, soles: ShelfSoles): number {
  const soleDeg = soles.leastAngleDeg(piece, circleOf(piece).radiusMm);
  return soleDeg - toDeg(Math.abs(sweepRad(piece)));
}

/**
 * Lays the two circles of an ogee over one another by as much as lets the hollow's sole run out past the join: over
 * that length s its circle falls away from the cove's by s²/2 · (1/r + 1/R). The join slides along to the hollow's side.
 */
function overlap(
  circles: Map<number, Circle>,
  pieces: readonly Piece[],
  hollow: number,
  cove: number,
  shortDeg: number,
  missSide: MissSide,
): void {
  const [own, other] = [circleAt(circles, pieces, hollow), circleAt(circles, pieces, cove)];
  const shortMm = toRad(shortDeg) * own.radiusMm;
  const wantedMm = (shortMm * shortMm * (1 / own.radiusMm + 1 / other.radiusMm)) / 2;
  const apartMm = distanceMm(own.centre, other.centre);
  const closerMm = wantedMm - (own.radiusMm + other.radiusMm - apartMm);
  if (closerMm <= SAME_POINT_MM) return;
  const along = {
    x: (other.centre.x - own.centre.x) / apartMm,
    y: (other.centre.y - own.centre.y) / apartMm,
  };
  // Towards the cove's centre is out of the wood for the hollow's arc; towards the hollow's is into it for the cove's.
  const outShare = missSide === "proud" ? 1 : missSide === "under" ? 0 : 0.5;
  circles.set(hollow, shifted(own, along, closerMm * outShare));
  circles.set(cove, shifted(other, along, -closerMm * (1 - outShare)));
}

function circleAt(circles: ReadonlyMap<number, Circle>, pieces: readonly Piece[], index: number): Circle {
  const known = circles.get(index);
  return known ?? circleOf(pieces[index] as Arc);
}

function shifted({ centre, radiusMm }: Circle, along: { x: number; y: number }, byMm: number): Circle {
  return { centre: { x: centre.x + along.x * byMm, y: centre.y + along.y * byMm }, radiusMm };
}

/** How finely the move is sought, by halving. */
const HALVINGS = 30;
/** An arc between two flats is moved no further than this to be as wide as its sole, mm; the tolerance decides after that. */
const MOST_WIDENED_MM = 0.5;

/** The circle of an arc between two straight neighbours moved out of them until the arc is as wide as its sole. */
function widened(pieces: readonly Piece[], index: number, shortDeg: number): Circle | null {
  const piece = pieces[index] as Arc;
  const { radiusMm } = circleOf(piece);
  const wantedRad = Math.abs(sweepRad(piece)) + toRad(shortDeg);
  const side = isConvex(piece) ? 1 : -1;
  const at = (byMm: number) => circleThroughEnds(piece, radiusMm, side * byMm);
  const isWide = (byMm: number): boolean => {
    const circle = at(byMm);
    const made = circle && onCircles(pieces, new Map([[index, circle]]));
    const again = made?.[index];
    return again?.kind === "arc" && Math.abs(sweepRad(again)) >= wantedRad - SAME_POINT_MM;
  };
  if (!isWide(MOST_WIDENED_MM)) return null;
  let [low, high] = [0, MOST_WIDENED_MM];
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2;
    if (isWide(middle)) high = middle;
    else low = middle;
  }
  return at(high);
}
