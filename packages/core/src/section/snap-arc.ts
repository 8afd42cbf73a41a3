/** Another radius between the same two ends, and what that changes. */
import { type Arc, arc, distanceMm } from "../curve/index.ts";
import { requirePositive } from "../measure/index.ts";
import { heightOfRadiusMm } from "./fit-span.ts";

/**
 * The arc between the same ends, bent to the same side, of another radius; null if the ends are further apart than that
 * circle is wide. Never more than a half circle.
 */
export function snapArc(drawn: Arc, radiusMm: number): Arc | null {
  requirePositive("radiusMm", radiusMm);
  const halfMm = distanceMm(drawn.from, drawn.to) / 2;
  const heightMm = heightOfRadiusMm(radiusMm, halfMm);
  if (heightMm === null) return null;
  return arc(drawn.from, drawn.to, (Math.sign(drawn.bulge) * heightMm) / halfMm, drawn.source);
}

/**
 * Greatest distance between two arcs that share their ends, mm: in the middle, where their heights over the chord
 * differ most (both at most a half circle; bent to opposite sides the heights add up).
 */
export function arcsApartMm(a: Arc, b: Arc): number {
  return (distanceMm(a.from, a.to) / 2) * Math.abs(a.bulge - b.bulge);
}
