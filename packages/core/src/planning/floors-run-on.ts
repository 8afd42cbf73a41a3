/**
 * Floors run on: a flat plane that finishes a level stretch of the section taken on, in further widths, over all that
 * lies lower beside it, out of the wood. What else would be left standing between two floors goes with it.
 */
import type { Region } from "../curve/index.ts";
import { leanDeg, type Run, turned, turnOf } from "../cutting/index.ts";
import { OVERCUT_MM } from "../measure/index.ts";
import type { Bench, Tool } from "./bench.ts";
import { type PlaneDraft, planeDraft, poseAt } from "./draft-cut.ts";
import { type FloorSpan, floorSpan } from "./flats.ts";
import { cantFor } from "./turning.ts";
import type { WorkedPiece } from "./worked-piece.ts";

/** Widths in which a floor is run on, at most. */
const MOST_WIDTHS = 3;
/** How far the widths lap over one another, share of the sole. */
const LAP_RATIO = 0.1;
/** Planes that are tried for one stretch, at most. */
const MOST_PLANES = 2;

/** Every way to cut a level piece that takes along all that lies lower on one side of it; the fewest widths first. */
export function floorsRunOn(bench: Bench, piece: WorkedPiece): PlaneDraft[] {
  const span = floorSpan(bench, piece);
  const cantDeg = cantFor(bench, span.tiltDeg);
  if (cantDeg === null || Math.abs(leanDeg(span.tiltDeg, cantDeg)) >= bench.limits.leaningFromDeg) return [];
  return stretchesBeside(bench.startRegion, span).flatMap(({ nearMm, farMm }) =>
    bench.tools
      .filter(({ plane }) => plane.kind === "rebate" || plane.kind === "moving fillister")
      .flatMap((tool) => runsOver(tool, nearMm, farMm) ?? [])
      .sort((a, b) => a.shifts.length - b.shifts.length || a.tool.sole.widthMm - b.tool.sole.widthMm)
      .slice(0, MOST_PLANES)
      .map(({ tool, shifts }) => {
        const runs = shifts.map((shift): Run => [poseAt(span.tiltDeg, shift, span.heightMm)]);
        return planeDraft(bench, {
          work: "step",
          purpose: "shape",
          cantDeg,
          shapes: [piece.index],
          tool,
          runs,
        });
      }),
  );
}

interface Stretch {
  /** Where the plane's wall comes to stand, and where the wood ends on its other side, in its upright frame. */
  readonly nearMm: number;
  readonly farMm: number;
}

/** From the stretch's own end, and from the rise beyond it where the section lies lower there too, out of the wood. */
function stretchesBeside(wood: Region, span: FloorSpan): Stretch[] {
  const { leftMm, rightMm, leftStopMm, rightStopMm } = span;
  const reach = reachAbove(wood, span);
  const found: Stretch[] = [];
  if (rightStopMm > reach.high) {
    for (const nearMm of nearEnds(leftMm, leftStopMm)) found.push({ nearMm, farMm: reach.high });
  }
  if (leftStopMm < reach.low) {
    for (const nearMm of nearEnds(rightMm, rightStopMm)) found.push({ nearMm, farMm: reach.low });
  }
  return found;
}

function nearEnds(endMm: number, stopMm: number): number[] {
  return Number.isFinite(stopMm) && Math.abs(stopMm - endMm) > OVERCUT_MM ? [endMm, stopMm] : [endMm];
}

/** How far to either side wood stands above a floor. */
function reachAbove(wood: Region, { tiltDeg, heightMm }: FloorSpan) {
  const turn = turnOf(tiltDeg);
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const meet = (x: number) => {
    low = Math.min(low, x);
    high = Math.max(high, x);
  };
  for (const { xs, ys } of wood) {
    const ring = Array.from(xs, (x, i) => turned(turn, { x, y: ys[i] as number }));
    for (const [i, a] of ring.entries()) {
      const b = ring[(i + 1) % ring.length] as typeof a;
      if (a.y > heightMm) meet(a.x);
      if (a.y > heightMm !== b.y > heightMm) meet(a.x + ((b.x - a.x) * (heightMm - a.y)) / (b.y - a.y));
    }
  }
  return { low, high };
}

/** Places across of a sole from its wall out of the wood, the outermost first; null where it takes too many widths. */
function runsOver(
  tool: Tool,
  nearMm: number,
  farMm: number,
): { readonly tool: Tool; readonly shifts: readonly number[] } | null {
  const { widthMm, leftMm, rightMm, cutsWall } = tool.sole;
  const side = farMm > nearMm ? 1 : -1;
  if (!(side > 0 ? cutsWall.left : cutsWall.right)) return null;
  const lap = widthMm * LAP_RATIO;
  const count = Math.max(1, Math.ceil((Math.abs(farMm - nearMm) - lap) / (widthMm - lap)));
  if (count > MOST_WIDTHS) return null;
  const own = nearMm - (side > 0 ? leftMm : rightMm);
  const shifts = Array.from({ length: count }, (_, i) => own + side * i * (widthMm - lap));
  return { tool, shifts: shifts.reverse() };
}
