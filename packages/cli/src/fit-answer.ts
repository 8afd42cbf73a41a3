/** How a question of fitting ends: numbers for a program or words for a maker, and a picture where one was asked for. */
import { jsonText } from "mouldwright/cutting";
import {
  cataloguedTrouble,
  formatDeg,
  formatExactLength,
  type LengthUnit,
  sayTrouble,
  type Trouble,
  type Writer,
  writerFor,
} from "mouldwright/measure";
import { type Drawing, writeSvg } from "mouldwright/sheets";
import type { OptionKinds } from "./arguments.ts";
import { type Command, note } from "./command.ts";
import { EXIT } from "./exit-codes.ts";
import { wrapped } from "./io.ts";
import { reportOf, reportsOf } from "./report.ts";
import { type FileToWrite, isSameFile, refusalToWrite, writeAll } from "./write-files.ts";

/** What every such command takes. */
export const FIT_OPTIONS: OptionKinds = {
  json: { value: false, sample: "--json" },
  picture: { value: true, sample: "--picture mitre.svg" },
  force: { value: false, sample: "--force" },
  unit: { value: true, sample: "--unit in" },
};

export interface FitAnswer {
  readonly unit: LengthUnit;
  /** The file that was asked about; empty where none was. */
  readonly file: string;
  /** For a program: numbers named with their units, nothing rounded. */
  readonly numbers: Readonly<Record<string, unknown>>;
  /** For a maker: one line each, the convention first. */
  readonly lines: readonly string[];
  readonly warnings: readonly Trouble[];
  readonly assumed: readonly Trouble[];
  readonly cautions: readonly Trouble[];
  readonly drawing: () => Drawing;
  /** Files beside the picture. */
  readonly more?: readonly MoreFile[];
  /** Files that were read: none of them may be written over. */
  readonly inputs?: readonly string[];
}

export interface MoreFile extends FileToWrite {
  /** What it holds, as the beginning of the sentence that says where it stands. */
  readonly holds: string;
  /** Whether its folder may be one that is made for it. */
  readonly folder: "there" | "made";
}

/** Lines after the first of a paragraph stand in by this. */
const HANG = "    ";

/** Writes the picture, prints the answer, and gives the exit code. Nothing is printed as done that was not written. */
export async function deliver(command: Command, answer: FitAnswer): Promise<number> {
  const { given, io } = command;
  const force = given.flags.has("force");
  const picture = given.values.get("picture");
  const more = answer.more ?? [];
  const files: readonly FileToWrite[] = [
    ...(picture === undefined ? [] : [{ path: picture, text: writeSvg(answer.drawing()) }]),
    ...more.map(({ path, text }) => ({ path, text })),
  ];
  const made = new Set(more.flatMap(({ path, folder }) => (folder === "made" ? [path] : [])));
  const trouble = await refusalOf(files, answer.inputs ?? [], { force, made });
  const written = trouble === null ? await writeAll(files, { force }, io.interrupted) : null;
  note(command, answer.file, answer.warnings, answer.unit);
  const isJson = given.flags.has("json");
  io.print(isJson ? numbersText(answer) : wordsText(answer, io.columns));
  if (trouble !== null) return notWritten(command, trouble);
  if (written !== null && !written.ok) return notWritten(command, written.trouble);
  if (isJson) return EXIT.whole;
  if (picture !== undefined) io.print(`The picture stands in ${picture}\n`);
  for (const { path, holds } of more) io.print(`${holds} in ${path}\n`);
  return EXIT.whole;
}

async function refusalOf(
  files: readonly FileToWrite[],
  inputs: readonly string[],
  { force, made }: { readonly force: boolean; readonly made: ReadonlySet<string> },
): Promise<Trouble | null> {
  const taken = new Set<string>();
  for (const { path } of files) {
    if (taken.has(path)) return cataloguedTrouble("path-given-twice", path, {});
    taken.add(path);
    for (const input of inputs) {
      if (await isSameFile(path, input)) return cataloguedTrouble("path-is-input", path, {});
    }
    const refusal = await refusalToWrite(path, { force });
    if (refusal?.code === "folder-missing" && made.has(path)) continue;
    if (refusal !== null) return refusal;
  }
  return null;
}

function notWritten({ io, askedUnit }: Command, trouble: Trouble): number {
  const reporting = { unit: askedUnit ?? "mm", columns: io.complaintColumns };
  if (trouble.code === "interrupted") {
    io.complain(reportOf("Interrupted", "", trouble, reporting));
    return EXIT.interrupted;
  }
  io.complain(reportsOf("Not written", trouble.where, [trouble], reporting));
  return EXIT.notWritten;
}

/** A trouble for a program: its code and place, and the sentences that a maker would read. */
function saidFor(trouble: Trouble, unit: LengthUnit): Readonly<Record<string, unknown>> {
  const { sentence, hint } = sayTrouble(trouble, { unit });
  return { code: trouble.code, where: trouble.where, sentence, hint };
}

function numbersText({ numbers, warnings, assumed, cautions, unit }: FitAnswer): string {
  const said = (troubles: readonly Trouble[]) => troubles.map((one) => saidFor(one, unit));
  return `${jsonText({
    ...numbers,
    warnings: said(warnings),
    assumed: said(assumed),
    cautions: said(cautions),
  })}\n`;
}

function wordsText(answer: FitAnswer, columns: number): string {
  const said = (heading: string, troubles: readonly Trouble[]): readonly string[] =>
    troubles.map((one) => {
      const { sentence, hint } = sayTrouble(one, { unit: answer.unit });
      return `${heading}: ${sentence} ${hint}`;
    });
  const lines = [...answer.lines, ...said("Assumed", answer.assumed), ...said("Caution", answer.cautions)];
  return `${lines.map((line) => wrapped(line, columns, HANG)).join("\n")}\n`;
}

/** How figures are said: to what a saw and a rule can be set to. */
export interface Figures extends Writer {
  /** An angle to the quarter degree of a saw's scale. */
  sawDeg(angleDeg: number): string;
  /** A length to the thousandth of a millimetre, for differences too small for a rule. */
  exact(lengthMm: number): string;
}

export function figuresFor(unit: LengthUnit): Figures {
  return {
    ...writerFor(unit),
    sawDeg: (angleDeg) => formatDeg(angleDeg, { stepDeg: 0.25 }),
    exact: (lengthMm) => formatExactLength(lengthMm, { unit }),
  };
}
