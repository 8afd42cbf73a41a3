/** Sizes of hollows and rounds: numbers stamped on them, and the radius told from width and depth. */
import { cataloguedTrouble, exceedsMm, fine, INCH_MM, refused, requirePositive } from "../measure/index.ts";
import type { ShelfOutcome } from "./shelf-trouble.ts";

/** The commonest numbering of pairs runs to this. */
export const LARGEST_PAIR_NUMBER = 18;
/** Up to this number a pair is so many sixteenths of an inch; above, each number adds an eighth. */
const LAST_SIXTEENTH = 12;

/**
 * Width and radius, mm, of the pair that carries a number in common British practice from about 1800; `undefined`
 * for anything but a whole number from 1 to 18. Makers vary, some by a factor of two: measured sizes go before it.
 * Source: L. Williams, The Sizing and Numbering of Hollow and Round Planes (checks/area-e.json, E-S01 to E-S18).
 */
export function pairSizeMm(number: number): number | undefined {
  if (!Number.isSafeInteger(number) || number < 1 || number > LARGEST_PAIR_NUMBER) return undefined;
  const sixteenths = Math.min(number, LAST_SIXTEENTH) + 2 * Math.max(0, number - LAST_SIXTEENTH);
  return (sixteenths * INCH_MM) / 16;
}

/** The number whose size is nearest to a radius, in the same numbering; the smaller of two equally near. */
export function nearestPairNumber(radiusMm: number): number {
  requirePositive("radiusMm", radiusMm);
  let best = 1;
  for (let number = 2; number <= LARGEST_PAIR_NUMBER; number++) {
    if (exceedsMm(missMm(best, radiusMm), missMm(number, radiusMm))) best = number;
  }
  return best;
}

/** How far a radius lies from the size of a number, mm. */
function missMm(number: number, radiusMm: number): number {
  return Math.abs(pairSizeMm(number)! - radiusMm);
}

/** How truly a hand reads a width and a depth with rule or calliper, mm (common practice, no source). */
export const READING_MM = 0.05;

export interface RadiusReading {
  readonly radiusMm: number;
  /** What errors of reading in width and depth make of the radius together, mm, as the root of the squares' sum. */
  readonly uncertaintyMm: number;
  /** The radii between which the true one lies if both readings are at their worst. */
  readonly leastMm: number;
  /** Absent if the sole is so flat that no greatest radius can be told. */
  readonly mostMm?: number;
}

/**
 * The radius of a sole from its width and the depth of its middle against a straight edge across its corners:
 * r = (w² + 4 s²) / 8 s, with its uncertainty. It is touchy: 0.05 mm of depth on a ¼ in sole is 5 % of the radius;
 * laying the sole against drawn arcs is surer. Refuses a depth of more than half the width (no sole is more than a
 * half circle) or of nothing. Source of the formula: Building Trades Pocketbook,
 * Mensuration, part 2.
 */
export function radiusFromSole(
  measured: { readonly widthMm: number; readonly depthMm: number },
  readingMm: number = READING_MM,
): ShelfOutcome<RadiusReading> {
  const { widthMm, depthMm } = measured;
  const isMeasured = Number.isFinite(widthMm) && Number.isFinite(depthMm);
  if (!isMeasured || widthMm <= 0 || depthMm <= 0 || exceedsMm(depthMm, widthMm / 2)) {
    return refused(cataloguedTrouble("sole-depth-unbelievable", "", { widthMm, depthMm }));
  }
  const perDepth = 0.5 - widthMm ** 2 / (8 * depthMm ** 2);
  const perWidth = widthMm / (4 * depthMm);
  const uncertaintyMm = Math.hypot(perDepth, perWidth) * readingMm;
  const reading = {
    radiusMm: arcRadiusMm(widthMm, depthMm),
    uncertaintyMm,
    leastMm: leastRadiusMm(measured, readingMm),
  };
  if (depthMm <= readingMm) return fine(reading);
  const widestMm = widthMm + readingMm;
  const mostMm = Math.max(
    arcRadiusMm(widestMm, depthMm - readingMm),
    arcRadiusMm(widestMm, depthMm + readingMm),
  );
  return fine({ ...reading, mostMm });
}

/**
 * The radius grows with the width. With the depth it shrinks to the half circle and grows past it, so the least is
 * at the half circle if the readings leave that open.
 */
function leastRadiusMm(measured: { widthMm: number; depthMm: number }, readingMm: number): number {
  const narrowestMm = Math.max(0, measured.widthMm - readingMm);
  const shallowestMm = Math.max(0, measured.depthMm - readingMm);
  const depthMm = Math.min(measured.depthMm + readingMm, Math.max(shallowestMm, narrowestMm / 2));
  return depthMm === 0 ? 0 : arcRadiusMm(narrowestMm, depthMm);
}

/** Radius of the arc over a chord of this width and this deep, mm. */
function arcRadiusMm(widthMm: number, depthMm: number): number {
  return (widthMm ** 2 + 4 * depthMm ** 2) / (8 * depthMm);
}
