import { join } from "node:path";
import { type Plan, writePlan } from "mouldwright/cutting";
import { cataloguedTrouble, type LengthUnit, type Trouble } from "mouldwright/measure";
import { type PlanRequest, planSteps } from "mouldwright/planning";
import { benchCard, picturesOf } from "./card.ts";
import { type Command, note, readPlacement, readTolerance, refuse, troublesOfRefusal } from "./command.ts";
import { EXIT } from "./exit-codes.ts";
import { readSectionInput, readShelfInput, unitOf } from "./input.ts";
import { onlyName } from "./names.ts";
import { runSteps } from "./progress.ts";
import { reportOf, reportsOf } from "./report.ts";
import {
  type FileToWrite,
  isPictureIn,
  isSameFile,
  refusalToFill,
  refusalToWrite,
  removeStalePictures,
  stemOf,
  writeAll,
} from "./write-files.ts";

/** Where the plan is to be written, besides the terminal. */
interface Destination {
  readonly out: string | undefined;
  readonly pictures: string | undefined;
  readonly force: boolean;
  /** The beginning of the pictures' names. */
  readonly stem: string;
}

/**
 * `mouldwright plan`: reads section (or job) and shelf, makes sure that it may write, plans, writes, prints.
 * What is refused is refused before anything is written.
 */
export async function planCommand(command: Command): Promise<number> {
  const { given, io } = command;
  const path = onlyName(given, "a section file or a job");
  if (!path.ok) return refuse(command, { file: "", troubles: [path.trouble] });
  const placement = readPlacement(command);
  if (!placement.ok) return refuse(command, placement);
  const tolerance = readTolerance(command);
  if (!tolerance.ok) return refuse(command, tolerance);
  const input = await readSectionInput(path.value, placement.value);
  if (!input.ok) return refuse(command, input);
  const { section, job } = input.value;
  const shelf = await readShelfInput(given.values.get("shelf"), job, path.value);
  if (!shelf.ok) return refuse(command, shelf);

  const unit = unitOf(command.askedUnit, job);
  const name = job?.name ?? section.name;
  const destination: Destination = {
    out: given.values.get("out"),
    pictures: given.values.get("pictures"),
    force: given.flags.has("force"),
    stem: stemOf(name),
  };
  const inputs = [path.value, shelf.value.file];
  const unwritable = await refusalOf(destination, inputs);
  // Of two troubles the maker hears of the input first: what it holds decides whether there is anything to write.
  const toleranceMm = tolerance.value ?? job?.way?.toleranceMm;
  const request: PlanRequest = {
    section,
    shelf: shelf.value.shelf,
    name,
    unit,
    ...(toleranceMm === undefined ? {} : { toleranceMm }),
  };
  if (unwritable !== null) return notWritten(command, unwritable);
  note(command, path.value, input.warnings, unit);
  note(command, shelf.value.file, shelf.warnings, unit);

  const planned = await runSteps(planSteps(request), io);
  if (planned === null) return interrupted(command);
  if (!planned.ok) return refuse(command, { file: path.value, troubles: troublesOfRefusal(planned) });
  note(command, "", planned.warnings, unit);
  return deliver(command, planned.value, destination, unit);
}

/** Why nothing could be written there as things stand; null if it can. */
async function refusalOf(destination: Destination, inputs: readonly string[]): Promise<Trouble | null> {
  const { out, pictures, force, stem } = destination;
  if (out !== undefined) {
    for (const input of inputs) {
      if (await isSameFile(out, input)) return cataloguedTrouble("path-is-input", out, {});
    }
    const isPicture = pictures !== undefined && isPictureIn(pictures, stem, out);
    if (isPicture) return cataloguedTrouble("path-given-twice", out, {});
    const refusal = await refusalToWrite(out, { force });
    if (refusal !== null) return refusal;
  }
  return pictures === undefined ? null : refusalToFill(pictures, stem, { force });
}

async function deliver(
  command: Command,
  plan: Plan,
  destination: Destination,
  unit: LengthUnit,
): Promise<number> {
  const { io, given } = command;
  const { out, pictures, force, stem } = destination;
  const drawings: readonly FileToWrite[] =
    pictures === undefined
      ? []
      : picturesOf(plan, stem, unit).map(({ name, text }) => ({ path: join(pictures, name), text }));
  const files = out === undefined ? drawings : [{ path: out, text: writePlan(plan) }, ...drawings];
  const written = await writeAll(files, { force }, io.interrupted);
  if (!written.ok && written.trouble.code === "interrupted") return interrupted(command);
  if (written.ok && pictures !== undefined && force) {
    await removeStalePictures(pictures, stem, new Set(drawings.map((one) => one.path)));
  }
  // The plan itself is shown even where it could not be kept: the time it took is not lost.
  io.print(given.flags.has("json") ? writePlan(plan) : benchCard(plan, unit, io.columns));
  if (!written.ok) return notWritten(command, written.trouble);
  if (!given.flags.has("json")) io.print(placesText(out, pictures, drawings.length));
  return plan.uncut.length > 0 ? EXIT.partly : EXIT.whole;
}

function placesText(out: string | undefined, pictures: string | undefined, count: number): string {
  return [
    out === undefined ? "" : `The plan stands in ${out}\n`,
    pictures === undefined
      ? ""
      : `${count} ${count === 1 ? "picture stands" : "pictures stand"} in ${pictures}\n`,
  ].join("");
}

function notWritten(command: Command, trouble: Trouble): number {
  const { io, askedUnit } = command;
  const reporting = { unit: askedUnit ?? "mm", columns: io.complaintColumns };
  io.complain(reportsOf("Not written", trouble.where, [trouble], reporting));
  return EXIT.notWritten;
}

function interrupted(command: Command): number {
  const { io } = command;
  const said = cataloguedTrouble("interrupted", "", {});
  io.complain(reportOf("Interrupted", "", said, { unit: "mm", columns: io.complaintColumns }));
  return EXIT.interrupted;
}
