/** All the sheets of a plan that are asked for, in their order, framed and numbered. */
import type { Plan } from "../cutting/index.ts";
import { fine, type InchDenominator, type LengthUnit, type Outcome } from "../measure/index.ts";
import { benchPages } from "./bench-sheet.ts";
import type { PictureOptions } from "./cut-marks.ts";
import { endPages } from "./end-sheet.ts";
import { type FitDrawings, type FitRequest, fitPages } from "./fit-sheet.ts";
import { lessonPages } from "./lesson-sheet.ts";
import { PAPERS, type PaperName, type PrinterMade, stretchFor, TRUE_PRINTER } from "./paper.ts";
import { planePages } from "./plane-sheet.ts";
import {
  framedPages,
  type Page,
  type PageContent,
  SHEET_KINDS,
  type SheetKind,
  type SheetPaper,
} from "./sheet-frame.ts";
import { storyPages } from "./story-sheet.ts";

export interface SheetOptions {
  readonly unit: LengthUnit;
  /** Finest division of the maker's inch rule; 32nds if left out. */
  readonly inchStep?: InchDenominator | undefined;
  /** A4 if left out. */
  readonly paper?: PaperName;
  /** All if left out. */
  readonly kinds?: readonly SheetKind[];
  /** What the printer made of 100 mm across and up; true if left out. */
  readonly made?: PrinterMade;
  /** Printed in the foot as given. */
  readonly date?: string;
  /** What is known of fitting; the stick is reckoned for a metre if no length is given. */
  readonly fit?: Partial<FitRequest>;
}

const NO_FIT: FitDrawings = { pictures: [], fullSize: [] };
const COMMON_LENGTH_MM = 1000;

/** The pages. Troubles: `sheet-correction-wrong`, `sheet-too-large`. */
export function sheetPages(plan: Plan, options: SheetOptions): Outcome<readonly Page[]> {
  const made = options.made ?? TRUE_PRINTER;
  const stretch = stretchFor(made);
  if (!stretch.ok) return stretch;
  const sheetPaper: SheetPaper = { paper: PAPERS[options.paper ?? "a4"], made, stretch: stretch.value };
  const contents: PageContent[] = [];
  for (const kind of SHEET_KINDS) {
    if (options.kinds !== undefined && !options.kinds.includes(kind)) continue;
    const pages = pagesOf(kind, plan, sheetPaper, options);
    if (!pages.ok) return pages;
    contents.push(...pages.value);
  }
  return fine(framedPages(contents, sheetPaper, { name: plan.name, date: options.date }));
}

function pagesOf(
  kind: SheetKind,
  plan: Plan,
  sheetPaper: SheetPaper,
  { unit, inchStep, fit }: SheetOptions,
): Outcome<readonly PageContent[]> {
  const options: PictureOptions = { unit, inchStep };
  switch (kind) {
    case "bench":
      return fine(benchPages(plan, sheetPaper, options));
    case "ends":
      return endPages(plan, sheetPaper, options);
    case "story":
      return storyPages(plan, sheetPaper, options);
    case "planes":
      return planePages(plan, sheetPaper, options);
    case "fit":
      return fitPages(plan, sheetPaper, { drawings: NO_FIT, lengthMm: COMMON_LENGTH_MM, ...fit }, options);
    case "lesson":
      return fine(lessonPages(plan, sheetPaper, options));
  }
}
