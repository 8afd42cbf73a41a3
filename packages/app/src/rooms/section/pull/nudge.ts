/** A handle moved by keys: by so much, without settling; what it happens to meet is still said. */
import { circleOf } from "mouldwright/curve";
import { partsOfJob, withPart } from "../chain/chain-edits.ts";
import { tidyMm } from "../chain/refit-part.ts";
import { bentTo } from "./bend-part.ts";
import { curvePiece } from "./handles.ts";
import type { Pull, Pulled } from "./pull.ts";
import { pulledTo } from "./pull-handle.ts";

/** `acrossMm`, `upMm`: from where the handle stood when the keys began; a curve's radius grows by the one or the other. */
export function nudged(pull: Pull, acrossMm: number, upMm: number): Pulled {
  const { job, placed, handle } = pull;
  if (acrossMm === 0 && upMm === 0) return { job, says: "as it was" };
  if (handle.kind !== "curve") {
    const to = { x: handle.at.x + acrossMm, y: handle.at.y + upMm };
    return pulledTo({ ...pull, rule: null }, to);
  }
  const part = partsOfJob(job)[handle.part];
  const place = placed[handle.part];
  const drawn = part === undefined || place === undefined ? null : curvePiece(part, place.pieces);
  if (part === undefined || place === undefined || drawn === null) return { job, says: "" };
  const radiusMm = tidyMm(Math.max(0.1, circleOf(drawn).radiusMm + acrossMm + upMm));
  const makes = drawn.bulge < 0 ? "round" : "hollow";
  const met = pull.radii.find((one) => one.makes === makes && Math.abs(one.radiusMm - radiusMm) <= ALIKE_MM);
  const says = met === undefined ? `radius ${pull.length(radiusMm)}` : `${met.plane} on the shelf`;
  return { job: withPart(job, handle.part, bentTo(part, place, drawn, radiusMm)), says };
}

/** Nearer than a rule can tell. */
const ALIKE_MM = 0.01;
