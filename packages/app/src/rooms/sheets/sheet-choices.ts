/** What is printed: the choices kept in the job, and what they ask the sheets for. */
import type { Job } from "mouldwright/job";
import {
  PAPER_NAMES,
  PAPERS,
  type PaperName,
  type PrinterMade,
  SHEET_KINDS,
  type SheetKind,
  type SheetOptions,
} from "mouldwright/sheets";
import type { PageTold } from "./messages.ts";

/** All of a job that its sheets hang on, besides the plan. */
export type PrintedFrom = Pick<Job, "unit" | "inchStep" | "sheets" | "working">;

export interface SheetWords {
  readonly kind: SheetKind;
  readonly name: string;
  readonly says: string;
}

export const SHEETS: readonly SheetWords[] = [
  { kind: "bench", name: "Bench card", says: "every cut in its order, with plane, line and picture" },
  {
    kind: "ends",
    name: "End templates",
    says: "the section at full size for both ends, and profiles to try it with",
  },
  { kind: "story", name: "Story stick", says: "every line across the stick at full size, to prick off" },
  {
    kind: "planes",
    name: "Planes and arcs",
    says: "each sole and arc at full size, to hold planes and irons against",
  },
  { kind: "fit", name: "Stick and fit", says: "the stick to buy, the saw at a corner, pieces and scribes" },
  { kind: "lesson", name: "Lesson", says: "why each step is done so, and what goes wrong otherwise" },
];

export const PAPER_CHOICES: readonly { readonly value: PaperName; readonly words: string }[] =
  PAPER_NAMES.map((value) => ({ value, words: PAPERS[value].name }));

/** A printer of no error. */
export const TRUE_MADE: PrinterMade = { acrossMm: 100, upMm: 100 };

export function paperOf(job: PrintedFrom): PaperName {
  return job.sheets?.paper ?? "a4";
}

/** In the order they are printed. */
export function kindsOf(job: PrintedFrom): readonly SheetKind[] {
  const chosen = job.sheets?.kinds;
  return chosen === undefined ? SHEET_KINDS : SHEET_KINDS.filter((kind) => chosen.includes(kind));
}

export function madeOf(job: PrintedFrom): PrinterMade {
  return job.sheets?.made ?? TRUE_MADE;
}

export function isTrue({ acrossMm, upMm }: PrinterMade): boolean {
  return acrossMm === TRUE_MADE.acrossMm && upMm === TRUE_MADE.upMm;
}

export function withPaper(job: Job, paper: PaperName): Job {
  return { ...job, sheets: { ...job.sheets, paper } };
}

/** All of them are kept as none named, so that a sheet added later is printed too. */
export function withKinds(job: Job, kinds: readonly SheetKind[]): Job {
  const { kinds: _, ...others } = job.sheets ?? {};
  const chosen = SHEET_KINDS.filter((kind) => kinds.includes(kind));
  return {
    ...job,
    sheets: chosen.length === SHEET_KINDS.length ? others : { ...others, kinds: chosen },
  };
}

export function withMade(job: Job, made: PrinterMade): Job {
  const { made: _, ...others } = job.sheets ?? {};
  return { ...job, sheets: isTrue(made) ? others : { ...others, made } };
}

/** What the job asks the sheets for, besides its plan. */
export function sheetOptionsOf(job: PrintedFrom): SheetOptions {
  const made = madeOf(job);
  return {
    unit: job.unit ?? "mm",
    inchStep: job.inchStep,
    paper: paperOf(job),
    kinds: kindsOf(job),
    ...(isTrue(made) ? {} : { made }),
    // The stick on the fit sheet is that of the room Stick and fit.
    ...(job.working?.lengthMm === undefined ? {} : { fit: { lengthMm: job.working.lengthMm } }),
  };
}

/** "22 pages on A4, 9 of them full size". */
export function pagesSaid(pages: readonly PageTold[], paper: PaperName): string {
  const full = pages.filter(({ isFullSize }) => isFullSize).length;
  const all = `${pages.length} ${pages.length === 1 ? "page" : "pages"} on ${PAPERS[paper].name}`;
  if (full === 0) return all;
  if (full === pages.length) return `${all}, full size`;
  return `${all}, ${full} of them full size`;
}

/** What was ticked or unticked, for the button that undoes it. */
export function changeSaid(before: readonly SheetKind[], after: readonly SheetKind[]): string {
  const changed = SHEETS.filter(({ kind }) => before.includes(kind) !== after.includes(kind));
  const names = changed.map(({ name }) => name).join(", ");
  return `${names} ${after.length < before.length ? "not printed" : "printed"}`;
}

/** "Bench card, Lesson"; all and none in words. */
export function kindsSaid(kinds: readonly SheetKind[]): string {
  if (kinds.length === SHEET_KINDS.length) return "all sheets";
  if (kinds.length === 0) return "no sheet";
  return SHEETS.filter(({ kind }) => kinds.includes(kind))
    .map(({ name }) => name)
    .join(", ");
}
