/** Where the axis of a curved plane stands when its cut is finished. */
import type { PlanCut } from "../cutting/index.ts";
import { toRad } from "../measure/index.ts";
import type { PaperPoint } from "./drawing.ts";

export interface PlaneAxis {
  /** The middle of the sole, in the stick's frame. */
  readonly at: PaperPoint;
  /** Unit step up into the body. */
  readonly up: PaperPoint;
  readonly tiltDeg: number;
}

/** The axis of a hollow's or round's cut in the last pose of its last run; null for other planes. */
export function axisOf(cut: PlanCut): PlaneAxis | null {
  if (cut.plane.kind !== "hollow" && cut.plane.kind !== "round") return null;
  const pose = (cut.runs ?? []).at(-1)?.at(-1);
  if (pose === undefined) return null;
  const [x, y, tiltDeg] = pose;
  return { at: [x, y], up: [-Math.sin(toRad(tiltDeg)), Math.cos(toRad(tiltDeg))], tiltDeg };
}
