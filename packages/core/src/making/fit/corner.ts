/** Corners: stated by their angle, or measured by three lengths. */
import {
  acosRad,
  cataloguedTrouble,
  fine,
  type Outcome,
  refused,
  type TroubleCode,
  toDeg,
  toRad,
} from "../../measure/index.ts";
import { firstTrouble, LONGEST_MM, sizeTrouble } from "./checks.ts";

export type CornerKind = "inside" | "outside";

export interface Corner {
  /** Between the two walls in plan, 30 to 175°; at an outside corner through the solid (90° for a square case). */
  readonly cornerDeg: number;
  readonly kind: CornerKind;
  readonly measured: "by its angle" | "by three lengths";
  /** Three lengths only: by how many degrees the corner is out if the length across is 1 mm out. */
  readonly degPerMm: number | null;
}

export const LEAST_CORNER_DEG = 30;
export const MOST_CORNER_DEG = 175;
const FULL_TURN_DEG = 360;

/**
 * A corner by its angle. Beyond a half turn it is the room's side of an outside corner: 270° is the 90° corner of a
 * case, with a warning that it was taken so. Without a kind it is an inside one. Refused: anything else outside
 * 30 to 175°.
 */
export function cornerFromAngle(angleDeg: number, kind?: CornerKind): Outcome<Corner, TroubleCode> {
  const around = FULL_TURN_DEG - angleDeg;
  if (angleDeg > FULL_TURN_DEG / 2 && isInRange(around)) {
    return fine({ cornerDeg: around, kind: "outside", measured: "by its angle", degPerMm: null }, [
      cataloguedTrouble("corner-taken-outside", "corner", { cornerDeg: angleDeg, takenDeg: around }),
    ]);
  }
  if (!isInRange(angleDeg)) return refused(outOfRange(angleDeg));
  return fine({ cornerDeg: angleDeg, kind: kind ?? "inside", measured: "by its angle", degPerMm: null });
}

export interface CornerTriangle {
  /** From the corner to a mark on each wall, mm. */
  readonly alongFirstMm: number;
  readonly alongSecondMm: number;
  /** Straight from mark to mark, mm. */
  readonly acrossMm: number;
}

/**
 * A corner by three lengths of a triangle: cos C = (a² + b² − c²) / 2ab. At an outside corner the lengths are measured
 * on straight-edges that carry the walls on past the corner. `degPerMm` says how well it is known: longer legs tell
 * it better.
 */
export function cornerFromTriangle(triangle: CornerTriangle, kind: CornerKind): Outcome<Corner, TroubleCode> {
  const { alongFirstMm, alongSecondMm, acrossMm } = triangle;
  const limits = { mostMm: LONGEST_MM, zero: "refused" } as const;
  const trouble = firstTrouble([
    sizeTrouble("length along the first wall", "alongFirst", alongFirstMm, limits),
    sizeTrouble("length along the second wall", "alongSecond", alongSecondMm, limits),
    sizeTrouble("length across the corner", "across", acrossMm, limits),
  ]);
  if (trouble !== null) return refused(trouble);
  const least = Math.abs(alongFirstMm - alongSecondMm);
  const most = alongFirstMm + alongSecondMm;
  if (acrossMm <= least || acrossMm >= most) {
    const facts = { acrossMm, leastMm: least, mostMm: most };
    return refused(cataloguedTrouble("corner-no-triangle", "across", facts));
  }
  const twice = 2 * alongFirstMm * alongSecondMm;
  const cornerDeg = toDeg(acosRad((alongFirstMm ** 2 + alongSecondMm ** 2 - acrossMm ** 2) / twice));
  if (!isInRange(cornerDeg)) return refused(outOfRange(cornerDeg));
  // d(cos C)/dc = −c/ab, so dC/dc = c / (ab sin C).
  const degPerMm = toDeg((2 * acrossMm) / (twice * Math.sin(toRad(cornerDeg))));
  return fine({ cornerDeg, kind, measured: "by three lengths", degPerMm });
}

function isInRange(cornerDeg: number): boolean {
  return cornerDeg >= LEAST_CORNER_DEG && cornerDeg <= MOST_CORNER_DEG;
}

function outOfRange(cornerDeg: number) {
  return cataloguedTrouble("corner-angle", "corner", {
    cornerDeg,
    leastDeg: LEAST_CORNER_DEG,
    mostDeg: MOST_CORNER_DEG,
  });
}
