/**
 * A convex curve brought to shape with a flat plane, facet by facet, where no hollow of the shelf can lie on it.
 *
 * Each facet touches the curve in its middle and stands proud at its ends: of facets c long along an arc of radius r
 * the ridges between stand c²/(8r) proud, which a scraper takes off. Where a curve is drawn in several arcs the facets
 * are shared out over all of them, so that the ridges are alike: each facet turns by an angle that goes as 1/√r. The
 * first facet is the middle one; from there each new one takes off the arris that the last one left (common practice,
 * no source).
 */
import { line, nearestOnPiece, pointAt } from "../curve/index.ts";
import { leanDeg, type Pose, type Run, restBesideWalls, turned, turnOf } from "../cutting/index.ts";
import { OVERCUT_MM, SAME_LEAN_DEG, toDeg, toRad } from "../measure/index.ts";
import { along, type Bench, type Tool } from "./bench.ts";
import { type PlaneDraft, planeDraft, poseAt, tidy } from "./draft-cut.ts";
import { MOST_FREE_LEAN_DEG } from "./leans.ts";
import { sameCurve } from "./smooth-curve.ts";
import { cantsFor } from "./turning.ts";
import type { WorkedPiece } from "./worked-piece.ts";

export interface Facets {
  readonly draft: PlaneDraft;
  /** Length of the arc that no facet lies on, mm. */
  readonly shortMm: number;
  readonly ridgeMm: number;
}

/** More facets than this on one curve is whittling, and so are more than a few on one arc. */
const MOST_FACETS = 8;
const MOST_FACETS_OF_ARC = 6;
/** Flats that miss a curve by more than this share of its own height make another shape of it. */
const MOST_MISS_SHARE = 1 / 4;
/** Share of the tolerance that the ridges between facets may stand proud; the rest is left to the hand. */
const RIDGE_SHARE = 0.7;
/** And of what is left of it where the curve was moved from the drawing already. */
const ROOM_SHARE = 0.9;

const FACET_KINDS: ReadonlySet<string> = new Set(["rebate", "smoother"]);

/**
 * The facets of one flat plane over a convex curve, given by its arcs in the ring's order, or null where it is no plane
 * for that, too many would be wanted or the curve is too low for the tolerance. Those that a hand could not hold with
 * the stick as it lies are cut after the others with it turned.
 */
export function facetsOver(
  bench: Bench,
  arcs: readonly WorkedPiece[],
  tool: Tool,
  cantDeg: number,
): Facets | null {
  if (!FACET_KINDS.has(tool.plane.kind) || arcs.some(({ curve }) => !curve?.convex)) return null;
  if (bench.toleranceMm > MOST_MISS_SHARE * riseMm(bench, arcs)) return null;
  const shapes = arcs.map(({ index }) => index);
  const laid = laidOut(arcs, mostRidgeMm(bench, shapes));
  if (!laid || tool.sole.widthMm < 2 * Math.max(...laid.facets.map(({ halfMm }) => halfMm))) return null;
  const lays = new Map<number, Run[]>();
  let shortMm = 0;
  for (const place of fromTheMiddle(laid.facets.length)) {
    const facet = laid.facets[place] as Facet;
    const lay = layFor(bench, facet.tiltDeg, cantDeg);
    const pose = lay === null ? null : facetPose(bench, facet, tool);
    if (lay === null || !pose) shortMm += 2 * facet.halfMm;
    else lays.set(lay, [...(lays.get(lay) ?? []), [pose]]);
  }
  const draftOf = (lay: number, runs: readonly Run[], then: PlaneDraft | null): PlaneDraft =>
    planeDraft(bench, {
      work: "facets",
      purpose: "shape",
      cantDeg: lay,
      shapes,
      tool,
      runs,
      ridgeMm: laid.ridgeMm,
      ...(then ? { followedBy: then } : {}),
    });
  const draft = [...lays].reduceRight<PlaneDraft | null>(
    (then, [lay, runs]) => draftOf(lay, runs, then),
    null,
  );
  return draft && { draft, shortMm, ridgeMm: laid.ridgeMm };
}

/** How high ridges may stand over some arcs, by their places in the planned ring, mm. */
function mostRidgeMm(bench: Bench, shapes: readonly number[]): number {
  return Math.min(
    RIDGE_SHARE * bench.toleranceMm,
    ...shapes.map((index) => ROOM_SHARE * bench.roomMm(index)),
  );
}

/** How high the whole curve that some arcs belong to stands over the line between its ends, mm. */
function riseMm(bench: Bench, arcs: readonly WorkedPiece[]): number {
  const whole = arcs.flatMap(({ index }) => sameCurve(bench, index)).map((i) => bench.planned.pieces[i]);
  const [first, last] = [whole[0], whole[whole.length - 1]];
  const chord = line(first.from, last.to);
  const places = whole.flatMap((piece) => RISE_PLACES.map((t) => pointAt(piece, t)));
  return Math.max(...places.map((p) => nearestOnPiece(chord, p).distanceMm));
}

const RISE_PLACES = [0, 0.25, 0.5, 0.75, 1];

/** One flat on a curve: the arc that it touches in its middle, the tilt of a plane on it, and half its length. */
interface Facet {
  readonly curve: NonNullable<WorkedPiece["curve"]>;
  readonly tiltDeg: number;
  readonly halfMm: number;
}

/** The fewest facets over the arcs whose ridges stand no higher than allowed, by rising tilt; null where they are too many. */
function laidOut(
  arcs: readonly WorkedPiece[],
  mostMm: number,
): { readonly facets: readonly Facet[]; readonly ridgeMm: number } | null {
  // Along a convex arc tilts rise with the ring, and on from one arc to the next.
  const parts = arcs.map(({ curve }) => {
    const own = curve as NonNullable<WorkedPiece["curve"]>;
    const arcRad = toRad(own.highTiltDeg - own.lowTiltDeg);
    return { curve: own, arcRad, share: arcRad * Math.sqrt(own.radiusMm) };
  });
  const whole = parts.reduce((sum, { share }) => sum + share, 0);
  const count = Math.max(1, Math.ceil(whole / Math.sqrt(8 * mostMm) - SAME_LEAN_DEG));
  if (count > (arcs.length > 1 ? MOST_FACETS : MOST_FACETS_OF_ARC)) return null;
  const each = whole / count;
  const facets = Array.from({ length: count }, (_, i): Facet => {
    let at = (i + 0.5) * each;
    let part = parts[0] as (typeof parts)[number];
    for (const next of parts) {
      part = next;
      if (at <= next.share) break;
      if (next !== parts[parts.length - 1]) at -= next.share;
    }
    const { curve } = part;
    const root = Math.sqrt(curve.radiusMm);
    return {
      curve,
      tiltDeg: tidy(curve.lowTiltDeg + toDeg(at / root)),
      halfMm: curve.radiusMm * Math.tan(each / root / 2),
    };
  });
  return { facets, ridgeMm: (each * each) / 8 };
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

/** The pose in which the sole lies on the curve as a facet, as near to its own middle as the section beside it allows. */
function facetPose(bench: Bench, { curve, tiltDeg, halfMm }: Facet, tool: Tool): Pose | null {
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
