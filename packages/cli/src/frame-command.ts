import {
  type Frame,
  type FrameShape,
  frame,
  type MitreSeasons,
  mitreSeasons,
  type Rail,
  type StatedSize,
} from "mouldwright/making";
import {
  cataloguedTrouble,
  fine,
  type LengthUnit,
  type Outcome,
  refused,
  SAME_POINT_DEG,
} from "mouldwright/measure";
import { drawFrame } from "mouldwright/sheets";
import { type OptionKinds, readLengthOption, readPlace, readSize, wrongValue } from "./arguments.ts";
import { type Command, refuse, troublesOfRefusal } from "./command.ts";
import { deliver, FIT_OPTIONS, type Figures, figuresFor } from "./fit-answer.ts";
import { firstRefusal, missing, nameTooMany, readCount, readLengthIf } from "./fit-options.ts";
import { notRead, type Read } from "./input.ts";
import { readSeason, readTimber, TIMBER_OPTIONS } from "./timber-options.ts";

export const FRAME_OPTIONS: OptionKinds = {
  sight: { value: true, sample: "--sight 300x400" },
  opening: { value: true, sample: "--opening 316x416" },
  glass: { value: true, sample: "--glass 314x414" },
  outside: { value: true, sample: "--outside 360x460" },
  sides: { value: true, sample: "--sides 6" },
  width: { value: true, sample: "--width 30" },
  rebate: { value: true, sample: "--rebate 8" },
  allow: { value: true, sample: "--allow 2" },
  gap: { value: true, sample: "--gap 0.3" },
  ...TIMBER_OPTIONS,
  ...FIT_OPTIONS,
};

/** Each way of stating a frame, and which outline it is. */
const STATED: readonly (readonly [option: string, stated: StatedSize])[] = [
  ["sight", "sight"],
  ["opening", "rebate"],
  ["glass", "glass"],
  ["outside", "outside"],
];

/** `mouldwright frame --sight 300x400 --width 30`: rails, lengths at both edges, the cut at each end. */
export async function frameCommand(command: Command): Promise<number> {
  const { given } = command;
  const unit = command.askedUnit ?? "mm";
  const refusal = (outcome: Outcome<unknown> & { readonly ok: false }): number =>
    refuse(command, { file: "", troubles: troublesOfRefusal(outcome) });
  const stated = readStated(command, unit);
  const widths = readWidths(command, unit);
  const rebate = readLengthIf(given, "rebate", unit);
  const allowance = readLengthIf(given, "allow", unit);
  const wrong = firstRefusal([stated, widths, rebate, allowance]);
  const tooMany = nameTooMany(given) ?? wrong;
  if (tooMany !== null) return refusal(tooMany);
  if (!stated.ok || !widths.ok || !rebate.ok || !allowance.ok)
    return refuse(command, { file: "", troubles: [] });
  const sizes = { rebateMm: rebate.value ?? 0, allowanceMm: allowance.value ?? 0 };
  const answer = frame({ ...stated.value, widthMm: widths.value, ...sizes });
  if (!answer.ok) return refusal(answer);
  const seasons = await readSeasons(command, unit, answer.value);
  if (!seasons.ok) return refuse(command, seasons);
  const write = figuresFor(unit);
  return deliver(command, {
    unit,
    file: "",
    numbers: frameNumbers(answer.value, seasons.value),
    lines: [...frameLines(answer.value, write), ...seasonLines(seasons.value, write), ""],
    warnings: [...answer.warnings, ...seasons.warnings],
    assumed: [...answer.value.assumed, ...(seasons.value?.assumed ?? [])],
    cautions: answer.value.cautions,
    drawing: () => drawFrame(answer.value, sizes, seasons.value, { unit }),
  });
}

/** The one outline that was given: a rectangle, a regular polygon's side, or corners one after the other. */
function readStated(
  { given }: Command,
  unit: LengthUnit,
): Outcome<{ readonly shape: FrameShape; readonly stated: StatedSize }> {
  const sides = readCount(given, "sides");
  if (!sides.ok) return sides;
  const [chosen, second] = STATED.filter(([option]) => given.values.has(option));
  if (chosen === undefined) return missing("sight", "300x400");
  if (second !== undefined) {
    const facts = { option: `--${second[0]}`, nearest: "", known: [`--${chosen[0]}`] };
    return refused(cataloguedTrouble("option-unknown", "", facts));
  }
  const [option, stated] = chosen;
  const typed = given.values.get(option) ?? "";
  if (typed.trim().includes(" ") && typed.includes(",")) {
    const corners = typed
      .trim()
      .split(/\s+/)
      .map((corner) => readPlace(option, corner, unit));
    const wrong = corners.find((corner) => !corner.ok);
    if (wrong !== undefined && !wrong.ok) return wrong;
    const points = corners.flatMap((corner) =>
      corner.ok ? [{ x: corner.value.xMm, y: corner.value.yMm }] : [],
    );
    return fine({ shape: { kind: "polygon", corners: points }, stated });
  }
  if (sides.value !== undefined) {
    const side = readLengthOption(option, typed, unit);
    if (!side.ok) return side;
    return fine({ shape: { kind: "regular", sides: sides.value, sideMm: side.value }, stated });
  }
  if (!/[x×*]/i.test(typed)) {
    return wrongValue(
      option,
      typed,
      'width x height, such as 300x400; one side\'s length with --sides 6; or corners, such as "0,0 300,0 280,200"',
    );
  }
  const size = readSize(option, typed, unit);
  if (!size.ok) return size;
  return fine({
    shape: { kind: "rectangle", acrossMm: size.value.widthMm, upMm: size.value.thicknessMm },
    stated,
  });
}

/** One width, or one for each side with commas between. */
function readWidths({ given }: Command, unit: LengthUnit): Outcome<number | readonly number[]> {
  const typed = given.values.get("width");
  if (typed === undefined) return missing("width", "30");
  const whole = readLengthOption("width", typed, unit);
  if (whole.ok || !typed.includes(",")) return whole;
  const each = typed.split(/,\s*/).map((one) => readLengthOption("width", one, unit));
  const wrong = each.find((one) => !one.ok);
  if (wrong !== undefined && !wrong.ok) return wrong;
  return fine(each.flatMap((one) => (one.ok ? [one.value] : [])));
}

/** The mitre's seasons, if a timber was named: at the corner that opens most, in the widest rail. */
async function readSeasons(
  command: Command,
  unit: LengthUnit,
  { rails }: Frame,
): Promise<Read<MitreSeasons | null>> {
  const { values } = command.given;
  const asks = ["timber", "timbers", "from", "to", "sawn", "gap"];
  if (!asks.some((option) => values.has(option))) return { ok: true, value: null, warnings: [] };
  const timber = await readTimber(command);
  if (!timber.ok) return timber;
  const season = readSeason(command, timber.value);
  if (!season.ok) return notRead("", season);
  const gap = readLengthIf(command.given, "gap", unit);
  if (!gap.ok) return notRead("", gap);
  // The gap grows with the width and with the cosine of half the corner: widest rail, sharpest corner.
  const widthMm = Math.max(...rails.map((rail) => rail.widthMm));
  const cornerDeg = Math.min(...rails.map(({ start }) => start.cornerDeg));
  const answer = mitreSeasons({ ...season.value, widthMm, cornerDeg, wishedGapMm: gap.value });
  if (!answer.ok) return notRead("", answer);
  return { ok: true, value: answer.value, warnings: [...timber.warnings, ...answer.warnings] };
}

function frameNumbers(answer: Frame, seasons: MitreSeasons | null): Readonly<Record<string, unknown>> {
  const { rails, outlines, stickMm, errorTimes, stated, convention } = answer;
  return {
    stated,
    pieces: rails.map((rail) => ({
      ...rail,
      mitreDeg: isSame(rail.start.mitreDeg, rail.end.mitreDeg) ? rail.start.mitreDeg : null,
    })),
    outlines: Object.fromEntries(
      Object.entries(outlines).map(([name, points]) => [
        `${name}Mm`,
        points?.map(({ x, y }: { readonly x: number; readonly y: number }) => [x, y]) ?? null,
      ]),
    ),
    stickMm,
    errorTimes,
    mitreOpening: seasons === null ? null : seasonNumbers(seasons),
    convention,
  };
}

function isSame(aDeg: number, bDeg: number): boolean {
  return Math.abs(aDeg - bDeg) <= SAME_POINT_DEG;
}

function seasonNumbers(seasons: MitreSeasons): Readonly<Record<string, unknown>> {
  const { drawing: _, assumed: __, ...numbers } = seasons;
  return numbers;
}

function frameLines(answer: Frame, write: Figures): readonly string[] {
  const { rails, outlines, stickMm, errorTimes } = answer;
  const box = (outline: Frame["outlines"]["rebate"]): string => {
    if (outline === null) return "";
    const xs = outline.map(({ x }) => x);
    const ys = outline.map(({ y }) => y);
    return `${write.length(Math.max(...xs) - Math.min(...xs))} × ${write.length(Math.max(...ys) - Math.min(...ys))}`;
  };
  return [
    "Seen from the front, rails numbered anticlockwise from the bottom one. Mitre is the saw's swing from a square cut, the rail on its back; lengths run along an edge from mitre to mitre.",
    `Over all: sight ${box(outlines.sight)}, outside ${box(outlines.outside)}${
      outlines.rebate === null ? "" : `, rebate opening ${box(outlines.rebate)}, glass ${box(outlines.glass)}`
    } (across × up).`,
    "",
    ...rails.map((rail) => railLine(rail, write)),
    "",
    `Long points together ${write.length(stickMm)}; kerfs, trim and planing come on top.`,
    `A saw that is out by ${write.sawDeg(0.25)} leaves the last joint out by ${write.sawDeg(errorTimes * 0.25)}: try the setting on offcuts, all joints together.`,
  ];
}

function railLine(rail: Rail, write: Figures): string {
  const { start, end } = rail;
  const mitres =
    write.sawDeg(start.mitreDeg) === write.sawDeg(end.mitreDeg)
      ? `mitre ${write.sawDeg(start.mitreDeg)} at both ends`
      : `mitre ${write.sawDeg(start.mitreDeg)} at its start, ${write.sawDeg(end.mitreDeg)} at its end`;
  const inward = [start, end].some(({ longerAt }) => longerAt === "sight")
    ? "; where the corner points inward the sight edge is the longer one"
    : "";
  return `  Rail ${rail.number}  outside ${write.length(rail.outsideMm)}, sight ${write.length(rail.sightMm)}${
    rail.rebateMm === null ? "" : `, rebate ${write.length(rail.rebateMm)}`
  }; ${mitres}${inward}`;
}

function seasonLines(seasons: MitreSeasons | null, write: Figures): readonly string[] {
  if (seasons === null) return [];
  const { gapMm, opensAt, openingDeg, widestMm, timbersUnder } = seasons;
  const opening =
    opensAt === "nowhere"
      ? "The mitre stays shut."
      : `The mitre opens at the ${opensAt}: gap ${write.exact(gapMm)}, by ${Math.abs(openingDeg).toFixed(2)}°.`;
  const widest =
    widestMm === null
      ? []
      : [`The widest rail of this timber that keeps under the wished gap: ${write.length(widestMm)}.`];
  const others =
    timbersUnder.length === 0
      ? []
      : [
          `At this width these keep under it: ${write.list(timbersUnder.map(({ timber, sawn }) => `“${timber}” ${sawn} sawn`))}.`,
        ];
  return [opening, ...widest, ...others];
}
