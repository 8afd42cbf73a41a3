/** The parts' numbers in a row above the section, each with a leader to the middle of its part. */
import type { Point } from "mouldwright/curve";
import { spread } from "mouldwright/sheets";
import { middleOf, type PlacedPart } from "../chain/laid-chain.ts";
import { type BoardView, onBoard } from "./board-view.ts";

export interface PartLabel {
  readonly index: number;
  readonly balloon: Point;
  readonly leaderTo: Point;
}

/** A number's balloon and the room beside it, px. */
export const BALLOON_PX = 11;
const PITCH_PX = 26;

export interface LabelRoom {
  readonly topPx: number;
  readonly leftPx: number;
  readonly rightPx: number;
}

/** In one row where there is room, else in two that stand in each other's gaps. */
export function partLabels(
  placed: readonly Pick<PlacedPart, "index" | "pieces">[],
  view: BoardView,
  room: LabelRoom,
): readonly PartLabel[] {
  // In the chain's own order: a part that runs in under its neighbour keeps its place in the count.
  const middles = placed.map(({ index, pieces }) => ({ index, at: onBoard(view, middleOf(pieces).at) }));
  const seen = middles.filter(({ at }) => at.x > room.leftPx - PITCH_PX && at.x < room.rightPx + PITCH_PX);
  const roomPx = room.rightPx - room.leftPx;
  const rows = Math.max(1, Math.ceil((seen.length * PITCH_PX) / Math.max(roomPx, PITCH_PX)));
  const pitchPx = PITCH_PX / rows;
  const xs = within(
    spread(
      seen.map(({ at }) => at.x),
      seen.map(() => pitchPx),
    ),
    room,
  );
  return seen.map(({ index, at }, place) => ({
    index,
    balloon: { x: xs[place] as number, y: room.topPx - (place % rows) * PITCH_PX },
    leaderTo: at,
  }));
}

/** The whole row moved where it stands out at one side. */
function within(xs: readonly number[], room: LabelRoom): readonly number[] {
  const [first, last] = [xs[0], xs.at(-1)];
  if (first === undefined || last === undefined) return xs;
  const over = Math.max(0, last - room.rightPx);
  const moved = xs.map((x) => x - over);
  const under = Math.max(0, room.leftPx - (first - over));
  return moved.map((x) => x + under);
}
