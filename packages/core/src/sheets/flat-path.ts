/**
 * Paths as short straight runs on paper, for what has to be cut off or filled with lines: hatches, circles of
 * enlargement, labels that keep clear. What is drawn keeps its arcs.
 */
import type { Vertex } from "../curve/index.ts";
import { toRad } from "../measure/index.ts";
import type { PaperPoint, Path, PathStep } from "./drawing.ts";

/** Degrees of an arc that one straight step stands for: 0.03 mm of sagitta at a radius of 50 mm on paper. */
const ARC_STEP_DEG = 4;
const ARC_STEP_RAD = toRad(ARC_STEP_DEG);

/** The points of a path, a closed one without its first point repeated. */
export function flatPoints(path: Path): readonly PaperPoint[] {
  const points: PaperPoint[] = [path.start];
  let from = path.start;
  for (const step of path.steps) {
    points.push(...arcPoints(from, step), step.to);
    from = step.to;
  }
  const last = points[points.length - 1] as PaperPoint;
  const isRepeated =
    path.closed && points.length > 1 && last[0] === path.start[0] && last[1] === path.start[1];
  return isRepeated ? points.slice(0, -1) : points;
}

/** Points strictly between the ends of an arc. Paper's y runs down, so "anticlockwise as seen" turns the other way. */
function arcPoints(from: PaperPoint, step: PathStep): readonly PaperPoint[] {
  const bulge = step.bulge ?? 0;
  if (bulge === 0) return [];
  const sweepRad = 4 * Math.atan(bulge);
  const count = Math.ceil(Math.abs(sweepRad) / ARC_STEP_RAD);
  const chordX = step.to[0] - from[0];
  const chordY = step.to[1] - from[1];
  // The centre lies left of an anticlockwise chord; left of (dx, dy) is (dy, -dx) where y runs down.
  const toCentre = (1 - bulge * bulge) / (4 * bulge);
  const centreX = from[0] + chordX / 2 + chordY * toCentre;
  const centreY = from[1] + chordY / 2 - chordX * toCentre;
  const startX = from[0] - centreX;
  const startY = from[1] - centreY;
  return Array.from({ length: Math.max(0, count - 1) }, (_, index): PaperPoint => {
    const turnedRad = (sweepRad * (index + 1)) / count;
    const cos = Math.cos(turnedRad);
    const sin = Math.sin(turnedRad);
    return [centreX + startX * cos + startY * sin, centreY - startX * sin + startY * cos];
  });
}

/** A plan's ring or chain as a path, each point sent through `place`; bulges hold where nothing is mirrored. */
export function pathOf(
  vertices: readonly Vertex[],
  place: (point: PaperPoint) => PaperPoint,
  shape: "ring" | "chain",
): Path {
  const placed = vertices.map((vertex) => place([vertex[0], vertex[1]]));
  const first = placed[0] ?? [0, 0];
  const steps = vertices.flatMap((vertex, index): PathStep[] => {
    if (shape === "chain" && index === vertices.length - 1) return [];
    const to = placed[(index + 1) % placed.length] as PaperPoint;
    const bulge = vertex[2] ?? 0;
    return [bulge === 0 ? { to } : { to, bulge }];
  });
  return { start: first, steps, closed: shape === "ring" };
}

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export function boxOf(points: readonly PaperPoint[]): Box {
  let minX = Number.POSITIVE_INFINITY;
  let minY = Number.POSITIVE_INFINITY;
  let maxX = Number.NEGATIVE_INFINITY;
  let maxY = Number.NEGATIVE_INFINITY;
  for (const [x, y] of points) {
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  }
  return { minX, minY, maxX, maxY };
}

/** Inside by the even-odd rule over all the polygons together. A point on an edge may come out either way. */
export function isInside(polygons: readonly (readonly PaperPoint[])[], point: PaperPoint): boolean {
  let inside = false;
  for (const polygon of polygons) {
    for (let i = 0, j = polygon.length - 1; i < polygon.length; j = i++) {
      const a = polygon[i] as PaperPoint;
      const b = polygon[j] as PaperPoint;
      if (a[1] > point[1] === b[1] > point[1]) continue;
      if (point[0] < a[0] + ((point[1] - a[1]) / (b[1] - a[1])) * (b[0] - a[0])) inside = !inside;
    }
  }
  return inside;
}

export interface Disc {
  readonly centre: PaperPoint;
  readonly radiusMm: number;
}

/** The parts of an open run of points that lie in a disc. */
export function clipRun(points: readonly PaperPoint[], disc: Disc): readonly (readonly PaperPoint[])[] {
  const runs: PaperPoint[][] = [];
  let run: PaperPoint[] = [];
  const finish = (): void => {
    if (run.length > 1) runs.push(run);
    run = [];
  };
  for (let index = 1; index < points.length; index++) {
    const from = points[index - 1] as PaperPoint;
    const to = points[index] as PaperPoint;
    const span = spanInDisc(from, to, disc);
    if (span === null) {
      finish();
      continue;
    }
    if (run.length === 0) run.push(between(from, to, span[0]));
    run.push(between(from, to, span[1]));
    if (span[1] < 1) finish();
  }
  finish();
  return runs;
}

/** Where a segment is in a disc, as two ratios of its length; null where it is not. */
function spanInDisc(from: PaperPoint, to: PaperPoint, disc: Disc): readonly [number, number] | null {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  const fx = from[0] - disc.centre[0];
  const fy = from[1] - disc.centre[1];
  const a = dx * dx + dy * dy;
  const halfB = fx * dx + fy * dy;
  const discriminant = halfB * halfB - a * (fx * fx + fy * fy - disc.radiusMm * disc.radiusMm);
  if (a === 0 || discriminant <= 0) return null;
  const root = Math.sqrt(discriminant);
  const enter = Math.max(0, (-halfB - root) / a);
  const leave = Math.min(1, (-halfB + root) / a);
  return enter < leave ? [enter, leave] : null;
}

function between(from: PaperPoint, to: PaperPoint, ratio: number): PaperPoint {
  if (ratio === 0) return from;
  if (ratio === 1) return to;
  return [from[0] + (to[0] - from[0]) * ratio, from[1] + (to[1] - from[1]) * ratio];
}

const DISC_SIDES = 72;

/** A polygon cut off at a disc (Sutherland and Hodgman, 1974); a hollow one may keep seams along the rim, of no area. */
export function clipPolygon(points: readonly PaperPoint[], disc: Disc): readonly PaperPoint[] {
  let kept = points;
  for (let side = 0; side < DISC_SIDES && kept.length > 0; side++) {
    const angleRad = (2 * Math.PI * (side + 0.5)) / DISC_SIDES;
    const normalX = Math.cos(angleRad);
    const normalY = Math.sin(angleRad);
    const outside = (point: PaperPoint): number =>
      (point[0] - disc.centre[0]) * normalX + (point[1] - disc.centre[1]) * normalY - disc.radiusMm;
    const next: PaperPoint[] = [];
    kept.forEach((to, index) => {
      const from = kept[(index + kept.length - 1) % kept.length] as PaperPoint;
      const outFrom = outside(from);
      const outTo = outside(to);
      if (outFrom <= 0 !== outTo <= 0) next.push(between(from, to, outFrom / (outFrom - outTo)));
      if (outTo <= 0) next.push(to);
    });
    kept = next;
  }
  return kept;
}
