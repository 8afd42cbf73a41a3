/**
 * The iron of a plane: the edge that a sole needs on its bed, the pitch that the wood meets, the clearance behind
 * the edge. The edge lies flat on the bed, so it is the sole seen aslant: lower down the bed is further along it.
 */
import { flattenPiece, type Point, point } from "../curve/index.ts";
import { exceedsMm, FLATTEN_MM, requireBetween, toDeg, toRad } from "../measure/index.ts";
import { soleDepthMm } from "./sole.ts";
import type { CurvedPlane, Sole } from "./types.ts";

/**
 * How an iron lies on its bed. `skewDeg` is how far its edge is turned from square across the plane, the right end
 * trailing when positive (0 for a square iron). A pitch alone is ambiguous on a skewed bed, so it says where it was
 * measured: "square to edge", in the plane square to the edge (as the bed's own slope is measured), or "along
 * plane", in the upright plane of travel (as a bevel gauge on the plane's side reads it). On a square bed both are one.
 */
export interface Bed {
  readonly pitchDeg: number;
  readonly skewDeg: number;
  readonly pitchMeasured: "square to edge" | "along plane";
}

/** Bed pitches by their names in the trade, degrees (checks/area-e.json, E-P01 to E-P04). */
export const NAMED_PITCHES_DEG = { common: 45, York: 50, middle: 55, half: 60 } as const;

/** Bevel that moulding irons are ground at, degrees, about (checks/area-e.json, E-C02). */
export const GROUND_BEVEL_DEG = 25;

/** A square bed of the given pitch. */
export function squareBed(pitchDeg: number): Bed {
  return { pitchDeg, skewDeg: 0, pitchMeasured: "square to edge" };
}

/**
 * How much longer the edge is down the iron than the sole is deep: 1 / sin(pitch), without unit. A circle on the
 * sole becomes an ellipse on the iron, as wide as before. For a square bed; 0 < pitch <= 90.
 * Source: the principle in J. Rose, Modern Machine-Shop Practice, figs. 2181 to 2189 (checks/area-e.json, E-I01 on).
 */
export function stretchRatio(pitchDeg: number): number {
  requireBetween("pitchDeg", pitchDeg, LEAST_PITCH_DEG, 90);
  return 1 / Math.sin(toRad(pitchDeg));
}

/**
 * A point of the sole (x across, y up, mm) as it lies on the iron: x along the edge, y up the iron's face, mm.
 *
 * With q the pitch square to the edge and k the skew: u = x / cos k + y cot q tan k, v = y / sin q.
 * Source: derived in checks/area-e.json, E-X01 on; on a square bed it is the plain stretch.
 */
export function soleToIron(soleAt: Point, bed: Bed): Point {
  const { cosSkew, tanSkew, cotPitch, sinPitch } = turned(bed);
  return point(soleAt.x / cosSkew + soleAt.y * cotPitch * tanSkew, soleAt.y / sinPitch);
}

/** The way back from `soleToIron`: x = u cos k - v cos q sin k, y = v sin q. */
export function ironToSole(ironAt: Point, bed: Bed): Point {
  const { cosSkew, sinSkew, cosPitch, sinPitch } = turned(bed);
  return point(ironAt.x * cosSkew - ironAt.y * cosPitch * sinSkew, ironAt.y * sinPitch);
}

/**
 * The edge to scribe on an iron, full size, mm: points from the left end of the sole to the right, no further than
 * `chordTolMm` from the true curve. x runs along the edge of the iron, y up its face, as seen looking along the
 * stroke at the face that lies on the bed's side away from the shavings; the origin is the sole's.
 */
export function ironEdge(sole: Sole, bed: Bed, chordTolMm: number = FLATTEN_MM): readonly Point[] {
  // The map stretches nothing by more than the root of the sum of its squared entries, so neither an error of the chord.
  const { cosSkew, tanSkew, cotPitch, sinPitch } = turned(bed);
  const mostStretch = Math.hypot(1 / cosSkew, cotPitch * tanSkew, 1 / sinPitch);
  const points = sole.chain.pieces.flatMap((piece, index) => {
    const flat = flattenPiece(piece, chordTolMm / mostStretch);
    return index === 0 ? flat : flat.slice(1);
  });
  return points.map((soleAt) => soleToIron(soleAt, bed));
}

/** The pitch measured square to the edge, degrees, whichever way the bed's own was measured: tan q = tan e / cos k. */
export function pitchSquareToEdgeDeg(bed: Bed): number {
  const { pitchDeg, skewDeg } = checked(bed);
  if (bed.pitchMeasured === "square to edge" || pitchDeg === 90) return pitchDeg;
  return toDeg(Math.atan(Math.tan(toRad(pitchDeg)) / Math.cos(toRad(skewDeg))));
}

/**
 * Pitch in the upright plane of travel, degrees: the tangent rule, tan e = tan q cos k. It answers how the section
 * that the plane leaves comes from the edge, and what a bevel gauge on the plane's side reads.
 */
export function pitchAlongPlaneDeg(bed: Bed): number {
  const { pitchDeg, skewDeg } = checked(bed);
  if (bed.pitchMeasured === "along plane" || pitchDeg === 90) return pitchDeg;
  return toDeg(Math.atan(Math.tan(toRad(pitchDeg)) * Math.cos(toRad(skewDeg))));
}

/**
 * Pitch that the shaving meets, degrees: the sine rule, sin e = sin q cos k. It answers how low a skewed iron
 * cuts. Source: J. M. Whelan, The Wooden Plane, appendix A (checks/area-e.json, E-K01 on).
 */
export function cuttingPitchDeg(bed: Bed): number {
  const squarePitchRad = toRad(pitchSquareToEdgeDeg(bed));
  return toDeg(Math.asin(Math.sin(squarePitchRad) * Math.cos(toRad(bed.skewDeg))));
}

/**
 * Clearance behind the edge of an iron that lies bevel down, degrees: bed less bevel. Nought or less does not cut;
 * below about ten it soon rubs (from memory). Source: Holtzapffel, vol. 2, p. 479 (checks/area-e.json, E-C01).
 */
export function clearanceDeg(bedDeg: number, bevelDeg: number): number {
  requireBetween("bedDeg", bedDeg, LEAST_PITCH_DEG, 90);
  requireBetween("bevelDeg", bevelDeg, 0, 90);
  return bedDeg - bevelDeg;
}

/** The ellipse that a hollow's or round's sole becomes on the iron of a square bed, and the plain arc nearest at hand. */
export interface CurvedIron {
  /** Depth of the edge between its middle and its corners, up the iron's face, mm. */
  readonly depthMm: number;
  /** Half axes of the ellipse: across as on the sole, and up the face. */
  readonly acrossMm: number;
  readonly upMm: number;
  /** Radius of the ellipse at the middle of the edge, mm: what a small round stone has to pass. */
  readonly radiusAtMiddleMm: number;
  /**
   * The plain arc through both corners and the middle: its radius, and how far it strays from the true edge,
   * measured up the face, which is what grinding to it costs. Absent where the edge is deeper than half its width:
   * such an arc would be more than a half circle.
   */
  readonly plainArc?: { readonly radiusMm: number; readonly errorMm: number };
}

/**
 * What a hollow's or round's iron is ground to on a square bed. Widths up to the half circle; pitch up to 90, where
 * the iron is the sole itself and the plain arc is exact.
 * Source: the ellipse of checks/area-e.json, E-I01 on, whose error is measured up the face at the same place across;
 * square to the edge it is up to an eighth less.
 */
export function curvedIron(plane: Pick<CurvedPlane, "radiusMm" | "widthMm">, pitchDeg: number): CurvedIron {
  const { radiusMm, widthMm } = plane;
  const stretch = stretchRatio(pitchDeg);
  const depthMm = soleDepthMm(plane) * stretch;
  const halfMm = widthMm / 2;
  const iron = {
    depthMm,
    acrossMm: radiusMm,
    upMm: radiusMm * stretch,
    radiusAtMiddleMm: radiusMm / stretch,
  };
  if (exceedsMm(depthMm, halfMm)) return iron;
  const arcRadiusMm = (halfMm ** 2 + depthMm ** 2) / (2 * depthMm);
  const errorMm = plainArcErrorMm(radiusMm, stretch, arcRadiusMm);
  return { ...iron, plainArc: { radiusMm: arcRadiusMm, errorMm } };
}

/**
 * At x across, the edge stands s (r - sqrt(r² - x²)) up the face and the plain arc R - sqrt(R² - x²). They part
 * most where their slopes agree, at x² = (s² R² - r²) / (s² - 1); on an upright bed (s = 1) both are one curve.
 */
function plainArcErrorMm(radiusMm: number, stretch: number, arcRadiusMm: number): number {
  const squaredExcess = (stretch - 1) * (stretch + 1);
  if (squaredExcess === 0) return 0;
  const stretchedMm = stretch * arcRadiusMm;
  const acrossMm2 = Math.max(0, ((stretchedMm - radiusMm) * (stretchedMm + radiusMm)) / squaredExcess);
  return Math.abs(stretch * risesMm(acrossMm2, radiusMm) - risesMm(acrossMm2, arcRadiusMm));
}

/** How far a circle has risen from its lowest point at a squared distance across, mm, without the subtraction r - sqrt(r² - x²). */
function risesMm(acrossMm2: number, radiusMm: number): number {
  return acrossMm2 / (radiusMm + Math.sqrt(Math.max(0, radiusMm ** 2 - acrossMm2)));
}

/** No iron lies flatter or is skewed further; beyond these the formulas run to infinity, degrees. */
const LEAST_PITCH_DEG = 1;
const MOST_SKEW_DEG = 80;

function checked(bed: Bed): Bed {
  requireBetween("pitchDeg", bed.pitchDeg, LEAST_PITCH_DEG, 90);
  requireBetween("skewDeg", bed.skewDeg, -MOST_SKEW_DEG, MOST_SKEW_DEG);
  return bed;
}

/** Sines and cosines of a bed's skew and of its pitch square to the edge. */
function turned(bed: Bed) {
  const pitchRad = toRad(pitchSquareToEdgeDeg(bed));
  const skewRad = toRad(bed.skewDeg);
  const sinPitch = Math.sin(pitchRad);
  const cosPitch = Math.cos(pitchRad);
  const sinSkew = Math.sin(skewRad);
  const cosSkew = Math.cos(skewRad);
  return { sinPitch, cosPitch, sinSkew, cosSkew, cotPitch: cosPitch / sinPitch, tanSkew: sinSkew / cosSkew };
}
