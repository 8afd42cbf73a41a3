/** Which parts a ray can meet at all, found without asking every one. */
import { SAME_POINT_MM } from "../measure/index.ts";
import type { Part } from "./parts.ts";

/** The parts whose places across the light hold this one, and perhaps some more; in the outline's order. */
export type RayIndex = (atAcrossMm: number) => readonly Part[];

/** More lanes than this cost more to fill with long parts than they save. */
const MOST_LANES = 512;

/** Parts sorted into lanes of equal width along the light; a part stands in each that it reaches into. */
export function rayIndex(parts: readonly Part[]): RayIndex {
  const count = Math.max(1, Math.min(MOST_LANES, parts.length));
  let leastMm = Number.POSITIVE_INFINITY;
  let mostMm = Number.NEGATIVE_INFINITY;
  for (const { fromAcrossMm, toAcrossMm } of parts) {
    leastMm = Math.min(leastMm, fromAcrossMm, toAcrossMm);
    mostMm = Math.max(mostMm, fromAcrossMm, toAcrossMm);
  }
  const laneMm = (mostMm - leastMm) / count || 1;
  const laneOf = (atMm: number): number =>
    Math.max(0, Math.min(count - 1, Math.floor((atMm - leastMm) / laneMm)));
  const lanes: Part[][] = Array.from({ length: count }, () => []);
  for (const part of parts) {
    // A ray that only just misses a joint is taken to meet it.
    const first = laneOf(Math.min(part.fromAcrossMm, part.toAcrossMm) - SAME_POINT_MM);
    const last = laneOf(Math.max(part.fromAcrossMm, part.toAcrossMm) + SAME_POINT_MM);
    for (let lane = first; lane <= last; lane++) lanes[lane]?.push(part);
  }
  return (atAcrossMm) => lanes[laneOf(atAcrossMm)] ?? [];
}
