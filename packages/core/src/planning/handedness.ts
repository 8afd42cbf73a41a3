/**
 * The other hand. Plans are always looked for with the gauge edge on the left; with the gauge edge on the right the
 * section, the planes' hands and, at the end, the cuts found are mirrored, so that the mirrored drawing has the
 * mirrored plan whatever ties the search had to break.
 */
import { chain, mirrorRing, type Piece, type Ring } from "../curve/index.ts";
import type { Pose, Run } from "../cutting/index.ts";
import { bug, SAME_POINT_MM } from "../measure/index.ts";
import type { Hand, Plane, Shelf, WallSide } from "../shelf/index.ts";
import type { Bench, Tool } from "./bench.ts";
import { type Draft, planeDraft, type SharedLine, sawDraft, tidy } from "./draft-cut.ts";
import type { Refused } from "./order.ts";

/** The shelf as it looks in a mirror: left-hand planes become right-hand ones; ids and names stay. */
export function mirrorShelf(shelf: Shelf): Shelf {
  return { ...shelf, planes: shelf.planes.map(mirrorPlane) };
}

function mirrorPlane(plane: Plane): Plane {
  switch (plane.kind) {
    case "snipe bill":
    case "side round":
    case "side snipe":
    case "side rebate":
      return { ...plane, hand: otherHand(plane.hand) };
    case "bead":
      return { ...plane, hand: otherHand(plane.hand ?? "right") };
    case "shaped":
      return { ...plane, sole: mirrorSole(plane.sole), cutsWall: otherWall(plane.cutsWall) };
    default:
      return plane;
  }
}

function otherHand(hand: Hand): Hand {
  return hand === "left" ? "right" : "left";
}

function otherWall(side: WallSide): WallSide {
  return side === "left" ? "right" : side === "right" ? "left" : side;
}

function mirrorSole(sole: { readonly pieces: readonly Piece[] }) {
  // Walked from the other end, each piece changes its ends and its bulge twice over: once mirrored, once reversed.
  return chain(
    [...sole.pieces].reverse().map((piece): Piece => {
      const from = { x: -piece.to.x, y: piece.to.y };
      const to = { x: -piece.from.x, y: piece.from.y };
      return piece.kind === "line"
        ? { kind: "line", from, to }
        : { kind: "arc", from, to, bulge: piece.bulge };
    }),
  );
}

/** Mirrors what was found on one bench onto another, whose planned section is the first one's mirror image. */
export interface Mirror {
  readonly axisXMm: number;
  readonly pieces: number;
}

export function mirrorPlanned(planned: Ring, axisXMm: number): Ring {
  return mirrorRing(planned, axisXMm);
}

/** The same cut seen in the mirror, with the real shelf's plane and on the real bench. */
export function mirrorDraft(bench: Bench, draft: Draft, mirror: Mirror): Draft {
  const shapes = draft.shapes.map((index) => mirrorIndex(index, mirror));
  const cantDeg = draft.cantDeg === 180 ? 180 : tidy(-draft.cantDeg);
  if (draft.kind === "saw") {
    const to = { x: 2 * mirror.axisXMm - draft.from.x, y: draft.from.y };
    const from = { x: 2 * mirror.axisXMm - draft.to.x, y: draft.to.y };
    return sawDraft(bench, from, to, cantDeg, shapes);
  }
  const onLine: SharedLine | undefined = draft.onLine && {
    at: { x: 2 * mirror.axisXMm - draft.onLine.at.x, y: draft.onLine.at.y },
    forPiece: mirrorIndex(draft.onLine.forPiece, mirror),
  };
  return planeDraft(bench, {
    work: draft.work,
    purpose: draft.purpose,
    cantDeg,
    shapes,
    tool: realTool(bench, draft.tool),
    runs: draft.runs.map((run): Run => run.map((pose) => mirrorPose(pose, mirror))),
    ...(onLine ? { onLine } : {}),
    ...(draft.roomFor === undefined ? {} : { roomFor: mirrorIndex(draft.roomFor, mirror) }),
    ...(draft.ridgeMm === undefined ? {} : { ridgeMm: draft.ridgeMm }),
  });
}

export function mirrorRefused(bench: Bench, refused: Refused, mirror: Mirror): Refused {
  const draft = mirrorDraft(bench, refused.draft, mirror);
  if (draft.kind !== "plane") return bug("only planes are refused", { key: draft.key });
  const { side } = refused.refusal;
  return { draft, refusal: side ? { ...refused.refusal, side: otherHand(side) } : refused.refusal };
}

function mirrorPose(pose: Pose, mirror: Mirror): Pose {
  const tilt = pose[2] === 180 ? 180 : -pose[2];
  return [tidy(2 * mirror.axisXMm - pose[0]), pose[1], tidy(tilt)];
}

/** `mirrorRing` walks the pieces backwards. */
function mirrorIndex(index: number, mirror: Mirror): number {
  return index < 0 ? index : mirror.pieces - 1 - index;
}

function realTool(bench: Bench, tool: Tool): Tool {
  const same = bench.tools.find(
    (t) => t.plane.id === tool.plane.id && Math.abs(t.sole.widthMm - tool.sole.widthMm) < SAME_POINT_MM,
  );
  return same ?? bug("the mirrored shelf lost a plane", { id: tool.plane.id });
}
