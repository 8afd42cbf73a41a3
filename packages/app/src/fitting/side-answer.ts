/** A moulding along a solid side of a case: how the side moves under it, and the slots that let it. */
import type { Job } from "mouldwright/job";
import { type SideMoulding, sideMoulding } from "mouldwright/making";
import { fine, type Outcome } from "mouldwright/measure";
import { type Drawing, drawSideMoulding } from "mouldwright/sheets";
import { dustCautionsOf, findTimber } from "mouldwright/timber";
import { choicesOf } from "./fit-choices.ts";
import { pictureOptions } from "./pictures.ts";
import type { Said } from "./said.ts";

export interface SideAnswer extends Said {
  readonly kind: "side";
  /** null until a timber is named: what it does over the year hangs on it. */
  readonly side: SideMoulding | null;
  readonly picture: Drawing | null;
}

export function sideAnswer(job: Job, widthMm: number): Outcome<SideAnswer> {
  const { timber, sawn, fittedPercent, driestPercent, wettestPercent, side } = choicesOf(job);
  if (timber === "") {
    return fine({ kind: "side", side: null, picture: null, warnings: [], assumed: [], cautions: [] });
  }
  const found = findTimber(timber);
  if (!found.ok) return found;
  const { depthMm, screwsMm, screwMm } = side;
  const seasons = { fittedPercent, driestPercent, wettestPercent };
  const answer = sideMoulding({ timber: found.value, sawn, depthMm, ...seasons, screwsMm, screwMm });
  if (!answer.ok) return answer;
  return fine({
    kind: "side",
    side: answer.value,
    picture: drawSideMoulding(answer.value, pictureOptions(job, widthMm)),
    warnings: answer.warnings,
    assumed: answer.value.assumed,
    cautions: [...answer.value.cautions, ...dustCautionsOf(found.value)],
  });
}
