import { FLAT_SAGITTA_MM, LEAST_EDGE_MM, SAME_POINT_MM } from "../measure/index.ts";
import { flatRingAreaMm2 } from "./flat-ring.ts";
import { circleMeetsCircle, lineMeetsCircle } from "./meets.ts";
import { arcsBetween, line, straightIfFlat, wrapRad } from "./piece.ts";
import { distanceMm, lerpPoint, samePoint } from "./point.ts";
import { closedRun } from "./ring.ts";
import type { Circle, Circles, FlatRing, Piece, Point, Region, Ring } from "./types.ts";

/**
 * The rings of a region as lines and arcs: edges in a row that come from one circle of `circles`, and do lie on it
 * within `tolMm`, become arcs of that circle again; straight edges of one source in a row become one line.
 * Outer rings first, anticlockwise; then holes, clockwise, so that `regionOf` gives the region back.
 *
 * Where an arc starts or ends the joint is moved, by at most `tolMm`, from the flattened edge to where the
 * circle meets its neighbour. Other joints stay where they are.
 */
export function ringsOf(region: Region, circles: Circles, tolMm: number): Ring[] {
  const outers = region.filter((ring) => flatRingAreaMm2(ring) > 0);
  const holes = region.filter((ring) => flatRingAreaMm2(ring) < 0);
  return [...outers, ...holes].map((ring) => ringOf(ring, circles, tolMm));
}

/** Edges in a row that lie on one line or one circle. */
interface Run {
  readonly source: number;
  /** Absent for a line. */
  readonly circle: Circle | undefined;
  readonly from: Point;
  to: Point;
  /** Angle travelled about the circle's centre so far, radians; 0 for a line. */
  sweep: number;
  /** Vertices passed on the way: none may stray from the line. */
  readonly passed: Point[];
}

function ringOf(flat: FlatRing, circles: Circles, tolMm: number): Ring {
  const runs = joinEnds(runsOf(flat, circles, tolMm), tolMm);
  const joints = runs.map((run, index) => jointOf(runs.at(index - 1) as Run, run, tolMm));
  const pieces: Piece[] = [];
  for (const [index, run] of runs.entries()) {
    pieces.push(...piecesOf(run, joints[index] as Point, joints[(index + 1) % runs.length] as Point));
  }
  return closedRun(pieces);
}

function runsOf(flat: FlatRing, circles: Circles, tolMm: number): Run[] {
  const count = flat.xs.length;
  const vertex = (index: number): Point => ({
    x: flat.xs[index % count] as number,
    y: flat.ys[index % count] as number,
  });
  const runs: Run[] = [];
  for (let i = 0; i < count; i++) {
    const isStep = distanceMm(vertex(i), vertex(i + 1)) <= tolMm;
    const source = isStep ? sourceOfStep(flat.sources, i, circles) : (flat.sources[i] as number);
    const edge = runOfEdge(vertex(i), vertex(i + 1), source, circles, tolMm);
    const last = runs[runs.length - 1];
    if (last === undefined || !extend(last, edge, tolMm)) runs.push(edge);
  }
  return runs;
}

/**
 * Where two cuts along one circle end amid a chord, a bit of the sole's end is left, no longer than the chord's
 * height: within the tolerance it belongs to the circle on both sides of it.
 */
function sourceOfStep(sources: Int32Array, index: number, circles: Circles): number {
  const before = sources.at(index - 1) as number;
  const after = sources[(index + 1) % sources.length] as number;
  return before === after && circles.has(before) ? before : (sources[index] as number);
}

function runOfEdge(from: Point, to: Point, source: number, circles: Circles, tolMm: number): Run {
  const circle = circles.get(source);
  if (circle === undefined || !isChord(circle, from, to, tolMm)) {
    return { source, circle: undefined, from, to, sweep: 0, passed: [] };
  }
  return { source, circle, from, to, sweep: angleBetween(circle, from, to), passed: [] };
}

function isChord(circle: Circle, from: Point, to: Point, tolMm: number): boolean {
  const middle = lerpPoint(from, to, 1 / 2);
  return [from, middle, to].every((p) => Math.abs(distanceMm(p, circle.centre) - circle.radiusMm) <= tolMm);
}

/** The shorter way round from one point to another about a circle's centre, radians anticlockwise. */
function angleBetween(circle: Circle, from: Point, to: Point): number {
  return wrapRad(angleOf(circle, to) - angleOf(circle, from));
}

function angleOf(circle: Circle, p: Point): number {
  return Math.atan2(p.y - circle.centre.y, p.x - circle.centre.x);
}

/** Lengthens a run by the one after it, if they are one; the answer says whether. */
function extend(run: Run, next: Run, tolMm: number): boolean {
  if (run.source !== next.source || run.circle !== next.circle) return false;
  if (run.circle === undefined) {
    const passed = [...run.passed, run.to, ...next.passed];
    if (!passed.every((p) => isBetween(run.from, next.to, p))) return false;
    run.passed.push(run.to, ...next.passed);
  } else {
    const isStep = Math.min(Math.abs(run.sweep), Math.abs(next.sweep)) * run.circle.radiusMm <= tolMm;
    if (run.sweep > 0 !== next.sweep > 0 && !isStep) return false;
    run.sweep += next.sweep;
  }
  run.to = next.to;
  return true;
}

function isBetween(from: Point, to: Point, p: Point): boolean {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const lengthOfLine = distanceMm(from, to);
  const along = (p.x - from.x) * dx + (p.y - from.y) * dy;
  if (along < 0 || along > lengthOfLine * lengthOfLine) return false;
  return Math.abs((p.x - from.x) * dy - (p.y - from.y) * dx) <= LEAST_EDGE_MM * lengthOfLine;
}

/** A flat ring's first vertex is any: the last run may go on into the first. */
function joinEnds(runs: Run[], tolMm: number): Run[] {
  const first = runs[0] as Run;
  const last = runs[runs.length - 1] as Run;
  if (runs.length < 2 || !extend(last, first, tolMm)) return runs;
  return [last, ...runs.slice(1, -1)];
}

/** The point shared by two runs, put on their circles where they are arcs. */
function jointOf(before: Run, after: Run, tolMm: number): Point {
  const flattened = after.from;
  if (before === after || (before.circle === undefined && after.circle === undefined)) {
    return before.circle === undefined ? flattened : onCircle(before.circle, flattened);
  }
  if (before.circle !== undefined && before.circle === after.circle)
    return onCircle(before.circle, flattened);
  const candidates = [...meetsOf(before, after, tolMm)].sort(
    (a, b) => distanceMm(a, flattened) - distanceMm(b, flattened),
  );
  const nearest = candidates[0];
  if (nearest !== undefined && distanceMm(nearest, flattened) <= tolMm) return nearest;
  return onCircle((before.circle ?? after.circle) as Circle, flattened);
}

function meetsOf(before: Run, after: Run, tolMm: number): readonly Point[] {
  if (before.circle !== undefined && after.circle !== undefined) {
    return circleMeetsCircle(before.circle, after.circle, tolMm / 2).points;
  }
  const [circle, straight] = before.circle === undefined ? [after.circle, before] : [before.circle, after];
  return lineMeetsCircle(straight.from, straight.to, circle as Circle, FLAT_SAGITTA_MM).points;
}

function onCircle(circle: Circle, p: Point): Point {
  const awayMm = distanceMm(p, circle.centre);
  return lerpPoint(circle.centre, p, circle.radiusMm / awayMm);
}

function piecesOf(run: Run, from: Point, to: Point): Piece[] {
  const source = run.source === 0 ? undefined : run.source;
  const { circle } = run;
  if (circle === undefined) return [line(from, to, source)];
  const isWholeTurn = from === to;
  const moved = angleBetween(circle, run.to, to) - angleBetween(circle, run.from, from);
  const sweep = isWholeTurn ? Math.sign(run.sweep) * 2 * Math.PI : run.sweep + moved;
  if (samePoint(from, to, 0) && !isWholeTurn) return [];
  // Both ends were moved to where the circle meets its neighbours, and that may be one place to rounding.
  if (Math.abs(sweep) * circle.radiusMm < SAME_POINT_MM) return [line(from, to, source)];
  return arcsBetween(circle, from, to, angleOf(circle, from), sweep, source).map(straightIfFlat);
}
