import { FLAT_BULGE, requireBetween, requireNotNegative, requirePositive } from "../measure/index.ts";
import type { Arc } from "./types.ts";

/**
 * Depth of a circular arc below its chord (sagitta), mm.
 *
 * Domain: radiusMm > 0 and 0 <= chordMm <= 2 radiusMm, else a bug. Arcs past a half circle: not covered.
 * Accuracy: a few units in the last place; the textbook r - sqrt(r² - c²/4) subtracts near-equal numbers, so the
 * difference is multiplied by its conjugate. Source: elementary; checked in checks/area-a.test.ts.
 */
export function sagittaMm(chordMm: number, radiusMm: number): number {
  requirePositive("radiusMm", radiusMm);
  requireBetween("chordMm", chordMm, 0, 2 * radiusMm);
  const halfMm = chordMm / 2;
  return halfMm ** 2 / (radiusMm + Math.sqrt((radiusMm - halfMm) * (radiusMm + halfMm)));
}

/**
 * Radius of the arc of a given chord and height (sagitta), mm: (c² + 4h²) / 8h.
 *
 * Domain: both positive, else a bug. A height over half the chord is an arc past a half circle, and covered.
 * Source: Building Trades Pocketbook, Mensuration part 2 (checks/area-a.json).
 */
export function radiusOfChordAndHeightMm(chordMm: number, heightMm: number): number {
  requirePositive("chordMm", chordMm);
  requirePositive("heightMm", heightMm);
  return (chordMm * chordMm) / (8 * heightMm) + heightMm / 2;
}

/** Below this sweep the series of x − sin x loses less than the subtraction does, radians. */
const SERIES_BELOW_RAD = 0.5;

/** Terms of that series: the first one left out is under 1e-17 of the sum. */
const SERIES_TERMS = 7;

/**
 * x − sin x, radians, odd in x. Relative accuracy a few 1e-15 everywhere: plain subtraction keeps none for a flat arc.
 * Source: Taylor series, elementary.
 */
function angleLessSine(x: number): number {
  if (Math.abs(x) >= SERIES_BELOW_RAD) return x - Math.sin(x);
  const squared = x * x;
  let term = (x * squared) / 6;
  let sum = term;
  for (let n = 1; n < SERIES_TERMS; n++) {
    term *= -squared / ((2 * n + 2) * (2 * n + 3));
    sum += term;
  }
  return sum;
}

/**
 * Area between an arc and its chord, mm²: r² (sweep − sin sweep) / 2. Signed as the sweep is.
 *
 * Domain: radiusMm >= 0, sweep within a full turn, else a bug; past a half circle the larger part is meant.
 * Source: elementary; checked in checks/area-a.test.ts.
 */
export function segmentAreaMm2(radiusMm: number, sweepRad: number): number {
  requireNotNegative("radiusMm", radiusMm);
  requireBetween("sweepRad", sweepRad, -2 * Math.PI, 2 * Math.PI);
  return (radiusMm * radiusMm * angleLessSine(sweepRad)) / 2 + 0;
}

/** As `segmentAreaMm2`, from the ends and bulge of an arc; a flat one's radius and sweep would run away. */
export function circularSegmentMm2(piece: Arc): number {
  const { from, to, bulge } = piece;
  const chordSquared = (to.x - from.x) ** 2 + (to.y - from.y) ** 2;
  // Two thirds of the chord times the height, which is the bulge times half the chord.
  if (Math.abs(bulge) < FLAT_BULGE) return (chordSquared * bulge) / 3;
  const radiusInChords = (1 + bulge * bulge) / (4 * bulge);
  return (chordSquared * radiusInChords ** 2 * angleLessSine(4 * Math.atan(bulge))) / 2;
}
