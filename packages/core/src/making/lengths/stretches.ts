/** Sound wood of a stick: what lies between its ends and its bad places. */
import { SAME_POINT_MM } from "../../measure/index.ts";
import type { BadPlace, LengthsAllowances, Stretch } from "./types.ts";

/**
 * Lengths are counted in whole steps of `SAME_POINT_MM`, so that sums are exact and the order of adding cannot decide
 * whether a piece fits.
 */
export function inSteps(lengthMm: number): number {
  return Math.round(lengthMm / SAME_POINT_MM);
}

export function stepsToMm(steps: number): number {
  // Dividing by the whole number of steps in a millimetre keeps 50 at 50, where multiplying may not.
  return steps / Math.round(1 / SAME_POINT_MM);
}

/** A stretch counted in steps. */
export interface SoundStretch {
  readonly from: number;
  readonly to: number;
}

/**
 * The stretches that pieces may be taken from, left to right. A bad place narrower than the kerf counts as one kerf,
 * measured from its left: two pieces on its two sides are parted by one saw cut, which takes more than the bad place.
 */
export function soundStretches(
  lengthMm: number,
  badPlaces: readonly BadPlace[],
  { kerfMm, planingMm }: LengthsAllowances,
): SoundStretch[] {
  const end = inSteps(lengthMm) - inSteps(planingMm);
  const kerf = inSteps(kerfMm);
  const bad = badPlaces
    .map(({ fromMm, toMm }) => ({
      from: inSteps(fromMm),
      to: Math.max(inSteps(toMm), inSteps(fromMm) + kerf),
    }))
    .sort((a, b) => a.from - b.from || a.to - b.to);
  const sound: SoundStretch[] = [];
  let from = inSteps(planingMm);
  for (const place of bad) {
    if (place.from > from) sound.push({ from, to: Math.min(place.from, end) });
    from = Math.max(from, place.to);
  }
  sound.push({ from, to: end });
  return sound.filter((stretch) => stretch.to > stretch.from);
}

export function stretchMm({ from, to }: SoundStretch): Stretch {
  return { fromMm: stepsToMm(from), toMm: stepsToMm(to) };
}
