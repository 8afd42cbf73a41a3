import { BoxTree } from "./box-tree.ts";
import { extentsOf } from "./extents.ts";
import { intersect } from "./intersect.ts";
import { distanceMm, samePoint } from "./point.ts";
import type { Piece, Point, Ring } from "./types.ts";

/** Nobody reads more, and a scribble of 100,000 pieces has millions. */
const MOST_CROSSINGS = 1000;

/**
 * The points where a ring crosses or touches itself within `tolMm`, its joints apart, in the order of its pieces;
 * of a stretch that runs along itself both ends. A point within the tolerance of one already found is not
 * repeated. At most the first thousand are given.
 */
export function selfCrossings(ring: Ring, tolMm: number): Point[] {
  const { pieces } = ring;
  const boxes = new Float64Array(4 * pieces.length);
  for (const [index, piece] of pieces.entries()) {
    const { minX, minY, maxX, maxY } = extentsOf(piece);
    boxes.set([minX, minY, maxX, maxY], 4 * index);
  }
  const tree = new BoxTree(boxes);
  const found: Point[] = [];
  for (let i = 0; i < pieces.length && found.length < MOST_CROSSINGS; i++) {
    tree.visit(boxes, 4 * i, tolMm, (j) => {
      if (j <= i) return undefined;
      for (const p of meetingsOf(pieces, i, j, tolMm)) {
        if (!found.some((known) => samePoint(known, p, tolMm))) found.push(p);
      }
      return found.length < MOST_CROSSINGS ? undefined : "enough";
    });
  }
  return found.slice(0, MOST_CROSSINGS);
}

function meetingsOf(pieces: readonly Piece[], i: number, j: number, tolMm: number): Point[] {
  const a = pieces[i] as Piece;
  const b = pieces[j] as Piece;
  const joints: Point[] = [];
  if (j === i + 1) joints.push(a.to);
  if (i === 0 && j === pieces.length - 1) joints.push(a.from);
  if (
    joints.length === 1 &&
    a.kind === "line" &&
    b.kind === "line" &&
    !isFoldedBack(a, b, joints[0] as Point, tolMm)
  ) {
    return [];
  }
  const crossing = intersect(a, b, tolMm);
  if (crossing.kind === "none") return [];
  if (crossing.kind === "overlap") return [crossing.from, crossing.to];
  return crossing.hits
    .map((hit) => hit.point)
    .filter((p) => !joints.some((joint) => samePoint(joint, p, tolMm)));
}

/** Two lines from one joint meet again only where they leave it in one direction. */
function isFoldedBack(a: Piece, b: Piece, joint: Point, tolMm: number): boolean {
  const farA = a.to === joint ? a.from : a.to;
  const farB = b.from === joint ? b.to : b.from;
  const ax = farA.x - joint.x;
  const ay = farA.y - joint.y;
  const bx = farB.x - joint.x;
  const by = farB.y - joint.y;
  if (ax * bx + ay * by <= 0) return false;
  const longerMm = Math.max(distanceMm(farA, joint), distanceMm(farB, joint));
  return Math.abs(ax * by - ay * bx) <= tolMm * longerMm;
}
