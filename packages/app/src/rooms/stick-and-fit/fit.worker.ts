/** The answers of this room away from the screen, one at a time; only the newest wish is answered. */
import { answerFit, type FitWish } from "../../fitting/fit-answers.ts";
import type { FromFit, ToFit } from "./fit-messages.ts";

let newest: { readonly number: number; readonly wish: FitWish } | null = null;

addEventListener("message", ({ data }: MessageEvent<ToFit>) => {
  newest = data;
  // What came in meanwhile is heard first, so that of several wishes the last alone is worked at.
  setTimeout(() => answerNewest(data.number), 0);
});

function answerNewest(number: number): void {
  if (newest === null || newest.number !== number) return;
  const answered: FromFit = { number, page: newest.wish.page, answer: answerFit(newest.wish) };
  postMessage(answered);
}
