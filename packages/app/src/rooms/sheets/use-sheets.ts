/** The sheets of the plan on the bench, made anew whenever plan or choices change; the last ones stay until then. */
import type { Plan } from "mouldwright/cutting";
import type { Trouble } from "mouldwright/measure";
import type { PaperName, SheetOptions } from "mouldwright/sheets";
import { useEffect, useRef, useState } from "react";
import type { PageTold } from "./messages.ts";
import { openWriter, type Writer } from "./writer.ts";

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
}

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

/** `options` must be the same object as long as nothing of it changes. */
export function useSheets(writer: () => Writer, plan: Plan | null, options: SheetOptions): Sheets {
  const [sheets, setSheets] = useState<Sheets>({ made: null, isMaking: false, troubles: [] });
  useEffect(() => {
    if (plan === null) return;
    if (options.kinds?.length === 0) {
      setSheets({ made: null, isMaking: false, troubles: [] });
      return;
    }
    let isWanted = true;
    setSheets((before) => ({ ...before, isMaking: true }));
    writer().writeSheets(plan, options, (answer) => {
      if (!isWanted) return;
      if (answer.kind === "refused") {
        setSheets({ made: null, isMaking: false, troubles: answer.troubles });
        return;
      }
      const file = new Blob([answer.bytes], { type: "application/pdf" });
      const made = { file, pages: answer.pages, paper: options.paper ?? "a4" };
      setSheets({ made, isMaking: false, troubles: [] });
    });
    return () => {
      isWanted = false;
    };
  }, [writer, plan, options]);
  return sheets;
}
