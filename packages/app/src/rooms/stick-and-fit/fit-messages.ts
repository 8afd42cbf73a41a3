/** What goes to this room's worker and what comes back: plain data. */
import type { FitAnswer, FitPage, FitWish } from "../../fitting/fit-answers.ts";

export interface ToFit {
  /** Later wishes have greater numbers; an answer carries its wish's. */
  readonly number: number;
  readonly wish: FitWish;
}

export interface FromFit {
  readonly number: number;
  readonly page: FitPage;
  readonly answer: FitAnswer;
}
