/** Refusals that many questions of fitting share. */
import { cataloguedTrouble, SAME_POINT_MM } from "../../measure/index.ts";
import type { FitTrouble } from "./types.ts";

/** Longer than any stick, wall or frame, mm. */
export const LONGEST_MM = 100_000;

/** No moulding, board or member is larger across, mm. */
export const LARGEST_ACROSS_MM = 2000;

export interface SizeLimits {
  readonly mostMm: number;
  /** `allowed`: nothing at all is a size too. */
  readonly zero: "refused" | "allowed";
}

/** Refuses a size that is not a number, is negative (or nothing, where that is refused) or beyond what is made. */
export function sizeTrouble(
  size: string,
  where: string,
  valueMm: number,
  limits: SizeLimits,
): FitTrouble | null {
  // What is smaller than the least distance between two points is no size to divide by.
  const isEnough = limits.zero === "allowed" ? valueMm >= 0 : valueMm >= SAME_POINT_MM;
  if (isEnough && valueMm <= limits.mostMm) return null;
  return cataloguedTrouble("fit-size", where, { size, valueMm, mostMm: limits.mostMm });
}

/** The first trouble of a list of checks, or null. */
export function firstTrouble(found: readonly (FitTrouble | null)[]): FitTrouble | null {
  return found.find((one) => one !== null) ?? null;
}
