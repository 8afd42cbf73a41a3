/** Which pieces of the outline are cut at all, and the faces they make. */
import { nearestOnRing, type Piece, type Point, pointAt, type Ring } from "../curve/index.ts";
import { DRAWING_NOISE_MM } from "../measure/index.ts";
import type { Section } from "./types.ts";

/** A run of worked pieces from one side of the stick to the next: pieces `first` to `first + count - 1`, round the ring. */
export interface WorkedFace {
  readonly first: number;
  readonly count: number;
  readonly from: Point;
  readonly to: Point;
  /** The stick's sides (pieces of its ring) that the run leaves and comes back to. */
  readonly fromSide: number;
  readonly toSide: number;
}

export interface Worked {
  /** For each piece of the outline: is it cut (true), or is it the stick's own side (false)? */
  readonly pieces: readonly boolean[];
  readonly faces: readonly WorkedFace[];
}

/**
 * A piece is worked unless all of it lies on the stick's sides within `DRAWING_NOISE_MM`. A free curve is worked as a
 * whole or not at all: where it runs into a side tangent, its first short lines lie on the side, and belong to it.
 * A section no side of which is left comes out as one face that starts and ends where the ring does.
 */
export function workedFaces(section: Section): Worked {
  const { outline, stick } = section;
  const worked = outline.pieces.map((piece) => !liesOnStick(piece, stick));
  for (const span of section.freeSpans) {
    const indices = Array.from({ length: span.count }, (_, k) => (span.first + k) % worked.length);
    if (indices.some((index) => worked[index])) for (const index of indices) worked[index] = true;
  }
  return { pieces: worked, faces: runsOf(worked).map((run) => faceOf(run, outline, stick)) };
}

/** Ends and middles of five points: an arc through five points of a straight side, or of a flat arc, is that side. */
const PLACES_LOOKED_AT = [0, 0.25, 0.5, 0.75, 1] as const;

function liesOnStick(piece: Piece, stick: Ring): boolean {
  return PLACES_LOOKED_AT.every(
    (t) => nearestOnRing(stick, pointAt(piece, t)).distanceMm <= DRAWING_NOISE_MM,
  );
}

interface Run {
  readonly first: number;
  readonly count: number;
}

/** Maximal runs of worked pieces, round the ring; a run may pass its start. */
function runsOf(worked: readonly boolean[]): readonly Run[] {
  const total = worked.length;
  const starts = worked.flatMap((is, index) => (is && !worked[(index + total - 1) % total] ? [index] : []));
  if (starts.length === 0) return worked[0] === true ? [{ first: 0, count: total }] : [];
  return starts.map((first) => {
    let count = 1;
    while (worked[(first + count) % total]) count++;
    return { first, count };
  });
}

function faceOf(run: Run, outline: Ring, stick: Ring): WorkedFace {
  const { pieces } = outline;
  const at = (index: number) => pieces[(index + pieces.length) % pieces.length] as Piece;
  const last = run.first + run.count - 1;
  const whole = run.count === pieces.length;
  // The side is asked of the neighbour that lies on it: at the stick's corner the point itself is on two sides.
  const fromSide = whole ? at(run.first).from : pointAt(at(run.first - 1), 0.5);
  const toSide = whole ? at(last).to : pointAt(at(last + 1), 0.5);
  return {
    ...run,
    from: at(run.first).from,
    to: at(last).to,
    fromSide: nearestOnRing(stick, fromSide).piece,
    toSide: nearestOnRing(stick, toSide).piece,
  };
}
