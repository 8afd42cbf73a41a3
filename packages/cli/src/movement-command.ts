import {
  cataloguedTrouble,
  fine,
  INCH_MM,
  type LengthUnit,
  type Outcome,
  refused,
} from "mouldwright/measure";
import { drawMovement } from "mouldwright/sheets";
import { dustCautionsOf, type Movement, movement, type SizeChange } from "mouldwright/timber";
import type { OptionKinds } from "./arguments.ts";
import { type Command, refuse, troublesOfRefusal } from "./command.ts";
import { deliver, FIT_OPTIONS, type Figures, figuresFor } from "./fit-answer.ts";
import { firstRefusal, missing, nameTooMany, readLengthIf } from "./fit-options.ts";
import { readSeason, readTimber, type Season, TIMBER_OPTIONS } from "./timber-options.ts";

export const MOVEMENT_OPTIONS: OptionKinds = {
  ...TIMBER_OPTIONS,
  width: { value: true, sample: "--width 60" },
  thickness: { value: true, sample: "--thickness 22" },
  ...FIT_OPTIONS,
};

/** `mouldwright movement --timber "black cherry" --width 60 --from 12 --to 6 --sawn flat` */
export async function movementCommand(command: Command): Promise<number> {
  const { given } = command;
  const unit = command.askedUnit ?? "mm";
  const tooMany = nameTooMany(given);
  if (tooMany !== null) return refuse(command, { file: "", troubles: troublesOfRefusal(tooMany) });
  const timber = await readTimber(command);
  if (!timber.ok) return refuse(command, timber);
  const sizes = readSizes(command, unit);
  const season = readSeason(command, timber.value);
  const wrong = firstRefusal([sizes, season]);
  if (wrong !== null) return refuse(command, { file: "", troubles: troublesOfRefusal(wrong) });
  if (!sizes.ok || !season.ok) return refuse(command, { file: "", troubles: [] });
  const answer = movement({ ...season.value, ...sizes.value });
  if (!answer.ok) return refuse(command, { file: "", troubles: troublesOfRefusal(answer) });
  return deliver(command, {
    unit,
    file: "",
    numbers: movementNumbers(answer.value, season.value),
    lines: movementLines(answer.value, season.value, unit, figuresFor(unit)),
    warnings: [...timber.warnings, ...answer.warnings],
    assumed: answer.value.assumed,
    cautions: dustCautionsOf(timber.value),
    drawing: () => drawMovement(answer.value, season.value, { unit }),
  });
}

function readSizes(
  { given }: Command,
  unit: LengthUnit,
): Outcome<{ readonly widthMm: number; readonly thicknessMm: number | undefined }> {
  const width = readLengthIf(given, "width", unit);
  if (!width.ok) return width;
  const thickness = readLengthIf(given, "thickness", unit);
  if (!thickness.ok) return thickness;
  if (width.value === undefined) return missing("width", "60");
  // A thickness of nothing is a slip; without one only the width is asked for.
  if (thickness.value === 0) {
    const facts = { option: "--thickness", value: "0", wanted: "a thickness of more than nothing" };
    return refused(cataloguedTrouble("option-value-wrong", "", facts));
  }
  return fine({ widthMm: width.value, thicknessMm: thickness.value });
}

function movementNumbers(answer: Movement, season: Season): Readonly<Record<string, unknown>> {
  const { width, thickness, formula, otherFormulaChangeMm, coefficients, shrinkage, convention } = answer;
  return {
    timber: answer.timber,
    sawn: season.sawn,
    fromPercent: season.fromPercent,
    toPercent: season.toPercent,
    widthMm: width.beforeMm,
    changeMm: width.changeMm,
    afterMm: width.afterMm,
    strainRatio: width.strainRatio,
    direction: width.direction,
    thickness:
      thickness === null
        ? null
        : { thicknessMm: thickness.beforeMm, changeMm: thickness.changeMm, afterMm: thickness.afterMm },
    formula,
    otherFormulaChangeMm,
    coefficients,
    shrinkage,
    convention,
  };
}

function movementLines(
  answer: Movement,
  season: Season,
  unit: LengthUnit,
  write: Figures,
): readonly string[] {
  const { width, thickness, formula, otherFormulaChangeMm, coefficients, shrinkage } = answer;
  const along = width.direction === "tangential" ? "along" : "across";
  const figures = formula === "coefficients" ? coefficients : shrinkage;
  const note = season.timber.note === "" ? [] : [`At the bench: ${season.timber.note}`];
  return [
    `${answer.timber}, ${season.sawn} sawn: the width runs ${along} the growth rings. Moisture from ${season.fromPercent} % to ${season.toPercent} %; drying shrinks, and length is left out.`,
    "",
    `  Width      ${changeLine(width, unit, write)}`,
    ...(thickness === null ? [] : [`  Thickness  ${changeLine(thickness, unit, write)}`]),
    "",
    `Reckoned ${formula === "coefficients" ? "by the coefficients of movement" : "by the wider formula, from the whole shrinkage"} (${figures.source.where}; ${figures.source.standing}). The other formula gives ${signedChange(otherFormulaChangeMm, unit)} for the width.`,
    ...note,
    "",
  ];
}

function changeLine({ beforeMm, changeMm, afterMm }: SizeChange, unit: LengthUnit, write: Figures): string {
  return `${write.length(beforeMm)} becomes ${write.exact(afterMm)}: ${signedChange(changeMm, unit)}`;
}

/** A change to the hundredth of a millimetre or the thousandth of an inch, with its sign. */
export function signedChange(changeMm: number, unit: LengthUnit): string {
  const sign = changeMm > 0 ? "+" : changeMm < 0 ? "−" : "";
  const size = Math.abs(changeMm);
  return unit === "mm" ? `${sign}${size.toFixed(2)} mm` : `${sign}${(size / INCH_MM).toFixed(3)}″`;
}
