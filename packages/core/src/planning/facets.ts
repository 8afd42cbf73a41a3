/**
 * A convex arc brought to shape with a flat plane, facet by facet, where no hollow of the shelf can lie on it.
 *
 * Each facet touches the arc in its middle and stands proud at its ends: of n facets, each c long along the arc, the
 * ridges between stand c²/(8r) proud, which a scraper takes off. The first facet is the middle one; from there each
 * new one takes off the arris that the last one left (common practice, no source).
 */
import { leanDeg, type Pose, type Run, restBesideWalls, turned, turnOf } from "../cutting/index.ts";
import { OVERCUT_MM, SAME_LEAN_DEG, toRad } from "../measure/index.ts";
import { along, type Bench, type Tool } from "./bench.ts";
import { type PlaneDraft, planeDraft, poseAt, tidy } from "./draft-cut.ts";
import { MOST_FREE_LEAN_DEG } from "./leans.ts";
import { cantsFor } from "./turning.ts";
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
/** And of what is left of it where the curve was moved from the drawing already. */
const ROOM_SHARE = 0.9;

const FACET_KINDS: ReadonlySet<string> = new Set(["rebate", "smoother"]);

/**
 * The facets of one flat plane over a convex arc, or null where it is no plane for that or too many would be wanted.
 * Those that a hand could not hold with the stick as it lies are cut after the others with it turned.
 */
export function facetsOver(bench: Bench, piece: WorkedPiece, tool: Tool, cantDeg: number): Facets | null {
  const curve = piece.curve;
  if (!curve?.convex || !FACET_KINDS.has(tool.plane.kind)) return null;
  const { lowTiltDeg, highTiltDeg, radiusMm } = curve;
  const arcDeg = highTiltDeg - lowTiltDeg;
  const mostRidgeMm = Math.min(RIDGE_SHARE * bench.toleranceMm, ROOM_SHARE * bench.roomMm(piece.index));
  const mostMm = Math.sqrt(8 * mostRidgeMm * radiusMm);
  const count = Math.max(1, Math.ceil((toRad(arcDeg) * radiusMm) / mostMm - SAME_LEAN_DEG));
  if (count > MOST_FACETS) return null;
  const stepDeg = arcDeg / count;
  const halfMm = radiusMm * Math.tan(toRad(stepDeg / 2));
  if (tool.sole.widthMm < 2 * halfMm) return null;
  const stepMm = toRad(stepDeg) * radiusMm;
  const ridgeMm = (stepMm * stepMm) / (8 * radiusMm);
  const lays = new Map<number, Run[]>();
  let placed = 0;
  for (const place of fromTheMiddle(count)) {
    const tiltDeg = tidy(lowTiltDeg + (place + 0.5) * stepDeg);
    const lay = layFor(bench, tiltDeg, cantDeg);
    const pose = lay === null ? null : facetPose(bench, piece, tool, tiltDeg, halfMm);
    if (lay === null || !pose) continue;
    lays.set(lay, [...(lays.get(lay) ?? []), [pose]]);
    placed++;
  }
  const draftOf = (lay: number, runs: readonly Run[], then: PlaneDraft | null): PlaneDraft =>
    planeDraft(bench, {
      work: "facets",
      purpose: "shape",
      cantDeg: lay,
      shapes: [piece.index],
      tool,
      runs,
      ridgeMm,
      ...(then ? { followedBy: then } : {}),
    });
  const draft = [...lays].reduceRight<PlaneDraft | null>(
    (then, [lay, runs]) => draftOf(lay, runs, then),
    null,
  );
  return draft && { draft, shortMm: (count - placed) * stepMm, ridgeMm };
}

/** The way to lay the stick in which a hand holds a flat plane at this tilt by eye, the wished one before others. */
function layFor(bench: Bench, tiltDeg: number, cantDeg: number): number | null {
  const lays = [cantDeg, ...cantsFor(bench, tiltDeg)];
  const most = Math.min(bench.limits.leanDeg, MOST_FREE_LEAN_DEG);
  return lays.find((lay) => Math.abs(leanDeg(tiltDeg, lay)) <= most) ?? null;
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
  tiltDeg: number,
  halfMm: number,
): Pose | null {
  const curve = piece.curve as NonNullable<WorkedPiece["curve"]>;
  const turn = turnOf(tiltDeg);
  const outwards = { x: -Math.sin(toRad(tiltDeg)), y: Math.cos(toRad(tiltDeg)) };
  const touch = turned(turn, along(curve.centre, outwards, curve.radiusMm));
  const middleMm = (tool.sole.leftMm + tool.sole.rightMm) / 2;
  const roomMm = Math.max(0, tool.sole.widthMm / 2 - halfMm);
  const profile = bench.profileOfPlanned(tiltDeg);
  for (let i = 0; i <= SHIFTS_TRIED; i++) {
    for (const side of i === 0 ? [1] : [1, -1]) {
      const shiftMm = touch.x - middleMm + (side * roomMm * i) / SHIFTS_TRIED;
      const rest = restBesideWalls(profile, tool.shape, shiftMm, { gapMm: OVERCUT_MM / 2 });
      if (!rest || rest.heightMm <= touch.y + OVERCUT_MM / 2) return poseAt(tiltDeg, shiftMm, touch.y);
    }
  }
  return null;
}
