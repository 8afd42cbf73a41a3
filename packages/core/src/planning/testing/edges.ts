/** How much of an upright side stands, told from an outline's own lines and nothing else. */
import type { Ring } from "../../curve/index.ts";

/** Lines nearer to the side than this lie on it, mm. */
const ON_SIDE_MM = 0.002;

/** Length of the outline's lines that lie at x, mm. */
export function sideOf(ring: Ring, x: number): number {
  return ring.pieces.reduce((sum, { kind, from, to }) => {
    const isOn = kind === "line" && Math.abs(from.x - x) < ON_SIDE_MM && Math.abs(to.x - x) < ON_SIDE_MM;
    return isOn ? sum + Math.abs(to.y - from.y) : sum;
  }, 0);
}
