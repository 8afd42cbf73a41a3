/** A run of moulding round a room or a case: its pieces, how they are cut out of sticks, and pictures. */
import { type Job, sectionOfJob } from "mouldwright/job";
import {
  type Cornice,
  cornerFromAngle,
  cornice,
  corniceRun,
  corniceScribes,
  faceProfile,
  type LengthsQuestion,
  type PieceRun,
  type RunCorner,
  type ScribedEnds,
  type SharedOut,
  shareOut,
} from "mouldwright/making";
import { cataloguedTrouble, fine, type Outcome, refused, type Trouble } from "mouldwright/measure";
import type { Section } from "mouldwright/section";
import { type Drawing, drawCornice, drawRod } from "mouldwright/sheets";
import { choicesOf, type FitChoices } from "./fit-choices.ts";
import { pictureOptions } from "./pictures.ts";
import { type FoundPlacing, placingOf } from "./placing.ts";
import type { Said } from "./said.ts";

export interface CorniceAnswer extends Said {
  readonly kind: "cornice";
  readonly cornice: Cornice;
  readonly projectionMm: number;
  readonly heightMm: number;
  readonly springFromWallDeg: number;
  readonly springIs: FoundPlacing["from"];
  readonly shared: SharedOut | null;
  /** Why the pieces find no room on the sticks; empty when they do. */
  readonly sharingTroubles: readonly Trouble[];
  readonly picture: Drawing;
  readonly rod: Drawing | null;
}

export function corniceAnswer(job: Job, widthMm: number): Outcome<CorniceAnswer> {
  const choices = choicesOf(job);
  const hung = hungRun(job, choices);
  if (!hung.ok) return hung;
  const { answer, placing, projectionMm, heightMm } = hung.value;
  const scribes = scribesOf(hung.value);
  if (!scribes.ok) return scribes;
  const shared = shareOut(sharingOf(scribes.value.run, choices));
  const options = pictureOptions(job, widthMm);
  const asked = { name: job.name, projectionMm, scribes: scribes.value.ends };
  return fine({
    kind: "cornice",
    cornice: answer,
    projectionMm,
    heightMm,
    springFromWallDeg: placing.spring.fromWallDeg,
    springIs: placing.from,
    shared: shared.ok ? shared.value : null,
    sharingTroubles: shared.ok ? [] : [shared.trouble, ...(shared.more ?? [])],
    picture: drawCornice(answer, asked, options),
    rod: shared.ok ? drawRod(shared.value, job.name, options) : null,
    warnings: [...hung.warnings, ...scribes.warnings],
    assumed: answer.assumed,
    cautions: answer.cautions,
  });
}

export interface HungRun {
  readonly answer: Cornice;
  readonly section: Section;
  readonly placing: FoundPlacing;
  readonly projectionMm: number;
  readonly heightMm: number;
}

/** The run as the section hangs. Troubles: `scribe-no-face`, and those of corners and walls. */
export function hungRun(job: Job, choices: FitChoices): Outcome<HungRun> {
  const section = sectionOfJob(job);
  if (!section.ok) return section;
  const placing = placingOf(section.value, choices);
  if (!placing.ok) return placing;
  const face = faceProfile(section.value, placing.value.placing);
  if (face === null) return refused(cataloguedTrouble("scribe-no-face", "section", {}));
  const corners: RunCorner[] = [];
  for (const { cornerDeg, kind, joint } of choices.run.corners) {
    const corner = cornerFromAngle(cornerDeg, kind);
    if (!corner.ok) return corner;
    corners.push({ corner: corner.value, joint });
  }
  const { wallsMm, start, end } = choices.run;
  const { projectionMm, heightMm, hiddenAtMm } = face;
  const answer = cornice({
    spring: placing.value.spring,
    projectionMm,
    heightMm,
    wallsMm,
    corners,
    start,
    end,
    scribing: hiddenAtMm.length === 0 ? "possible" : "impossible",
  });
  if (!answer.ok) return answer;
  const hung = {
    answer: answer.value,
    section: section.value,
    placing: placing.value,
    projectionMm,
    heightMm,
  };
  return fine(hung, answer.warnings);
}

/** The scribed ends of a run, and its pieces as they are cut from sticks. */
export function scribesOf({
  answer,
  section,
  placing,
}: HungRun): Outcome<{ readonly ends: readonly ScribedEnds[]; readonly run: PieceRun }> {
  const ends = corniceScribes(answer, section, placing.placing);
  return ends.ok ? fine({ ends: ends.value, run: corniceRun(answer) }, ends.warnings) : ends;
}

export function sharingOf(run: PieceRun, { stock, sawing }: FitChoices): LengthsQuestion {
  return { runs: [run], sticks: stock, allowances: sawing };
}
