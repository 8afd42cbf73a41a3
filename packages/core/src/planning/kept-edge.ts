/**
 * An edge that the maker wants kept square as long as can be, as a bearing for gauge and fence or because it meets
 * something: which cuts touch it, and what it costs to go on once it is touched. What a cut touches is told from the
 * edge's own side of the stick, from back to face: a cut that takes any of it touches the edge, and so does one that
 * shapes, or helps to shape, a part that ends on that side.
 */
import type { Region } from "../curve/index.ts";
import { spansAlong } from "../cutting/index.ts";
import { BESIDE_MM } from "../measure/index.ts";
import type { Bench } from "./bench.ts";
import type { Draft } from "./draft-cut.ts";
import type { KeptEdge } from "./edges-to-keep.ts";
import type { TriedCut } from "./try-cut.ts";

/** Less than this gone from a side is no more than a stroke of the plane that squares it, mm. */
const UNTOUCHED_MM = 0.05;

/** How much of an edge's side stands, mm of its height. */
export function sideMm(bench: Bench, wood: Region, edge: KeptEdge): number {
  const { minX, maxX, minY } = bench.box;
  const isLeft = (edge === "gauge edge") === (bench.gaugeEdge === "left");
  const x = isLeft ? minX + BESIDE_MM : maxX - BESIDE_MM;
  return spansAlong(wood, { x, y: minY - BELOW_MM }, { x: 0, y: 1 }).reduce(
    (sum, [from, to]) => sum + to - from,
    0,
  );
}

const BELOW_MM = 1;

/** Whether the edge still is as it was when the work began. */
export function isUntouched(bench: Bench, wood: Region, edge: KeptEdge): boolean {
  return sideMm(bench, wood, edge) > sideMm(bench, bench.startRegion, edge) - UNTOUCHED_MM;
}

/** Whether a cut takes some of an edge's side, or works a part that ends there. */
export function touchesEdge(bench: Bench, { draft, before, after }: TriedCut, edge: KeptEdge): boolean {
  if (sideMm(bench, before, edge) - sideMm(bench, after, edge) > UNTOUCHED_MM) return true;
  return draft.kind === "plane" && piecesOf(draft).some((index) => endsOn(bench, index, edge));
}

/** The parts (places in the planned ring) that a cut shapes or helps to shape. */
function piecesOf(draft: Extract<Draft, { kind: "plane" }>): readonly number[] {
  const helped = draft.onLine?.forPiece ?? draft.roomFor;
  return helped === undefined ? draft.shapes : [...draft.shapes, helped];
}

function endsOn(bench: Bench, index: number, edge: KeptEdge): boolean {
  const piece = bench.planned.pieces[index];
  const isLeft = (edge === "gauge edge") === (bench.gaugeEdge === "left");
  const x = isLeft ? bench.box.minX : bench.box.maxX;
  return piece !== undefined && [piece.from, piece.to].some((end) => Math.abs(end.x - x) < UNTOUCHED_MM);
}

/** Whether a cut touches any edge that is to be kept. */
export function touchesKept(bench: Bench, cut: TriedCut): boolean {
  return bench.keptEdges.some((edge) => touchesEdge(bench, cut, edge));
}

/** What a cut costs that is made when an edge to be kept is touched already, and does not itself belong to such an edge. */
export function keptEdgeCost(bench: Bench, cut: TriedCut, woodBefore: Region): number {
  // A saw follows its line, whatever became of the edge.
  if (cut.draft.kind === "saw") return 0;
  const gone = bench.keptEdges.filter((edge) => !isUntouched(bench, woodBefore, edge));
  return gone.length === 0 || touchesKept(bench, cut) ? 0 : gone.length * bench.weights.edgeGone;
}
