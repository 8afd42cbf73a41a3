import { type Plan, type RecutReport, readPlan, recutPlan } from "mouldwright/cutting";
import { type LengthUnit, writerFor } from "mouldwright/measure";
import { type Command, refuse, troublesOfRefusal } from "./command.ts";
import { EXIT } from "./exit-codes.ts";
import { unitOfPlan } from "./input.ts";
import { wrapped } from "./io.ts";
import { onlyName } from "./names.ts";
import { MOST_PLAN_BYTES, readTextFile } from "./read-file.ts";
import { reportsOf } from "./report.ts";

/** `mouldwright recut PLAN.json`: every cut made again; 0 if the plan holds, 1 if it does not. */
export async function recutCommand(command: Command): Promise<number> {
  const path = onlyName(command.given, "a plan file");
  if (!path.ok) return refuse(command, { file: "", troubles: [path.trouble] });
  const text = await readTextFile(path.value, MOST_PLAN_BYTES);
  if (!text.ok) return refuse(command, { file: path.value, troubles: troublesOfRefusal(text) });
  const plan = readPlan(text.value);
  if (!plan.ok) return refuse(command, { file: path.value, troubles: troublesOfRefusal(plan) });
  const report = recutPlan(plan.value);
  const { io } = command;
  const unit = unitOfPlan(command.askedUnit, plan.value);
  io.print(recutText(plan.value, report, unit, io.columns));
  io.complain(
    reportsOf("Does not hold", path.value, report.findings, { unit, columns: io.complaintColumns }),
  );
  return report.holds ? EXIT.whole : EXIT.partly;
}

function recutText(plan: Plan, report: RecutReport, unit: LengthUnit, columns: number): string {
  const write = writerFor(unit);
  const name = write.text(plan.name) || "The plan";
  const rows = report.cuts.map((cut) => [
    `cut ${cut.number}`,
    `takes ${write.area(cut.takesMm2)}`,
    `the plan says ${write.area(cut.saidMm2)}`,
  ]);
  const widths = [0, 1].map((column) => Math.max(0, ...rows.map((row) => row[column]!.length)));
  const made = `${report.cuts.length} ${report.cuts.length === 1 ? "cut" : "cuts"} made again from the stick`;
  const verdict = report.holds
    ? `${name} holds: ${made}, and every one takes what the plan says.`
    : `${name} does not hold: ${made}, ${report.findings.length} ${report.findings.length === 1 ? "thing differs" : "things differ"}.`;
  return [
    wrapped(verdict, columns),
    ...rows.map((row) => `  ${row[0]!.padEnd(widths[0]!)}  ${row[1]!.padEnd(widths[1]!)}  ${row[2]!}`),
    "",
  ].join("\n");
}
