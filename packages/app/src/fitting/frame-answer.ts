/** A frame: its rails with their lengths, what they do over the year, and pictures. */
import type { Job } from "mouldwright/job";
import { type Frame, frame, type MitreSeasons, mitreSeasons, type PieceRun } from "mouldwright/making";
import { fine, type Outcome } from "mouldwright/measure";
import { type Drawing, drawFrame } from "mouldwright/sheets";
import { findTimber } from "mouldwright/timber";
import { choicesOf, type FitChoices } from "./fit-choices.ts";
import { pictureOptions } from "./pictures.ts";
import type { Said } from "./said.ts";

export interface FrameAnswer extends Said {
  readonly kind: "frame";
  readonly frame: Frame;
  /** null where no timber is named. */
  readonly seasons: MitreSeasons | null;
  readonly picture: Drawing;
}

export function frameAnswer(job: Job, widthMm: number): Outcome<FrameAnswer> {
  const choices = choicesOf(job);
  const answer = frameOf(choices);
  if (!answer.ok) return answer;
  const seasons = seasonsOf(choices, answer.value);
  if (!seasons.ok) return seasons;
  const { rebateMm, allowanceMm } = choices.frame;
  const sizes = { rebateMm, allowanceMm };
  return fine({
    kind: "frame",
    frame: answer.value,
    seasons: seasons.value,
    picture: drawFrame(answer.value, sizes, seasons.value, pictureOptions(job, widthMm)),
    warnings: [...answer.warnings, ...seasons.warnings],
    assumed: [...answer.value.assumed, ...(seasons.value?.assumed ?? [])],
    cautions: answer.value.cautions,
  });
}

export function frameOf({ frame: said }: FitChoices): Outcome<Frame> {
  const { stated, acrossMm, upMm, sides, sideMm, widthMm, rebateMm, allowanceMm } = said;
  return frame({
    shape: sides === null ? { kind: "rectangle", acrossMm, upMm } : { kind: "regular", sides, sideMm },
    stated,
    widthMm,
    rebateMm,
    allowanceMm,
  });
}

/** From the day of fitting to the driest one: the mitre that opens most, in the widest rail at the sharpest corner. */
export function seasonsOf(choices: FitChoices, { rails }: Frame): Outcome<MitreSeasons | null> {
  if (choices.timber === "") return fine(null);
  const timber = findTimber(choices.timber);
  if (!timber.ok) return timber;
  return mitreSeasons({
    timber: timber.value,
    sawn: choices.sawn,
    widthMm: Math.max(...rails.map((rail) => rail.widthMm)),
    cornerDeg: Math.min(...rails.map(({ start }) => start.cornerDeg)),
    fromPercent: choices.fittedPercent,
    toPercent: choices.driestPercent,
  });
}

/** The rails as a closed run of pieces to be cut from sticks. */
export function frameRun({ rails }: Frame): PieceRun {
  return {
    name: "Rail",
    ends: "closed",
    pieces: rails.map(({ longMm, number }) => ({ lengthMm: longMm, name: `Rail ${number}` })),
  };
}
