/** Outlines as they stand in files: what has to be right before the kernel may make a ring or a chain of them. */
import { areaMm2, chainFromVertices, type Vertex } from "../curve/index.ts";
import {
  cataloguedTrouble,
  FLATTEN_MM,
  LEAST_RING_MM2,
  SAME_POINT_MM,
  type Trouble,
} from "../measure/index.ts";

export const OUTLINE_LIMITS = {
  /** tan(sweep / 4) of the longest arc that is sensible between two vertices: nearly a full circle. */
  mostBulge: 10,
  /** Points of one outline once its arcs are flattened for the proof: what a re-cut has to carry. */
  mostFlattened: 100_000,
} as const;

/**
 * What is wrong with the vertices of a ring or a sole: one that stands on the one before (a piece of no length,
 * which no writer of ours makes), an arc all but closed, arcs so large that a re-cut could not carry them.
 */
export function outlineFaults(
  vertices: readonly Vertex[],
  where: string,
  closed: boolean,
): readonly Trouble[] {
  const faults: Trouble[] = [];
  let flattened = 0;
  for (const [i, one] of vertices.entries()) {
    if (!closed && i === vertices.length - 1) continue;
    const next = vertices[(i + 1) % vertices.length]!;
    const bulge = Math.abs(one[2] ?? 0);
    if (samePlace(one, next)) {
      faults.push(cataloguedTrouble("file-points-coincide", `${where}[${(i + 1) % vertices.length}]`, {}));
    }
    if (bulge > OUTLINE_LIMITS.mostBulge) {
      const allowed = `a bulge between -${OUTLINE_LIMITS.mostBulge} and ${OUTLINE_LIMITS.mostBulge}`;
      const found = String(one[2]);
      faults.push(cataloguedTrouble("file-value-out-of-range", `${where}[${i}][2]`, { found, allowed }));
    } else flattened += flattenedPoints(one, next);
  }
  // Straight out and straight back encloses nothing; two vertices need an arc between them.
  if (closed && vertices.length === 2 && vertices.every((one) => (one[2] ?? 0) === 0)) {
    faults.push(cataloguedTrouble("file-too-few", where, { least: 3, what: "vertices" }));
  }
  if (closed && faults.length === 0 && enclosedMm2(vertices) < LEAST_RING_MM2) {
    faults.push(cataloguedTrouble("file-outline-empty", where, {}));
  }
  if (flattened > OUTLINE_LIMITS.mostFlattened) {
    faults.push(
      cataloguedTrouble("file-too-many", where, {
        most: OUTLINE_LIMITS.mostFlattened,
        what: "points once its arcs are flattened",
      }),
    );
  }
  return faults;
}

/**
 * About how many points the piece from one vertex to the next has once flattened. A step of the angle a on a
 * radius r bows out by r a² / 8; radius and sweep follow from chord and bulge (bulge = tan(sweep / 4)).
 */
function flattenedPoints(from: Vertex, to: Vertex): number {
  const bulge = Math.abs(from[2] ?? 0);
  if (bulge === 0) return 1;
  const chordMm = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const radiusMm = (chordMm * (1 + bulge ** 2)) / (4 * bulge);
  const sweepRad = 4 * Math.atan(bulge);
  return 1 + sweepRad * Math.sqrt(radiusMm / (8 * FLATTEN_MM));
}

/** Whether two vertices are one place: the kernel joins what lies so near, and trips over a row of such. */
export function samePlace(a: readonly number[], b: readonly number[]): boolean {
  return Math.hypot((b[0] ?? 0) - (a[0] ?? 0), (b[1] ?? 0) - (a[1] ?? 0)) <= SAME_POINT_MM;
}

/** Area within a closed run of vertices, mm², without sign; nought where it crosses itself into two like halves. */
function enclosedMm2(vertices: readonly Vertex[]): number {
  const first = vertices[0]!;
  const apart = vertices.some((one) => Math.hypot(one[0] - first[0], one[1] - first[1]) > SAME_POINT_MM);
  if (!apart) return 0;
  return Math.abs(areaMm2({ pieces: chainFromVertices([...vertices, first]).pieces }));
}
