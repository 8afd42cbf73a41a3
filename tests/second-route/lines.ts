/** Whether each line can be scribed where and when the plan says so. */
import { boundaryDistance, boxOf, type FlatRegion } from "./flat.ts";
import { MARK_MM, SAME_NUMBER } from "./limits.ts";
import type { MarkJson, PlanJson, Xy } from "./plan-json.ts";

/** Numbers of marks are rounded in the file; a foot is a corner of the planned face. */
const SAME_PLACE_MM = 1e-3;

/** Faults of one mark, in words; `woods[n]` is the wood after cut n, `woods[0]` the stick. */
export function markFaults(plan: PlanJson, mark: MarkJson, woods: readonly FlatRegion[]): readonly string[] {
  const faults: string[] = [];
  if (!(Number.isInteger(mark.before) && mark.before >= 1 && mark.before <= plan.cuts.length))
    return [`there is no cut ${mark.before}`];
  const wood = woods[mark.before - 1];
  const off = boundaryDistance(wood, 0)(mark.at);
  if (off > MARK_MM)
    faults.push(`it lies ${off.toFixed(4)} mm off the wood as it stands before cut ${mark.before}`);
  const box = boxOf([plan.stick.map((v): Xy => [v[0], v[1]])]);
  const [x, y] = mark.at;
  const isRight = plan.gaugeEdge === "right";
  const fromGaugeEdge = isRight ? box.maxX - x : x - box.minX;
  if (Math.abs(mark.fromGaugeEdge - fromGaugeEdge) > SAME_NUMBER)
    faults.push(`it lies ${fromGaugeEdge} mm from the gauge edge, not ${mark.fromGaugeEdge}`);
  const said = saidDistance(mark.from);
  if (said === null) {
    const foot = /^foot of cut (\d+)$/.exec(mark.from);
    if (foot) faults.push(...footFaults(plan, mark, Number(foot[1]), woods));
    else faults.push(`nothing is called ${mark.from}`);
  } else if (Math.abs(said(x, y) - mark.distance) > SAME_NUMBER) {
    faults.push(`it lies ${said(x, y)} mm from the ${mark.from}, not ${mark.distance}`);
  }
  return faults;

  function saidDistance(from: string): ((x: number, y: number) => number) | null {
    switch (from) {
      case "gauge edge":
        return (px) => (isRight ? box.maxX - px : px - box.minX);
      case "far edge":
        return (px) => (isRight ? px - box.minX : box.maxX - px);
      case "face":
        return (_, py) => box.maxY - py;
      case "back":
        return (_, py) => py - box.minY;
      default:
        return null;
    }
  }
}

/**
 * A foot is where a shape ends: a corner of the planned ring that the named cut laid bare and that stands on the wood,
 * but for the shaving that may still lie over the face beside it.
 */
function footFaults(
  plan: PlanJson,
  mark: MarkJson,
  by: number,
  woods: readonly FlatRegion[],
): readonly string[] {
  if (!(by >= 1 && by < mark.before)) return [`cut ${by} is not made before the line is scribed`];
  const bare = boundaryDistance(woods[by], 0);
  const standing = boundaryDistance(woods[mark.before - 1], 0);
  const feet = plan.planned
    .map((v): Xy => [v[0], v[1]])
    .filter((v) => bare(v) < plan.tolerance && standing(v) < plan.tolerance);
  const isFound = feet.some((v) => Math.abs(Math.abs(v[0] - mark.at[0]) - mark.distance) < SAME_PLACE_MM);
  return isFound ? [] : [`no foot of cut ${by} lies ${mark.distance} mm across from it`];
}
