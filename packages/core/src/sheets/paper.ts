/** Sheets of paper, and what a printer makes of them. */
import { cataloguedTrouble, fine, type Outcome, refused } from "../measure/index.ts";
import type { Stretch } from "./drawing.ts";

export interface Paper {
  readonly name: string;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** ISO 216 sizes, and the American ones (8 1/2 × 11 in, 11 × 17 in), upright. */
export const PAPERS = {
  a4: { name: "A4", widthMm: 210, heightMm: 297 },
  a3: { name: "A3", widthMm: 297, heightMm: 420 },
  letter: { name: "Letter", widthMm: 215.9, heightMm: 279.4 },
  tabloid: { name: "Tabloid", widthMm: 279.4, heightMm: 431.8 },
} as const satisfies Readonly<Record<string, Paper>>;

export type PaperName = keyof typeof PAPERS;

export const PAPER_NAMES: readonly PaperName[] = ["a4", "a3", "letter", "tabloid"];

/** What was measured where a sheet says 100 mm, across and up the sheet. */
export interface PrinterMade {
  readonly acrossMm: number;
  readonly upMm: number;
}

/** What a check bar measures by itself, mm. */
export const CHECK_MM = 100;

/** A printer further out than this does not print at 100 %: no correction, but another setting. */
const LEAST_MADE_MM = 90;
const MOST_MADE_MM = 110;

/** What a printer of no error makes. */
export const TRUE_PRINTER: PrinterMade = { acrossMm: CHECK_MM, upMm: CHECK_MM };

/** How much a sheet has to be stretched so that this printer makes it true. Trouble: `sheet-correction-wrong`. */
export function stretchFor({ acrossMm, upMm }: PrinterMade): Outcome<Stretch> {
  const wrong = [acrossMm, upMm].find((madeMm) => !(madeMm >= LEAST_MADE_MM && madeMm <= MOST_MADE_MM));
  if (wrong !== undefined) {
    const facts = { measuredMm: wrong, leastMm: LEAST_MADE_MM, mostMm: MOST_MADE_MM };
    return refused(cataloguedTrouble("sheet-correction-wrong", "", facts));
  }
  return fine({ acrossRatio: CHECK_MM / acrossMm, upRatio: CHECK_MM / upMm });
}
