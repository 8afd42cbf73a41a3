/** The face of a moulding as it stands on the wall: projection over height, from its foot up. */
import { extentsOf, flattenPiece, lengthMm, type Piece, type Point, point } from "../../curve/index.ts";
import { atMostMm, DRAWING_NOISE_MM, FLATTEN_MM, SAME_POINT_MM, sameMm } from "../../measure/index.ts";
import type { Section } from "../../section/index.ts";
import { applied, boundsOf, type Placing, placingMap } from "./placed-section.ts";

export interface FaceProfile {
  /** x the projection, y the height, the outline's least projection and height at 0; from the foot up. */
  readonly points: readonly Point[];
  readonly projectionMm: number;
  readonly heightMm: number;
  /** Where the face curls in under itself, so that looked at along the wall something is hidden: heights, mm. */
  readonly hiddenAtMm: readonly number[];
}

/**
 * The face of a section in its place, arcs flattened to `FLATTEN_MM`: the longest run of the outline that is not the
 * flat back, from its lowest place to its highest, without what lies on the wall or against the ceiling (the sawn spring
 * bevels). Null if nothing is left.
 */
export function faceProfile(section: Section, placing: Placing): FaceProfile | null {
  const map = placingMap(placing);
  const outline = section.outline.pieces.flatMap((piece) => flattenPiece(piece, FLATTEN_MM));
  const onWall = outline.map((place) => applied(map, place));
  const { least, most } = boundsOf(onWall);
  const heightMm = most.y - least.y;
  const placed = (place: Point): Point => {
    const { x, y } = applied(map, place);
    return point(x - least.x, y - least.y);
  };
  const runs = facePieces(section).map((piece) => flattenPiece(piece, FLATTEN_MM).map(placed));
  const rising = isRising(runs) ? runs : runs.map((run) => [...run].reverse()).reverse();
  const seen = withoutHidden(rising, heightMm);
  const points = footToHead(seen.flatMap((run, index) => (index === 0 ? run : run.slice(1))));
  if (points.length < 2) return null;
  return {
    points,
    projectionMm: boundsOf(points).most.x,
    heightMm,
    hiddenAtMm: hiddenHeights(points),
  };
}

/** The longest run of pieces that do not lie on the back. */
function facePieces({ outline }: Section): readonly Piece[] {
  const { pieces } = outline;
  const { minY } = extentsOf(outline);
  const isBack = (piece: Piece) =>
    atMostMm(piece.from.y, minY, DRAWING_NOISE_MM) && atMostMm(piece.to.y, minY, DRAWING_NOISE_MM);
  const start = pieces.findIndex(isBack);
  const turned = start < 0 ? pieces : [...pieces.slice(start), ...pieces.slice(0, start)];
  let best = { from: 0, end: 0, sizeMm: 0 };
  let run = best;
  for (const [index, piece] of turned.entries()) {
    run = isBack(piece)
      ? { from: index + 1, end: index + 1, sizeMm: 0 }
      : { from: run.from, end: index + 1, sizeMm: run.sizeMm + lengthMm(piece) };
    if (run.sizeMm > best.sizeMm) best = run;
  }
  return turned.slice(best.from, best.end);
}

function isRising(runs: readonly (readonly Point[])[]): boolean {
  const first = runs[0]?.[0];
  const last = runs[runs.length - 1]?.at(-1);
  return first === undefined || last === undefined || last.y - last.x >= first.y - first.x;
}

/** Leaves out pieces at the foot that lie on the wall, and pieces at the head that lie against the ceiling or the wall. */
function withoutHidden(runs: readonly (readonly Point[])[], heightMm: number): readonly (readonly Point[])[] {
  const onWall = (run: readonly Point[]) => run.every(({ x }) => sameMm(x, 0, DRAWING_NOISE_MM));
  const onCeiling = (run: readonly Point[]) => run.every(({ y }) => sameMm(y, heightMm, DRAWING_NOISE_MM));
  let first = 0;
  let end = runs.length;
  while (first < end && onWall(runs[first] as readonly Point[])) first++;
  while (end > first) {
    const last = runs[end - 1] as readonly Point[];
    if (!onCeiling(last) && !onWall(last)) break;
    end--;
  }
  return runs.slice(first, end);
}

/**
 * Leaves out the edge of an unbevelled stick that runs down behind the foot, and the one behind the head: they face wall
 * and ceiling, and nothing has to meet them.
 */
function footToHead(points: readonly Point[]): readonly Point[] {
  const { least, most } = boundsOf(points);
  const first = points.findIndex(({ y }) => sameMm(y, least.y));
  const fromHead = [...points].reverse().findIndex(({ y }) => sameMm(y, most.y));
  const last = points.length - 1 - fromHead;
  return last > first ? points.slice(first, last + 1) : points;
}

/**
 * A face without what it hides behind itself: where it goes down again it runs straight on to where it next rises above
 * that height. From the foot up, never falling.
 */
export function risingFace({ points }: FaceProfile): readonly Point[] {
  const rising: Point[] = [];
  for (const place of points) {
    if (place.y >= (rising[rising.length - 1]?.y ?? Number.NEGATIVE_INFINITY)) rising.push(place);
  }
  return rising;
}

/** Heights at which the run goes down again: behind such a place the face cannot be seen, or sawn, along the wall. */
function hiddenHeights(points: readonly Point[]): number[] {
  const heights: number[] = [];
  let highest = Number.NEGATIVE_INFINITY;
  for (const { y } of points) {
    if (y < highest - SAME_POINT_MM && heights[heights.length - 1] !== highest) heights.push(highest);
    highest = Math.max(highest, y);
  }
  return heights;
}
