/** What slopes: a moulding that runs up a gable, a hip between two roofs, a box with sloping sides. */
import { type Job, sectionOfJob } from "mouldwright/job";
import { type Hip, type Hopper, hip, hopper, type Rake, rake } from "mouldwright/making";
import { fine, type Outcome, type Trouble } from "mouldwright/measure";
import { type Drawing, drawHip, drawHopper, drawRake } from "mouldwright/sheets";
import { choicesOf, type FitChoices } from "./fit-choices.ts";
import { pictureOptions } from "./pictures.ts";
import { placingOf } from "./placing.ts";
import type { Said } from "./said.ts";

export type Sloping =
  | { readonly shown: "rake"; readonly rake: Rake }
  | { readonly shown: "hip"; readonly hip: Hip }
  | { readonly shown: "box"; readonly box: Hopper };

export interface SlopesAnswer extends Said {
  readonly kind: "slopes";
  readonly sloping: Sloping;
  readonly picture: Drawing;
}

export function slopesAnswer(job: Job, widthMm: number): Outcome<SlopesAnswer> {
  const choices = choicesOf(job);
  switch (choices.slopes.shown) {
    case "rake":
      return rakeAnswer(job, choices, widthMm);
    case "hip":
      return hipAnswer(job, choices, widthMm);
    case "box":
      return boxAnswer(job, choices, widthMm);
  }
}

function rakeAnswer(job: Job, choices: FitChoices, widthMm: number): Outcome<SlopesAnswer> {
  const section = sectionOfJob(job);
  if (!section.ok) return section;
  const placing = placingOf(section.value, choices);
  if (!placing.ok) return placing;
  const answer = rake({
    section: section.value,
    given: "level",
    placing: placing.value.placing,
    slopeDeg: choices.slopes.rakeDeg,
  });
  if (!answer.ok) return answer;
  const picture = drawRake(answer.value, placing.value.placing, pictureOptions(job, widthMm));
  return fine(saidOf({ shown: "rake", rake: answer.value }, picture, answer.value, answer.warnings));
}

function hipAnswer(job: Job, { slopes }: FitChoices, widthMm: number): Outcome<SlopesAnswer> {
  const { mainDeg, adjacentDeg, planDeg } = slopes;
  const answer = hip({ mainDeg, adjacentDeg: adjacentDeg ?? mainDeg, cornerDeg: planDeg });
  if (!answer.ok) return answer;
  const picture = drawHip(answer.value, { runMm: null, name: "hip" }, pictureOptions(job, widthMm));
  return fine(saidOf({ shown: "hip", hip: answer.value }, picture, answer.value, answer.warnings));
}

function boxAnswer(job: Job, { slopes, bladeLeans }: FitChoices, widthMm: number): Outcome<SlopesAnswer> {
  const answer = hopper({
    sides: slopes.boxSides,
    slope: { fromLevelDeg: slopes.boxDeg },
    widthMm: slopes.boxWidthMm,
    narrowEdgeMm: slopes.boxFootMm,
    bladeLeans,
  });
  if (!answer.ok) return answer;
  const picture = drawHopper(answer.value, pictureOptions(job, widthMm));
  return fine(saidOf({ shown: "box", box: answer.value }, picture, answer.value, answer.warnings));
}

function saidOf(
  sloping: Sloping,
  picture: Drawing,
  { assumed, cautions }: Pick<Said, "assumed" | "cautions">,
  warnings: readonly Trouble[],
): SlopesAnswer {
  return { kind: "slopes", sloping, picture, warnings, assumed, cautions };
}
