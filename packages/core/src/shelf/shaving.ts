/** Shavings as planes are set to take them. */
import { requirePositive, SAME_POINT_MM } from "../measure/index.ts";

/**
 * Thickness of shavings, mm: heavy for waste, ordinary, and the last ones over a finished face. From memory; no
 * published figure for moulding planes was found (checks/area-e.json, E-T01).
 */
export const SHAVING_MM = { heavy: 0.3, ordinary: 0.15, last: 0.05 } as const;

/**
 * Strokes that take a depth at a shaving: their quotient, rounded up. A rest thinner than two points can lie apart
 * needs no stroke of its own.
 */
export function strokesToDepth(depthMm: number, shavingMm: number): number {
  requirePositive("shavingMm", shavingMm);
  return depthMm <= SAME_POINT_MM ? 0 : Math.ceil((depthMm - SAME_POINT_MM) / shavingMm);
}
