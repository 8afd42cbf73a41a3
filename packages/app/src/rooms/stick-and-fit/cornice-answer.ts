/** A run of moulding round a room or a case: its pieces, how they are cut out of sticks, and pictures. */
import { type Job, sectionOfJob } from "mouldwright/job";
import {
  type Cornice,
  cornerFromAngle,
  cornice,
  faceProfile,
  type LengthsQuestion,
  type PieceRun,
  type RunCorner,
  type Scribe,
  type SharedOut,
  scribe,
  shareOut,
} from "mouldwright/making";
import {
  cataloguedTrouble,
  fine,
  type Outcome,
  refused,
  SAME_POINT_DEG,
  type Trouble,
} from "mouldwright/measure";
import type { Section } from "mouldwright/section";
import { type Drawing, drawCornice, drawRod, type ScribedEnds } from "mouldwright/sheets";
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
  const { answer, section, placing, projectionMm, heightMm } = hung.value;
  const scribes = scribesOf(answer, section, placing);
  if (!scribes.ok) return scribes;
  const shared = shareOut(sharingOf(corniceRun(answer), choices));
  const options = pictureOptions(job, widthMm);
  const asked = { name: job.name, projectionMm, scribes: scribes.value };
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

/** The outline of every scribed corner, those of like angle and hand together. */
function scribesOf(
  { pieces }: Cornice,
  section: Section,
  { placing }: FoundPlacing,
): Outcome<readonly ScribedEnds[]> {
  const found: ScribedEnds[] = [];
  for (const piece of pieces) {
    for (const end of ["left", "right"] as const) {
      const { joint, corner } = piece[end];
      if (joint !== "scribed" || corner === null) continue;
      const alike = found.findIndex((one) => one.end === end && isLike(one.scribe, corner.cornerDeg));
      const known = found[alike];
      if (known !== undefined) {
        found[alike] = { ...known, pieces: [...known.pieces, piece.number] };
        continue;
      }
      const outline = scribe({ section, placing, corner });
      if (!outline.ok) return outline;
      found.push({ scribe: outline.value, end, pieces: [piece.number] });
    }
  }
  return fine(found);
}

function isLike({ corner }: Scribe, cornerDeg: number): boolean {
  return Math.abs(corner.cornerDeg - cornerDeg) <= SAME_POINT_DEG;
}

/** The pieces in their order round the run. */
export function corniceRun({ pieces, run }: Cornice): PieceRun {
  return {
    name: "Piece",
    ends: run,
    pieces: pieces.map(({ longMm, number, kind }) => ({
      lengthMm: longMm,
      name: kind === "return" ? `Return ${number}` : `Piece ${number}`,
    })),
  };
}

export function sharingOf(run: PieceRun, { stock, sawing }: FitChoices): LengthsQuestion {
  return { runs: [run], sticks: stock, allowances: sawing };
}
