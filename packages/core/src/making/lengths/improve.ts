/**
 * A quick way to more neighbours: single pieces are moved and swapped, each time the change that brings most meetings
 * together, even where that is none or a loss; a piece just moved rests for some rounds, so that the way does not turn
 * in a circle. The best way met is kept. No proof: the exact search does that.
 */
import { apartIn, type MeetingRun } from "./neighbours.ts";
import { at } from "./packing.ts";

/** Changes weighed in all; the size of the job decides how many rounds that makes. */
const MOST_WEIGHED = 150_000;

/** Rounds for which a moved piece rests. Odd and small: two pieces that want each other's place must not trade forever. */
const REST_ROUNDS = 7;

/** Starts from a way that fits; gives one that fits, with as many or fewer meetings apart. Deterministic. */
export function improved(
  sizes: readonly number[],
  room: readonly number[],
  runs: readonly MeetingRun[],
  start: readonly number[],
): number[] {
  const walk = new ImprovingWalk(sizes, room, runs, start);
  while (walk.weighed < MOST_WEIGHED && walk.bestApart > 0 && walk.step());
  return walk.best;
}

interface Move {
  readonly piece: number;
  readonly to: number;
}

class ImprovingWalk {
  weighed = 0;
  best: number[];
  bestApart: number;
  private round = 0;
  private readonly way: number[];
  private readonly left: number[];
  private readonly meets: readonly (readonly number[])[];
  private readonly restsUntil: number[];
  private readonly sizes: readonly number[];
  private readonly runs: readonly MeetingRun[];

  constructor(
    sizes: readonly number[],
    room: readonly number[],
    runs: readonly MeetingRun[],
    start: readonly number[],
  ) {
    this.sizes = sizes;
    this.runs = runs;
    this.way = [...start];
    this.left = [...room];
    for (const [piece, stretch] of start.entries()) {
      this.left[stretch] = at(this.left, stretch) - at(sizes, piece);
    }
    this.meets = meetingPieces(runs, sizes.length);
    this.restsUntil = sizes.map(() => 0);
    this.best = [...start];
    this.bestApart = apartIn(start, runs);
  }

  /** Makes the best change that is free to be made; false if there is none. */
  step(): boolean {
    const moves = this.bestMoves();
    if (moves === null) return false;
    this.round++;
    for (const { piece, to } of moves) {
      const from = at(this.way, piece);
      this.left[from] = at(this.left, from) + at(this.sizes, piece);
      this.left[to] = at(this.left, to) - at(this.sizes, piece);
      this.way[piece] = to;
      this.restsUntil[piece] = this.round + REST_ROUNDS;
    }
    const apart = apartIn(this.way, this.runs);
    if (apart < this.bestApart) {
      this.best = [...this.way];
      this.bestApart = apart;
    }
    return true;
  }

  private bestMoves(): readonly Move[] | null {
    let best: readonly Move[] | null = null;
    let bestGain = Number.NEGATIVE_INFINITY;
    const weigh = (moves: readonly Move[]): void => {
      this.weighed++;
      const gain = this.gainOf(moves);
      if (gain > bestGain) {
        best = moves;
        bestGain = gain;
      }
    };
    for (const [piece, from] of this.way.entries()) {
      if (at(this.restsUntil, piece) > this.round) continue;
      for (const [to, roomLeft] of this.left.entries()) {
        if (to !== from && roomLeft >= at(this.sizes, piece)) weigh([{ piece, to }]);
      }
      for (let other = piece + 1; other < this.way.length; other++) {
        const to = at(this.way, other);
        if (to === from || at(this.restsUntil, other) > this.round) continue;
        const more = at(this.sizes, piece) - at(this.sizes, other);
        if (more > at(this.left, to) || -more > at(this.left, from)) continue;
        weigh([
          { piece, to },
          { piece: other, to: from },
        ]);
      }
    }
    return best;
  }

  /** Meetings brought together less those taken apart. A closed run all in one stretch is not told apart here. */
  private gainOf(moves: readonly Move[]): number {
    const stretchAfter = (piece: number): number =>
      moves.find((move) => move.piece === piece)?.to ?? at(this.way, piece);
    let gain = 0;
    for (const { piece, to } of moves) {
      for (const other of at(this.meets, piece)) {
        // Two pieces that trade places and meet each other stay apart: counted as neither.
        gain += (stretchAfter(other) === to ? 1 : 0) - (at(this.way, other) === at(this.way, piece) ? 1 : 0);
      }
    }
    return gain;
  }
}

/** For each piece those that it meets. */
function meetingPieces(runs: readonly MeetingRun[], count: number): number[][] {
  const meets = Array.from({ length: count }, (): number[] => []);
  for (const { first, count: own, ends } of runs) {
    if (ends === "loose" || own < 2) continue;
    const last = ends === "closed" ? own : own - 1;
    for (let k = 0; k < last; k++) {
      const [a, b] = [first + k, first + ((k + 1) % own)];
      at(meets, a).push(b);
      at(meets, b).push(a);
    }
  }
  return meets;
}
