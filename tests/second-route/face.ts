/** The finished face held against the drawing, and what is left held against what the plan says is left. */

import { type Finding, mm } from "./finding.ts";
import { boundaryDistance, boundaryPlaces, type FlatRegion, isInside } from "./flat.ts";
import { OVERCUT_MM } from "./limits.ts";
import type { PlanJson, UncutJson, Xy } from "./plan-json.ts";

const PLACE_MM = 0.04;

/** How deep the wanted region misses wood: at its own boundary and at the wood's boundary inside it, mm. */
export function missingDepth(
  wanted: FlatRegion,
  wood: FlatRegion,
): { readonly depthMm: number; readonly at: Xy } {
  let depthMm = 0;
  let at: Xy = [0, 0];
  const note = (p: Xy, mmDeep: number): void => {
    if (mmDeep > depthMm) {
      depthMm = mmDeep;
      at = p;
    }
  };
  const toWood = boundaryDistance(wood, OVERCUT_MM / 4);
  for (const p of boundaryPlaces(wanted, PLACE_MM)) {
    const d = toWood(p);
    if (d > OVERCUT_MM / 2 && d > depthMm && !isInside(wood, p)) note(p, d);
  }
  const toWanted = boundaryDistance(wanted, OVERCUT_MM / 4);
  for (const p of boundaryPlaces(wood, PLACE_MM)) {
    const d = toWanted(p);
    if (d > OVERCUT_MM / 2 && d > depthMm && isInside(wanted, p)) note(p, d);
  }
  return { depthMm, at };
}

export interface FaceReport {
  readonly findings: readonly Finding[];
  /** Greatest height over and depth under the drawing, listed places left out, mm. */
  readonly proudMm: number;
  readonly underMm: number;
}

/** Deviation of the last wood from the drawing; every place over the tolerance must be listed, none may be under it. */
export function faceReport(plan: PlanJson, drawn: FlatRegion, left: FlatRegion): FaceReport {
  const findings: Finding[] = [];
  const toDrawn = boundaryDistance(drawn, 0);
  let proudMm = 0;
  let underMm = 0;
  let worst: { p: Xy; d: number } | null = null;
  const told = new Set<UncutJson>();
  for (const p of boundaryPlaces(left, PLACE_MM)) {
    const d = toDrawn(p);
    if (d < 2 * OVERCUT_MM || isFin(left, p)) continue;
    if (isInside(drawn, p)) {
      underMm = Math.max(underMm, d);
      continue;
    }
    if (d <= plan.tolerance + OVERCUT_MM) {
      proudMm = Math.max(proudMm, d);
      continue;
    }
    const covering = plan.uncut.filter((place) => covers(place, p, d));
    if (covering.length === 0) {
      if (worst === null || d > worst.d) worst = { p, d };
    } else for (const place of covering) told.add(place);
  }
  if (worst !== null)
    findings.push({
      rule: "unlisted",
      says: `${mm(worst.d)} of wood stands at ${worst.p.map(mm).join(", ")} and no uncut place tells it`,
    });
  if (underMm > plan.tolerance + OVERCUT_MM)
    findings.push({ rule: "under", says: `the face lies ${mm(underMm)} under the drawing` });
  for (const place of plan.uncut) {
    if (!told.has(place) && place.left > plan.tolerance + OVERCUT_MM)
      findings.push({
        rule: "uncut said",
        says: `${mm(place.left)} is said to stand from ${place.from.join(", ")} to ${place.to.join(", ")}, and none does`,
      });
  }
  return { findings, proudMm, underMm };
}

/** Directions in which the wood behind a place is measured, degrees. */
const BEHIND_DEG: readonly number[] = Array.from({ length: 16 }, (_, i) => i * 22.5 + 3);

/**
 * Whether a place of the boundary belongs to a fin thinner than the overcut rung, such as stands between two strips
 * whose sides are meant to coincide and miss by the rounding of their poses. No such thing is wood. Seen from its
 * outline nearly all directions leave it at once: in wood one leads well inside.
 */
function isFin(left: FlatRegion, [x, y]: Xy): boolean {
  const outOfFin = OVERCUT_MM * 2;
  return BEHIND_DEG.every((deg) => {
    const angle = (deg * Math.PI) / 180;
    return !isInside(left, [x + outOfFin * Math.cos(angle), y + outOfFin * Math.sin(angle)]);
  });
}

/** A place is told where it lies over the listed stretch, no further off than what is said to stand there. */
function covers(place: UncutJson, [x, y]: Xy, offMm: number): boolean {
  const slack = place.left + 0.3;
  return (
    offMm <= slack &&
    x >= Math.min(place.from[0], place.to[0]) - slack &&
    x <= Math.max(place.from[0], place.to[0]) + slack &&
    y >= Math.min(place.from[1], place.to[1]) - slack &&
    y <= Math.max(place.from[1], place.to[1]) + slack
  );
}

/** Greatest distance between two boundaries, either way, mm: how far the planned ring lies from the drawn one. */
export function apartMm(one: FlatRegion, other: FlatRegion): number {
  let most = 0;
  for (const [a, b] of [
    [one, other],
    [other, one],
  ]) {
    const distance = boundaryDistance(b, 1e-3);
    for (const p of boundaryPlaces(a, PLACE_MM)) most = Math.max(most, distance(p));
  }
  return most;
}
