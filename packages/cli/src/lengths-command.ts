import { readLengthsJob } from "mouldwright/job";
import { shareOut } from "mouldwright/making";
import { drawRod } from "mouldwright/sheets";
import type { OptionKinds } from "./arguments.ts";
import { type Command, refuse, troublesOfRefusal } from "./command.ts";
import { deliver, FIT_OPTIONS, figuresFor } from "./fit-answer.ts";
import { lengthsLines, lengthsNumbers } from "./lengths-text.ts";
import { onlyName } from "./names.ts";
import { MOST_INPUT_BYTES, readTextFile } from "./read-file.ts";

export const LENGTHS_OPTIONS: OptionKinds = FIT_OPTIONS;

/** `mouldwright lengths JOB.json`: the pieces of a job marked along real sticks. */
export async function lengthsCommand(command: Command): Promise<number> {
  const path = onlyName(command.given, "a file of pieces and sticks");
  if (!path.ok) return refuse(command, { file: "", troubles: [path.trouble] });
  const refusal = (outcome: Parameters<typeof troublesOfRefusal>[0]): number =>
    refuse(command, { file: path.value, troubles: troublesOfRefusal(outcome) });
  const text = await readTextFile(path.value, MOST_INPUT_BYTES);
  if (!text.ok) return refusal(text);
  const job = readLengthsJob(text.value);
  if (!job.ok) return refusal(job);
  const answer = shareOut(job.value.question);
  if (!answer.ok) return refusal(answer);
  const unit = command.askedUnit ?? job.value.unit;
  const { convention } = answer.value;
  return deliver(command, {
    unit,
    file: path.value,
    numbers: { name: job.value.name, ...lengthsNumbers(answer.value) },
    lines: [
      `Places are measured from ${convention.measuredFrom}. Lengths run along ${convention.lengthOf}.`,
      "",
      ...lengthsLines(answer.value, figuresFor(unit)),
      "",
    ],
    warnings: [...job.warnings, ...answer.warnings],
    assumed: answer.value.assumed,
    cautions: answer.value.cautions,
    drawing: () => drawRod(answer.value, job.value.name, { unit }),
    inputs: [path.value],
  });
}
