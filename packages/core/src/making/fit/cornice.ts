/** Cornices round a room or a case: pieces, lengths, joints, returns, what is cut and fitted first. */
import {
  cataloguedTrouble,
  exceedsMm,
  fine,
  type Outcome,
  RUN_CLOSES_MM,
  refused,
  type TroubleCode,
  toRad,
} from "../../measure/index.ts";
import {
  beyondSawCaution,
  dustCaution,
  oldPaintCaution,
  overheadCaution,
  sawCaution,
  shortPieceCaution,
} from "./cautions.ts";
import { firstTrouble, LARGEST_ACROSS_MM, LONGEST_MM, sizeTrouble } from "./checks.ts";
import type { Corner } from "./corner.ts";
import { closingGapMm, corniceDrawing } from "./cornice-plan.ts";
import type {
  CornerJoint,
  Cornice,
  CornicePiece,
  CorniceQuestion,
  EndJoint,
  PieceEnd,
  RunCorner,
  RunEnd,
} from "./cornice-types.ts";
import { cornerPlane, cutHeldAtSpring, cutLaidFlat, levelFrame } from "./saw-cut.ts";
import { type FitTrouble, SAW_CONVENTION } from "./types.ts";

/** More walls than this is a slip of the list. */
const MOST_WALLS = 100;

const RETURN_CORNER: Corner = { cornerDeg: 90, kind: "outside", measured: "by its angle", degPerMm: null };

/**
 * The pieces of a cornice. Lengths are at the wall; at a corner C the front of a piece of projection P falls short by
 * P / tan(C/2) inside and runs on by as much outside; an end that butts into a corner follows the other wall
 * (P / tan C short). A return is a small piece of front length P whose back runs out to nothing. A scribed end is as
 * long as a mitred one, and is cut to its outline after. Refused: no walls, too few or many corners, lengths that are
 * none, a wall too short for its corners, ends stated for a closed run.
 */
export function cornice(question: CorniceQuestion): Outcome<Cornice, TroubleCode> {
  const { spring, projectionMm, wallsMm, corners } = question;
  const refusal = refusalOf(question);
  if (refusal !== null) return refused(refusal);
  const isClosed = corners.length === wallsMm.length;
  const joints = corners.map((corner, index) => jointOf(corner, question, index === wallsMm.length - 1));
  const springDeg = spring.fromWallDeg;
  const endAt = (wall: number, side: "left" | "right"): PieceEnd => {
    const index = side === "right" ? wall : wall - 1;
    const wrapped = isClosed ? (index + corners.length) % corners.length : index;
    const at = corners[wrapped];
    if (at === undefined) {
      const end = (side === "right" ? question.end : question.start) ?? "square";
      return openEnd(end, side, springDeg, projectionMm);
    }
    const joint = joints[wrapped] as CornerJoint;
    return cornerEnd(at.corner, jointAtEnd(joint, side), side, springDeg, projectionMm);
  };
  const pieces: CornicePiece[] = [];
  for (const [wall, backMm] of wallsMm.entries()) {
    const left = endAt(wall, "left");
    const right = endAt(wall, "right");
    if (left.joint === "return mitre")
      pieces.push(returnPiece("left", wall, springDeg, projectionMm, pieces.length));
    const piece = wallPiece(wall, backMm, left, right, pieces.length);
    if (!exceedsMm(piece.shortMm, 0)) {
      const facts = { wall: wall + 1, lengthMm: backMm, neededMm: backMm - piece.shortMm };
      return refused(cataloguedTrouble("cornice-wall-too-short", `walls[${wall}]`, facts));
    }
    pieces.push(piece);
    if (right.joint === "return mitre")
      pieces.push(returnPiece("right", wall, springDeg, projectionMm, pieces.length));
  }
  const gapMm = isClosed ? closingGapMm(wallsMm, corners) : null;
  const warnings: FitTrouble[] = [];
  if (gapMm !== null && exceedsMm(gapMm, RUN_CLOSES_MM, 0)) {
    warnings.push(cataloguedTrouble("cornice-does-not-close", "walls", { gapMm }));
  }
  if (question.scribing === "impossible" && corners.some(isInside)) {
    warnings.push(cataloguedTrouble("cornice-mitred-inside", "corners", {}));
  }
  return fine<Cornice, TroubleCode>(
    {
      pieces,
      fittingOrder: fittingOrder(pieces),
      run: isClosed ? "closed" : "open",
      closingGapMm: gapMm,
      convention: {
        ...SAW_CONVENTION,
        order: "walls from left to right as one faces them; left and right of a piece likewise",
        lengths: "back along the wall, front at the full projection",
      },
      assumed: [cataloguedTrouble("cornice-lengths-at-wall", "", {})],
      cautions: [
        sawCaution(),
        ...beyondSawCaution(pieces.flatMap(({ left, right }) => [left.laidFlat, right.laidFlat])),
        ...shortPieceCaution(Math.min(...pieces.map(({ longMm }) => longMm))),
        overheadCaution(),
        oldPaintCaution(),
        dustCaution(),
      ],
      drawing: corniceDrawing(wallsMm, corners, projectionMm),
    },
    warnings,
  );
}

function isInside({ corner }: RunCorner): boolean {
  return corner.kind === "inside";
}

/** The joint of a corner: as asked, or by custom. The last corner of a closed run scribes the last piece onto the first. */
function jointOf(at: RunCorner, { scribing }: CorniceQuestion, isClosing: boolean): CornerJoint {
  if (!isInside(at) || scribing === "impossible") return "mitre";
  return at.joint ?? (isClosing ? "scribe left" : "scribe right");
}

function jointAtEnd(joint: CornerJoint, side: "left" | "right"): EndJoint {
  if (joint === "mitre") return "mitre";
  // The piece on the left of a corner meets it with its right end.
  const isScribed = (joint === "scribe left") === (side === "right");
  return isScribed ? "scribed" : "butt";
}

function cornerEnd(
  corner: Corner,
  joint: EndJoint,
  side: "left" | "right",
  springDeg: number,
  projectionMm: number,
): PieceEnd {
  const angleDeg = joint === "butt" ? corner.cornerDeg : corner.cornerDeg / 2;
  const plane = cornerPlane(side, angleDeg, corner.kind);
  const past = projectionMm / Math.tan(toRad(angleDeg));
  // Half of a square corner's turn leaves round-off where the tangent has none.
  const isSquare = joint === "butt" && angleDeg === 90;
  return {
    joint,
    corner,
    frontPastBackMm: isSquare ? 0 : corner.kind === "inside" ? -past : past,
    laidFlat: cutLaidFlat(plane, levelFrame(springDeg), { leans: "left" }),
    heldAtSpring: cutHeldAtSpring(plane),
  };
}

function openEnd(end: RunEnd, side: "left" | "right", springDeg: number, projectionMm: number): PieceEnd {
  if (end === "return") {
    return { ...cornerEnd(RETURN_CORNER, "mitre", side, springDeg, projectionMm), joint: "return mitre" };
  }
  const plane = { x: side === "right" ? 1 : -1, y: 0, z: 0 };
  return {
    joint: end,
    corner: null,
    frontPastBackMm: 0,
    laidFlat: cutLaidFlat(plane, levelFrame(springDeg), { leans: "left" }),
    heldAtSpring: cutHeldAtSpring(plane),
  };
}

function wallPiece(
  wall: number,
  backMm: number,
  left: PieceEnd,
  right: PieceEnd,
  before: number,
): CornicePiece {
  const frontMm = backMm + left.frontPastBackMm + right.frontPastBackMm;
  const outMost = (end: PieceEnd) => Math.max(0, end.frontPastBackMm);
  const inMost = (end: PieceEnd) => Math.min(0, end.frontPastBackMm);
  const first = cutFirst(left, right);
  return {
    number: before + 1,
    kind: "wall",
    wall: wall + 1,
    left,
    right,
    backMm,
    frontMm,
    longMm: backMm + outMost(left) + outMost(right),
    shortMm: backMm + inMost(left) + inMost(right),
    cutFirst: first.end,
    why: first.why,
  };
}

/** The small piece that turns back to the wall; at the run's left end its mitre is on its own right. */
function returnPiece(
  at: "left" | "right",
  wall: number,
  springDeg: number,
  projectionMm: number,
  before: number,
): CornicePiece {
  const mitred = at === "left" ? "right" : "left";
  const mitre: PieceEnd = {
    ...cornerEnd(RETURN_CORNER, "mitre", mitred, springDeg, projectionMm),
    joint: "return mitre",
  };
  const square = openEnd("against a wall", at, springDeg, projectionMm);
  const [left, right] = at === "left" ? [square, mitre] : [mitre, square];
  return {
    ...wallPiece(wall, 0, left, right, before),
    kind: "return",
    cutFirst: mitred,
    why: cataloguedTrouble("cornice-return-first", "", { end: mitred }),
  };
}

/** How hard each joint is to get right: the harder one is cut first. */
const HARDNESS: Readonly<Record<EndJoint, number>> = {
  scribed: 3,
  mitre: 2,
  "return mitre": 2,
  butt: 1,
  "against a wall": 1,
  square: 0,
};

function cutFirst(left: PieceEnd, right: PieceEnd): { end: "left" | "right"; why: FitTrouble } {
  const end = HARDNESS[right.joint] > HARDNESS[left.joint] ? "right" : "left";
  const { joint } = end === "left" ? left : right;
  if (HARDNESS[left.joint] === HARDNESS[right.joint]) {
    return { end, why: cataloguedTrouble("cornice-either-first", "", { joint }) };
  }
  return { end, why: cataloguedTrouble("cornice-cut-first", "", { end, joint }) };
}

/** Pieces without a scribed end first, then those scribed at one end, then at both; returns after what they return. */
function fittingOrder(pieces: readonly CornicePiece[]): number[] {
  const scribes = (piece: CornicePiece) =>
    [piece.left, piece.right].filter(({ joint }) => joint === "scribed").length;
  const butts = (piece: CornicePiece) =>
    [piece.left, piece.right].filter(({ joint }) => joint === "butt").length;
  const rank = (piece: CornicePiece) => (scribes(piece) === 0 ? 0 : butts(piece) === 0 ? 2 : 1);
  const isReturn = (piece: CornicePiece) => (piece.kind === "return" ? 1 : 0);
  return [...pieces]
    .sort((a, b) => isReturn(a) - isReturn(b) || rank(a) - rank(b) || a.number - b.number)
    .map(({ number }) => number);
}

function refusalOf(question: CorniceQuestion): FitTrouble | null {
  const { wallsMm, corners, projectionMm, heightMm } = question;
  if (wallsMm.length === 0 || wallsMm.length > MOST_WALLS) {
    return cataloguedTrouble("cornice-walls", "walls", { count: wallsMm.length, most: MOST_WALLS });
  }
  if (corners.length !== wallsMm.length - 1 && corners.length !== wallsMm.length) {
    const facts = { walls: wallsMm.length, corners: corners.length };
    return cataloguedTrouble("cornice-corners", "corners", facts);
  }
  const isClosed = corners.length === wallsMm.length;
  if (isClosed && (question.start !== undefined || question.end !== undefined)) {
    return cataloguedTrouble("cornice-closed-end", "start", {});
  }
  const scribedOutside = corners.findIndex(
    ({ corner, joint }) => corner.kind === "outside" && joint !== undefined && joint !== "mitre",
  );
  if (scribedOutside >= 0) return cataloguedTrouble("scribe-outside", `corners[${scribedOutside}]`, {});
  const across = { mostMm: LARGEST_ACROSS_MM, zero: "refused" } as const;
  return (
    firstTrouble([
      sizeTrouble("projection", "projection", projectionMm, across),
      sizeTrouble("height", "height", heightMm, across),
    ]) ??
    firstTrouble(
      wallsMm.map((lengthMm, wall) =>
        sizeTrouble(`length of wall ${wall + 1}`, `walls[${wall}]`, lengthMm, {
          mostMm: LONGEST_MM,
          zero: "refused",
        }),
      ),
    )
  );
}
