import { type Hopper, hopper } from "mouldwright/making";
import { drawHopper } from "mouldwright/sheets";
import { type OptionKinds, readChoice } from "./arguments.ts";
import { type Command, refuse, troublesOfRefusal } from "./command.ts";
import { deliver, FIT_OPTIONS, type Figures, figuresFor } from "./fit-answer.ts";
import { firstRefusal, missing, nameTooMany, readAngle, readCount, readLengthIf } from "./fit-options.ts";
import { cutWords } from "./mitre-command.ts";

export const HOPPER_OPTIONS: OptionKinds = {
  sides: { value: true, sample: "--sides 4" },
  slope: { value: true, sample: "--slope 70" },
  from: { value: true, sample: "--from plumb" },
  width: { value: true, sample: "--width 120" },
  length: { value: true, sample: "--length 200" },
  leans: { value: true, sample: "--leans right" },
  ...FIT_OPTIONS,
};

/** `mouldwright hopper --sides 4 --slope 70`: a box with sloping sides, its mitres laid flat. */
export async function hopperCommand(command: Command): Promise<number> {
  const { given } = command;
  const unit = command.askedUnit ?? "mm";
  const sides = readCount(given, "sides");
  const slope = readAngle(given, "slope");
  const from = readChoice(given, "from", ["level", "plumb"]);
  const leans = readChoice(given, "leans", ["left", "right"]);
  const width = readLengthIf(given, "width", unit);
  const length = readLengthIf(given, "length", unit);
  const wrong = nameTooMany(given) ?? firstRefusal([sides, slope, from, leans, width, length]);
  if (wrong !== null) return refuse(command, { file: "", troubles: troublesOfRefusal(wrong) });
  if (!sides.ok || !slope.ok || !from.ok || !leans.ok || !width.ok || !length.ok)
    return refuse(command, { file: "", troubles: [] });
  if (sides.value === undefined)
    return refuse(command, { file: "", troubles: troublesOfRefusal(missing("sides", "4")) });
  if (slope.value === undefined)
    return refuse(command, { file: "", troubles: troublesOfRefusal(missing("slope", "70")) });
  if (length.value !== undefined && width.value === undefined)
    return refuse(command, { file: "", troubles: troublesOfRefusal(missing("width", "120")) });
  const answer = hopper({
    sides: sides.value,
    slope: from.value === "plumb" ? { fromPlumbDeg: slope.value } : { fromLevelDeg: slope.value },
    widthMm: width.value,
    narrowEdgeMm: length.value,
    bladeLeans: leans.value,
  });
  if (!answer.ok) return refuse(command, { file: "", troubles: troublesOfRefusal(answer) });
  return deliver(command, {
    unit,
    file: "",
    numbers: hopperNumbers(answer.value),
    lines: hopperLines(answer.value, figuresFor(unit)),
    warnings: answer.warnings,
    assumed: answer.value.assumed,
    cautions: answer.value.cautions,
    drawing: () => drawHopper(answer.value, { unit }),
  });
}

function hopperNumbers(answer: Hopper): Readonly<Record<string, unknown>> {
  const { polygon, mitreDeg, bevelDeg, leftEnd, rightEnd, side, shootingBoard, convention } = answer;
  return {
    sides: polygon.sides,
    cornerDeg: polygon.cornerDeg,
    slopeFromLevelDeg: answer.fromLevelDeg,
    slopeFromPlumbDeg: answer.fromPlumbDeg,
    mitreDeg,
    bevelDeg,
    gaugeFromBladeDeg: answer.gaugeFromBladeDeg,
    betweenFacesDeg: answer.betweenFacesDeg,
    buttBevelDeg: answer.buttBevelDeg,
    leftEnd,
    rightEnd,
    side,
    shootingBoard,
    errorTimes: polygon.errorTimes,
    convention,
  };
}

function hopperLines(answer: Hopper, write: Figures): readonly string[] {
  const { polygon, mitreDeg, bevelDeg, leftEnd, rightEnd, side, shootingBoard } = answer;
  return [
    `${polygon.sides} like sides that stand ${write.sawDeg(answer.fromLevelDeg)} from level, ${write.sawDeg(answer.fromPlumbDeg)} from plumb; corners of ${write.sawDeg(polygon.cornerDeg)} from above. Left and right as you look at a side's outside with its wide edge up. Mitre is the saw's swing from a square cut, bevel the blade's lean from upright; a gauge that reads 90° at a square cut reads ${write.sawDeg(answer.gaugeFromBladeDeg)}.`,
    "",
    `A side laid flat on its inside: mitre ${write.sawDeg(mitreDeg)}, bevel ${write.sawDeg(bevelDeg)}.`,
    `  Left end   ${edgesNamed(cutWords(leftEnd))}`,
    `  Right end  ${edgesNamed(cutWords(rightEnd))}`,
    `The outsides of two sides meet at ${write.sawDeg(answer.betweenFacesDeg)}. For butted corners the blade leans ${write.sawDeg(answer.buttBevelDeg)} at the same mitre.`,
    ...(side === null
      ? []
      : [
          `A side is ${write.length(side.narrowEdgeMm)} long at its narrow edge and ${write.length(side.wideEdgeMm)} at its wide one, ${write.length(side.widthMm)} wide; the box stands ${write.length(side.heightMm)} high and its sides splay ${write.length(side.splayMm)} (all on the outside).`,
        ]),
    `To trim on a shooting board: fence at ${write.sawDeg(shootingBoard.fenceDeg)} to the plane's run, bed tipped by ${write.sawDeg(shootingBoard.liftDeg)}.`,
    `A saw that is out by ${write.sawDeg(0.25)} leaves the last joint out by ${write.sawDeg(polygon.errorTimes * 0.25)}: try the setting on offcuts, all joints together.`,
    "",
  ];
}

/** A hopper's side has no wall and no ceiling: its edges are the narrow one and the wide one. */
function edgesNamed(words: string): string {
  return words.replace("wall edge", "narrow edge").replace("ceiling edge", "wide edge");
}
