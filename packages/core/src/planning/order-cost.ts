/** The whole cost of an order, cut by cut: what orders are compared by when one is held against all others. */
import type { Bench } from "./bench.ts";
import { type Draft, isCurved } from "./draft-cut.ts";
import { keptEdgeCost } from "./kept-edge.ts";
import { costOf, placeCost } from "./order.ts";
import { rowCost } from "./row-cost.ts";
import { heavyCost } from "./sequence.ts";
import type { TriedCut } from "./try-cut.ts";

/** Before the first curve. */
export const NO_CURVE = -1;

/** The order's weights, heavy curved cuts, and where each curve stands from the one before. */
export function wholeCost(bench: Bench, cuts: readonly TriedCut[]): number {
  let cost = 0;
  let last: TriedCut | undefined;
  let lastCurve = NO_CURVE;
  const before: Draft[] = [];
  for (const cut of cuts) {
    cost += stepCost(bench, cut, last, lastCurve) + rowCost(bench, cut.draft, before);
    cost += keptEdgeCost(bench, cut, cut.before);
    before.push(cut.draft);
    last = cut;
    lastCurve = curveAfter(bench, cut.draft, lastCurve);
  }
  return cost;
}

/** What one cut adds by itself and by the cut before it, following `last`, the curve worked last being `lastCurve`. */
export function stepCost(bench: Bench, cut: TriedCut, last: TriedCut | undefined, lastCurve: number): number {
  const own = costOf(bench, [cut], last) + heavyCost(cut);
  const curve = curveAfter(bench, cut.draft, lastCurve);
  if (curve === lastCurve || cut.draft.kind !== "plane") return own;
  return own + placeCost(bench, lastCurve, curve, cut.draft);
}

/** The curve worked last, as its place among the curves of the face, once this cut is made. */
export function curveAfter(bench: Bench, draft: Draft, before: number): number {
  if (draft.kind !== "plane" || !isCurved(draft)) return before;
  const curve = bench.worked
    .filter((piece) => piece.curve)
    .findIndex((piece) => draft.shapes.includes(piece.index));
  return curve < 0 ? before : curve;
}
