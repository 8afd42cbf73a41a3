/** Bands of reeds or flutes that keep to a width: from what their lines are taken, and how true the width comes out. */
import { type Point, pointAt } from "../curve/index.ts";
import type { PlanBand } from "../cutting/index.ts";
import { SAME_SCORE } from "../measure/index.ts";
import type { Section } from "../section/index.ts";
import type { HandAccuracy } from "./accuracy.ts";
import { type Bench, curvesAt } from "./bench.ts";
import { isCurved, type PlaneDraft, tidy } from "./draft-cut.ts";
import {
  type BandLines,
  type LinesFrom,
  type PlacedCut,
  type PlacedLines,
  placedLines,
  soleSpread,
  toThousandths,
} from "./marks.ts";
import { apart, type Spread, spreadMm, together } from "./spread.ts";
import type { TriedCut } from "./try-cut.ts";

interface BandPieces {
  readonly name: string;
  /** Places in the planned ring. */
  readonly arcs: readonly number[];
}

export interface LinesAndBands extends PlacedLines {
  readonly bands: readonly PlanBand[];
}

/**
 * All lines of a plan, those of each band taken so that the band's width has the smaller expected error. A row that is
 * drawn, or made of plain reeds, is no band: nothing says that it must keep to a width.
 */
export function linesAndBands(
  bench: Bench,
  section: Section,
  cuts: readonly TriedCut[],
  hand: HandAccuracy,
): LinesAndBands {
  const rows = bandsOf(bench, section);
  if (rows.length === 0) return { ...placedLines(bench, cuts, hand), bands: [] };
  const inBand = (from: LinesFrom): BandLines => {
    return (piece) => (rows.some((row) => row.arcs.includes(piece)) ? from : null);
  };
  const byEdge = placedLines(bench, cuts, hand, inBand("gauge edge")).cuts;
  const byFoot = placedLines(bench, cuts, hand, inBand("foot")).cuts;
  const chosen = new Map<number, LinesFrom>();
  for (const row of rows) {
    const edgeMm = widthErrorMm(bench, row, cuts, byEdge, hand);
    const footMm = widthErrorMm(bench, row, cuts, byFoot, hand);
    if (edgeMm === null || footMm === null) continue;
    const from = footMm < edgeMm - SAME_SCORE ? "foot" : "gauge edge";
    for (const arc of row.arcs) chosen.set(arc, from);
  }
  const lines = placedLines(bench, cuts, hand, (piece) => chosen.get(piece) ?? null);
  const bands = rows.flatMap((row) =>
    planBand(bench, row, cuts, { taken: lines.cuts, byEdge, byFoot, hand }),
  );
  return { ...lines, bands };
}

function bandsOf(bench: Bench, section: Section): BandPieces[] {
  return bandsDrawn(section)
    .map(({ name, middles }) => ({ name, arcs: curvesAt(bench.worked, middles) }))
    .filter((row) => row.arcs.length > 0);
}

/** The bands of a section with the middles of their parts, as drawn. */
export function bandsDrawn({
  outline,
  named,
}: Section): readonly { readonly name: string; readonly middles: readonly Point[] }[] {
  const total = outline.pieces.length;
  return named
    .filter((span) => span.kind === "band")
    .map(({ name, first, count }) => ({
      name,
      middles: Array.from({ length: count }, (_, i) => pointAt(outline.pieces[(first + i) % total], 0.5)),
    }));
}

interface Maker {
  readonly number: number;
  readonly draft: PlaneDraft;
}

/** The curved cut that finished a piece, or null. */
function makerOf(cuts: readonly TriedCut[], piece: number): Maker | null {
  for (let i = cuts.length - 1; i >= 0; i--) {
    const { draft } = cuts[i];
    if (draft.kind === "plane" && isCurved(draft) && draft.shapes.includes(piece))
      return { number: i + 1, draft };
  }
  return null;
}

/** The two outermost ends of a row, left and right, each with the cut it was made by; null where one is not cut. */
function outerEnds(bench: Bench, row: BandPieces, cuts: readonly TriedCut[]) {
  const makers = row.arcs.map((arc) => makerOf(cuts, arc));
  if (makers.some((maker) => maker === null)) return null;
  const ends = row.arcs.flatMap((arc) => {
    const maker = makerOf(cuts, arc);
    const piece = bench.planned.pieces[arc];
    return maker ? [0, 1].map((t) => ({ at: pointAt(piece, t), maker })) : [];
  });
  const left = ends.reduce((a, b) => (b.at.x < a.at.x ? b : a));
  const right = ends.reduce((a, b) => (b.at.x > a.at.x ? b : a));
  const numbers = [...new Set(makers.flatMap((maker) => maker?.number ?? []))].sort((a, b) => a - b);
  return { left, right, numbers };
}

function widthErrorMm(
  bench: Bench,
  row: BandPieces,
  cuts: readonly TriedCut[],
  placed: readonly PlacedCut[],
  hand: HandAccuracy,
): number | null {
  const ends = outerEnds(bench, row, cuts);
  if (!ends) return null;
  const spread = ({ at, maker }: { readonly at: Point; readonly maker: Maker }): Spread => {
    const cut = placed[maker.number - 1];
    const sole = soleSpread(maker.draft, at.x, hand);
    return cut ? together(cut.taken, sole) : sole;
  };
  return spreadMm(apart(spread(ends.right), spread(ends.left)));
}

function planBand(
  bench: Bench,
  row: BandPieces,
  cuts: readonly TriedCut[],
  placed: {
    readonly taken: readonly PlacedCut[];
    readonly byEdge: readonly PlacedCut[];
    readonly byFoot: readonly PlacedCut[];
    readonly hand: HandAccuracy;
  },
): PlanBand[] {
  const ends = outerEnds(bench, row, cuts);
  if (!ends) return [];
  const error = (way: readonly PlacedCut[]) =>
    toThousandths(widthErrorMm(bench, row, cuts, way, placed.hand) ?? 0);
  const errorFromEdge = error(placed.byEdge);
  const errorFromFoot = error(placed.byFoot);
  const from = ends.left.at;
  const to = ends.right.at;
  const taken = error(placed.taken);
  return [
    {
      name: row.name,
      from: [tidy(from.x), tidy(from.y)],
      to: [tidy(to.x), tidy(to.y)],
      width: tidy(to.x - from.x),
      cuts: ends.numbers,
      linesFrom: taken === errorFromFoot && errorFromFoot < errorFromEdge ? "foot" : "gauge edge",
      error: taken,
      errorFromEdge,
      errorFromFoot,
    },
  ];
}
