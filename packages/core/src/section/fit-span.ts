/**
 * One arc between two points of a curve: which arcs lie within a tolerance of all the points between.
 *
 * All arcs through two points A and B, at most a half circle, are told apart by one number, the height s of the arc
 * over its chord (positive: to the left of A to B). With h half the chord, and a point (x, y) in the chord's own frame
 * (origin in its middle), the circle that passes the point at distance t (positive: the point lies to the left of it)
 * has the s that solves
 *
 *     (y + t) s² + K s − (y − t) h² = 0,   K = h² + t² − x² − y²
 *
 * (write |point − centre| = R ± t with R = (h² + s²) / 2s and clear the root). The distance changes one way only with s,
 * so each point allows an interval of s, and the arcs that pass them all are the intervals' common part.
 */
import { arc, line, type Piece, type Point } from "../curve/index.ts";
import { SAME_POINT_MM } from "../measure/index.ts";

/** The points of a curve as two lists: the inner loops of the search run over these. */
export interface CurvePoints {
  readonly xs: Float64Array;
  readonly ys: Float64Array;
}

export function curvePoints(points: readonly Point[]): CurvePoints {
  return { xs: Float64Array.from(points, (p) => p.x), ys: Float64Array.from(points, (p) => p.y) };
}

/** The chord's frame. */
interface Frame {
  readonly midX: number;
  readonly midY: number;
  readonly alongX: number;
  readonly alongY: number;
  readonly halfMm: number;
}

function frameOf(curve: CurvePoints, first: number, last: number): Frame {
  const fromX = curve.xs[first] as number;
  const fromY = curve.ys[first] as number;
  const dx = (curve.xs[last] as number) - fromX;
  const dy = (curve.ys[last] as number) - fromY;
  const chordMm = Math.hypot(dx, dy);
  const scale = chordMm > 0 ? 1 / chordMm : 0;
  return {
    midX: fromX + dx / 2,
    midY: fromY + dy / 2,
    alongX: dx * scale,
    alongY: dy * scale,
    halfMm: chordMm / 2,
  };
}

/** The heights that keep every point between within the tolerance, and the one nearest to all of them, mm. */
export interface HeightRange {
  readonly leastMm: number;
  readonly mostMm: number;
  readonly bestMm: number;
  readonly halfChordMm: number;
}

/** The range of heights for the arc from point `first` to point `last`, or null if no arc will do. */
export function heightRange(
  curve: CurvePoints,
  first: number,
  last: number,
  tolMm: number,
): HeightRange | null {
  const frame = frameOf(curve, first, last);
  const { halfMm } = frame;
  if (halfMm <= SAME_POINT_MM) return null;
  let leastMm = -halfMm;
  let mostMm = halfMm;
  let weighed = 0;
  let weights = 0;
  for (let index = first + 1; index < last; index++) {
    const dx = (curve.xs[index] as number) - frame.midX;
    const dy = (curve.ys[index] as number) - frame.midY;
    const x = dx * frame.alongX + dy * frame.alongY;
    const y = dy * frame.alongX - dx * frame.alongY;
    // Beside an end the end itself is near enough, whatever the arc.
    if (Math.hypot(Math.abs(x) - halfMm, y) <= tolMm) continue;
    if (Math.abs(x) > halfMm + tolMm) return null;
    leastMm = Math.max(leastMm, heightPassing(x, y, tolMm, halfMm));
    mostMm = Math.min(mostMm, heightPassing(x, y, -tolMm, halfMm));
    if (leastMm > mostMm) return null;
    // A point in the middle says more about the height than one beside an end.
    const weight = Math.max(0, 1 - (x / halfMm) ** 2);
    weighed += weight * heightPassing(x, y, 0, halfMm);
    weights += weight;
  }
  const wantedMm = weights > 0 ? weighed / weights : 0;
  const bestMm = Math.min(mostMm, Math.max(leastMm, wantedMm));
  return { leastMm, mostMm, bestMm, halfChordMm: halfMm };
}

/** Height of the arc that leaves a point `awayMm` to its left (see the head of this file). No limit: plus or minus infinity. */
function heightPassing(x: number, y: number, awayMm: number, halfMm: number): number {
  const k = halfMm * halfMm + awayMm * awayMm - x * x - y * y;
  const root = k * k + 4 * (y * y - awayMm * awayMm) * halfMm * halfMm;
  const unlimited = awayMm > 0 ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY;
  if (root < 0) return unlimited;
  const below = k + Math.sqrt(root);
  // Off the circle over the chord and hardly above or below its line: only the ends are near, and they were asked.
  if (below <= 0) return -unlimited;
  return (2 * (y - awayMm) * halfMm * halfMm) / below;
}

/** Height of an arc of a radius over half a chord, mm (sagitta without cancellation); null if the chord is too long. */
export function heightOfRadiusMm(radiusMm: number, halfChordMm: number): number | null {
  if (halfChordMm > radiusMm) return null;
  return halfChordMm ** 2 / (radiusMm + Math.sqrt((radiusMm - halfChordMm) * (radiusMm + halfChordMm)));
}

/** The arc (a line where the height is none) from point `first` to point `last`. */
export function pieceOfHeight(curve: CurvePoints, first: number, last: number, heightMm: number): Piece {
  const from = { x: curve.xs[first] as number, y: curve.ys[first] as number };
  const to = { x: curve.xs[last] as number, y: curve.ys[last] as number };
  if (Math.abs(heightMm) <= SAME_POINT_MM) return line(from, to);
  const halfMm = Math.hypot(to.x - from.x, to.y - from.y) / 2;
  // A bulge counts to the right of the chord.
  return arc(from, to, Math.max(-1, Math.min(1, -heightMm / halfMm)));
}

/**
 * Greatest distance between the run of points (joined by lines) and the arc, both ways, mm.
 *
 * The distance of a straight edge from a circle is greatest at its ends, or where the line from the centre meets it
 * square. The edges run from one end of the arc to the other, so they pass every direction from the centre that the
 * arc does, and no point of the arc is further from them than they are from it.
 */
export function spanDeviationMm(curve: CurvePoints, first: number, last: number, heightMm: number): number {
  const frame = frameOf(curve, first, last);
  return Math.abs(heightMm) <= SAME_POINT_MM
    ? deviationFromChordMm(curve, first, last, frame)
    : deviationFromArcMm(curve, first, last, frame, heightMm);
}

function deviationFromChordMm(curve: CurvePoints, first: number, last: number, frame: Frame): number {
  let worstMm = 0;
  for (let index = first + 1; index < last; index++) {
    const dx = (curve.xs[index] as number) - frame.midX;
    const dy = (curve.ys[index] as number) - frame.midY;
    const x = dx * frame.alongX + dy * frame.alongY;
    const y = dy * frame.alongX - dx * frame.alongY;
    worstMm = Math.max(worstMm, Math.hypot(Math.max(0, Math.abs(x) - frame.halfMm), y));
  }
  return worstMm;
}

function deviationFromArcMm(
  curve: CurvePoints,
  first: number,
  last: number,
  frame: Frame,
  heightMm: number,
): number {
  const { halfMm } = frame;
  // Centre (0, c) in the chord's frame; the arc is the part of the circle on the height's side of the chord.
  const radiusMm = (halfMm * halfMm + heightMm * heightMm) / (2 * Math.abs(heightMm));
  const side = Math.sign(heightMm);
  const centreY = heightMm - side * radiusMm;
  let worstMm = 0;
  let lastX = -halfMm;
  let lastY = 0;
  for (let index = first + 1; index <= last; index++) {
    const dx = (curve.xs[index] as number) - frame.midX;
    const dy = (curve.ys[index] as number) - frame.midY;
    const x = index === last ? halfMm : dx * frame.alongX + dy * frame.alongY;
    const y = index === last ? 0 : dy * frame.alongX - dx * frame.alongY;
    worstMm = Math.max(worstMm, offArcMm(x, y, { halfMm, radiusMm, centreY, side }));
    worstMm = Math.max(worstMm, footOffArcMm(lastX, lastY, x, y, centreY, radiusMm));
    lastX = x;
    lastY = y;
  }
  return worstMm;
}

interface ArcInFrame {
  readonly halfMm: number;
  readonly radiusMm: number;
  readonly centreY: number;
  readonly side: number;
}

function offArcMm(x: number, y: number, on: ArcInFrame): number {
  // In the arc's wedge: on the height's side of both lines from the centre to the ends.
  const rise = (y - on.centreY) * on.side;
  const reach = -on.centreY * on.side;
  const inWedge = rise * on.halfMm >= Math.abs(x) * reach;
  return inWedge
    ? Math.abs(Math.hypot(x, y - on.centreY) - on.radiusMm)
    : Math.hypot(Math.abs(x) - on.halfMm, y);
}

/** Distance from the circle of the point where the line from the centre meets an edge square; 0 if that is off the edge. */
function footOffArcMm(
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  centreY: number,
  radiusMm: number,
): number {
  const dx = x2 - x1;
  const dy = y2 - y1;
  const squared = dx * dx + dy * dy;
  if (squared === 0) return 0;
  const t = -(x1 * dx + (y1 - centreY) * dy) / squared;
  if (t <= 0 || t >= 1) return 0;
  return Math.abs(Math.hypot(x1 + t * dx, y1 + t * dy - centreY) - radiusMm);
}
