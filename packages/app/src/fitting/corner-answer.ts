/** One corner at the saw: settings both ways, how each piece lies, and pictures of the stick on the table. */
import { type Job, sectionOfJob } from "mouldwright/job";
import {
  type Corner,
  cornerFromAngle,
  cornerFromTriangle,
  type Mitre,
  mitre,
  type SawCut,
  type StickEdge,
} from "mouldwright/making";
import { fine, type Outcome, toRad } from "mouldwright/measure";
import { type Drawing, drawMitre, drawSawCut } from "mouldwright/sheets";
import { choicesOf, type FitChoices } from "./fit-choices.ts";
import { pictureOptions } from "./pictures.ts";
import { type FoundPlacing, placingOf } from "./placing.ts";
import type { Said } from "./said.ts";

/** One cut needs no more width, mm on paper: on a wide screen figures and picture then stand in one look. */
const SAW_PAGE_MM = 120;

export interface CornerAnswer extends Said {
  readonly kind: "corner";
  readonly mitre: Mitre;
  readonly springIs: FoundPlacing["from"];
  readonly left: PieceAtSaw;
  readonly right: PieceAtSaw;
  /** Spring, corner, both pieces, shooting board. */
  readonly all: Drawing;
}

export interface PieceAtSaw {
  readonly flat: SawCut;
  readonly held: SawCut;
  readonly long: LongPoint;
  readonly picture: Drawing;
}

export interface LongPoint {
  /** The edge of the stick that the long point is on; null for a square cut. */
  readonly edge: StickEdge | null;
  /** How far along the back the long point stands past the short one, mm. */
  readonly pastShortMm: number;
}

export function cornerAnswer(job: Job, widthMm: number): Outcome<CornerAnswer> {
  const choices = choicesOf(job);
  const section = sectionOfJob(job);
  if (!section.ok) return section;
  const placing = placingOf(section.value, choices);
  if (!placing.ok) return placing;
  const corner = cornerOf(choices);
  if (!corner.ok) return corner;
  const { bladeLeans } = choices;
  const backMm = job.stick.widthMm;
  const answer = mitre({
    spring: placing.value.spring,
    corner: corner.value,
    widthMm: backMm,
    bladeLeans,
  });
  if (!answer.ok) return answer;
  const options = pictureOptions(job, widthMm);
  const { laidFlat, heldAtSpring } = answer.value;
  const piece = (name: string, flat: SawCut, held: SawCut): PieceAtSaw => ({
    flat,
    held,
    long: longPointOf(flat, backMm),
    picture: drawSawCut(name, flat, pictureOptions(job, Math.min(widthMm, SAW_PAGE_MM))),
  });
  return fine({
    kind: "corner",
    mitre: answer.value,
    springIs: placing.value.from,
    left: piece("Left-hand piece", laidFlat.leftPiece, heldAtSpring.leftPiece),
    right: piece("Right-hand piece", laidFlat.rightPiece, heldAtSpring.rightPiece),
    all: drawMitre(answer.value, options),
    warnings: [...corner.warnings, ...answer.warnings],
    assumed: answer.value.assumed,
    cautions: answer.value.cautions,
  });
}

export function cornerOf({ cornerDeg, triangleMm, kind }: FitChoices): Outcome<Corner> {
  return triangleMm === null ? cornerFromAngle(cornerDeg, kind) : cornerFromTriangle(triangleMm, kind);
}

/** The long point lies at the fence where the handle is swung towards the part that is kept. */
export function longPointOf(cut: SawCut, backMm: number): LongPoint {
  if (cut.turnHandleTo === "neither") return { edge: null, pastShortMm: 0 };
  const isAtFence = cut.keep === cut.turnHandleTo;
  const other: StickEdge = cut.edgeAtFence === "wall edge" ? "ceiling edge" : "wall edge";
  return {
    edge: isAtFence ? cut.edgeAtFence : other,
    pastShortMm: backMm * Math.tan(toRad(cut.mitreDeg)),
  };
}
