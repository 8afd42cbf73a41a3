import { cataloguedTrouble, fine, type Outcome, type Trouble } from "mouldwright/measure";
import {
  PAPER_NAMES,
  type Page,
  type PaperName,
  type PrinterMade,
  SHEET_KINDS,
  type SheetKind,
  sheetPages,
  stretchFor,
} from "mouldwright/sheets";
import { writePdf } from "mouldwright-pdf";
import { nodeFonts } from "mouldwright-pdf/node-fonts";
import { type OptionKinds, readChoice, readLengthOption, readSize, wrongValue } from "./arguments.ts";
import { type Command, note, refuse, troublesOfRefusal } from "./command.ts";
import { EXIT } from "./exit-codes.ts";
import { FIT_SHEET_OPTIONS, fitDrawings, readFitFiles } from "./fit-drawings.ts";
import { wrapped } from "./io.ts";
import { onlyName } from "./names.ts";
import { type NoPlan, planToUse } from "./plan-or-job.ts";
import { reportOf, reportsOf } from "./report.ts";
import { isSameFile, refusalToWrite, writeAll } from "./write-files.ts";

export const SHEETS_OPTIONS: OptionKinds = {
  out: { value: true, sample: "--out cornice.pdf" },
  pages: { value: true, sample: "--pages bench,ends" },
  paper: { value: true, sample: "--paper a4" },
  correct: { value: true, sample: "--correct 100.4x99.8" },
  date: { value: true, sample: '--date "12 March"' },
  length: { value: true, sample: "--length 1200" },
  ...FIT_SHEET_OPTIONS,
  shelf: { value: true, sample: "--shelf planes.json" },
  force: { value: false, sample: "--force" },
  unit: { value: true, sample: "--unit in" },
};

interface Asked {
  readonly out: string;
  readonly kinds: readonly SheetKind[];
  readonly paper: PaperName;
  readonly made: PrinterMade | undefined;
  readonly lengthMm: number | undefined;
}

/** `mouldwright sheets JOB.json|PLAN.json --out FILE.pdf`: the sheets for the bench; nothing is written by halves. */
export async function sheetsCommand(command: Command): Promise<number> {
  const { given, io } = command;
  const named = onlyName(given, "a job or a plan");
  if (!named.ok) return refuse(command, { file: "", troubles: [named.trouble] });
  const asked = readAsked(command);
  if (!asked.ok) return refuse(command, { file: "", troubles: troublesOfRefusal(asked) });
  const { out, kinds, paper, made, lengthMm } = asked.value;
  const force = given.flags.has("force");
  const fitFiles = await readFitFiles(command);
  if (!fitFiles.ok) return refuse(command, fitFiles);
  const used = await planToUse(command, (files) =>
    refusalFor([out], [...files, ...fitFiles.value.files], force),
  );
  if ("kind" in used) return withoutPlan(command, used);
  const { plan, unit, written: spoken, inchStep } = used;
  if (unit !== spoken && plan.cuts.length > 0) {
    const said = cataloguedTrouble("plan-sentences-unit", "", { written: spoken, asked: unit });
    note(command, given.names[0] ?? "", [said], unit);
  }
  const drawings = fitDrawings(command, plan, fitFiles.value, unit);
  if (!drawings.ok) return refuse(command, { file: "", troubles: troublesOfRefusal(drawings) });
  const date = given.values.get("date");
  const pages = sheetPages(plan, {
    unit,
    inchStep,
    kinds,
    paper,
    ...(made === undefined ? {} : { made }),
    ...(date === undefined ? {} : { date }),
    fit: { drawings: drawings.value, ...(lengthMm === undefined ? {} : { lengthMm }) },
  });
  if (!pages.ok) return refuse(command, { file: given.names[0] ?? "", troubles: troublesOfRefusal(pages) });
  const bytes = await writePdf(pages.value, { title: plan.name, fonts: await nodeFonts() });
  const written = await writeAll([{ path: out, text: bytes }], { force }, io.interrupted);
  if (!written.ok) return notWritten(command, written.trouble);
  io.print(`${wrapped(pagesText(pages.value, out), io.columns, "    ")}\n`);
  return plan.uncut.length > 0 ? EXIT.partly : EXIT.whole;
}

function readAsked({ given, askedUnit }: Command): Outcome<Asked> {
  const out = given.values.get("out");
  if (out === undefined) {
    return {
      ok: false,
      trouble: cataloguedTrouble("option-missing", "", { option: "--out", sample: "--out cornice.pdf" }),
    };
  }
  if (!out.toLowerCase().endsWith(".pdf")) {
    return wrongValue("out", out, "a name that ends in .pdf");
  }
  const kinds = readKinds(given.values.get("pages"));
  if (!kinds.ok) return kinds;
  const paper = readChoice(given, "paper", PAPER_NAMES);
  if (!paper.ok) return paper;
  const made = readMade(given.values.get("correct"));
  if (!made.ok) return made;
  const typed = given.values.get("length");
  const length = typed === undefined ? fine(undefined) : readLengthOption("length", typed, askedUnit ?? "mm");
  if (!length.ok) return length;
  if (length.value === 0) return wrongValue("length", typed ?? "", "a length above nought");
  return fine({
    out,
    kinds: kinds.value,
    paper: paper.value ?? "a4",
    made: made.value,
    lengthMm: length.value,
  });
}

function readKinds(typed: string | undefined): Outcome<readonly SheetKind[]> {
  if (typed === undefined) return fine(SHEET_KINDS);
  const words = typed.split(/[,;]/).map((word) => word.trim().toLowerCase());
  const kinds = words.map((word) => SHEET_KINDS.find((kind) => kind === word));
  const known = kinds.filter((kind) => kind !== undefined);
  if (known.length < words.length) {
    return wrongValue("pages", typed, `any of ${SHEET_KINDS.join(", ")}, with commas between`);
  }
  return fine(known);
}

/** What a printer made is always millimetres: the bar is one of 100 mm. */
function readMade(typed: string | undefined): Outcome<PrinterMade | undefined> {
  if (typed === undefined) return fine(undefined);
  const sides = readSize("correct", typed, "mm");
  if (!sides.ok) {
    return wrongValue("correct", typed, "what 100 mm measures, across x up, such as 100.4x99.8");
  }
  const made = { acrossMm: sides.value.widthMm, upMm: sides.value.thicknessMm };
  const stretch = stretchFor(made);
  return stretch.ok ? fine(made) : stretch;
}

/** Why none of the files could be written as things stand; null if all can. */
export async function refusalFor(
  outs: readonly string[],
  inputs: readonly string[],
  force: boolean,
): Promise<Trouble | null> {
  for (const [index, out] of outs.entries()) {
    if (outs.indexOf(out) !== index) return cataloguedTrouble("path-given-twice", out, {});
    for (const input of inputs) {
      if (await isSameFile(out, input)) return cataloguedTrouble("path-is-input", out, {});
    }
    const refusal = await refusalToWrite(out, { force });
    if (refusal !== null) return refusal;
  }
  return null;
}

/** The exit code, after saying why there is no plan. */
export function withoutPlan(command: Command, used: NoPlan): number {
  if (used.kind === "refused") return refuse(command, used);
  return notWritten(
    command,
    used.kind === "interrupted" ? cataloguedTrouble("interrupted", "", {}) : used.trouble,
  );
}

export function notWritten({ io, askedUnit }: Command, trouble: Trouble): number {
  const reporting = { unit: askedUnit ?? "mm", columns: io.complaintColumns };
  if (trouble.code === "interrupted") {
    io.complain(reportOf("Interrupted", "", trouble, reporting));
    return EXIT.interrupted;
  }
  io.complain(reportsOf("Not written", trouble.where, [trouble], reporting));
  return EXIT.notWritten;
}

/** "16 pages stand in cornice.pdf: bench 1-8, ends 9-10 …". */
function pagesText(pages: readonly Page[], out: string): string {
  const runs = SHEET_KINDS.flatMap((kind) => {
    const first = pages.findIndex((page) => page.sheet === kind);
    const count = pages.filter((page) => page.sheet === kind).length;
    if (count === 0) return [];
    return [`${kind} ${count === 1 ? first + 1 : `${first + 1}-${first + count}`}`];
  });
  const stand = pages.length === 1 ? "1 page stands" : `${pages.length} pages stand`;
  return `${stand} in ${out}: ${runs.join(", ")}`;
}
