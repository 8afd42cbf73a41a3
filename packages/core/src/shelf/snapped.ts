import { SAME_POINT_MM } from "../measure/index.ts";

const STEPS_PER_MM = Math.round(1 / SAME_POINT_MM);

/** A length, mm, rounded to the step in which all input is taken, so that inch and millimetre files agree; never -0. */
export function snappedMm(lengthMm: number): number {
  const snapped = Math.round(lengthMm * STEPS_PER_MM) / STEPS_PER_MM;
  return snapped === 0 ? 0 : snapped;
}
