/** The search of `fitArcs`: the fewest spans from the first to the last break point, then the best of those ways. */
import { bug, normaliseRad, SAME_POINT_MM, toDeg } from "../measure/index.ts";
import {
  type CurvePoints,
  curvePoints,
  type HeightRange,
  heightOfRadiusMm,
  heightRange,
  spanDeviationMm,
} from "./fit-span.ts";

/** One piece: from point `first` to point `last` of the whole curve, as an arc of that height over its chord. */
export interface Span {
  readonly first: number;
  readonly last: number;
  readonly heightMm: number;
}

export interface PathOptions {
  readonly tolMm: number;
  readonly radiiMm?: readonly number[];
  readonly onlyRadii?: boolean;
  readonly startRad?: number;
  readonly endRad?: number;
}

/** What a way costs beside its number of pieces: five degrees of a break weigh as much as a radius off the shelf. */
const COST_PER_BREAK_DEG = 0.2;
/** Where every radius is on the shelf anyway, a smooth run is what is left to ask for. */
const COST_PER_BREAK_DEG_ON_SHELF = 1;
const COST_OFF_SHELF = 1;
/** A break this large is a corner of the drawing: bending the pieces beside it a little makes it no less of one. */
const CORNER_DEG = 15;
/** Lying at the tolerance's limit, against lying on the curve. */
const COST_OF_DEVIATION = 1;

/** Where in the range of possible heights an arc is tried, besides the best one, shelf radii and a line. */
const TRIED_SHARES = [0.1, 0.3, 0.5, 0.7, 0.9] as const;

/** Share of the tolerance within which a stretch is straight, where only radii of the shelf are taken. */
const STRAIGHT_SHARE = 0.1;

/** How many ways to come to one break point are kept, those with the least cost among unlike directions. */
const MOST_WAYS = 12;
const UNLIKE_DEG = 0.1;

/**
 * The fewest spans over the break points `breaks` (indices into `all`, first and last point among them), tested
 * against the points `tested` and the break points. Neighbouring break points can always be joined if every tested
 * point lies within the tolerance of the line between them; otherwise it is a bug of the caller's choice.
 */
export function fewestPieces(
  all: CurvePoints,
  tested: readonly number[],
  breaks: readonly number[],
  options: PathOptions,
): readonly Span[] {
  const indices = [...new Set([...tested, ...breaks])].sort((a, b) => a - b);
  const curve = curvePoints(
    indices.map((index) => ({ x: all.xs[index] as number, y: all.ys[index] as number })),
  );
  const placeOf = new Map(indices.map((index, place) => [index, place]));
  const nodes = breaks.map((index) => placeOf.get(index) as number);
  const search = new PathSearch(curve, nodes, options);
  return search.best().map((span) => ({
    ...span,
    first: indices[span.first] as number,
    last: indices[span.last] as number,
  }));
}

/**
 * Past so many break points (a ragged run, a scan) a start is given up after so many ends in a row that it does not
 * reach: the pieces may then be some more than the fewest, but thousands of points take less than a second, not half a
 * minute.
 */
const PATIENT_UP_TO = 400;
const MISSES_BEFORE_GIVING_UP = 50;

/** A way to come to a node: what it cost, in which direction it arrives, and the way before. */
interface Way {
  readonly cost: number;
  readonly arrivesRad: number;
  readonly span: Span;
  readonly before: Way | null;
}

interface Candidate {
  readonly span: Span;
  readonly leavesRad: number;
  readonly arrivesRad: number;
  readonly cost: number;
}

class PathSearch {
  private readonly curve: CurvePoints;
  private readonly nodes: readonly number[];
  private readonly options: PathOptions;
  private readonly ranges = new Map<number, HeightRange>();

  constructor(curve: CurvePoints, nodes: readonly number[], options: PathOptions) {
    this.curve = curve;
    this.nodes = nodes;
    this.options = options;
  }

  best(): readonly Span[] {
    const fromStart = this.layers(
      (node) => node,
      (a, b) => this.range(a, b),
    );
    const end = this.nodes.length - 1;
    const fewest = fromStart[end];
    if (fewest === undefined || !Number.isFinite(fewest))
      return bug("break points stand too far apart", { nodes: end });
    const toEnd = this.layers(
      (node) => end - node,
      (a, b) => this.range(b, a),
      fromStart,
      fewest,
    );
    return this.bestWay(fromStart, toEnd, fewest);
  }

  /**
   * Least number of spans from node 0 (or, counted backwards, from the last) to each node. Given the counts from the other
   * side, nodes that lie on no way with `fewest` spans are left out (infinite).
   */
  private layers(
    nodeAt: (step: number) => number,
    rangeOf: (from: number, to: number) => HeightRange | null,
    other?: readonly number[],
    fewest = Number.POSITIVE_INFINITY,
  ): readonly number[] {
    const total = this.nodes.length;
    const counts = new Array<number>(total).fill(Number.POSITIVE_INFINITY);
    counts[nodeAt(0)] = 0;
    // Backwards only ends of the right count are asked, and the way found forwards has to be found again.
    const mostMisses = other === undefined && total > PATIENT_UP_TO ? MISSES_BEFORE_GIVING_UP : total;
    let layer: readonly number[] = [0];
    for (let count = 1; layer.length > 0 && count <= Math.min(fewest, total); count++) {
      const next = new Set<number>();
      for (const from of layer) {
        let misses = 0;
        for (let step = from + 1; step < total && misses <= mostMisses; step++) {
          const node = nodeAt(step);
          if (Number.isFinite(counts[node]) || next.has(step)) continue;
          if (other !== undefined && (other[node] as number) + count !== fewest) continue;
          if (rangeOf(nodeAt(from), node) === null) misses++;
          else {
            misses = 0;
            next.add(step);
          }
        }
      }
      for (const step of next) counts[nodeAt(step)] = count;
      if (Number.isFinite(counts[nodeAt(total - 1)]) && other === undefined) break;
      layer = [...next].sort((a, b) => a - b);
    }
    return counts;
  }

  /** The heights allowed from node to node. Only those that exist are kept: a ragged run has millions that do not. */
  private range(from: number, to: number): HeightRange | null {
    const key = from * this.nodes.length + to;
    const known = this.ranges.get(key);
    if (known !== undefined) return known;
    const range = this.testedRange(from, to);
    if (range !== null) this.ranges.set(key, range);
    return range;
  }

  private testedRange(from: number, to: number): HeightRange | null {
    const [first, last] = [this.nodes[from] as number, this.nodes[to] as number];
    const range = heightRange(this.curve, first, last, this.options.tolMm);
    if (range === null) return null;
    // The range holds at the points; that the edges between them and the arc's ends keep to it too is asked here.
    const { leastMm, mostMm, bestMm } = range;
    const flattestMm = Math.min(mostMm, Math.max(leastMm, 0));
    const tried = this.options.onlyRadii
      ? this.shelfHeights(range.halfChordMm).filter((heightMm) => heightMm >= leastMm && heightMm <= mostMm)
      : [bestMm, flattestMm, (leastMm + mostMm) / 2];
    const isNext = to - from === 1 || from - to === 1;
    const soundMm = tried.find(
      (heightMm) => spanDeviationMm(this.curve, first, last, heightMm) <= this.mostOffMm(heightMm, isNext),
    );
    return soundMm === undefined ? null : { ...range, bestMm: soundMm };
  }

  private bestWay(fromStart: readonly number[], toEnd: readonly number[], fewest: number): readonly Span[] {
    const onAWay = (node: number) => (fromStart[node] as number) + (toEnd[node] as number) === fewest;
    const ways = new Map<number, readonly Way[]>();
    const end = this.nodes.length - 1;
    for (let to = 1; to <= end; to++) {
      if (!onAWay(to)) continue;
      const arriving: Way[] = [];
      for (let from = 0; from < to; from++) {
        if (!onAWay(from) || (fromStart[from] as number) + 1 !== fromStart[to]) continue;
        const range = this.range(from, to);
        if (range === null) continue;
        const before = ways.get(from) ?? [];
        for (const candidate of this.candidates(from, to, range)) {
          const way = this.extend(candidate, before, to === end);
          if (way !== null) arriving.push(way);
        }
      }
      ways.set(to, fewUnlike(arriving));
    }
    const best = ways.get(end)?.[0];
    return best === undefined ? bug("no way through the break points", { fewest }) : spansOf(best);
  }

  private extend(candidate: Candidate, before: readonly Way[], isLast: boolean): Way | null {
    const { startRad, endRad, onlyRadii } = this.options;
    const perDeg = onlyRadii ? COST_PER_BREAK_DEG_ON_SHELF : COST_PER_BREAK_DEG;
    const endCost = isLast && endRad !== undefined ? perDeg * breakDeg(candidate.arrivesRad, endRad) : 0;
    const own = candidate.cost + endCost;
    const { span, arrivesRad } = candidate;
    if (span.first === 0) {
      const cost = own + (startRad === undefined ? 0 : perDeg * breakDeg(startRad, candidate.leavesRad));
      return { cost, arrivesRad, span, before: null };
    }
    let best: Way | null = null;
    for (const way of before) {
      const cost = way.cost + perDeg * breakDeg(way.arrivesRad, candidate.leavesRad) + own;
      if (best === null || cost < best.cost) best = { cost, arrivesRad, span, before: way };
    }
    return best;
  }

  /**
   * How far a piece of this height may lie off. Where only radii of the shelf are taken, a line stands for what is
   * straight and not for a shallow bend; neighbouring points can be joined by one whatever the curve.
   */
  private mostOffMm(heightMm: number, isNext: boolean): number {
    const { tolMm, onlyRadii } = this.options;
    return onlyRadii && heightMm === 0 && !isNext ? STRAIGHT_SHARE * tolMm : tolMm;
  }

  /** Heights over a chord of a line and of arcs with a radius of the shelf, to either side. */
  private shelfHeights(halfChordMm: number): readonly number[] {
    const arcs = (this.options.radiiMm ?? []).flatMap((radiusMm) => {
      const heightMm = heightOfRadiusMm(radiusMm, halfChordMm);
      return heightMm === null ? [] : [heightMm, -heightMm];
    });
    return [0, ...arcs];
  }

  /** The arcs tried between two nodes: the closest, a line, shelf radii, and some more across the range. */
  private candidates(from: number, to: number, range: HeightRange): readonly Candidate[] {
    const { leastMm, mostMm, bestMm, halfChordMm } = range;
    const [first, last] = [this.nodes[from] as number, this.nodes[to] as number];
    const onShelf = new Set(this.shelfHeights(halfChordMm));
    const between = TRIED_SHARES.map((share) => leastMm + share * (mostMm - leastMm));
    const tried = this.options.onlyRadii ? [...onShelf] : [bestMm, ...onShelf, ...between];
    const chordRad = Math.atan2(
      (this.curve.ys[last] as number) - (this.curve.ys[first] as number),
      (this.curve.xs[last] as number) - (this.curve.xs[first] as number),
    );
    return tried.flatMap((heightMm) => {
      if (heightMm < leastMm || heightMm > mostMm) return [];
      const offMm = spanDeviationMm(this.curve, first, last, heightMm);
      if (offMm > this.mostOffMm(heightMm, to - from === 1)) return [];
      const leanRad = 2 * Math.atan(heightMm / halfChordMm);
      const offShelf = this.options.radiiMm !== undefined && !onShelf.has(heightMm);
      return [
        {
          span: { first, last, heightMm: Math.abs(heightMm) <= SAME_POINT_MM ? 0 : heightMm },
          leavesRad: chordRad + leanRad,
          arrivesRad: chordRad - leanRad,
          cost: COST_OF_DEVIATION * (offMm / this.options.tolMm) ** 2 + (offShelf ? COST_OFF_SHELF : 0),
        },
      ];
    });
  }
}

function breakDeg(beforeRad: number, afterRad: number): number {
  return Math.min(CORNER_DEG, Math.abs(toDeg(normaliseRad(afterRad - beforeRad))));
}

/** The cheapest ways, no two of which arrive in nearly one direction. */
function fewUnlike(ways: readonly Way[]): readonly Way[] {
  const kept: Way[] = [];
  for (const way of [...ways].sort((a, b) => a.cost - b.cost)) {
    const like = kept.some(
      (one) => Math.abs(toDeg(normaliseRad(one.arrivesRad - way.arrivesRad))) < UNLIKE_DEG,
    );
    if (!like) kept.push(way);
    if (kept.length === MOST_WAYS) break;
  }
  return kept;
}

function spansOf(way: Way): readonly Span[] {
  const spans: Span[] = [];
  for (let at: Way | null = way; at !== null; at = at.before) spans.push(at.span);
  return spans.reverse();
}
