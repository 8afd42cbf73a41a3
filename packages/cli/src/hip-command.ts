import { type Hip, type HipSide, hip, hipFromJack } from "mouldwright/making";
import { drawHip, type HipSaid } from "mouldwright/sheets";
import { type OptionKinds, readChoice } from "./arguments.ts";
import { type Command, refuse, troublesOfRefusal } from "./command.ts";
import { deliver, FIT_OPTIONS, type Figures, figuresFor } from "./fit-answer.ts";
import { firstRefusal, missing, nameTooMany, readAngle, readLengthIf, saidTwice } from "./fit-options.ts";

export const HIP_OPTIONS: OptionKinds = {
  slope: { value: true, sample: "--slope 30" },
  adjacent: { value: true, sample: "--adjacent 40" },
  jack: { value: true, sample: "--jack 40.9" },
  corner: { value: true, sample: "--corner 90" },
  kind: { value: true, sample: "--kind inside" },
  run: { value: true, sample: "--run 300" },
  ...FIT_OPTIONS,
};

/** `mouldwright hip --slope 30`: the hip or valley between two slopes, its backing and the side cuts at it. */
export async function hipCommand(command: Command): Promise<number> {
  const { given } = command;
  const unit = command.askedUnit ?? "mm";
  const refusal = (outcome: Parameters<typeof troublesOfRefusal>[0]): number =>
    refuse(command, { file: "", troubles: troublesOfRefusal(outcome) });
  const slope = readAngle(given, "slope");
  const adjacent = readAngle(given, "adjacent");
  const jack = readAngle(given, "jack");
  const corner = readAngle(given, "corner");
  const kind = readChoice(given, "kind", ["inside", "outside"]);
  const run = readLengthIf(given, "run", unit);
  const wrong =
    nameTooMany(given) ??
    saidTwice(given, ["adjacent", "jack"]) ??
    firstRefusal([slope, adjacent, jack, corner, kind, run]);
  if (wrong !== null) return refusal(wrong);
  if (!slope.ok || !adjacent.ok || !jack.ok || !corner.ok || !kind.ok || !run.ok)
    return refuse(command, { file: "", troubles: [] });
  if (slope.value === undefined) return refusal(missing("slope", "30"));
  const sizes = { mainDeg: slope.value, cornerDeg: corner.value, kind: kind.value };
  const answer =
    jack.value === undefined
      ? hip({ ...sizes, adjacentDeg: adjacent.value })
      : hipFromJack({ ...sizes, jackSideCutDeg: jack.value });
  if (!answer.ok) return refusal(answer);
  const said: HipSaid = { runMm: run.value ?? null, name: kind.value === "inside" ? "valley" : "hip" };
  return deliver(command, {
    unit,
    file: "",
    numbers: hipNumbers(answer.value, said),
    lines: hipLines(answer.value, said, figuresFor(unit)),
    warnings: answer.warnings,
    assumed: answer.value.assumed,
    cautions: answer.value.cautions,
    drawing: () => drawHip(answer.value, said, { unit }),
  });
}

function hipNumbers(answer: Hip, { runMm, name }: HipSaid): Readonly<Record<string, unknown>> {
  const { hipDeg, main, adjacent, lengthPerRun, convention } = answer;
  return {
    name,
    cornerDeg: main.planDeg + adjacent.planDeg,
    hipDeg,
    main,
    adjacent,
    lengthPerRun,
    runMm,
    lengthMm: runMm === null ? null : runMm * lengthPerRun,
    convention,
  };
}

function hipLines(answer: Hip, { runMm, name }: HipSaid, write: Figures): readonly string[] {
  const { hipDeg, main, adjacent, lengthPerRun } = answer;
  const side = (which: string, one: HipSide): string =>
    `  ${which}  slope ${write.sawDeg(one.slopeDeg)}, ${write.sawDeg(one.planDeg)} to the ${name} in plan; backing ${write.sawDeg(one.backingDeg)}, side cut ${write.sawDeg(one.jackSideCutDeg)}`;
  const length =
    runMm === null
      ? `It is ${lengthPerRun.toFixed(4)} times as long as the main side runs level.`
      : `For a run of ${write.length(runMm)} of the main side it is ${write.length(runMm * lengthPerRun)} long.`;
  return [
    `Slopes are from level; plan angles between the eaves${name === "hip" ? "" : ", carried on past the corner,"} and the ${name}, seen from above. Backing is the bevel of the ${name}'s ${name === "hip" ? "top on each side of its middle" : "top, hollowed towards its middle,"} from square to its upright sides. Side cut is the swing from a square cut across a board that runs level along that side and ends at the ${name}; for a piece that runs straight up the slope it is what that swing lacks of 90°.`,
    "",
    `The ${name} rises at ${write.sawDeg(hipDeg)}. ${length}`,
    side("Main side    ", main),
    side("Adjacent side", adjacent),
    "",
  ];
}
