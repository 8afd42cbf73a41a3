/** Drawing by hand: the stroke on the board, how it is read, and what of it is kept. */
import type { Point } from "mouldwright/curve";
import { useMemo, useState } from "react";
import { change } from "../../../bench/job-on-bench.ts";
import { partsOfJob, withParts } from "../chain/chain-edits.ts";
import type { ShelfRadius } from "../pull/soles.ts";
import type { Drawn } from "../use-drawn.ts";
import { asFreeCurve, type ReadStroke, readStroke } from "./hand-drawn.ts";

export type Closeness = "close" | "even" | "smooth";

export interface Stroke {
  readonly points: readonly Point[];
  /** How large the board showed it: a hand trembles by so many pixels, not millimetres. */
  readonly pxPerMm: number;
}

export interface HandDrawing {
  readonly isOn: boolean;
  readonly stroke: Stroke | null;
  readonly read: ReadStroke | null;
  readonly closeness: Closeness;
  readonly setOn: (isOn: boolean) => void;
  readonly draw: (stroke: Stroke | null) => void;
  readonly setCloseness: (closeness: Closeness) => void;
  readonly keepCurves: () => void;
  readonly keepFree: () => void;
}

/** A hand on glass or with a mouse keeps to about so many pixels (common practice, no source). */
const TREMBLE_PX = 4;
const LEAST_MM = 0.1;
const SHARE: Readonly<Record<Closeness, number>> = { close: 0.5, even: 1, smooth: 2 };

export function useHandDrawing(drawn: Drawn, radii: readonly ShelfRadius[]): HandDrawing {
  const [isOn, setIsOn] = useState(false);
  const [stroke, setStroke] = useState<Stroke | null>(null);
  const [closeness, setCloseness] = useState<Closeness>("even");
  const { placed } = drawn;
  const withinMm =
    stroke === null ? LEAST_MM : Math.max(LEAST_MM, (TREMBLE_PX / stroke.pxPerMm) * SHARE[closeness]);
  const read = useMemo(
    () => (stroke === null ? null : readStroke(stroke.points, { placed, radii, withinMm })),
    [stroke, placed, radii, withinMm],
  );
  const done = (): void => {
    setStroke(null);
    setIsOn(false);
  };
  const keep = (what: string, parts: ReadStroke["parts"]): void => {
    if (read === null) return;
    const { first, end } = read.place;
    change(what, (job) => withParts(job, partsOfJob(job).toSpliced(first, end - first, ...parts)));
    done();
  };
  return {
    isOn,
    stroke,
    read,
    closeness,
    setOn: (next) => {
      setStroke(null);
      setIsOn(next);
    },
    draw: setStroke,
    setCloseness,
    keepCurves: () => keep("drawn by hand", read?.parts ?? []),
    keepFree: () => {
      const part = stroke === null ? null : asFreeCurve(stroke.points, { placed, radii, withinMm });
      if (part !== null) keep("free curve drawn by hand", [part]);
    },
  };
}
