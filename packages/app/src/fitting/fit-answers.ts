/**
 * The answers of this room, reckoned from the job alone: plain data, so that they can be made away from the screen.
 * Pictures come with them, drawn for a page of the width that the screen has.
 */
import type { Job } from "mouldwright/job";
import { cataloguedTrouble, type Outcome, type Trouble } from "mouldwright/measure";
import { type CornerAnswer, cornerAnswer } from "./corner-answer.ts";
import { type CorniceAnswer, corniceAnswer } from "./cornice-answer.ts";
import { type FrameAnswer, frameAnswer } from "./frame-answer.ts";
import { type SideAnswer, sideAnswer } from "./side-answer.ts";
import { type SlopesAnswer, slopesAnswer } from "./slopes-answer.ts";
import { type StickPageAnswer, stickAnswer } from "./stick-answer.ts";
import { type UnlikeAnswer, unlikeAnswer } from "./unlike-answer.ts";

export const FIT_PAGES = ["stick", "corner", "frame", "cornice", "slopes", "unlike", "side"] as const;
export type FitPage = (typeof FIT_PAGES)[number];

export interface FitWish {
  readonly page: FitPage;
  readonly job: Job;
  /** Width that pictures are drawn for, mm on paper. */
  readonly widthMm: number;
}

export type FitValue =
  | StickPageAnswer
  | CornerAnswer
  | FrameAnswer
  | CorniceAnswer
  | SlopesAnswer
  | UnlikeAnswer
  | SideAnswer;

export type FitAnswer =
  | { readonly ok: true; readonly value: FitValue }
  | { readonly ok: false; readonly troubles: readonly Trouble[] };

/** Never throws: a mistake of our own comes back as the trouble `internal`. */
export function answerFit(wish: FitWish): FitAnswer {
  try {
    const outcome = outcomeOf(wish);
    return outcome.ok
      ? { ok: true, value: outcome.value }
      : { ok: false, troubles: [outcome.trouble, ...(outcome.more ?? [])] };
  } catch (error) {
    const detail = error instanceof Error ? error.message : String(error);
    return { ok: false, troubles: [cataloguedTrouble("internal", "", { detail })] };
  }
}

function outcomeOf({ page, job, widthMm }: FitWish): Outcome<FitValue> {
  switch (page) {
    case "stick":
      return stickAnswer(job, widthMm);
    case "corner":
      return cornerAnswer(job, widthMm);
    case "frame":
      return frameAnswer(job, widthMm);
    case "cornice":
      return corniceAnswer(job, widthMm);
    case "slopes":
      return slopesAnswer(job, widthMm);
    case "unlike":
      return unlikeAnswer(job, widthMm);
    case "side":
      return sideAnswer(job, widthMm);
  }
}
