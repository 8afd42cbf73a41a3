/** How far two parts that meet may stand out from each other across, from where their cuts come to lie. */
import type { Point } from "../curve/index.ts";
import type { PlanJoin } from "../cutting/index.ts";
import type { HandAccuracy } from "./accuracy.ts";
import type { Bench } from "./bench.ts";
import { endsInPlace, isCurved } from "./draft-cut.ts";
import { type PlacedCut, soleSpread, toThousandths } from "./marks.ts";
import { apart, NO_SPREAD, type Spread, spreadMm, together } from "./spread.ts";
import type { TriedCut } from "./try-cut.ts";

export type JoinErrors = Pick<PlanJoin, "error" | "errorFromEdge" | "errorFromFoot">;

/** One of the two parts at a join: the cut that places it, and what its own sole adds there. */
interface Side {
  readonly cut: PlacedCut;
  readonly sole: Spread;
}

export interface Placement {
  readonly cuts: readonly TriedCut[];
  readonly placed: readonly PlacedCut[];
  readonly hand: HandAccuracy;
}

/**
 * The error of the join that begins the piece at this place of the planned ring: as the lines are taken, and both ways
 * for the later of its two cuts. A level floor stands nowhere across, so beside one the other part's own place counts.
 */
export function joinErrors(bench: Bench, placement: Placement, piece: number, at: Point): JoinErrors {
  const count = bench.planned.pieces.length;
  const sides = [(piece + count - 1) % count, piece].flatMap((index) => sideOf(bench, placement, index, at));
  const [one, other] = sides;
  if (!one) return plainError(placement.hand);
  // Both parts made by one cut move together; what is left is where they came to lie.
  if (!other || other.cut.number === one.cut.number) return bothWays(one, null);
  return one.cut.number > other.cut.number ? bothWays(one, other) : bothWays(other, one);
}

function bothWays(later: Side, earlier: Side | null): JoinErrors {
  const stands = earlier ? together(earlier.cut.taken, earlier.sole) : NO_SPREAD;
  const error = (way: Spread) => toThousandths(spreadMm(apart(together(way, later.sole), stands)));
  const { taken, fromEdge, fromFoot } = later.cut;
  return {
    error: error(taken),
    errorFromEdge: error(fromEdge),
    ...(fromFoot ? { errorFromFoot: error(fromFoot) } : {}),
  };
}

/** Where nothing places the parts across, a line is scribed and cut to by hand. */
function plainError({ gaugeMm, lineMm, sidewaysMm }: HandAccuracy): JoinErrors {
  return { error: toThousandths(Math.hypot(gaugeMm, lineMm, sidewaysMm)) };
}

function sideOf(bench: Bench, { cuts, placed, hand }: Placement, index: number, at: Point): Side[] {
  if (isLevel(bench, index)) return [];
  for (let i = cuts.length - 1; i >= 0; i--) {
    const { draft } = cuts[i];
    const cut = placed[i];
    if (!cut || !draft.shapes.includes(index)) continue;
    const curved = draft.kind === "plane" && isCurved(draft);
    return [{ cut, sole: curved ? soleSpread(draft, at.x, hand) : NO_SPREAD }];
  }
  const made = cuts.findIndex((cut) => endsAt(cut, at));
  const cut = placed[made];
  return cut ? [{ cut, sole: NO_SPREAD }] : [];
}

function isLevel(bench: Bench, index: number): boolean {
  const worked = bench.worked.find((one) => one.index === index);
  if (!worked || worked.curve) return false;
  const tilt = Math.abs(worked.startTiltDeg);
  return tilt < LEVEL_DEG || tilt > 180 - LEVEL_DEG;
}

const LEVEL_DEG = 1;

/** Whether a flat plane's or a snipe bill's sole ended on this upright line: it made the wall there. */
function endsAt({ draft }: TriedCut, at: Point): boolean {
  if (draft.kind !== "plane" || isCurved(draft)) return false;
  return draft.runs.some((run) => {
    const ends = endsInPlace(draft, run[0]);
    return [ends.left, ends.right].some((end) => Math.abs(end.x - at.x) < ON_THE_LINE_MM);
  });
}

const ON_THE_LINE_MM = 0.1;
