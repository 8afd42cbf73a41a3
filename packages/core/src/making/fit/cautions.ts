/** The usual cautions, added where the work they belong to is asked about. Each one says who decides. */
import { cataloguedTrouble, SAME_POINT_DEG } from "../../measure/index.ts";
import type { SawSettings } from "./saw-cut.ts";
import type { FitTrouble } from "./types.ts";

/** Shorter than this a piece cannot be held at the saw by hand with room to spare, mm (site standard citing HSE WIS16). */
export const SHORT_AT_THE_SAW_MM = 300;

export function shortPieceCaution(shortestMm: number): FitTrouble[] {
  if (!(shortestMm < SHORT_AT_THE_SAW_MM)) return [];
  return [cataloguedTrouble("caution-short-piece", "", { shortestMm, leastMm: SHORT_AT_THE_SAW_MM })];
}

/** Where the scales of many saws end (common practice, no source). */
const MOST_SAW: SawSettings = { mitreDeg: 50, bevelDeg: 45 };

/** Told where one of these cuts is beyond what many saws can be set to. */
export function beyondSawCaution(cuts: readonly SawSettings[]): FitTrouble[] {
  const mitreDeg = Math.max(0, ...cuts.map((cut) => cut.mitreDeg));
  const bevelDeg = Math.max(0, ...cuts.map((cut) => cut.bevelDeg));
  const isWithin =
    mitreDeg <= MOST_SAW.mitreDeg + SAME_POINT_DEG && bevelDeg <= MOST_SAW.bevelDeg + SAME_POINT_DEG;
  if (isWithin) return [];
  const facts = {
    mitreDeg,
    bevelDeg,
    mostMitreDeg: MOST_SAW.mitreDeg,
    mostBevelDeg: MOST_SAW.bevelDeg,
  };
  return [cataloguedTrouble("caution-beyond-saw", "", facts)];
}

export const sawCaution = (): FitTrouble => cataloguedTrouble("caution-saw", "", {});
export const dustCaution = (): FitTrouble => cataloguedTrouble("caution-dust", "", {});
export const overheadCaution = (): FitTrouble => cataloguedTrouble("caution-overhead", "", {});
export const oldPaintCaution = (): FitTrouble => cataloguedTrouble("caution-old-paint", "", {});
