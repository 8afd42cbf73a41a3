/**
 * What the kernel says, seen by dense sampling. Shares no code with the kernel: arcs are laid through three points
 * (both ends and the tip of the bulge), areas come from fine polygons, crossings from pairs of short chords.
 */
import type { Chain, Piece, Point } from "../types.ts";

/** Under this bulge an arc is a parabola to a part in 1e8 of its height, and its centre too far away to turn about. */
const PARABOLA_BULGE = 1e-4;

/** `count` + 1 points along a piece, evenly by length. */
export function samplesOf(piece: Piece, count: number): Point[] {
  const { from, to } = piece;
  const samples: Point[] = [];
  if (piece.kind === "line") {
    for (let i = 0; i <= count; i++) {
      const share = i / count;
      samples.push({ x: from.x * (1 - share) + to.x * share, y: from.y * (1 - share) + to.y * share });
    }
    return samples;
  }
  const height = (piece.bulge * Math.hypot(to.x - from.x, to.y - from.y)) / 2;
  const half = Math.hypot(to.x - from.x, to.y - from.y) / 2;
  const unitX = (to.x - from.x) / (2 * half);
  const unitY = (to.y - from.y) / (2 * half);
  if (Math.abs(piece.bulge) < PARABOLA_BULGE) {
    for (let i = 0; i <= count; i++) {
      const share = 2 * (i / count) - 1;
      const x = (from.x + to.x) / 2 + unitX * half * share + unitY * height * (1 - share * share);
      samples.push({
        x,
        y: (from.y + to.y) / 2 + unitY * half * share - unitX * height * (1 - share * share),
      });
    }
    return samples;
  }
  const radius = (half * half + height * height) / (2 * height);
  // The tip lies on the right of an anticlockwise arc's chord, the centre a radius back from it.
  const tip = { x: (from.x + to.x) / 2 + unitY * height, y: (from.y + to.y) / 2 - unitX * height };
  const centre = { x: tip.x - unitY * radius, y: tip.y + unitX * radius };
  const halfSweep = 2 * Math.atan2(height, half);
  for (let i = 0; i <= count; i++) {
    // Turned from the tip, which is nearest to all of it.
    const angle = halfSweep * (2 * (i / count) - 1);
    const x = tip.x - centre.x;
    const y = tip.y - centre.y;
    samples.push({
      x: centre.x + x * Math.cos(angle) - y * Math.sin(angle),
      y: centre.y + x * Math.sin(angle) + y * Math.cos(angle),
    });
  }
  return samples;
}

export function sampledLengthMm(piece: Piece, count: number): number {
  const samples = samplesOf(piece, count);
  let sum = 0;
  for (let i = 0; i < count; i++)
    sum += Math.hypot(samples[i + 1]!.x - samples[i]!.x, samples[i + 1]!.y - samples[i]!.y);
  return sum;
}

/** Area by the trapezoids under a fine polygon. */
export function sampledAreaMm2(run: Chain, count: number): number {
  let sum = 0;
  for (const piece of run.pieces) {
    const samples = samplesOf(piece, count);
    for (let i = 0; i < count; i++) {
      const a = samples[i]!;
      const b = samples[i + 1]!;
      sum += ((a.x - b.x) * (a.y + b.y)) / 2;
    }
  }
  return sum;
}

/** Is a point inside? By the sum of the angles under which the samples' steps are seen. */
export function sampledInside(run: Chain, p: Point, count: number): boolean {
  let turned = 0;
  for (const piece of run.pieces) {
    const samples = samplesOf(piece, count);
    for (let i = 0; i < count; i++) {
      const ax = samples[i]!.x - p.x;
      const ay = samples[i]!.y - p.y;
      const bx = samples[i + 1]!.x - p.x;
      const by = samples[i + 1]!.y - p.y;
      turned += Math.atan2(ax * by - ay * bx, ax * bx + ay * by);
    }
  }
  return Math.abs(turned) > Math.PI;
}

/** Distance of a point from a piece, over the chords of its samples. */
export function sampledDistanceMm(piece: Piece, p: Point, count: number): number {
  const samples = samplesOf(piece, count);
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < count; i++) least = Math.min(least, distanceToChord(samples[i]!, samples[i + 1]!, p));
  return least;
}

function distanceToChord(a: Point, b: Point, p: Point): number {
  const dx = b.x - a.x;
  const dy = b.y - a.y;
  const squared = dx * dx + dy * dy;
  const share = squared === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / squared));
  return Math.hypot(p.x - a.x - share * dx, p.y - a.y - share * dy);
}

export interface SampledMeeting {
  /** Places where chords of the two cross, mm. */
  readonly crossings: readonly Point[];
  /** The least sine of the angle between the chords that cross; 1 if none do. */
  readonly leastSine: number;
  /** The least distance from any end, or sample, of one to the other, mm. */
  readonly leastGapMm: number;
  /** The least distance from an end of one to the other, mm. */
  readonly leastEndGapMm: number;
}

/** How two pieces meet, as far as samples can tell. */
export function sampledMeeting(a: Piece, b: Piece, count: number): SampledMeeting {
  const samplesA = samplesOf(a, count);
  const samplesB = samplesOf(b, count);
  const crossings: Point[] = [];
  let leastSine = 1;
  let leastGapMm = Number.POSITIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) {
      const [p, q, r, s] = [samplesA[i]!, samplesA[i + 1]!, samplesB[j]!, samplesB[j + 1]!];
      leastGapMm = Math.min(leastGapMm, Math.hypot(p.x - r.x, p.y - r.y));
      const ux = q.x - p.x;
      const uy = q.y - p.y;
      const vx = s.x - r.x;
      const vy = s.y - r.y;
      const turn = ux * vy - uy * vx;
      if (turn === 0) continue;
      const t = ((r.x - p.x) * vy - (r.y - p.y) * vx) / turn;
      const u = ((r.x - p.x) * uy - (r.y - p.y) * ux) / turn;
      if (t < 0 || t >= 1 || u < 0 || u >= 1) continue;
      crossings.push({ x: p.x + ux * t, y: p.y + uy * t });
      leastSine = Math.min(leastSine, Math.abs(turn) / (Math.hypot(ux, uy) * Math.hypot(vx, vy)));
    }
  }
  const leastEndGapMm = Math.min(
    sampledDistanceMm(b, a.from, count),
    sampledDistanceMm(b, a.to, count),
    sampledDistanceMm(a, b.from, count),
    sampledDistanceMm(a, b.to, count),
  );
  return { crossings, leastSine, leastGapMm: Math.min(leastGapMm, leastEndGapMm), leastEndGapMm };
}
