/** A quick way to more neighbours: moves and swaps single pieces as long as that brings more of them together. */
import { apartIn, type MeetingRun } from "./neighbours.ts";
import { at } from "./packing.ts";

/** Rounds of improvement; each one gains at least one meeting, so there are never more than meetings. */
const MOST_ROUNDS = 200;

/** Starts from a way that fits; gives one that fits, with as many or fewer meetings apart. Deterministic. */
export function improved(
  sizes: readonly number[],
  room: readonly number[],
  runs: readonly MeetingRun[],
  start: readonly number[],
): number[] {
  const way = [...start];
  const left = [...room];
  for (const [piece, stretch] of way.entries()) left[stretch] = at(left, stretch) - at(sizes, piece);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const change = bestChange(sizes, left, runs, way);
    if (change === null) break;
    for (const { piece, to } of change) {
      left[at(way, piece)] = at(left, at(way, piece)) + at(sizes, piece);
      left[to] = at(left, to) - at(sizes, piece);
      way[piece] = to;
    }
  }
  return way;
}

interface Move {
  readonly piece: number;
  readonly to: number;
}

/** The move or swap that gains most meetings, the first of equals; null if none gains any. */
function bestChange(
  sizes: readonly number[],
  left: readonly number[],
  runs: readonly MeetingRun[],
  way: readonly number[],
): Move[] | null {
  let best: Move[] | null = null;
  let bestApart = apartIn(way, runs);
  const consider = (moves: Move[]): void => {
    const changed = [...way];
    for (const { piece, to } of moves) changed[piece] = to;
    const apart = apartIn(changed, runs);
    if (apart < bestApart) {
      best = moves;
      bestApart = apart;
    }
  };
  for (const [piece, from] of way.entries()) {
    for (const [to, roomLeft] of left.entries()) {
      if (to !== from && roomLeft >= at(sizes, piece)) consider([{ piece, to }]);
    }
    for (let other = piece + 1; other < way.length; other++) {
      const to = at(way, other);
      const more = at(sizes, piece) - at(sizes, other);
      if (to !== from && more <= at(left, to) && -more <= at(left, from)) {
        consider([
          { piece, to },
          { piece: other, to: from },
        ]);
      }
    }
  }
  return best;
}
