/**
 * A convex arc brought to shape with a flat plane, facet by facet, where no hollow of the shelf can lie on it.
 *
 * Each facet touches the arc in its middle and stands proud at its ends: of n facets, each c long along the arc, the
 * ridges between stand c²/(8r) proud, which a scraper takes off. The first facet is the middle one; from there each
 * new one takes off the arris that the last one left (common practice, no source).
 */
import { leanDeg, type Pose, type Run, restOn, turned, turnOf } from "../cutting/index.ts";
import { OVERCUT_MM, SAME_LEAN_DEG, toRad } from "../measure/index.ts";
import { along, type Bench, type Tool } from "./bench.ts";
import { type PlaneDraft, planeDraft, poseAt, tidy } from "./draft-cut.ts";
import type { WorkedPiece } from "./worked-piece.ts";

export interface Facets {
  readonly draft: PlaneDraft;
  /** Length of the arc that no facet lies on, mm. */
  readonly shortMm: number;
  readonly ridgeMm: number;
}

/** More facets than this on one arc is whittling. */
const MOST_FACETS = 6;
/** Share of the tolerance that the ridges between facets may stand proud; the rest is left to the hand. */
const RIDGE_SHARE = 0.7;

const FACET_KINDS: ReadonlySet<string> = new Set(["rebate", "smoother"]);

/** The facets of one flat plane over a convex arc, or null where it is no plane for that or too many would be wanted. */
export function facetsOver(bench: Bench, piece: WorkedPiece, tool: Tool, cantDeg: number): Facets | null {
  const curve = piece.curve;
  if (!curve?.convex || !FACET_KINDS.has(tool.plane.kind)) return null;
  const { lowTiltDeg, highTiltDeg, radiusMm } = curve;
  const arcDeg = highTiltDeg - lowTiltDeg;
  const mostMm = Math.sqrt(8 * RIDGE_SHARE * bench.toleranceMm * radiusMm);
  const count = Math.max(1, Math.ceil((toRad(arcDeg) * radiusMm) / mostMm - SAME_LEAN_DEG));
  if (count > MOST_FACETS) return null;
  const stepDeg = arcDeg / count;
  const halfMm = radiusMm * Math.tan(toRad(stepDeg / 2));
  if (tool.sole.widthMm < 2 * halfMm) return null;
  const runs: Run[] = [];
  for (const place of fromTheMiddle(count)) {
    const pose = facetPose(bench, piece, tool, cantDeg, lowTiltDeg + (place + 0.5) * stepDeg, halfMm);
    if (pose) runs.push([pose]);
  }
  if (runs.length === 0) return null;
  const stepMm = toRad(stepDeg) * radiusMm;
  const ridgeMm = (stepMm * stepMm) / (8 * radiusMm);
  return {
    draft: planeDraft(bench, {
      work: "facets",
      purpose: "shape",
      cantDeg,
      shapes: [piece.index],
      tool,
      runs,
      ridgeMm,
    }),
    shortMm: (count - runs.length) * stepMm,
    ridgeMm,
  };
}

/** 0 to count - 1 from the middle outwards, the lower side first. */
function fromTheMiddle(count: number): readonly number[] {
  const middle = (count - 1) / 2;
  return Array.from({ length: count }, (_, i) => i).sort(
    (a, b) => Math.abs(a - middle) - Math.abs(b - middle) || a - b,
  );
}

/** Places of the sole along the facet that are tried to either side of its middle. */
const SHIFTS_TRIED = 8;

/** The pose in which the sole lies on the arc at this tilt, as near to its own middle as the section beside it allows. */
function facetPose(
  bench: Bench,
  piece: WorkedPiece,
  tool: Tool,
  cantDeg: number,
  touchDeg: number,
  halfMm: number,
): Pose | null {
  const curve = piece.curve as NonNullable<WorkedPiece["curve"]>;
  const tiltDeg = tidy(touchDeg);
  if (Math.abs(leanDeg(tiltDeg, cantDeg)) > bench.limits.leanDeg) return null;
  const turn = turnOf(tiltDeg);
  const outwards = { x: -Math.sin(toRad(tiltDeg)), y: Math.cos(toRad(tiltDeg)) };
  const touch = turned(turn, along(curve.centre, outwards, curve.radiusMm));
  const middleMm = (tool.sole.leftMm + tool.sole.rightMm) / 2;
  const roomMm = Math.max(0, tool.sole.widthMm / 2 - halfMm);
  const profile = bench.profileOfPlanned(tiltDeg);
  for (let i = 0; i <= SHIFTS_TRIED; i++) {
    for (const side of i === 0 ? [1] : [1, -1]) {
      const shiftMm = touch.x - middleMm + (side * roomMm * i) / SHIFTS_TRIED;
      const rest = restOn(profile, tool.shape, shiftMm, { narrowMm: OVERCUT_MM / 2 });
      if (!rest || rest.heightMm <= touch.y + OVERCUT_MM / 2) return poseAt(tiltDeg, shiftMm, touch.y);
    }
  }
  return null;
}
