import { jsonText } from "mouldwright/cutting";
import type { LengthUnit } from "mouldwright/measure";
import { drawTimber } from "mouldwright/sheets";
import {
  COEFFICIENTS_FROM_PERCENT,
  COEFFICIENTS_TO_PERCENT,
  dustCautionsOf,
  findTimber,
  TIMBERS,
  type Timber,
} from "mouldwright/timber";
import { type OptionKinds, wrongValue } from "./arguments.ts";
import { type Command, note, refuse, troublesOfRefusal } from "./command.ts";
import { EXIT } from "./exit-codes.ts";
import { deliver, FIT_OPTIONS } from "./fit-answer.ts";
import { OWN_TIMBER_OPTION, readOwnTimbers } from "./timber-options.ts";

export const TIMBER_COMMAND_OPTIONS: OptionKinds = {
  ...OWN_TIMBER_OPTION,
  ...FIT_OPTIONS,
};

/** `mouldwright timber ["black cherry"]`: the table, or all that is known of one timber, each figure with its source. */
export async function timberCommand(command: Command): Promise<number> {
  const { given, io } = command;
  const own = await readOwnTimbers(command);
  if (!own.ok) return refuse(command, own);
  const unit: LengthUnit = command.askedUnit ?? "mm";
  note(command, given.values.get("timbers") ?? "", own.warnings, unit);
  const isJson = given.flags.has("json");
  const asked = given.names.join(" ");
  if (asked === "") {
    const picture = given.values.get("picture");
    if (picture !== undefined) {
      const wanted = "it with the name of the timber that is to be drawn";
      return refuse(command, {
        file: "",
        troubles: troublesOfRefusal(wrongValue("picture", picture, wanted)),
      });
    }
    const all = [...own.value, ...TIMBERS];
    io.print(isJson ? `${jsonText({ timbers: all.map(timberNumbers) })}\n` : tableText(all));
    return EXIT.whole;
  }
  const found = findTimber(asked, own.value);
  if (!found.ok) return refuse(command, { file: "", troubles: troublesOfRefusal(found) });
  const ownFile = given.values.get("timbers");
  return deliver(command, {
    unit,
    file: "",
    numbers: timberNumbers(found.value),
    lines: timberLines(found.value),
    warnings: found.warnings,
    assumed: [],
    cautions: dustCautionsOf(found.value),
    drawing: () => drawTimber(found.value, { unit }),
    inputs: ownFile === undefined ? [] : [ownFile],
  });
}

function timberNumbers({ name, otherNames, isGenus, shrinkage, coefficients, hardness, note: said }: Timber) {
  return {
    name,
    otherNames,
    isGenus,
    shrinkage,
    coefficients,
    hardness,
    note: said,
    convention: {
      shrinkage: "from green to ovendry, percent of the green size",
      coefficients: `change of size per size and per 1 % of moisture, from ${COEFFICIENTS_FROM_PERCENT} to ${COEFFICIENTS_TO_PERCENT} %`,
      hardness: "side hardness (Janka) at 12 % moisture",
    },
  };
}

const NAME_COLUMNS = 34;

/** One line a timber: shrinkage radial and tangential, hardness. */
function tableText(timbers: readonly Timber[]): string {
  const cell = (value: number | undefined, wide: number): string =>
    (value === undefined ? "-" : String(value)).padStart(wide);
  const rows = timbers.map(
    ({ name, shrinkage, hardness }) =>
      `${name.padEnd(NAME_COLUMNS)}${cell(shrinkage?.radialPercent, 7)}${cell(shrinkage?.tangentialPercent, 12)}${cell(hardness?.newtons, 12)}`,
  );
  return `${[
    "Shrinkage from green to ovendry, percent: radial (across the growth rings), tangential (along",
    "them). Hardness on the side, newtons. mouldwright timber NAME tells the source of each figure.",
    "",
    `${"".padEnd(NAME_COLUMNS)}${"radial".padStart(7)}${"tangential".padStart(12)}${"hardness".padStart(12)}`,
    ...rows,
  ].join("\n")}\n`;
}

function timberLines(timber: Timber): readonly string[] {
  const { name, otherNames, isGenus, shrinkage, coefficients, hardness } = timber;
  const source = ({ where, standing }: { readonly where: string; readonly standing: string }): string =>
    `(${where}; ${standing})`;
  return [
    `${name}${otherNames.length === 0 ? "" : `, also ${otherNames.join(", ")}`}${isGenus ? "; an average over the genus" : ""}`,
    "Radial is across the growth rings (the width of a quarter-sawn board), tangential along them (that of a flat-sawn one).",
    "",
    ...(shrinkage === null
      ? []
      : [
          `Shrinkage from green to ovendry: radial ${shrinkage.radialPercent} %, tangential ${shrinkage.tangentialPercent} % ${source(shrinkage.source)}`,
        ]),
    ...(coefficients === null
      ? []
      : [
          `Movement for each 1 % of moisture, ${COEFFICIENTS_FROM_PERCENT} to ${COEFFICIENTS_TO_PERCENT} %: radial ${coefficients.radialPerPercent}, tangential ${coefficients.tangentialPerPercent} of the size ${source(coefficients.source)}`,
        ]),
    ...(hardness === null
      ? []
      : [
          `Hardness on the side at 12 % moisture: ${Math.round(hardness.newtons)} N, ${Math.round(hardness.poundsForce)} lbf ${source(hardness.source)}`,
        ]),
    ...(timber.note === "" ? [] : [`At the bench: ${timber.note} (common practice, no source)`]),
    "Averages: one board may move a quarter more or less.",
  ];
}
