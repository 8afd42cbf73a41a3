/**
 * What a flat plane runs against: an edge it overhangs (fence or fingers), an edge its fence reaches, a wall already
 * standing, a line deep enough for its side, or, failing all these, a batten clamped on.
 */
import type { Point, Region } from "../curve/index.ts";
import {
  cutAway,
  leanDeg,
  type Pose,
  type Run,
  spansAlong,
  standingBeside,
  stripOf,
  turnedBack,
  turnOf,
  wallsBesideSole,
} from "../cutting/index.ts";
import { type Bench, sidesFromGauge } from "./bench.ts";
import { endsInPlace, type PlaneDraft } from "./draft-cut.ts";
import { type EdgeGuide, fencedEdge, overhangingEdge } from "./edge-guide.ts";
import { MOST_FREE_LEAN_DEG } from "./leans.ts";
import { hangsClear } from "./seen.ts";

export type Guide =
  | EdgeGuide
  | { readonly kind: "wall"; readonly side: "left" | "right"; readonly at: Point }
  | { readonly kind: "lines" }
  | { readonly kind: "batten" };

/** The surest guide of a flat plane or snipe bill in its first setting, on the wood as it stands. */
export function guideFor(bench: Bench, before: Region, draft: PlaneDraft): Guide {
  return guideAt(bench, before, draft, draft.runs[0][0]);
}

/**
 * A flat plane's settings in an order in which each has something to run on when its turn comes, on the wood that
 * those before it left: an edge for the outermost, a wall or a groove for the innermost, the floors on either side for
 * a ridge left between. Where no order does, the order given with a batten.
 */
export function guidedRuns(
  bench: Bench,
  before: Region,
  draft: PlaneDraft,
): { readonly runs: readonly Run[]; readonly guide: Guide } {
  const ordered: Run[] = [];
  // A setting that hangs clear of the wood is none, and lends the others no edge.
  const idle = draft.runs.filter((run) => hangsClear(before, draft, run[0]));
  let left = draft.runs.filter((run) => !idle.includes(run));
  let wood = before;
  let first: Guide | null = null;
  while (left.length > 0) {
    let next: { run: Run; guide: Guide } | null = null;
    for (const run of left) {
      const guide = guideAt(bench, wood, draft, run[0]);
      const levels = ordered.length > 0 && hangsOverBothEnds(bench, wood, draft, run[0]);
      // A flat wider than the sole hangs over nothing any more when it is down to its lines.
      const outgrown = guide.kind === "lines" && draft.work !== "facets" && draft.runs.length > 1;
      if ((guide.kind === "batten" || outgrown) && !levels) continue;
      next = { run, guide };
      break;
    }
    if (!next) return { runs: draft.runs, guide: { kind: "batten" } };
    ordered.push(next.run);
    first ??= next.guide;
    left = left.filter((run) => run !== next.run);
    if (left.length > 0)
      wood = cutAway(wood, stripOf(draft.tool.sole.chain, next.run[0], bench.sweepOptions));
  }
  return { runs: [...ordered, ...idle], guide: first ?? { kind: "batten" } };
}

function guideAt(bench: Bench, before: Region, draft: PlaneDraft, pose: Pose): Guide {
  if (draft.tool.plane.kind === "snipe bill" || draft.work === "snipe line" || draft.work === "open V") {
    // A beak is laid into a knife line along its upright side.
    return { kind: "lines" };
  }
  const overhung = overhangingEdge(bench, before, draft, pose);
  if (overhung) return overhung;
  // A moving fillister's fence lies under its own sole: away from an edge there is nothing for it.
  if (draft.tool.plane.kind === "moving fillister") return { kind: "batten" };
  const wall = wallBesideSole(bench, before, draft, pose);
  if (wall) return wall;
  const reached = fencedEdge(bench, before, draft, pose);
  if (reached) return isHalfInAir(before, draft, pose) ? { kind: "batten" } : reached;
  // A flat plane takes an arris off, or a ridge down, to its lines: the flat it makes carries it, if the sole hangs over
  // both ends of that flat.
  const isHeldByEye = Math.abs(leanDeg(pose[2], draft.cantDeg)) <= MOST_FREE_LEAN_DEG;
  if (isHeldByEye && hangsOverBothEnds(bench, before, draft, pose)) return { kind: "lines" };
  return { kind: "batten" };
}

/** Share of a plough's iron that must stand over wood: it has no open side, and half in the air it tears the rest. */
const PLOUGH_OVER_WOOD_RATIO = 0.5;
/** A step of the surface under its iron beyond this, and it rides on one side of an older groove, mm. */
const PLOUGH_STEP_MM = 1.2;
/** Places looked at along its sole. */
const SOLE_PLACES = 16;

/** Whether a plough would work half over an older opening instead of in a groove of its own. */
function isHalfInAir(before: Region, draft: PlaneDraft, pose: Pose): boolean {
  const ends = endsInPlace(draft, pose);
  const up = turnedBack(turnOf(pose[2]), { x: 0, y: 1 });
  const tops = Array.from({ length: SOLE_PLACES }, (_, i) => {
    const share = (i + 0.5) / SOLE_PLACES;
    const at = {
      x: ends.left.x + (ends.right.x - ends.left.x) * share,
      y: ends.left.y + (ends.right.y - ends.left.y) * share,
    };
    return heightOf(spansAlong(before, at, up));
  });
  const over = tops.filter((top) => top > 0).length;
  const isStepped = tops.some((top, i) => {
    const next = tops[i + 1] ?? top;
    return Math.min(top, next) > 0 && Math.abs(next - top) > PLOUGH_STEP_MM;
  });
  return over < SOLE_PLACES * PLOUGH_OVER_WOOD_RATIO || (isStepped && draft.purpose !== "shape");
}

/** The wall that stands beside the sole, whoever left it; of two the one nearer to the gauge edge. */
function wallBesideSole(bench: Bench, before: Region, draft: PlaneDraft, pose: Pose): Guide | null {
  const standing = wallsBesideSole(draft.cut, pose, before, bench.limits);
  const side = sidesFromGauge(bench).find((one) => standing.includes(one));
  return side ? { kind: "wall", side, at: endsInPlace(draft, pose)[side] } : null;
}

function heightOf(spans: readonly (readonly [number, number])[]): number {
  let top = 0;
  for (const [, to] of spans) top = Math.max(top, to);
  return top;
}

function hangsOverBothEnds(bench: Bench, before: Region, draft: PlaneDraft, pose: Pose): boolean {
  const ends = endsInPlace(draft, pose);
  return (
    heightOf(standingBeside(before, ends.left, pose, 1)) <= bench.limits.guideWallMm &&
    heightOf(standingBeside(before, ends.right, pose, -1)) <= bench.limits.guideWallMm
  );
}
