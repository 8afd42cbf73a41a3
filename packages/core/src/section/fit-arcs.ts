/**
 * The fewest arcs and lines that stay within a tolerance of a free curve.
 *
 * A shortest path over break points that lie on the curve (Drysdale, Rote, Sturm, Computational Geometry 41, 2008): an
 * arc may stand between two break points if it passes every point between within the tolerance. Among the ways with
 * the fewest pieces the one with the smallest tangent breaks is taken, shelf radii before others, then the closest.
 */
import { type Chain, chain, type Point } from "../curve/index.ts";
import { bug, requirePositive } from "../measure/index.ts";
import { fewestPieces, type Span } from "./fit-path.ts";
import { type CurvePoints, curvePoints, pieceOfHeight, spanDeviationMm } from "./fit-span.ts";
import { keptPoints } from "./thin-out.ts";

export interface FitOptions {
  /** How far the arcs may lie from the curve, either way, mm. */
  readonly tolMm: number;
  /** Radii that are on the shelf, mm: taken where they lie within the tolerance too. */
  readonly radiiMm?: readonly number[];
  /** Lines and arcs of these radii only, in however many pieces that takes. */
  readonly onlyRadii?: boolean;
  /** Direction in which the curve leaves its start, radians; a neighbour that it should run on from. */
  readonly startRad?: number;
  /** Direction in which the curve comes to its end, radians. */
  readonly endRad?: number;
}

export interface ArcFit {
  readonly chain: Chain;
  /** Index of the point of the curve at which each piece starts, and of the last point. */
  readonly breaks: readonly number[];
  /** Greatest distance between curve and arcs, both ways, mm: at most the tolerance. */
  readonly deviationMm: number;
}

/** Share of the tolerance that the curve is thinned by before the search; the arcs are fitted that much closer. */
const THINNED_RATIO = 0.02;

/** More break points than this are thinned on: the search looks at every pair. */
const MOST_BREAK_POINTS = 400;

/** Shares of the tolerance by which break points are thinned further, one after the other. */
const COARSER_RATIOS = [0.05, 0.1, 0.25, 0.5] as const;

/** In the second search, how many points of the curve to either side of a break may take its place. */
const MOST_BESIDE_A_BREAK = 40;

/**
 * Fits arcs to a curve given as a fine run of points (its own chord error is the caller's and adds to the result's).
 *
 * Break points are points of the curve; arcs turn by at most a half circle. The result always exists: in the worst
 * case it is the curve's own lines. Fewest: over the break points that are tried (all of them up to 400, else a choice
 * of about as many; a run so ragged that more are needed may get some more pieces) and a tolerance less 2 %, the share by which the curve is thinned first.
 * Fewer than two points, neighbours that are one point, or a tolerance that is not positive: a bug.
 */
export function fitArcs(points: readonly Point[], options: FitOptions): ArcFit {
  requirePositive("tolMm", options.tolMm);
  if (points.length < 2) bug("a curve needs two points", { count: points.length });
  const all = curvePoints(points);
  const kept = keptPoints(points, THINNED_RATIO * options.tolMm);
  const search = { ...options, tolMm: (1 - THINNED_RATIO) * options.tolMm };
  const coarse = fewestPieces(all, kept, breakPoints(points, kept, options.tolMm), search);
  // The join that was drawn may have been thinned away: search again among all points beside the breaks found.
  const fine = fewestPieces(all, kept, pointsBeside(coarse, kept), search);
  return fitOf(all, fine);
}

function breakPoints(points: readonly Point[], kept: readonly number[], tolMm: number): readonly number[] {
  let chosen = kept;
  for (const ratio of COARSER_RATIOS) {
    if (chosen.length <= MOST_BREAK_POINTS) break;
    chosen = keptPoints(points, ratio * tolMm);
  }
  return chosen;
}

/** For each break found, the points of the curve as far as the kept points to either side, thinned to an even choice. */
function pointsBeside(spans: readonly Span[], kept: readonly number[]): readonly number[] {
  const chosen = new Set<number>();
  for (const span of spans) {
    chosen.add(span.first);
    chosen.add(span.last);
  }
  for (const span of spans.slice(1)) {
    const place = kept.indexOf(span.first);
    const from = kept[place - 1] ?? span.first;
    const to = kept[place + 1] ?? span.first;
    const every = Math.max(1, Math.ceil((to - from) / (2 * MOST_BESIDE_A_BREAK)));
    for (let index = from; index <= to; index += every) chosen.add(index);
  }
  return [...chosen].sort((a, b) => a - b);
}

function fitOf(all: CurvePoints, spans: readonly Span[]): ArcFit {
  const deviations = spans.map((span) => spanDeviationMm(all, span.first, span.last, span.heightMm));
  return {
    chain: chain(spans.map((span) => pieceOfHeight(all, span.first, span.last, span.heightMm))),
    breaks: [...spans.map((span) => span.first), spans.at(-1)?.last ?? 0],
    deviationMm: Math.max(...deviations),
  };
}
