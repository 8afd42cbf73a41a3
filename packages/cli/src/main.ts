import { cataloguedTrouble, type LengthUnit, type Outcome } from "mouldwright/measure";
import { nearestWord } from "mouldwright/shelf";
import { type OptionKinds, readArguments, readChoice } from "./arguments.ts";
import { type Command, refuse, troublesOfRefusal } from "./command.ts";
import { CORNICE_OPTIONS, corniceCommand } from "./cornice-command.ts";
import { EXIT } from "./exit-codes.ts";
import { EXPORT_OPTIONS, exportCommand } from "./export-command.ts";
import { FRAME_OPTIONS, frameCommand } from "./frame-command.ts";
import { COMMANDS, type CommandName, HELP, versionText } from "./help.ts";
import { HIP_OPTIONS, hipCommand } from "./hip-command.ts";
import { HOPPER_OPTIONS, hopperCommand } from "./hopper-command.ts";
import { type Io, processIo } from "./io.ts";
import { LENGTHS_OPTIONS, lengthsCommand } from "./lengths-command.ts";
import { LIGHT_OPTIONS, lightCommand } from "./light-command.ts";
import { MITRE_OPTIONS, mitreCommand } from "./mitre-command.ts";
import { MOISTURE_OPTIONS, moistureCommand } from "./moisture-command.ts";
import { MOVEMENT_OPTIONS, movementCommand } from "./movement-command.ts";
import { planCommand } from "./plan-command.ts";
import { FROM_OPTIONS, WAY_OPTIONS } from "./plan-options.ts";
import { RAKE_OPTIONS, rakeCommand } from "./rake-command.ts";
import { recutCommand } from "./recut-command.ts";
import { reportOf } from "./report.ts";
import { sectionCommand } from "./section-command.ts";
import { SHEETS_OPTIONS, sheetsCommand } from "./sheets-command.ts";
import { shelfCommand } from "./shelf-command.ts";
import { SIDE_OPTIONS, sideCommand } from "./side-command.ts";
import { STICK_OPTIONS, stickCommand } from "./stick-command.ts";
import { TIMBER_COMMAND_OPTIONS, timberCommand } from "./timber-command.ts";
import { UNLIKE_OPTIONS, unlikeCommand } from "./unlike-command.ts";

const UNIT: OptionKinds = { unit: { value: true, sample: "--unit in" } };
const STICK: OptionKinds = {
  stick: { value: true, sample: "--stick 42x18" },
  at: { value: true, sample: "--at 0,0" },
};
const FORCE: OptionKinds = { force: { value: false, sample: "--force" } };

const RUN: Readonly<
  Record<CommandName, { readonly options: OptionKinds; readonly run: (command: Command) => Promise<number> }>
> = {
  plan: {
    options: {
      shelf: { value: true, sample: "--shelf planes.json" },
      ...STICK,
      tolerance: { value: true, sample: "--tolerance 0.2mm" },
      ...WAY_OPTIONS,
      ...FROM_OPTIONS,
      out: { value: true, sample: "--out plan.json" },
      pictures: { value: true, sample: "--pictures cornice-card" },
      advise: { value: false, sample: "--advise" },
      json: { value: false, sample: "--json" },
      ...FORCE,
      ...UNIT,
    },
    run: planCommand,
  },
  recut: { options: UNIT, run: recutCommand },
  section: {
    options: { ...STICK, out: { value: true, sample: "--out cornice.dxf" }, ...FORCE, ...UNIT },
    run: sectionCommand,
  },
  shelf: { options: UNIT, run: shelfCommand },
  sheets: { options: SHEETS_OPTIONS, run: sheetsCommand },
  export: { options: EXPORT_OPTIONS, run: exportCommand },
  stick: { options: STICK_OPTIONS, run: stickCommand },
  mitre: { options: MITRE_OPTIONS, run: mitreCommand },
  hopper: { options: HOPPER_OPTIONS, run: hopperCommand },
  unlike: { options: UNLIKE_OPTIONS, run: unlikeCommand },
  frame: { options: FRAME_OPTIONS, run: frameCommand },
  cornice: { options: CORNICE_OPTIONS, run: corniceCommand },
  rake: { options: RAKE_OPTIONS, run: rakeCommand },
  hip: { options: HIP_OPTIONS, run: hipCommand },
  light: { options: LIGHT_OPTIONS, run: lightCommand },
  lengths: { options: LENGTHS_OPTIONS, run: lengthsCommand },
  movement: { options: MOVEMENT_OPTIONS, run: movementCommand },
  side: { options: SIDE_OPTIONS, run: sideCommand },
  timber: { options: TIMBER_COMMAND_OPTIONS, run: timberCommand },
  moisture: { options: MOISTURE_OPTIONS, run: moistureCommand },
};

/**
 * Runs one command and gives the exit code (`exit-codes.ts`). Never throws: what is not expected is said as the
 * program's own fault, without a trace of its insides.
 */
export async function main(words: readonly string[], io: Io = ownIo(words[0])): Promise<number> {
  try {
    return await runCommand(words, io);
  } catch (error) {
    const detail = error instanceof Error ? error.message : String(error);
    const internal = cataloguedTrouble("internal", "", { detail });
    const files = words.filter((word) => /\.(svg|dxf|json)$/i.test(word)).join(", ");
    io.complain(reportOf("Program fault", files, internal, { unit: "mm", columns: io.complaintColumns }));
    return EXIT.programFault;
  }
}

async function runCommand(words: readonly string[], io: Io): Promise<number> {
  const [first = "", ...rest] = words;
  const name = COMMANDS.find((one) => one === first);
  if (name === undefined) return withoutCommand(first, io);
  const given = readArguments(rest, RUN[name].options);
  if (!given.ok) return refuseWords(given, io);
  if (given.value.flags.has("help")) return printed(io, HELP[name]);
  if (given.value.flags.has("version")) return printed(io, await versionText());
  const unit = readChoice<LengthUnit>(given.value, "unit", ["mm", "in"]);
  if (!unit.ok) return refuseWords(unit, io);
  return RUN[name].run({ given: given.value, io, askedUnit: unit.value });
}

async function withoutCommand(first: string, io: Io): Promise<number> {
  if (first === "--help" || first === "-h" || first === "help") return printed(io, HELP[""]);
  if (first === "--version") return printed(io, await versionText());
  const nearest = nearestWord(first, COMMANDS) ?? "";
  const unknown = cataloguedTrouble("command-unknown", "", { word: first, nearest, known: COMMANDS });
  io.complain(reportOf("Refused", "", unknown, { unit: "mm", columns: io.complaintColumns }));
  return EXIT.refused;
}

function printed(io: Io, text: string): number {
  io.print(text);
  return EXIT.whole;
}

function refuseWords(outcome: Outcome<unknown> & { readonly ok: false }, io: Io): number {
  const empty = { names: [], values: new Map<string, string>(), flags: new Set<string>() };
  return refuse(
    { given: empty, io, askedUnit: undefined },
    { file: "", troubles: troublesOfRefusal(outcome) },
  );
}

/**
 * The process's own streams. For commands that write, Ctrl-C and a polite end raise the interrupt, so that nothing
 * half-done is left; for the others the system ends the process at once, which is sooner.
 */
function ownIo(command: string | undefined): Io {
  const stop = new AbortController();
  const name = COMMANDS.find((one) => one === command);
  // What takes --force writes files.
  if (name === undefined || RUN[name].options.force === undefined) return processIo(stop.signal);
  for (const signal of ["SIGINT", "SIGTERM"] as const) process.on(signal, () => stop.abort());
  return processIo(stop.signal);
}
