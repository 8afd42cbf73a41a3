/** The job's moulding where it meets another one at a corner: the line of the mitre, and the saw's settings for both. */
import { type Job, sectionOfJob } from "mouldwright/job";
import { faceProfile, risingFace, springFrom, type UnlikeMitre, unlikeMitre } from "mouldwright/making";
import { cataloguedTrouble, fine, type Outcome, refused } from "mouldwright/measure";
import { type Drawing, drawUnlike } from "mouldwright/sheets";
import { cornerOf } from "./corner-answer.ts";
import { choicesOf } from "./fit-choices.ts";
import { pictureOptions } from "./pictures.ts";
import { placingOf } from "./placing.ts";
import type { Said } from "./said.ts";

export interface MouldingSize {
  readonly projectionMm: number;
  readonly heightMm: number;
  readonly springFromWallDeg: number;
}

export interface UnlikeAnswer extends Said {
  readonly kind: "unlike";
  readonly mitre: UnlikeMitre;
  /** The job's own, on the left as one faces the corner. */
  readonly own: MouldingSize;
  readonly other: MouldingSize;
  readonly picture: Drawing;
}

/** Troubles: `scribe-no-face`, and those of corner, spring and sizes. */
export function unlikeAnswer(job: Job, widthMm: number): Outcome<UnlikeAnswer> {
  const choices = choicesOf(job);
  const section = sectionOfJob(job);
  if (!section.ok) return section;
  const placing = placingOf(section.value, choices);
  if (!placing.ok) return placing;
  const corner = cornerOf(choices);
  if (!corner.ok) return corner;
  const face = faceProfile(section.value, placing.value.placing);
  if (face === null) return refused(cataloguedTrouble("scribe-no-face", "section", {}));
  const { unlike } = choices;
  const spring = springFrom("wall", unlike.springFromWallDeg ?? placing.value.spring.fromWallDeg);
  if (!spring.ok) return spring;
  const { projectionMm, heightMm } = face;
  const first = { projectionMm, heightMm, spring: placing.value.spring, face: risingFace(face) };
  const second = {
    projectionMm: unlike.projectionMm,
    heightMm: unlike.heightMm ?? heightMm,
    spring: spring.value,
  };
  const { bladeLeans } = choices;
  const answer = unlikeMitre({ corner: corner.value, first, second, bladeLeans });
  if (!answer.ok) return answer;
  const [hiddenMm] = face.hiddenAtMm;
  const bridged =
    hiddenMm === undefined
      ? []
      : [cataloguedTrouble("unlike-bridged", "first", { moulding: "first", heightMm: hiddenMm })];
  const sizes = { firstMm: projectionMm, secondMm: second.projectionMm };
  return fine({
    kind: "unlike",
    mitre: answer.value,
    own: { projectionMm, heightMm, springFromWallDeg: first.spring.fromWallDeg },
    other: {
      projectionMm: second.projectionMm,
      heightMm: second.heightMm,
      springFromWallDeg: second.spring.fromWallDeg,
    },
    picture: drawUnlike(answer.value, sizes, pictureOptions(job, widthMm)),
    warnings: [...corner.warnings, ...bridged, ...answer.warnings],
    assumed: answer.value.assumed,
    cautions: answer.value.cautions,
  });
}
