/** Which side of the drawing a plan's lines are gauged from. */
import type { Plan } from "../cutting/index.ts";
import { turnedBox } from "./stick-view.ts";

/**
 * The side that the gauge edge lies on. An older file does not say it in a word, but every line says how far it lies
 * from the gauge edge: it is the side that those distances fit. Left where no line says otherwise.
 */
export function gaugeEdgeOf(plan: Plan): "left" | "right" {
  if (plan.gaugeEdge !== undefined) return plan.gaugeEdge;
  const { minX, maxX } = turnedBox(plan.stick, 0);
  let offLeftMm = 0;
  let offRightMm = 0;
  for (const { at, fromGaugeEdge } of plan.marks) {
    offLeftMm += Math.abs(at[0] - minX - fromGaugeEdge);
    offRightMm += Math.abs(maxX - at[0] - fromGaugeEdge);
  }
  return offRightMm < offLeftMm ? "right" : "left";
}

/** How far a place lies from the gauge edge, mm across. */
export function acrossFromGaugeMm(plan: Plan, place: readonly [number, number]): number {
  const { minX, maxX } = turnedBox(plan.stick, 0);
  return gaugeEdgeOf(plan) === "right" ? maxX - place[0] : place[0] - minX;
}
