/** The answer of a page, kept up to date; while a new one is made the old one stays. */
import { useEffect, useState } from "react";
import { useShownJob } from "../../bench/job-on-bench.ts";
import type { FitAnswer, FitPage, FitWish } from "../../fitting/fit-answers.ts";
import type { FromFit, ToFit } from "./fit-messages.ts";

export interface AnswerOnShow {
  /** null before the first. */
  readonly answer: FitAnswer | null;
  /** A newer one is being made. */
  readonly isOld: boolean;
}

type Hear = (answered: FromFit) => void;

/** One worker for all pages of the room: begun with the first question, and kept, since beginning takes longest. */
let worker: Worker | null = null;
let lastNumber = 0;
const hearers = new Set<Hear>();

/** Asks, and gives the number that the answer will carry. */
function ask(wish: FitWish): number {
  if (worker === null) {
    worker = new Worker(new URL("./fit.worker.ts", import.meta.url), { type: "module" });
    worker.addEventListener("message", ({ data }: MessageEvent<FromFit>) => {
      for (const hear of hearers) hear(data);
    });
  }
  lastNumber += 1;
  const message: ToFit = { number: lastNumber, wish };
  worker.postMessage(message);
  return lastNumber;
}

export function useFitAnswer(page: FitPage, widthMm: number): AnswerOnShow {
  const job = useShownJob();
  const [asked, setAsked] = useState(0);
  const [kept, setKept] = useState<FromFit | null>(null);
  useEffect(() => {
    if (widthMm === 0) return;
    const number = ask({ page, job, widthMm });
    setAsked(number);
    const hear: Hear = (answered) => {
      if (answered.number === number) setKept(answered);
    };
    hearers.add(hear);
    return () => {
      hearers.delete(hear);
    };
  }, [page, job, widthMm]);
  if (kept === null || kept.page !== page) return { answer: null, isOld: true };
  return { answer: kept.answer, isOld: kept.number !== asked };
}
