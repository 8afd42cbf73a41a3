/** Joins the loose runs of a DXF end to end into closed outlines. */
import type { Point } from "../curve/index.ts";
import { DRAWING_NOISE_MM } from "../measure/index.ts";
import { type DrawnCurve, reverseCurve } from "./read-curves.ts";

/** A run whose ends meet neighbours' ends; in millimetres. */
export interface LooseRun {
  readonly curves: readonly DrawnCurve[];
  readonly closed: boolean;
}

export interface Chained {
  readonly closed: readonly (readonly DrawnCurve[])[];
  /** Runs that end in the open, longest first, with the gap between their two ends. */
  readonly open: readonly { readonly curves: readonly DrawnCurve[]; readonly gapMm: number }[];
  /** A place where more than two ends meet; what hangs together with it is neither closed nor open. */
  readonly branch: { readonly at: Point; readonly ends: number } | null;
}

/** Ends within the noise of each other are one place; a run whose both ends are at one place is closed. */
export function chainRuns(runs: readonly LooseRun[]): Chained {
  const closed: (readonly DrawnCurve[])[] = [];
  const loose: (readonly DrawnCurve[])[] = [];
  for (const run of runs) {
    if (run.closed || endsMeet(run.curves)) closed.push(run.curves);
    else loose.push(run.curves);
  }
  const places = placesOfEnds(loose);
  const endsAt = new Map<number, number[]>();
  places.forEach((place, end) => {
    const there = endsAt.get(place);
    if (there === undefined) endsAt.set(place, [end]);
    else there.push(end);
  });
  const branch = firstBranch(loose, endsAt);
  const open: { curves: readonly DrawnCurve[]; gapMm: number }[] = [];
  const used = new Set<number>();
  // Runs that end in the open are walked from their ends first; what is left then is closed.
  const inOrder = [...loose.keys()].flatMap((run) => [2 * run, 2 * run + 1]);
  const isFree = (end: number): boolean => endsAt.get(places[end]!)!.length !== 2;
  for (const start of [...inOrder.filter(isFree), ...inOrder]) {
    if (used.has(start >> 1)) continue;
    const curves: DrawnCurve[] = [];
    let end: number | undefined = start;
    let comesBack = false;
    while (end !== undefined && !used.has(end >> 1)) {
      used.add(end >> 1);
      const run: readonly DrawnCurve[] = loose[end >> 1]!;
      const forward = end % 2 === 0;
      for (const curve of forward ? run : [...run].reverse().map(reverseCurve)) curves.push(curve);
      const far: number = end ^ 1;
      const there: readonly number[] = endsAt.get(places[far]!)!;
      const next: number | undefined = there.length === 2 ? there.find((other) => other !== far) : undefined;
      comesBack = next === start;
      end = next;
    }
    if (comesBack) closed.push(curves);
    else open.push({ curves, gapMm: gapMm(curves) });
  }
  open.sort((a, b) => b.curves.length - a.curves.length);
  return { closed, open, branch };
}

function firstBranch(
  loose: readonly (readonly DrawnCurve[])[],
  endsAt: ReadonlyMap<number, readonly number[]>,
): { at: Point; ends: number } | null {
  for (const ends of endsAt.values()) {
    if (ends.length > 2) return { at: pointOfEnd(loose, ends[0]!), ends: ends.length };
  }
  return null;
}

/** End 2 i is the start of run i, end 2 i + 1 its finish. */
function pointOfEnd(loose: readonly (readonly DrawnCurve[])[], end: number): Point {
  const curves = loose[end >> 1]!;
  return end % 2 === 0 ? curves[0]!.from : curves[curves.length - 1]!.to;
}

function gapMm(curves: readonly DrawnCurve[]): number {
  const from = curves[0]!.from;
  const to = curves[curves.length - 1]!.to;
  return Math.hypot(to.x - from.x, to.y - from.y);
}

function endsMeet(curves: readonly DrawnCurve[]): boolean {
  const isTiny = curves.length === 1 && curves[0]!.kind === "line";
  return !isTiny && gapMm(curves) <= DRAWING_NOISE_MM;
}

/** For each end the number of its place: that of the first end found within the noise of it. */
function placesOfEnds(loose: readonly (readonly DrawnCurve[])[]): number[] {
  const cells = new Map<string, number[]>();
  const places: number[] = [];
  const points: Point[] = [];
  for (let end = 0; end < 2 * loose.length; end++) {
    const p = pointOfEnd(loose, end);
    points.push(p);
    const column = Math.floor(p.x / DRAWING_NOISE_MM);
    const row = Math.floor(p.y / DRAWING_NOISE_MM);
    let place = end;
    for (let i = column - 1; i <= column + 1 && place === end; i++) {
      for (let j = row - 1; j <= row + 1 && place === end; j++) {
        const near = cells.get(`${i} ${j}`)?.find((other) => {
          const q = points[other]!;
          return Math.hypot(p.x - q.x, p.y - q.y) <= DRAWING_NOISE_MM;
        });
        if (near !== undefined) place = places[near]!;
      }
    }
    places.push(place);
    // Only the first end of a place is looked up again, so that a heap of ends at one spot costs nothing.
    if (place === end) {
      const key = `${column} ${row}`;
      const there = cells.get(key);
      if (there === undefined) cells.set(key, [end]);
      else there.push(end);
    }
  }
  return places;
}
