/** The writer's worker as the room sees it. A newer set of sheets ends an older one under way at once. */
import type { Plan } from "mouldwright/cutting";
import type { FromWriter, SheetsWish, ToWriter } from "./messages.ts";
import type { OtherFileKind } from "./other-files.ts";

export type SheetsWanted = Pick<SheetsWish, "plan" | "options" | "job">;

export interface Writer {
  /** The answer to the newest set asked for; older ones are never answered. */
  readonly writeSheets: (wish: SheetsWanted, onAnswer: (answer: FromWriter) => void) => void;
  readonly writeOther: (plan: Plan, file: OtherFileKind, lengthMm: number) => Promise<FromWriter>;
  readonly close: () => void;
}

export function openWriter(): Writer {
  const sheets = oneWorker();
  const others = oneWorker();
  return {
    writeSheets: (wanted, onAnswer) => {
      if (sheets.isBusy()) sheets.end();
      sheets.ask((wish) => ({ kind: "sheets", wish, ...wanted }), onAnswer);
    },
    writeOther: (plan, file, lengthMm) =>
      new Promise((resolve) => {
        others.ask((wish) => ({ kind: "other file", wish, plan, file, lengthMm }), resolve);
      }),
    close: () => {
      sheets.end();
      others.end();
    },
  };
}

interface OneWorker {
  readonly ask: (message: (wish: number) => ToWriter, onAnswer: (answer: FromWriter) => void) => void;
  readonly isBusy: () => boolean;
  readonly end: () => void;
}

/** A worker that begins when first asked. What was asked of one that was ended is not answered. */
function oneWorker(): OneWorker {
  let worker: Worker | null = null;
  let wish = 0;
  const waiting = new Map<number, (answer: FromWriter) => void>();
  const begin = (): Worker => {
    const begun = new Worker(new URL("./writer.worker.ts", import.meta.url), { type: "module" });
    begun.addEventListener("message", ({ data }: MessageEvent<FromWriter>) => {
      const onAnswer = waiting.get(data.wish);
      waiting.delete(data.wish);
      onAnswer?.(data);
    });
    return begun;
  };
  return {
    ask: (message, onAnswer) => {
      wish += 1;
      waiting.set(wish, onAnswer);
      worker ??= begin();
      worker.postMessage(message(wish));
    },
    isBusy: () => waiting.size > 0,
    end: () => {
      worker?.terminate();
      worker = null;
      waiting.clear();
    },
  };
}
