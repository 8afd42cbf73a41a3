/** The sheets of the plan on the bench, made anew whenever plan or choices change; the last ones stay until then. */
import type { Plan } from "mouldwright/cutting";
import type { Trouble } from "mouldwright/measure";
import type { PaperName } from "mouldwright/sheets";
import { useEffect, useRef, useState } from "react";
import type { PageTold } from "./messages.ts";
import { openWriter, type SheetsWanted, type Writer } from "./writer.ts";

export interface MadeSheets {
  readonly file: Blob;
  readonly pages: readonly PageTold[];
  readonly paper: PaperName;
}

export interface Sheets {
  /** Null before the first, and where none is asked for. */
  readonly made: MadeSheets | null;
  readonly isMaking: boolean;
  readonly troubles: readonly Trouble[];
  /** What of the fitting is not on the sheets, and why. */
  readonly warnings: readonly Trouble[];
}

const NONE: Sheets = { made: null, isMaking: false, troubles: [], warnings: [] };

/** The worker of this room; it ends when the room is left. */
export function useWriter(): () => Writer {
  const kept = useRef<Writer | null>(null);
  useEffect(
    () => () => {
      kept.current?.close();
      kept.current = null;
    },
    [],
  );
  const writer = useRef((): Writer => {
    kept.current ??= openWriter();
    return kept.current;
  });
  return writer.current;
}

/** `options` and `job` must be the same objects as long as nothing of them that is printed changes. */
export function useSheets(
  writer: () => Writer,
  plan: Plan | null,
  { options, job }: Pick<SheetsWanted, "options" | "job">,
): Sheets {
  const [sheets, setSheets] = useState<Sheets>(NONE);
  useEffect(() => {
    if (plan === null) return;
    if (options.kinds?.length === 0) {
      setSheets(NONE);
      return;
    }
    let isWanted = true;
    setSheets((before) => ({ ...before, isMaking: true }));
    writer().writeSheets({ plan, options, job }, (answer) => {
      if (!isWanted) return;
      if (answer.kind === "refused") {
        setSheets({ ...NONE, troubles: answer.troubles });
        return;
      }
      const file = new Blob([answer.bytes], { type: "application/pdf" });
      const made = { file, pages: answer.pages, paper: options.paper ?? "a4" };
      setSheets({ made, isMaking: false, troubles: [], warnings: answer.warnings });
    });
    return () => {
      isWanted = false;
    };
  }, [writer, plan, options, job]);
  return sheets;
}
