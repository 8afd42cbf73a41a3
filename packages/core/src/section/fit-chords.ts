/**
 * Short lines that stand for curves: drawing programs and tracings save arcs as chains of chords. Where the corners of
 * a chain lie on few circles the arcs are taken again; any other chain that turns little by little is one free curve.
 *
 * Few means: no fewer would do for corners allowed to lie up to ten times as far off. A chain of arcs keeps its number
 * however closely it is looked at (checks/area-k.json, K-14); an ellipse or a spiral falls into ever more.
 */
import { fitCircle, type Point } from "../curve/index.ts";
import { CHORD_SAGITTA_MM, CORNER_NOISE_MM, FLAT_SAGITTA_MM, toRad } from "../measure/index.ts";
import type { OutlineVertex } from "./read-noise.ts";

export interface ChordsTaken {
  readonly vertices: readonly OutlineVertex[];
  /** How many short lines were taken as how many arcs, and as how many free curves. */
  readonly arcLines: number;
  readonly arcs: number;
  readonly freeLines: number;
  readonly freeCurves: number;
  /** How far a corner lies off the arc that now stands for it, mm. */
  readonly farthestMm: number;
}

/** Fewer chords than this in a row are facets that somebody drew. */
const LEAST_CHORDS = 6;
/** A corner that turns further is a corner, degrees. */
const MOST_TURN_DEG = 15;
/** A chord so much longer than its shorter neighbour is a flat that runs on from a curve. */
const LONGEST_CHORD_RATIO = 2.5;
/** An arc has to be told by more corners than the three that any circle passes through. */
const LEAST_ARC_CHORDS = 4;
/** How much further off corners may lie for the second count: so many times, but no more than a share of the chain's height. */
const COARSER = 10;
const LEAST_COARSER = 3;
const COARSER_HEIGHT_RATIO = 0.01;

/** Takes the chains of chords of a closed outline as what they stand for. */
export function chordsAsCurves(vertices: readonly OutlineVertex[]): ChordsTaken {
  const none = { arcLines: 0, arcs: 0, freeLines: 0, freeCurves: 0, farthestMm: 0 };
  const chains = chainsOf(vertices);
  if (chains.length === 0) return { vertices, ...none };
  const count = vertices.length;
  const taken = new Map<number, readonly Taken[]>();
  let nextFree = vertices.reduce((most, { free }) => Math.max(most, free), 0) + 1;
  const totals = { ...none };
  for (const { first, chords } of chains) {
    const corners = Array.from(
      { length: chords + 1 },
      (_, i) => vertices[(first + i) % count] as OutlineVertex,
    );
    const arcs = arcsThrough(corners);
    if (arcs === null) {
      const free = nextFree++;
      totals.freeCurves++;
      totals.freeLines += chords;
      taken.set(
        first,
        corners.slice(0, -1).map(({ x, y }) => ({ x, y, bulge: 0, free, chords: 1 })),
      );
    } else {
      totals.arcs += arcs.length;
      totals.arcLines += chords;
      totals.farthestMm = Math.max(totals.farthestMm, ...arcs.map(({ offMm }) => offMm));
      taken.set(
        first,
        arcs.flatMap((arc) => piecesOf(corners, arc)),
      );
    }
  }
  return { vertices: replaced(vertices, chains[0]?.first ?? 0, taken), ...totals };
}

/** A vertex that stands for so many chords. */
interface Taken extends OutlineVertex {
  readonly chords: number;
}

function replaced(
  vertices: readonly OutlineVertex[],
  start: number,
  taken: ReadonlyMap<number, readonly Taken[]>,
): readonly OutlineVertex[] {
  const kept: OutlineVertex[] = [];
  for (let step = 0; step < vertices.length; ) {
    const index = (start + step) % vertices.length;
    const instead = taken.get(index);
    if (instead === undefined) {
      kept.push(vertices[index] as OutlineVertex);
      step++;
    } else {
      for (const { x, y, bulge, free, chords } of instead) {
        kept.push({ x, y, bulge, free });
        step += chords;
      }
    }
  }
  return kept;
}

interface ChordChain {
  readonly first: number;
  readonly chords: number;
}

/** Runs of six chords or more, round the outline; each vertex stands for the line that leaves it. */
function chainsOf(vertices: readonly OutlineVertex[]): readonly ChordChain[] {
  const count = vertices.length;
  const isChord = vertices.map((_, at) => looksLikeChord(vertices, at));
  // Two chords hang together where the corner between them turns little.
  const goesOn = vertices.map(
    (_, at) =>
      isChord[(at + count - 1) % count] === true && isChord[at] === true && turnsLittle(vertices, at),
  );
  const start = goesOn.indexOf(false);
  const chains: ChordChain[] = [];
  // An outline that turns little everywhere begins where it is drawn.
  const from = Math.max(0, start);
  for (let step = 0; step < count; ) {
    const first = (from + step) % count;
    if (!isChord[first]) {
      step++;
      continue;
    }
    let chords = 1;
    while (step + chords < count && goesOn[(first + chords) % count]) chords++;
    if (chords >= LEAST_CHORDS) chains.push({ first, chords });
    step += chords;
  }
  return chains;
}

function looksLikeChord(vertices: readonly OutlineVertex[], at: number): boolean {
  const { bulge, free } = vertices[at] as OutlineVertex;
  if (bulge !== 0 || free !== 0) return false;
  const count = vertices.length;
  const lengthMm = chordMm(vertices, at);
  const neighboursMm = Math.min(
    chordMm(vertices, (at + 1) % count),
    chordMm(vertices, (at + count - 1) % count),
  );
  if (lengthMm > LONGEST_CHORD_RATIO * neighboursMm) return false;
  // The arc for which a chord stands turns by as much as the corners at its ends do in the mean; over a chord of that
  // turn it rises by an eighth of the two multiplied.
  const ends = [at, (at + 1) % count].map((corner) => Math.abs(turnRad(vertices, corner)));
  const gentle = ends.filter((turn) => turn <= toRad(MOST_TURN_DEG));
  const turn = gentle.reduce((sum, one) => sum + one, 0) / Math.max(1, gentle.length);
  const riseMm = (lengthMm * turn) / 8;
  return riseMm > FLAT_SAGITTA_MM && riseMm <= CHORD_SAGITTA_MM;
}

function turnsLittle(vertices: readonly OutlineVertex[], at: number): boolean {
  // Where a curve changes its hand two chords may lie in one line.
  return Math.abs(turnRad(vertices, at)) <= toRad(MOST_TURN_DEG);
}

function chordMm(vertices: readonly OutlineVertex[], at: number): number {
  const from = vertices[at] as OutlineVertex;
  const to = vertices[(at + 1) % vertices.length] as OutlineVertex;
  return Math.hypot(to.x - from.x, to.y - from.y);
}

function turnRad(vertices: readonly OutlineVertex[], at: number): number {
  const count = vertices.length;
  const before = vertices[(at + count - 1) % count] as OutlineVertex;
  const here = vertices[at] as OutlineVertex;
  const after = vertices[(at + 1) % count] as OutlineVertex;
  const [inX, inY] = [here.x - before.x, here.y - before.y];
  const [outX, outY] = [after.x - here.x, after.y - here.y];
  return Math.atan2(inX * outY - inY * outX, inX * outX + inY * outY);
}

/** An arc over the corners `first` to `last` of a chain. */
interface ArcOver {
  readonly first: number;
  readonly last: number;
  readonly centre: Point;
  readonly radiusMm: number;
  readonly offMm: number;
}

/** Chains of more corners are free curves without a look: no program needs so many for an arc, and time is bounded. */
const MOST_CORNERS = 5000;

/** The arcs through the corners of a chain, or null where it is no chain of few arcs. */
function arcsThrough(corners: readonly Point[]): readonly ArcOver[] | null {
  if (corners.length > MOST_CORNERS) return null;
  const close = greedyBreaks(corners, CORNER_NOISE_MM);
  if (close === null || close.length > corners.length / LEAST_ARC_CHORDS) return null;
  const coarse = greedyBreaks(corners, coarserMm(corners));
  if (coarse === null || coarse.length < close.length) return null;
  const arcs = settledArcs(corners, close);
  const isSound = arcs.every((arc) => arc !== null && arc.last - arc.first >= LEAST_ARC_CHORDS);
  return isSound ? (arcs as readonly ArcOver[]) : null;
}

function coarserMm(corners: readonly Point[]): number {
  const spanMm = (of: (p: Point) => number) =>
    corners.reduce((most, p) => Math.max(most, of(p)), -Infinity) -
    corners.reduce((least, p) => Math.min(least, of(p)), Infinity);
  const heightMm = Math.min(
    spanMm(({ x }) => x),
    spanMm(({ y }) => y),
  );
  const most = Math.min(COARSER * CORNER_NOISE_MM, COARSER_HEIGHT_RATIO * heightMm);
  return Math.max(LEAST_COARSER * CORNER_NOISE_MM, most);
}

/** The last corner of each piece where every piece is taken as long as a circle passes its corners within `offMm`. */
function greedyBreaks(corners: readonly Point[], offMm: number): readonly number[] | null {
  const breaks: number[] = [];
  for (let first = 0; first < corners.length - 1; ) {
    const last = farthestLast(corners, first, offMm);
    if (last === null) return null;
    breaks.push(last);
    first = last;
  }
  return breaks;
}

/** By doubling and halving: what one circle passes it passes in part, too. */
function farthestLast(corners: readonly Point[], first: number, offMm: number): number | null {
  const end = corners.length - 1;
  const fits = (last: number) =>
    last - first < 2 || (arcOver(corners, first, last)?.offMm ?? Infinity) <= offMm;
  let good = Math.min(end, first + 2);
  if (!fits(good)) return null;
  let step = 2;
  while (good < end && fits(Math.min(end, good + step))) {
    good = Math.min(end, good + step);
    step *= 2;
  }
  let bad = Math.min(end + 1, good + step);
  while (bad - good > 1) {
    const middle = Math.floor((good + bad) / 2);
    if (fits(middle)) good = middle;
    else bad = middle;
  }
  return good;
}

/**
 * The breaks set where both neighbours lie nearest to their corners: a greedy piece reaches over into the next one by
 * what the noise allows.
 */
function settledArcs(corners: readonly Point[], breaks: readonly number[]): readonly (ArcOver | null)[] {
  const ends = [0, ...breaks];
  for (let k = 1; k < ends.length - 1; k++) {
    const before = ends[k - 1] as number;
    const after = ends[k + 1] as number;
    let best = { at: ends[k] as number, offMm: Number.POSITIVE_INFINITY };
    for (let at = ends[k] as number; at >= Math.max(before + 2, (ends[k] as number) - MOST_OVER); at--) {
      const offMm =
        (arcOver(corners, before, at)?.offMm ?? Infinity) + (arcOver(corners, at, after)?.offMm ?? Infinity);
      if (offMm < best.offMm) best = { at, offMm };
    }
    ends[k] = best.at;
  }
  return ends.slice(1).map((last, k) => arcOver(corners, ends[k] as number, last));
}

/** How many corners a greedy piece may reach over by. */
const MOST_OVER = 8;

function arcOver(corners: readonly Point[], first: number, last: number): ArcOver | null {
  const own = corners.slice(first, last + 1);
  const fit = fitCircle(own);
  if (!fit.ok) return null;
  const { centre, radiusMm } = fit.value;
  const offMm = own.reduce(
    (most, p) => Math.max(most, Math.abs(Math.hypot(p.x - centre.x, p.y - centre.y) - radiusMm)),
    0,
  );
  return { first, last, centre, radiusMm, offMm };
}

/** The arc as vertices: two where it is more than a half circle, since one holds no more. */
function piecesOf(corners: readonly Point[], arc: ArcOver): readonly Taken[] {
  const sweep = sweepRad(corners, arc);
  const middle = Math.round((arc.first + arc.last) / 2);
  const ends = Math.abs(sweep) > MOST_ONE_ARC_RAD ? [arc.first, middle, arc.last] : [arc.first, arc.last];
  return ends.slice(1).map((last, k) => {
    const first = ends[k] as number;
    const { x, y } = corners[first] as Point;
    return { x, y, bulge: bulgeOf(corners, { ...arc, first, last }), free: 0, chords: last - first };
  });
}

/** A half circle, with some room: its own chord is too near the centre to tell its sweep by. */
const MOST_ONE_ARC_RAD = Math.PI * 0.95;

function sweepRad(corners: readonly Point[], { first, last, centre }: ArcOver): number {
  let sweep = 0;
  for (let i = first; i < last; i++) {
    const a = corners[i] as Point;
    const b = corners[i + 1] as Point;
    const [ax, ay, bx, by] = [a.x - centre.x, a.y - centre.y, b.x - centre.x, b.y - centre.y];
    sweep += Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
  }
  return sweep;
}

/** From the radius and the corners at its ends, which stay where they are drawn. */
function bulgeOf(corners: readonly Point[], arc: ArcOver): number {
  const from = corners[arc.first] as Point;
  const to = corners[arc.last] as Point;
  const halfMm = Math.hypot(to.x - from.x, to.y - from.y) / 2;
  const sweep = sweepRad(corners, arc);
  const half = Math.abs(sweep) / 2;
  const turn = half <= Math.PI / 4 ? Math.asin(Math.min(1, halfMm / arc.radiusMm)) : half;
  return Math.sign(sweep) * Math.tan(turn / 2);
}
