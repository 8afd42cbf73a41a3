import { join } from "node:path";
import { type Plan, readPlan } from "mouldwright/cutting";
import {
  type BuiltUp,
  type BuiltUpWay,
  builtUp,
  type GrainSeen,
  type SpringBevel,
  type StickAllowances,
  type StickAnswer,
  type StickQuestion,
  type StockSize,
  stickFor,
  type WayOfWorking,
} from "mouldwright/making";
import { fine, type LengthUnit, type Outcome } from "mouldwright/measure";
import { type Section, writeSvgSection } from "mouldwright/section";
import { drawStick } from "mouldwright/sheets";
import { type OptionKinds, readChoice, readLengthOption, wrongValue } from "./arguments.ts";
import { type Command, note, readPlacement, refuse, troublesOfRefusal } from "./command.ts";
import { deliver, FIT_OPTIONS, type Figures, figuresFor, type MoreFile } from "./fit-answer.ts";
import { firstRefusal, missing, readAngle, readCount, readLengthIf, readSizeIf } from "./fit-options.ts";
import { notRead, type Read, readSectionInput, unitOf } from "./input.ts";
import { onlyName } from "./names.ts";
import { MOST_PLAN_BYTES, readTextFile } from "./read-file.ts";

export const STICK_OPTIONS: OptionKinds = {
  length: { value: true, sample: "--length 1200" },
  way: { value: true, sample: "--way bevelled" },
  cant: { value: true, sample: "--cant 15" },
  count: { value: true, sample: "--count 2" },
  timber: { value: true, sample: "--timber 90x22" },
  parts: { value: true, sample: "--parts built-up" },
  sawn: { value: true, sample: "--sawn 6x4" },
  ends: { value: true, sample: "--ends 50,25" },
  rises: { value: true, sample: "--rises 2" },
  drifts: { value: true, sample: "--drifts=-1" },
  plan: { value: true, sample: "--plan plan.json" },
  stick: { value: true, sample: "--stick 42x18" },
  at: { value: true, sample: "--at 0,0" },
  ...FIT_OPTIONS,
};

const WAYS: Readonly<Record<"flat" | "bevelled" | "canted", WayOfWorking>> = {
  flat: "flat",
  bevelled: "bevelled first",
  canted: "canted",
};

/** `mouldwright stick SECTION --length 1200`: what to buy, how it lies, how it is held, which way it is pushed. */
export async function stickCommand(command: Command): Promise<number> {
  const { given } = command;
  const path = onlyName(given, "a section file or a job");
  if (!path.ok) return refuse(command, { file: "", troubles: [path.trouble] });
  const placement = readPlacement(command);
  if (!placement.ok) return refuse(command, placement);
  const input = await readSectionInput(path.value, placement.value);
  if (!input.ok) return refuse(command, input);
  const { section, job } = input.value;
  const unit = unitOf(command.askedUnit, job);
  const planPath = given.values.get("plan");
  const plan = planPath === undefined ? null : await readPlanFile(planPath);
  if (plan !== null && !plan.ok) return refuse(command, plan);
  const question = readQuestion(command, unit, section, plan?.value);
  if (!question.ok) return refuse(command, { file: "", troubles: troublesOfRefusal(question) });
  const answer = stickFor(question.value);
  if (!answer.ok) return refuse(command, { file: path.value, troubles: troublesOfRefusal(answer) });
  const { lengthMm, allowances = {} } = question.value;
  const built = readBuiltUp(command, unit, section, lengthMm, allowances);
  if (!built.ok) return refuse(command, { file: path.value, troubles: troublesOfRefusal(built) });
  const parts = partFiles(command, unit, built.value);
  if (!parts.ok) return refuse(command, { file: "", troubles: troublesOfRefusal(parts) });
  note(command, path.value, input.warnings, unit);
  const write = figuresFor(unit);
  return deliver(command, {
    unit,
    file: path.value,
    numbers: stickNumbers(answer.value, built.value),
    lines: [...stickLines(answer.value, write), ...builtUpLines(built.value, write), ""],
    warnings: [...answer.warnings, ...built.warnings],
    assumed: [...answer.value.assumed, ...(built.value?.assumed ?? [])],
    cautions: answer.value.cautions,
    drawing: () => drawStick(answer.value, built.value, { unit }),
    more: parts.value,
    inputs: [path.value, ...(planPath === undefined ? [] : [planPath])],
  });
}

async function readPlanFile(path: string): Promise<Read<Plan>> {
  const text = await readTextFile(path, MOST_PLAN_BYTES);
  if (!text.ok) return notRead(path, text);
  const plan = readPlan(text.value);
  return plan.ok ? plan : notRead(path, plan);
}

function readQuestion(
  command: Command,
  unit: LengthUnit,
  section: Section,
  plan: Plan | undefined,
): Outcome<StickQuestion> {
  const { given } = command;
  const allowances = readAllowances(command, unit);
  const length = readLengthIf(given, "length", unit);
  const way = readChoice(given, "way", ["flat", "bevelled", "canted"]);
  const cant = readAngle(given, "cant");
  const count = readCount(given, "count");
  const rises = readAngle(given, "rises");
  const drifts = readAngle(given, "drifts");
  const wrong = firstRefusal([length, way, cant, count, rises, drifts, allowances]);
  if (wrong !== null) return wrong;
  if (!length.ok || !way.ok || !cant.ok || !count.ok || !rises.ok || !drifts.ok || !allowances.ok)
    return missing("length", "1200");
  if (length.value === undefined) return missing("length", "1200");
  const isGrainSeen = rises.value !== undefined || drifts.value !== undefined;
  const grain: GrainSeen = { risesDeg: rises.value ?? 0, driftsDeg: drifts.value ?? 0 };
  return fine({
    section,
    way: WAYS[way.value ?? (cant.value === undefined ? "flat" : "canted")],
    lengthMm: length.value,
    allowances: allowances.value,
    ...(count.value === undefined ? {} : { count: count.value }),
    ...(cant.value === undefined ? {} : { cantDeg: cant.value }),
    ...(isGrainSeen ? { grain } : {}),
    ...(plan === undefined ? {} : { plan }),
  });
}

/** What is bought and planed over the planed stick, mm; only what was said. */
function readAllowances({ given }: Command, unit: LengthUnit): Outcome<Partial<StickAllowances>> {
  const sawn = readSizeIf(given, "sawn", unit);
  if (!sawn.ok) return sawn;
  const typed = given.values.get("ends");
  const ends = typed?.split(/[,;]/) ?? [];
  if (typed !== undefined && ends.length !== 2) {
    const wanted = "two lengths with a comma between: for planing on and off, and for checks, such as 50,25";
    return wrongValue("ends", typed, wanted);
  }
  const lengths: number[] = [];
  for (const end of ends) {
    const length = readLengthOption("ends", end, unit);
    if (!length.ok) return length;
    lengths.push(length.value);
  }
  const [planingMm, endChecksMm] = lengths;
  return fine({
    ...(sawn.value === undefined
      ? {}
      : { sawnWidthMm: sawn.value.widthMm, sawnThicknessMm: sawn.value.thicknessMm }),
    ...(planingMm === undefined || endChecksMm === undefined ? {} : { planingMm, endChecksMm }),
  });
}

/** Each part of a built-up section as a drawing that the planner reads. */
function partFiles(
  { given }: Command,
  unit: LengthUnit,
  built: BuiltUp | null,
): Outcome<readonly MoreFile[]> {
  const folder = given.values.get("parts");
  if (folder === undefined) return fine([]);
  if (built === null) return missing("timber", "90x22");
  return fine(
    built.best.parts.map(({ number, section, work }) => ({
      folder: "made",
      path: join(folder, `part-${number}.svg`),
      text: writeSvgSection(section, { unit }),
      holds: `Part ${number}${work === "square" ? ", square all round," : ""} stands`,
    })),
  );
}

/** The section parted into sticks of the timber at hand; null where no timber was given. */
function readBuiltUp(
  { given }: Command,
  unit: LengthUnit,
  section: Section,
  lengthMm: number,
  allowances: Partial<StickAllowances>,
): Outcome<BuiltUp | null> {
  const timber = readSizeIf(given, "timber", unit);
  if (!timber.ok) return timber;
  return timber.value === undefined
    ? fine(null)
    : builtUp({ section, timber: timber.value, lengthMm, allowances });
}

function stickNumbers(answer: StickAnswer, built: BuiltUp | null): Readonly<Record<string, unknown>> {
  const { section, drawing: _, assumed: __, cautions: ___, board, ...numbers } = answer;
  return {
    name: section.name,
    ...numbers,
    board: {
      ...board,
      fillers: board.fillers.map(({ edge, corners }) => ({
        edge,
        cornersMm: corners.map(({ x, y }) => [x, y]),
      })),
    },
    builtUp:
      built === null
        ? null
        : {
            standing: built.standing,
            best: wayNumbers(built.best),
            runnerUp: built.runnerUp === null ? null : wayNumbers(built.runnerUp),
          },
  };
}

function wayNumbers({
  parts,
  joints,
  gluing,
  woodMm2,
  wasteRatio,
}: BuiltUpWay): Readonly<Record<string, unknown>> {
  return { pieces: parts.map(({ section: _, ...part }) => part), joints, gluing, woodMm2, wasteRatio };
}

function stickLines(answer: StickAnswer, write: Figures): readonly string[] {
  const { stock, cantDeg, bevels, sawnLast, cant } = answer;
  const turned = cantDeg === 0 ? "" : `, the section turned by ${write.sawDeg(cantDeg)}`;
  return [
    "Seen from the end where the stroke starts: across from the gauge edge, up from the back. Sizes are width × thickness × length.",
    "",
    `Worked ${stock.way}${turned}:`,
    `  Buy       ${sizeWords(stock.buy, write)}`,
    `  Plane to  ${sizeWords(stock.planed, write)}`,
    `  Finished  ${write.length(stock.finishedLengthMm)} long; ${Math.round(stock.wasteRatio * 100)} % of the planed stick becomes shavings and offcuts.`,
    ...(cantDeg === 0 ? bevels.bevels : []).map((bevel) => bevelLine(bevel, write)),
    ...sawnLast.map(
      (side) =>
        `  Saw last: a side ${write.length(side.widthMm)} wide at ${write.sawDeg(side.fromBackDeg)} from the stick's back.`,
    ),
    ...(cant === null
      ? []
      : [
          `Planes lean ${write.degrees(cant.candidates[0]?.meanLeanDeg ?? 0)} on average with the stick flat, ${write.degrees(cant.best.meanLeanDeg)} with it canted by ${write.sawDeg(cant.best.cantDeg)}, which takes ${moreOrLess(cant.best.extraRatio)} wood.`,
        ]),
    ...holdingLines(answer, write),
    ...boardLines(answer, write),
    ...grainLines(answer, write),
  ];
}

function moreOrLess(ratio: number): string {
  const percent = Math.round(Math.abs(ratio) * 100);
  if (percent === 0) return "as much";
  return `${percent} % ${ratio > 0 ? "more" : "less"}`;
}

function sizeWords({ widthMm, thicknessMm, lengthMm }: StockSize, write: Figures): string {
  return `${write.length(widthMm)} × ${write.length(thicknessMm)} × ${write.length(lengthMm)}`;
}

function bevelLine(bevel: SpringBevel, write: Figures): string {
  const leanDeg = bevel.layOn === "back" ? bevel.backOnTableDeg : bevel.edgeOnTableDeg;
  const lies = bevel.layOn === "back" ? "its back" : "that edge";
  return `  Bevel at the ${bevel.edge}: ${write.sawDeg(bevel.fromBackDeg)} from the back; enters ${write.length(bevel.onBackMm)} in on the back and ${write.length(bevel.onEdgeMm)} up the edge, ${write.length(bevel.widthMm)} wide. Lay the stick on ${lies} and lean the blade ${write.sawDeg(leanDeg)}.`;
}

function holdingLines({ holding }: StickAnswer, write: Figures): readonly string[] {
  if (holding.canBeHeld) return [`It can be held: ${write.length(holding.bedMm)} of bed.`];
  const short = holding.shortcomings.map(
    ({ rule, isMm, leastMm }) =>
      `${rule === "height to bed" ? "bed for its height" : rule} ${write.length(isMm)}, should be ${write.length(leastMm)}`,
  );
  const wide = holding.wideBoard;
  return [
    `Too small to hold safely: ${short.join("; ")}.`,
    ...(wide === null
      ? []
      : [
          `Mould the edge of a board instead, and saw off ${wide.count === 1 ? "the moulding" : `${wide.count} mouldings`}: plane it to ${sizeWords(wide.planed, write)}, bought ${sizeWords(wide.buy, write)}.`,
        ]),
  ];
}

function boardLines({ board }: StickAnswer, write: Figures): readonly string[] {
  const fence =
    board.fence === null
      ? "no fence, for the far edge is too low: screw through the waste at both ends"
      : `fence at the far edge, ${write.length(board.fence.topMm)} high at most (below ${board.fenceBelow})`;
  const stop =
    board.stop === null
      ? "no stop, for the section is too low"
      : `stop ahead at ${write.length(board.stop.fromStartMm)} from the board's start, ${write.length(board.stop.topMm)} high at most`;
  const strips = board.fillers.length === 0 ? "" : " Strips of the same bevel lie under it.";
  return [
    `Sticking board ${write.length(board.widthMm)} wide, ${write.length(board.lengthMm)} long: gauge edge flush with its front, ${fence}; ${stop}.${strips}`,
  ];
}

function grainLines({ grain }: StickAnswer, write: Figures): readonly string[] {
  const drift = grain.drift === "straight" ? "straight along the face" : `drifting ${grain.drift}`;
  const hands =
    grain.handsFromOtherEnd.length === 0
      ? ""
      : ` From the other end other hands are needed: ${write.list(grain.handsFromOtherEnd.map(({ cut, becomes }) => `cut ${cut} ${becomes}`))}.`;
  const own = grain.forStick;
  const stick =
    own === null
      ? []
      : [
          `This stick: lay it ${own.turn === "as it lies" ? own.turn : `turned ${own.turn}`}; once its face is chosen push from ${own.pushFrom} (fibres run out against the push by ${write.degrees(own.worstFromThisEndDeg)} from this end, ${write.degrees(own.worstFromOtherEndDeg)} from the other).`,
        ];
  return [`Grain: rising with the push, ${drift}.${hands}`, ...stick];
}

function builtUpLines(built: BuiltUp | null, write: Figures): readonly string[] {
  if (built === null) return [];
  const { best, runnerUp, standing } = built;
  if (best.parts.length === 1) return ["", "The timber at hand holds the section in one stick."];
  return [
    "",
    `Built up of ${best.parts.length} parts (${standing}), ${write.area(best.woodMm2)} of section bought:`,
    ...best.parts.map(
      (part) =>
        `  Part ${part.number}  buy ${sizeWords(part.buy, write)}, plane to ${sizeWords(part.planed, write)}; ${part.work}, sawn ${part.sawnLying}`,
    ),
    ...best.joints.map((joint) => `  Joint, ${joint.runs}, hidden by a ${joint.hiddenBy}`),
    ...best.gluing.map(({ part, onto, faceMm, hold }) =>
      onto.length === 0
        ? `  First part ${part}`
        : `  Then part ${part}: ${hold} to ${write.list(onto.map((one) => `part ${one}`))}, ${write.length(faceMm)} of face`,
    ),
    ...(runnerUp === null
      ? []
      : [`The runner-up, of ${runnerUp.parts.length} parts, takes ${write.area(runnerUp.woodMm2)}.`]),
  ];
}
