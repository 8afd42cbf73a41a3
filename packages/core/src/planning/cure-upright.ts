/**
 * A cove that ends in an upright wall under its lip. Near the lip a scotia stands so steep that no round leans far enough
 * over the far side to reach it, and a cove that leans out over itself is shut to every plane: an upright wall is cut by a
 * plough or a rebate plane.
 */
import {
  type Arc,
  line,
  type Piece,
  type Point,
  splitPiece,
  startAngleRad,
  sweepRad,
} from "../curve/index.ts";
import { SAME_POINT_MM } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import type { Attempt } from "./cure-attempt.ts";
import { withSection, xy } from "./cure-changes.ts";
import { tidy } from "./draft-cut.ts";
import type { PlanRequest } from "./request.ts";
import type { LeftStretch } from "./uncut-stretches.ts";
import { sayLength } from "./words.ts";

/** A wall set further from the curve as drawn than this is no small change, mm. */
const MOST_SET_MM = 6;
/** Nearer to its lip than this share of the curve, wood left ends at the lip. */
const AT_THE_LIP = 0.02;

/** A round lies more upright, and past the far side more easily, where the wall is this much higher. */
const HIGHER_WALL_RATIO = 1.75;

/**
 * The section with this cove ended in an upright wall: where it stands upright first, if it leans out over itself; else
 * where the wood that is left under the lip begins, or further down. None where the cove ends under no level lip.
 */
export function withUprightEnds(request: PlanRequest, bench: Bench, stretch: LeftStretch): Attempt[] {
  const { piece } = stretch;
  if (piece.piece.kind !== "arc" || !piece.curve || piece.curve.convex) return [];
  const drawn = piece.piece;
  const isLipLast = drawn.to.y > drawn.from.y;
  const upright = uprightShare(drawn);
  const isLeftAtLip = isLipLast ? stretch.to > 1 - AT_THE_LIP : stretch.from < AT_THE_LIP;
  if (upright === null && !isLeftAtLip) return [];
  const leftRatio = isLipLast ? 1 - stretch.from : stretch.to;
  const wallRatios =
    upright === null ? [leftRatio, leftRatio * HIGHER_WALL_RATIO] : [isLipLast ? 1 - upright : upright];
  return wallRatios.flatMap((ratio) => {
    const ended = endedUpright(bench.planned.pieces, piece.index, isLipLast, ratio);
    if (!ended) return [];
    const { pieces, highMm, setMm } = ended;
    const says = (mm: number) => sayLength(mm, request.unit ?? "mm");
    const wall = `an upright wall ${says(highMm)} high`;
    const how =
      upright === null
        ? `End the curve in ${wall} under its lip, ${says(setMm)} inside the curve as drawn.`
        : `Open the undercut: end the curve in ${wall}, its arris set back by ${says(setMm)}.`;
    const change = { what: "wall", from: xy(drawn.from), to: xy(drawn.to), byMm: tidy(setMm) } as const;
    return [{ ...withSection(request, pieces, [], how, change), isAnew: true }];
  });
}

interface EndedUpright {
  readonly pieces: readonly Piece[];
  readonly highMm: number;
  /** How far across the wall stands from the lip as drawn. */
  readonly setMm: number;
}

/** The outline with the last share of a cove under its lip made an upright wall; null where that is no small change. */
function endedUpright(
  pieces: readonly Piece[],
  index: number,
  isLipLast: boolean,
  wallRatio: number,
): EndedUpright | null {
  const drawn = pieces[index];
  const flatAt = (index + (isLipLast ? 1 : -1) + pieces.length) % pieces.length;
  const flat = pieces[flatAt];
  if (!drawn || wallRatio < AT_THE_LIP || wallRatio > 1 - AT_THE_LIP) return null;
  if (flat?.kind !== "line" || Math.abs(flat.to.y - flat.from.y) > SAME_POINT_MM) return null;
  const [first, last] = splitPiece(drawn, isLipLast ? 1 - wallRatio : wallRatio);
  const kept = isLipLast ? first : last;
  const foot = isLipLast ? kept.to : kept.from;
  const lip = isLipLast ? drawn.to : drawn.from;
  const top: Point = { x: foot.x, y: lip.y };
  const highMm = top.y - foot.y;
  const setMm = Math.abs(lip.x - foot.x);
  const far = isLipLast ? flat.to : flat.from;
  // The flat keeps its direction and some of its width.
  const isStill = (far.x - top.x) * (far.x - lip.x) > 0 && Math.abs(far.x - top.x) > setMm / 2;
  if (!isStill || highMm < SAME_POINT_MM || setMm < SAME_POINT_MM || setMm > MOST_SET_MM) return null;
  const ends = isLipLast ? [kept, line(foot, top)] : [line(top, foot), kept];
  const level = isLipLast ? line(top, far) : line(far, top);
  return {
    pieces: pieces.flatMap((one, i) => (i === index ? ends : i === flatAt ? [level] : [one])),
    highMm,
    setMm,
  };
}

/** Where along an arc it stands upright, strictly within it; null where it does nowhere. */
function uprightShare(drawn: Arc): number | null {
  const sweep = sweepRad(drawn);
  const start = startAngleRad(drawn);
  const turns = [-2, -1, 0, 1, 2].map((half) => (half * Math.PI - start) / sweep);
  return turns.find((share) => share > AT_THE_LIP && share < 1 - AT_THE_LIP) ?? null;
}
