/** What goes on the fit sheet beside stick and mitre: a run of cornice with its rod and scribes, pieces along sticks. */
import { ringFromVertices } from "mouldwright/curve";
import type { Plan } from "mouldwright/cutting";
import {
  type CorniceJob,
  corniceQuestionOf,
  type LengthsJob,
  readCorniceJob,
  readLengthsJob,
} from "mouldwright/job";
import { cornice, type SharedOut, shareOut } from "mouldwright/making";
import { fine, type LengthUnit, type Outcome } from "mouldwright/measure";
import type { Section } from "mouldwright/section";
import { drawCornice, drawRod, drawScribes, type FitDrawings } from "mouldwright/sheets";
import type { OptionKinds } from "./arguments.ts";
import { type Command, troublesOfRefusal } from "./command.ts";
import { hungOf, scribesOf, sharedOut } from "./cornice-command.ts";
import type { Read } from "./input.ts";
import { MOST_INPUT_BYTES, readTextFile } from "./read-file.ts";
import { PLACING_OPTIONS } from "./section-placing.ts";

export const FIT_SHEET_OPTIONS: OptionKinds = {
  cornice: { value: true, sample: "--cornice cornice-run.json" },
  lengths: { value: true, sample: "--lengths lengths.json" },
  ...PLACING_OPTIONS,
};

export interface FitFiles {
  readonly cornice: CorniceJob | null;
  readonly lengths: { readonly job: LengthsJob; readonly answer: SharedOut } | null;
  /** Everything that was read, which nothing may be written over. */
  readonly files: readonly string[];
}

/** The files that the options name, read before a long planning begins. */
export async function readFitFiles({ given }: Command): Promise<Read<FitFiles>> {
  const [cornicePath, lengthsPath] = [given.values.get("cornice"), given.values.get("lengths")];
  const files = [cornicePath, lengthsPath].filter((path) => path !== undefined);
  const run = cornicePath === undefined ? fine(null) : await readWith(cornicePath, readCorniceJob);
  if (!run.ok) return { ok: false, file: cornicePath ?? "", troubles: troublesOfRefusal(run) };
  const job = lengthsPath === undefined ? fine(null) : await readWith(lengthsPath, readLengthsJob);
  if (!job.ok) return { ok: false, file: lengthsPath ?? "", troubles: troublesOfRefusal(job) };
  const answer = job.value === null ? fine(null) : shareOut(job.value.question);
  if (!answer.ok) return { ok: false, file: lengthsPath ?? "", troubles: troublesOfRefusal(answer) };
  const lengths =
    job.value === null || answer.value === null ? null : { job: job.value, answer: answer.value };
  return { ok: true, value: { cornice: run.value, lengths, files }, warnings: [] };
}

async function readWith<Job>(path: string, read: (text: string) => Outcome<Job>): Promise<Outcome<Job>> {
  const text = await readTextFile(path, MOST_INPUT_BYTES);
  return text.ok ? read(text.value) : text;
}

/** The drawings, now that the section is known. A run that cannot be hung or scribed with it is refused. */
export function fitDrawings(
  command: Command,
  plan: Plan,
  { cornice: run, lengths }: FitFiles,
  unit: LengthUnit,
): Outcome<FitDrawings> {
  const rod = lengths === null ? [] : [drawRod(lengths.answer, lengths.job.name, { unit })];
  if (run === null) return fine({ pictures: rod, fullSize: [] });
  const hung = hungOf(command, sectionOf(plan));
  if (!hung.ok) return hung;
  const question = corniceQuestionOf(run, hung.value.sizes);
  if (!question.ok) return question;
  const answer = cornice(question.value);
  if (!answer.ok) return answer;
  const scribes = scribesOf(answer.value, hung.value, question.value);
  if (!scribes.ok) return scribes;
  const shared = sharedOut(run, answer.value);
  if (!shared.ok) return shared;
  const asked = { name: run.name, projectionMm: question.value.projectionMm, scribes: scribes.value };
  return fine({
    pictures: [
      drawCornice(answer.value, asked, { unit }),
      ...(shared.value === null ? [] : [drawRod(shared.value, run.name, { unit })]),
      ...rod,
    ],
    fullSize: scribes.value.length === 0 ? [] : [drawScribes(scribes.value, run.name, { unit })],
  });
}

function sectionOf(plan: Plan): Section {
  return {
    name: plan.name,
    stick: ringFromVertices(plan.stick),
    outline: ringFromVertices(plan.section),
    freeSpans: [],
    named: [],
  };
}
