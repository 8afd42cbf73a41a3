/** Distances between outlines: what is missing from the wanted section, and how far two boundaries lie apart. */
import { boundaryDistance, boundaryPlaces, type FlatRegion, insideOf } from "./flat.ts";
import { OVERCUT_MM } from "./limits.ts";
import type { Xy } from "./plan-json.ts";

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
  const inWood = insideOf(wood);
  const toWood = boundaryDistance(wood, OVERCUT_MM / 4);
  // On which side a place lies is asked first: that is quick, and far from the boundary its distance is not.
  for (const p of boundaryPlaces(wanted, PLACE_MM)) {
    if (inWood(p)) continue;
    const d = toWood(p);
    if (d > OVERCUT_MM / 2) note(p, d);
  }
  const inWanted = insideOf(wanted);
  const toWanted = boundaryDistance(wanted, OVERCUT_MM / 4);
  for (const p of boundaryPlaces(wood, PLACE_MM)) {
    if (!inWanted(p)) continue;
    const d = toWanted(p);
    if (d > OVERCUT_MM / 2) note(p, d);
  }
  return { depthMm, at };
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
