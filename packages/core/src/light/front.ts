/** The run of the outline that can be looked at: from the front of its last edge round to the front of its first. */
import { atLeastMm, atMostMm, bug } from "../measure/index.ts";
import type { Part } from "./parts.ts";

/**
 * The parts (cut for the line of sight, so that every highest and lowest place is an end) from the foremost of the
 * lowest places to the foremost of the highest, in the ring's order. What lies on the wall or over the top is left out.
 */
export function frontOf(parts: readonly Part[]): readonly Part[] {
  let lowestMm = Number.POSITIVE_INFINITY;
  let highestMm = Number.NEGATIVE_INFINITY;
  for (const { from } of parts) {
    lowestMm = Math.min(lowestMm, from.y);
    highestMm = Math.max(highestMm, from.y);
  }
  const last = foremost(parts, lowestMm, atMostMm);
  const first = foremost(parts, highestMm, atLeastMm);
  return last <= first ? parts.slice(last, first) : [...parts.slice(last), ...parts.slice(0, first)];
}

function foremost(
  parts: readonly Part[],
  heightMm: number,
  lies: (lengthMm: number, limitMm: number) => boolean,
): number {
  let best = -1;
  for (const [index, { from }] of parts.entries()) {
    if (!lies(from.y, heightMm)) continue;
    if (best < 0 || from.x > (parts[best]?.from.x ?? 0)) best = index;
  }
  return best < 0 ? bug("an outline has no highest place", { parts: parts.length }) : best;
}
