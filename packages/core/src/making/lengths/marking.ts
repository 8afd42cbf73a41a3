/** Where each piece is marked on its stick: the rod, from left to right. */
import type { MeetingRun } from "./neighbours.ts";
import { at } from "./packing.ts";
import { type SoundStretch, stepsToMm, stretchMm } from "./stretches.ts";
import type { MarkedPiece, Stretch } from "./types.ts";

/** A piece as it is counted: steps, its run, and what it is called. */
export interface CountedPiece {
  readonly run: string;
  readonly number: number;
  readonly name: string;
  readonly length: number;
}

export interface MarkedStretch {
  readonly pieces: readonly MarkedPiece[];
  readonly kerfs: readonly Stretch[];
  readonly offcuts: readonly Stretch[];
}

/**
 * Order of a stretch's pieces: as they are numbered, neighbours one after the other. Where a closed run's last piece
 * lies here together with its first, the last comes before the first.
 */
export function inOrder(pieces: readonly number[], runs: readonly MeetingRun[]): number[] {
  const here = new Set(pieces);
  return runs.flatMap((run) => {
    const own = Array.from({ length: run.count }, (_, k) => run.first + k).filter((piece) => here.has(piece));
    if (run.ends !== "closed" || own.length === run.count) return own;
    // Start after a gap, so that the turn from the last number to the first is not torn apart.
    const last = run.first + run.count - 1;
    if (!here.has(last) || !here.has(run.first)) return own;
    const tail: number[] = [];
    for (let piece = last; here.has(piece); piece--) tail.unshift(piece);
    return [...tail, ...own.slice(0, own.length - tail.length)];
  });
}

/** The right end of the first meets the left end of the second. */
export function areNeighbours(first: number, second: number, runs: readonly MeetingRun[]): boolean {
  return runs.some((run) => {
    if (run.ends === "loose" || run.count < 2) return false;
    const last = run.first + run.count - 1;
    if (first < run.first || first > last) return false;
    return first === last ? run.ends === "closed" && second === run.first : second === first + 1;
  });
}

/**
 * Marks pieces one after the other from the left end of a stretch; what is left over stays in one length at its right.
 * The first saw cut runs in the waste to the left; where the stretch begins with the stick there is none.
 */
export function markStretch(
  stretch: SoundStretch,
  order: readonly number[],
  counted: readonly CountedPiece[],
  runs: readonly MeetingRun[],
  steps: { readonly kerf: number; readonly trim: number; readonly stick: number },
): MarkedStretch {
  if (order.length === 0) return { pieces: [], kerfs: [], offcuts: [stretchMm(stretch)] };
  const pieces: MarkedPiece[] = [];
  const kerfs: Stretch[] = [];
  if (stretch.from > 0) {
    kerfs.push(stretchMm({ from: Math.max(0, stretch.from - steps.kerf), to: stretch.from }));
  }
  let from = stretch.from;
  for (const [place, index] of order.entries()) {
    const piece = at(counted, index);
    const to = from + piece.length + 2 * steps.trim;
    const before = order[place - 1];
    pieces.push({
      run: piece.run,
      number: piece.number,
      name: piece.name,
      fromMm: stepsToMm(from + steps.trim),
      toMm: stepsToMm(to - steps.trim),
      roughFromMm: stepsToMm(from),
      roughToMm: stepsToMm(to),
      follows: before === undefined ? "none" : followsWhom(before, index, runs),
    });
    if (to < steps.stick) kerfs.push(stretchMm({ from: to, to: Math.min(to + steps.kerf, steps.stick) }));
    from = to + steps.kerf;
  }
  const offcuts = from < stretch.to ? [stretchMm({ from, to: stretch.to })] : [];
  return { pieces, kerfs, offcuts };
}

function followsWhom(before: number, index: number, runs: readonly MeetingRun[]): MarkedPiece["follows"] {
  return areNeighbours(before, index, runs) ? "its neighbour" : "another piece";
}
