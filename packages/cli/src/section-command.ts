import { extname } from "node:path";
import { cataloguedTrouble, type LengthUnit } from "mouldwright/measure";
import { type Section, writeDxfSection, writeSvgSection } from "mouldwright/section";
import { nearestWord } from "mouldwright/shelf";
import { type Command, note, readPlacement, refuse } from "./command.ts";
import { EXIT } from "./exit-codes.ts";
import { type Placement, readSectionInput, unitOf } from "./input.ts";
import { wrapped } from "./io.ts";
import { reportsOf } from "./report.ts";
import { sectionLines } from "./section-text.ts";
import { isSameFile, refusalToWrite, writeAll } from "./write-files.ts";

const ACTIONS = ["describe", "convert", "check"] as const;

/** `mouldwright section describe|check|convert FILE …` */
export async function sectionCommand(command: Command): Promise<number> {
  const [word = "", ...files] = command.given.names;
  const action = ACTIONS.find((one) => one === word);
  if (action === undefined) {
    const facts = { word, nearest: nearestWord(word, ACTIONS) ?? "", known: ACTIONS };
    return refuse(command, { file: "", troubles: [cataloguedTrouble("command-unknown", "", facts)] });
  }
  if (files.length === 0) {
    const missing = cataloguedTrouble("argument-missing", "", { wanted: "a section file" });
    return refuse(command, { file: "", troubles: [missing] });
  }
  const placement = readPlacement(command);
  if (!placement.ok) return refuse(command, placement);
  if (action === "convert") return convert(command, files, placement.value);
  if (command.given.values.has("out")) {
    const facts = { option: "--out", nearest: "", known: ["--stick", "--at", "--unit"] };
    return refuse(command, { file: "", troubles: [cataloguedTrouble("option-unknown", "", facts)] });
  }
  // Every file is looked at, so that a folder of drawings is checked in one go; the worst decides the exit code.
  let worst: number = EXIT.whole;
  for (const [i, file] of files.entries()) {
    if (action === "describe" && i > 0) command.io.print("\n");
    worst = Math.max(worst, await look(command, action, file, placement.value));
  }
  return worst;
}

async function look(
  command: Command,
  action: "describe" | "check",
  file: string,
  placement: Placement,
): Promise<number> {
  const input = await readSectionInput(file, placement);
  if (!input.ok) return refuse(command, input);
  const { io } = command;
  const unit = unitOf(command.askedUnit, input.value.job);
  note(command, file, input.warnings, unit);
  if (action === "check") {
    const count = input.warnings.length;
    const noted = count === 0 ? "" : `, ${count === 1 ? "one thing" : `${count} things`} noted`;
    io.print(`${wrapped(`${file} can be planned from${noted}.`, io.columns)}\n`);
  } else {
    for (const line of sectionLines(input.value.section, unit)) {
      io.print(`${wrapped(line, io.columns, "      ")}\n`);
    }
  }
  return EXIT.whole;
}

async function convert(command: Command, files: readonly string[], placement: Placement): Promise<number> {
  const { given, io } = command;
  const [file = "", second] = files;
  if (second !== undefined) {
    return refuse(command, {
      file: "",
      troubles: [cataloguedTrouble("argument-too-many", "", { first: second })],
    });
  }
  const out = given.values.get("out");
  if (out === undefined) {
    const facts = { option: "--out", sample: "--out cornice.dxf" };
    return refuse(command, { file: "", troubles: [cataloguedTrouble("option-missing", "", facts)] });
  }
  const write = writerOf(out, command.askedUnit ?? "mm");
  if (write === null) {
    const unknown = cataloguedTrouble("path-kind-unknown", out, { wanted: [".svg", ".dxf"] });
    return refuse(command, { file: out, troubles: [unknown] });
  }
  const input = await readSectionInput(file, placement);
  if (!input.ok) return refuse(command, input);
  const unit = unitOf(command.askedUnit, input.value.job);
  const force = given.flags.has("force");
  const refusal = (await isSameFile(out, file))
    ? cataloguedTrouble("path-is-input", out, {})
    : await refusalToWrite(out, { force });
  const written =
    refusal === null
      ? await writeAll([{ path: out, text: write(input.value.section) }], { force }, io.interrupted)
      : ({ ok: false, trouble: refusal } as const);
  note(command, file, input.warnings, unit);
  if (!written.ok) {
    const reporting = { unit, columns: io.complaintColumns };
    const stopped = written.trouble.code === "interrupted";
    io.complain(reportsOf(stopped ? "Interrupted" : "Not written", out, [written.trouble], reporting));
    return stopped ? EXIT.interrupted : EXIT.notWritten;
  }
  io.print(`The section stands in ${out}\n`);
  return EXIT.whole;
}

function writerOf(path: string, unit: LengthUnit): ((section: Section) => string) | null {
  switch (extname(path).toLowerCase()) {
    case ".svg":
      return (section) => writeSvgSection(section, { unit });
    case ".dxf":
      return writeDxfSection;
    default:
      return null;
  }
}
