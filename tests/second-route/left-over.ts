/** The finished face held against the drawing, and what is left held against what the plan says is left. */
import { type Finding, mm } from "./finding.ts";
import {
  boundaryDistance,
  boundaryPlaces,
  type FlatOutline,
  type FlatRegion,
  flatRing,
  insideOf,
  isInside,
} from "./flat.ts";
import { OVERCUT_MM, SHAVING_MM2 } from "./limits.ts";
import type { PlanJson, UncutJson, Xy } from "./plan-json.ts";
import { solidPlaces } from "./splinters.ts";

const PLACE_MM = 0.04;

export interface FaceReport {
  readonly findings: readonly Finding[];
  /**
   * Greatest height over the drawing, mm: the least and the most that may be said. The wood falls away from an uncut place
   * to the cut face through every height up to the tolerance, and that slope may be told with either.
   */
  readonly proudMm: readonly [number, number];
  /** Greatest depth under the drawing, mm. */
  readonly underMm: number;
}

/** Deviation of the last wood from the drawing; every place over the tolerance must be listed, none may be under it. */
export function faceReport(plan: PlanJson, drawn: FlatRegion, wood: FlatRegion): FaceReport {
  const left = standing(wood);
  const findings: Finding[] = [];
  const toDrawn = boundaryDistance(drawn, 0);
  const inDrawn = insideOf(drawn);
  const inLeft = insideOf(left);
  const planned = flatRing(plan.planned);
  const stretches = plan.uncut.map((place) => stretchOf(place, planned));
  const flakes: Xy[] = [];
  let cutProudMm = 0;
  let proudMm = 0;
  let underMm = 0;
  let worst: { p: Xy; d: number } | null = null;
  const toPlanned = boundaryDistance([planned], 0);
  const inPlanned = insideOf([planned]);
  const overMm = (p: Xy) => (inPlanned(p) ? 0 : toPlanned(p));
  for (const p of solidPlaces(left, PLACE_MM, overMm)) {
    const d = toDrawn(p);
    if (d < 2 * OVERCUT_MM || isFin(inLeft, p)) continue;
    if (inDrawn(p)) {
      underMm = Math.max(underMm, d);
      continue;
    }
    if (d <= plan.tolerance + OVERCUT_MM) proudMm = Math.max(proudMm, d);
    if (d > plan.tolerance - OVERCUT_MM && d < 2 * plan.tolerance) flakes.push(p);
    if (stretches.some((stretch) => tells(stretch, p, TOLD_MM))) continue;
    if (d <= plan.tolerance + OVERCUT_MM) {
      if (!stretches.some((stretch) => tells(stretch, p, SLOPE_MM))) cutProudMm = Math.max(cutProudMm, d);
    } else if (worst === null || d > worst.d) worst = { p, d };
  }
  if (worst !== null)
    findings.push({
      rule: "unlisted",
      says: `${mm(worst.d)} of wood stands at ${worst.p.map(mm).join(", ")} and no uncut place tells it`,
    });
  if (underMm > plan.tolerance + OVERCUT_MM)
    findings.push({ rule: "under", says: `the face lies ${mm(underMm)} under the drawing` });
  for (const stretch of stretches) {
    const { place } = stretch;
    if (!isStanding(stretch, left, flakes, plan.tolerance))
      findings.push({
        rule: "uncut said",
        says: `${mm(place.left)} is said to stand from ${place.from.join(", ")} to ${place.to.join(", ")}, and none does`,
      });
  }
  return { findings, proudMm: [cutProudMm, proudMm], underMm };
}

/** The wood without pieces no larger than a shaving that hang by nothing: they are swept off the bench. */
export function standing(wood: FlatRegion): FlatRegion {
  return wood.filter((outline, i) => {
    const others = wood.filter((_, k) => k !== i);
    const isHole = isInside(others, outline[0]);
    return isHole || Math.abs(areaOfOutline(outline)) > SHAVING_MM2;
  });
}

function areaOfOutline(outline: FlatOutline): number {
  let doubled = 0;
  for (let i = 0; i < outline.length; i++) {
    const [ax, ay] = outline[i];
    const [bx, by] = outline[(i + 1) % outline.length];
    doubled += ax * by - bx * ay;
  }
  return doubled / 2;
}

/** Directions in which the wood behind a place is measured, degrees. */
const BEHIND_DEG: readonly number[] = Array.from({ length: 16 }, (_, i) => i * 22.5 + 3);

/**
 * Whether a place of the boundary belongs to a fin thinner than the overcut rung, such as stands between two strips
 * whose sides are meant to coincide and miss by the rounding of their poses. No such thing is wood. Seen from its
 * outline nearly all directions leave it at once: in wood one leads well inside.
 */
function isFin(inLeft: (p: Xy) => boolean, [x, y]: Xy): boolean {
  const outOfFin = OVERCUT_MM * 2;
  return BEHIND_DEG.every((deg) => {
    const angle = (deg * Math.PI) / 180;
    return !inLeft([x + outOfFin * Math.cos(angle), y + outOfFin * Math.sin(angle)]);
  });
}

/** A listed place as the run of points of the planned ring from its one end to the other. */
interface Stretch {
  readonly place: UncutJson;
  readonly points: readonly Xy[];
}

/** Rings run anticlockwise, and so do the listed stretches; `from` and `to` are found on the ring by nearness. */
function stretchOf(place: UncutJson, ring: FlatOutline): Stretch {
  const points: Xy[] = [];
  const places = [...boundaryPlaces([ring], PLACE_MM)];
  const nearest = (to: Xy): number => {
    let best = 0;
    places.forEach((p, i) => {
      if (apart(p, to) < apart(places[best], to)) best = i;
    });
    return best;
  };
  const last = nearest(place.to);
  for (let i = nearest(place.from); i !== last; i = (i + 1) % places.length) points.push(places[i]);
  points.push(places[last]);
  return { place, points };
}

function apart(a: Xy, b: Xy): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}

/**
 * Whether wood stands on the stretch: the planned face lies well inside the wood that is left somewhere along it, or a
 * flake too small for that stands over the tolerance right beside it.
 */
function isStanding(
  { points }: Stretch,
  left: FlatRegion,
  flakes: readonly Xy[],
  toleranceMm: number,
): boolean {
  const toWood = boundaryDistance(left, 0);
  const inLeft = insideOf(left);
  return (
    points.some((p) => inLeft(p) && toWood(p) > toleranceMm / 4) ||
    flakes.some((flake) => points.some((p) => apart(p, flake) < 2 * toleranceMm))
  );
}

/** What the greatest height of a place is rounded by, and what its ends may lie off, mm. */
const TOLD_MM = 0.3;

/** How far past an uncut place the slope down to the cut face may be counted with the place, mm. */
const SLOPE_MM = 1;

/** A place of the wood is told where it is no further from a listed stretch than the height said to stand there. */
function tells({ place, points }: Stretch, p: Xy, slackMm: number): boolean {
  return points.some((q) => apart(p, q) <= place.left + slackMm);
}
