/** The answer of a page, kept up to date; while a new one is made the old one stays. */
import { useEffect, useRef, useState } from "react";
import { useShownJob } from "../../bench/job-on-bench.ts";
import type { FitAnswer, FitPage } from "./fit-answers.ts";
import type { FromFit, ToFit } from "./fit-messages.ts";

export interface AnswerOnShow {
  /** null before the first. */
  readonly answer: FitAnswer | null;
  /** A newer one is being made. */
  readonly isOld: boolean;
}

interface Kept {
  readonly page: FitPage;
  readonly answer: FitAnswer;
  readonly number: number;
}

export function useFitAnswer(page: FitPage, widthMm: number): AnswerOnShow {
  const job = useShownJob();
  const worker = useRef<Worker | null>(null);
  const [asked, setAsked] = useState(0);
  const [kept, setKept] = useState<Kept | null>(null);
  const number = useRef(0);
  useEffect(() => {
    const begun = new Worker(new URL("./fit.worker.ts", import.meta.url), { type: "module" });
    begun.addEventListener("message", ({ data }: MessageEvent<FromFit>) => {
      if (data.number === number.current) setKept(data);
    });
    worker.current = begun;
    return () => {
      begun.terminate();
      worker.current = null;
    };
  }, []);
  useEffect(() => {
    if (widthMm === 0) return;
    number.current += 1;
    setAsked(number.current);
    const message: ToFit = { number: number.current, wish: { page, job, widthMm } };
    worker.current?.postMessage(message);
  }, [page, job, widthMm]);
  if (kept === null || kept.page !== page) return { answer: null, isOld: true };
  return { answer: kept.answer, isOld: kept.number !== asked };
}
