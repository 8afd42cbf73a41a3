import { join } from "node:path";
import { stemOf } from "mouldwright/job";
import { cataloguedTrouble, fine, type Outcome } from "mouldwright/measure";
import {
  depthGaugeSolid,
  exportDxf,
  exportSvg,
  gaugeDepths,
  mouldingSolid,
  sandingBlockSolid,
  writeStl,
} from "mouldwright/sheets";
import { type OptionKinds, readLengthOption, wrongValue } from "./arguments.ts";
import { type Command, note, refuse, troublesOfRefusal } from "./command.ts";
import { EXIT } from "./exit-codes.ts";
import { figuresFor } from "./fit-answer.ts";
import { type PlanToUse, planToUse } from "./plan-or-job.ts";
import { notWritten, refusalFor, withoutPlan } from "./sheets-command.ts";
import { type FileToWrite, writeAll } from "./write-files.ts";

export const EXPORT_OPTIONS: OptionKinds = {
  svg: { value: true, sample: "--svg cornice.svg" },
  dxf: { value: true, sample: "--dxf cornice.dxf" },
  stl: { value: true, sample: "--stl cornice-solids" },
  length: { value: true, sample: "--length 100" },
  shelf: { value: true, sample: "--shelf planes.json" },
  force: { value: false, sample: "--force" },
  unit: { value: true, sample: "--unit in" },
};

const COMMON_LENGTH_MM = 100;

/** `mouldwright export JOB.json|PLAN.json --svg|--dxf|--stl`: outlines and solids for other programs. */
export async function exportCommand(command: Command): Promise<number> {
  const { given, io } = command;
  const lengthMm = readLength(command);
  if (!lengthMm.ok) return refuse(command, { file: "", troubles: troublesOfRefusal(lengthMm) });
  const [svg, dxf, stl] = ["svg", "dxf", "stl"].map((name) => given.values.get(name));
  if (svg === undefined && dxf === undefined && stl === undefined) {
    const facts = { option: "--svg, --dxf or --stl", sample: "--dxf cornice.dxf" };
    return refuse(command, { file: "", troubles: [cataloguedTrouble("option-missing", "", facts)] });
  }
  const force = given.flags.has("force");
  const outs = [svg, dxf].filter((path) => path !== undefined);
  const used = await planToUse(command, (files) => refusalFor(outs, files, force));
  if ("kind" in used) return withoutPlan(command, used);
  const files: FileToWrite[] = [
    ...(svg === undefined ? [] : [{ path: svg, text: exportSvg(used.plan) }]),
    ...(dxf === undefined ? [] : [{ path: dxf, text: exportDxf(used.plan) }]),
    ...(stl === undefined ? [] : solidsOf(command, used, stl, lengthMm.value)),
  ];
  const refusal = stl === undefined ? null : await refusalToFillWith(files, used, force);
  if (refusal !== null) return notWritten(command, refusal);
  const written = await writeAll(files, { force }, io.interrupted);
  if (!written.ok) return notWritten(command, written.trouble);
  for (const { path } of files) io.print(`${path}\n`);
  if (stl !== undefined) io.print(depthsText(used));
  return used.plan.uncut.length > 0 ? EXIT.partly : EXIT.whole;
}

function readLength({ given, askedUnit }: Command): Outcome<number> {
  const typed = given.values.get("length");
  if (typed === undefined) return fine(COMMON_LENGTH_MM);
  const length = readLengthOption("length", typed, askedUnit ?? "mm");
  if (length.ok && length.value === 0) return wrongValue("length", typed, "a length above nought");
  return length;
}

/** Moulding and block, and the gauge where there are depths; that there are none is only noted. */
function solidsOf(
  command: Command,
  { plan, unit }: PlanToUse,
  folder: string,
  lengthMm: number,
): readonly FileToWrite[] {
  const stem = stemOf(plan.name);
  const gauge = depthGaugeSolid(plan);
  if (!gauge.ok) note(command, "", [gauge.trouble], unit);
  const file = (name: string, bytes: Uint8Array): FileToWrite => ({
    path: join(folder, `${stem}-${name}.stl`),
    text: bytes,
  });
  return [
    file("moulding", writeStl(mouldingSolid(plan, lengthMm))),
    file("sanding-block", writeStl(sandingBlockSolid(plan, lengthMm))),
    ...(gauge.ok ? [file("depth-gauge", writeStl(gauge.value))] : []),
  ];
}

/** Whether the solids' places are free; their folder need not exist. */
async function refusalToFillWith(
  files: readonly FileToWrite[],
  { files: inputs }: PlanToUse,
  force: boolean,
) {
  for (const { path } of files) {
    const refusal = await refusalFor([path], inputs, force);
    if (refusal !== null && refusal.code !== "folder-missing") return refusal;
  }
  return null;
}

function depthsText({ plan, unit }: PlanToUse): string {
  const depths = gaugeDepths(plan);
  if (depths.length === 0) return "";
  const write = figuresFor(unit);
  return `The gauge's tongues, from left to right: ${write.list(depths.map((depth) => write.length(depth)))}\n`;
}
