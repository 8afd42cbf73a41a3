import { type SideMoulding, sideMoulding } from "mouldwright/making";
import { fine, type LengthUnit, type Outcome } from "mouldwright/measure";
import { drawSideMoulding } from "mouldwright/sheets";
import { dustCautionsOf, type Sawn } from "mouldwright/timber";
import { type OptionKinds, readChoice, readLengthOption } from "./arguments.ts";
import { type Command, refuse, troublesOfRefusal } from "./command.ts";
import { deliver, FIT_OPTIONS, type Figures, figuresFor } from "./fit-answer.ts";
import { firstRefusal, missing, nameTooMany, readLengthIf, readPercent } from "./fit-options.ts";
import { signedChange } from "./movement-command.ts";
import { OWN_TIMBER_OPTION, readTimber } from "./timber-options.ts";

export const SIDE_OPTIONS: OptionKinds = {
  timber: { value: true, sample: '--timber "black cherry"' },
  ...OWN_TIMBER_OPTION,
  sawn: { value: true, sample: "--sawn flat" },
  depth: { value: true, sample: "--depth 380" },
  fitted: { value: true, sample: "--fitted 9" },
  driest: { value: true, sample: "--driest 6" },
  wettest: { value: true, sample: "--wettest 12" },
  screws: { value: true, sample: "--screws 120,240,360" },
  screw: { value: true, sample: "--screw 4" },
  ...FIT_OPTIONS,
};

/** `mouldwright side --timber "black cherry" --depth 380 …`: a moulding along a solid side of a case. */
export async function sideCommand(command: Command): Promise<number> {
  const { given } = command;
  const unit = command.askedUnit ?? "mm";
  const refusal = (outcome: Parameters<typeof troublesOfRefusal>[0]): number =>
    refuse(command, { file: "", troubles: troublesOfRefusal(outcome) });
  const tooMany = nameTooMany(given);
  if (tooMany !== null) return refusal(tooMany);
  const timber = await readTimber(command);
  if (!timber.ok) return refuse(command, timber);
  const sawn = readChoice<Sawn>(given, "sawn", ["flat", "quarter"]);
  const depth = readLengthIf(given, "depth", unit);
  const fitted = readPercent(given, "fitted");
  const driest = readPercent(given, "driest");
  const wettest = readPercent(given, "wettest");
  const screws = readPlaces(command, unit);
  const screw = readLengthIf(given, "screw", unit);
  const wrong = firstRefusal([sawn, depth, fitted, driest, wettest, screws, screw]);
  if (wrong !== null) return refusal(wrong);
  if (!sawn.ok || !depth.ok || !fitted.ok || !driest.ok || !wettest.ok || !screws.ok || !screw.ok)
    return refuse(command, { file: "", troubles: [] });
  if (sawn.value === undefined) return refusal(missing("sawn", "flat"));
  if (depth.value === undefined) return refusal(missing("depth", "380"));
  if (fitted.value === undefined) return refusal(missing("fitted", "9"));
  if (driest.value === undefined) return refusal(missing("driest", "6"));
  if (wettest.value === undefined) return refusal(missing("wettest", "12"));
  const moistures = {
    fittedPercent: fitted.value,
    driestPercent: driest.value,
    wettestPercent: wettest.value,
  };
  const answer = sideMoulding({
    timber: timber.value,
    sawn: sawn.value,
    depthMm: depth.value,
    ...moistures,
    screwsMm: screws.value,
    screwMm: screw.value,
  });
  if (!answer.ok) return refusal(answer);
  return deliver(command, {
    unit,
    file: "",
    numbers: sideNumbers(answer.value, { sawn: sawn.value, ...moistures }),
    lines: sideLines(answer.value, { sawn: sawn.value, ...moistures }, unit, figuresFor(unit)),
    warnings: [...timber.warnings, ...answer.warnings],
    assumed: answer.value.assumed,
    cautions: [...answer.value.cautions, ...dustCautionsOf(timber.value)],
    drawing: () => drawSideMoulding(answer.value, { unit }),
  });
}

/** Where the screws stand, mm from the front mitre; none where none were named. */
function readPlaces({ given }: Command, unit: LengthUnit): Outcome<readonly number[]> {
  const typed = given.values.get("screws");
  if (typed === undefined) return fine([]);
  const places: number[] = [];
  for (const one of typed.split(/[,;]/)) {
    const place = readLengthOption("screws", one, unit);
    if (!place.ok) return place;
    places.push(place.value);
  }
  return fine(places);
}

interface SeasonsSaid {
  readonly sawn: Sawn;
  readonly fittedPercent: number;
  readonly driestPercent: number;
  readonly wettestPercent: number;
}

function sideNumbers(answer: SideMoulding, said: SeasonsSaid): Readonly<Record<string, unknown>> {
  const { timber, depthMm, travelMm, fixedAt, screws, shortAtBackMm, convention } = answer;
  return {
    timber,
    ...said,
    depthMm,
    driestChangeMm: answer.driestMm,
    wettestChangeMm: answer.wettestMm,
    travelMm,
    fixedAt,
    screws: screws.map(({ fromFrontMm, driestMm, wettestMm, slotMm }) => ({
      fromFrontMm,
      driestChangeMm: driestMm,
      wettestChangeMm: wettestMm,
      slotMm,
    })),
    shortAtBackMm,
    convention,
  };
}

function sideLines(
  answer: SideMoulding,
  said: SeasonsSaid,
  unit: LengthUnit,
  write: Figures,
): readonly string[] {
  const { timber, depthMm, driestMm, wettestMm, travelMm, screws, shortAtBackMm } = answer;
  return [
    `A solid side of ${timber}, ${said.sawn} sawn, ${write.length(depthMm)} from front to back across its grain, under a moulding whose grain runs that way. Places are measured from the front mitre; movement to the back is positive.`,
    "",
    `Fitted at ${said.fittedPercent} % moisture. At its driest (${said.driestPercent} %) the side changes by ${signedChange(driestMm, unit)}, at its wettest (${said.wettestPercent} %) by ${signedChange(wettestMm, unit)}: ${signedChange(travelMm, unit).replace("+", "")} of travel in all.`,
    "Fast at the front: glue the mitre and the first hand's breadth behind it, and screw there. Behind that no glue: the moulding is held by screws in slots, and slides.",
    ...screws.map(
      ({ fromFrontMm, slotMm, driestMm, wettestMm }) =>
        `  Screw ${write.length(fromFrontMm)} from the front: slot ${write.length(slotMm)} long at least, the wood goes ${signedChange(driestMm, unit)} to ${signedChange(wettestMm, unit)} under it.`,
    ),
    ...(screws.length === 0
      ? ["  Name the screws' places with --screws to see how long their slots must be."]
      : []),
    `Cut the moulding ${write.length(shortAtBackMm)} short of the back, or it stands proud there when the side is driest.`,
    "",
  ];
}
