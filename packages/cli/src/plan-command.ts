import { join } from "node:path";
import { type Plan, writePlan } from "mouldwright/cutting";
import { stemOf } from "mouldwright/job";
import {
  cataloguedTrouble,
  exceedsMm,
  type InchDenominator,
  type LengthUnit,
  type Trouble,
} from "mouldwright/measure";
import { type PlanRequest, planSteps } from "mouldwright/planning";
import { benchCard, picturesOf } from "./card.ts";
import { type Command, note, refuse, troublesOfRefusal } from "./command.ts";
import { EXIT } from "./exit-codes.ts";
import { readPlanInput } from "./plan-input.ts";
import { runSteps } from "./progress.ts";
import { reportOf, reportsOf } from "./report.ts";
import {
  type FileToWrite,
  isPictureIn,
  isSameFile,
  refusalToFill,
  refusalToWrite,
  removeStalePictures,
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
 * `mouldwright plan`: reads what is to be planned, makes sure that it may write, plans, writes, prints.
 * What is refused is refused before anything is written.
 */
export async function planCommand(command: Command): Promise<number> {
  const { given, io } = command;
  const input = await readPlanInput(command);
  if (!input.ok) return refuse(command, input);
  const { request, name, unit, file, files, noticed } = input.value;
  const destination: Destination = {
    out: given.values.get("out"),
    pictures: given.values.get("pictures"),
    force: given.flags.has("force"),
    stem: stemOf(name),
  };
  // Of two troubles the maker hears of the input first: what it holds decides whether there is anything to write.
  const unwritable = await refusalOf(destination, files);
  if (unwritable !== null) return notWritten(command, unwritable);
  for (const { file: where, troubles } of noticed) note(command, where, troubles, unit);

  const advise = given.flags.has("advise");
  const planned = await runSteps(planSteps({ ...request, advise }), io);
  if (planned === null) return interrupted(command);
  if (!planned.ok) return refuse(command, { file, troubles: troublesOfRefusal(planned) });
  note(command, "", [...planned.warnings, ...remarksOn(planned.value, request)], unit);
  return deliver(command, planned.value, {
    destination,
    unit,
    inchStep: request.inchStep,
    leftOut: leftOutNames(request),
  });
}

/** What the maker asked for and the plan cannot give. */
function remarksOn(plan: Plan, request: PlanRequest): readonly Trouble[] {
  const [asked, another] = request.ways ?? [];
  const remarks: Trouble[] = [];
  if (asked !== undefined && another === undefined && plan.way !== asked) {
    remarks.push(cataloguedTrouble("plan-way-not-taken", "", { asked, taken: plan.way }));
  }
  const { under } = plan.finish;
  if (request.from !== undefined && exceedsMm(under, plan.tolerance)) {
    const facts = { underMm: under, toleranceMm: plan.tolerance };
    remarks.push(cataloguedTrouble("plan-stands-under", "", facts));
  }
  return remarks;
}

function leftOutNames({ shelf, without = [] }: PlanRequest): readonly string[] {
  return shelf.planes.filter(({ id }) => without.includes(id)).map(({ name }) => name);
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

interface Delivery {
  readonly destination: Destination;
  readonly unit: LengthUnit;
  readonly inchStep: InchDenominator | undefined;
  readonly leftOut: readonly string[];
}

async function deliver(
  command: Command,
  plan: Plan,
  { destination, unit, inchStep, leftOut }: Delivery,
): Promise<number> {
  const { io, given } = command;
  const { out, pictures, force, stem } = destination;
  const drawings: readonly FileToWrite[] =
    pictures === undefined
      ? []
      : picturesOf(plan, stem, { unit, inchStep }).map(({ name, text }) => ({
          path: join(pictures, name),
          text,
        }));
  const files = out === undefined ? drawings : [{ path: out, text: writePlan(plan) }, ...drawings];
  const written = await writeAll(files, { force }, io.interrupted);
  if (!written.ok && written.trouble.code === "interrupted") return interrupted(command);
  if (written.ok && pictures !== undefined && force) {
    await removeStalePictures(pictures, stem, new Set(drawings.map((one) => one.path)));
  }
  // The plan itself is shown even where it could not be kept: the time it took is not lost.
  const card = { unit, columns: io.columns, leftOut, inchStep };
  io.print(given.flags.has("json") ? writePlan(plan) : benchCard(plan, card));
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
