/** The usual cautions, added where the work they belong to is asked about. Each one says who decides. */
import { cataloguedTrouble } from "../../measure/index.ts";
import type { FitTrouble } from "./types.ts";

/** Shorter than this a piece cannot be held at the saw by hand with room to spare, mm (site standard citing HSE WIS16). */
export const SHORT_AT_THE_SAW_MM = 300;

export function shortPieceCaution(shortestMm: number): FitTrouble[] {
  if (!(shortestMm < SHORT_AT_THE_SAW_MM)) return [];
  return [cataloguedTrouble("caution-short-piece", "", { shortestMm, leastMm: SHORT_AT_THE_SAW_MM })];
}

export const sawCaution = (): FitTrouble => cataloguedTrouble("caution-saw", "", {});
export const dustCaution = (): FitTrouble => cataloguedTrouble("caution-dust", "", {});
export const overheadCaution = (): FitTrouble => cataloguedTrouble("caution-overhead", "", {});
export const oldPaintCaution = (): FitTrouble => cataloguedTrouble("caution-old-paint", "", {});
