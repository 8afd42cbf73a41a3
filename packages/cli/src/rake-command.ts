import { join } from "node:path";
import {
  askRakePoint,
  type Corner,
  cornerFromAngle,
  type Rake,
  type RakedMember,
  type RakeMember,
  type RakePoint,
  rake,
  riseOf,
  type SawCut,
} from "mouldwright/making";
import { fine, type LengthUnit, type Outcome, toRad } from "mouldwright/measure";
import { writeSvgSection } from "mouldwright/section";
import { drawRake, drawRakePoint } from "mouldwright/sheets";
import { type OptionKinds, readChoice } from "./arguments.ts";
import { type Command, note, readPlacement, refuse, troublesOfRefusal } from "./command.ts";
import { deliver, FIT_OPTIONS, type Figures, figuresFor, type MoreFile } from "./fit-answer.ts";
import { firstRefusal, missing, nameTooMany, readAngle, readLengthIf } from "./fit-options.ts";
import { readSectionInput, unitOf } from "./input.ts";
import { cutWords } from "./mitre-command.ts";
import { onlyName } from "./names.ts";
import { type FoundPlacing, PLACING_OPTIONS, readPlacing } from "./section-placing.ts";

export const RAKE_OPTIONS: OptionKinds = {
  slope: { value: true, sample: "--slope 22.5" },
  projection: { value: true, sample: "--projection 25" },
  height: { value: true, sample: "--height 25" },
  given: { value: true, sample: "--given rake" },
  foot: { value: true, sample: "--foot 90" },
  head: { value: true, sample: "--head 90" },
  kind: { value: true, sample: "--kind inside" },
  run: { value: true, sample: "--run 300" },
  sections: { value: true, sample: "--sections pediment" },
  stick: { value: true, sample: "--stick 42x18" },
  at: { value: true, sample: "--at 0,0" },
  ...PLACING_OPTIONS,
  ...FIT_OPTIONS,
};

const MEMBERS = { level: "level", rake: "rake", return: "upper return" } as const;

interface Slope {
  readonly slopeDeg: number;
  readonly given: RakeMember;
  readonly lower: Corner | undefined;
  readonly upper: Corner | undefined;
}

/** `mouldwright rake SECTION --slope 22.5`, or one point: `--projection 25 --height 25 --slope 22.5`. */
export async function rakeCommand(command: Command): Promise<number> {
  const { given } = command;
  const slope = readSlope(command);
  if (!slope.ok) return refuse(command, { file: "", troubles: troublesOfRefusal(slope) });
  const isPoint = given.values.has("projection") || given.values.has("height");
  return isPoint ? onePoint(command, slope.value) : wholeSection(command, slope.value);
}

function readSlope({ given }: Command): Outcome<Slope> {
  const slopeDeg = readAngle(given, "slope");
  const member = readChoice(given, "given", ["level", "rake", "return"]);
  const kind = readChoice(given, "kind", ["inside", "outside"]);
  const foot = readAngle(given, "foot");
  const head = readAngle(given, "head");
  const wrong = firstRefusal([slopeDeg, member, kind, foot, head]);
  if (wrong !== null) return wrong;
  if (!slopeDeg.ok || !member.ok || !kind.ok || !foot.ok || !head.ok) return missing("slope", "22.5");
  if (slopeDeg.value === undefined) return missing("slope", "22.5");
  const corners = [foot.value, head.value].map((cornerDeg) =>
    cornerDeg === undefined ? fine(undefined) : cornerFromAngle(cornerDeg, kind.value ?? "outside"),
  );
  const [lower, upper] = corners;
  if (lower === undefined || !lower.ok) return lower ?? missing("foot", "90");
  if (upper === undefined || !upper.ok) return upper ?? missing("head", "90");
  return fine({
    slopeDeg: slopeDeg.value,
    given: MEMBERS[member.value ?? "level"],
    lower: lower.value,
    upper: upper.value,
  });
}

async function onePoint(command: Command, slope: Slope): Promise<number> {
  const { given } = command;
  const unit = command.askedUnit ?? "mm";
  const projection = readLengthIf(given, "projection", unit);
  const height = readLengthIf(given, "height", unit);
  const wrong = nameTooMany(given) ?? firstRefusal([projection, height]);
  if (wrong !== null) return refuse(command, { file: "", troubles: troublesOfRefusal(wrong) });
  if (!projection.ok || projection.value === undefined) {
    return refuse(command, { file: "", troubles: troublesOfRefusal(missing("projection", "25")) });
  }
  if (!height.ok || height.value === undefined) {
    return refuse(command, { file: "", troubles: troublesOfRefusal(missing("height", "25")) });
  }
  const rise = riseOf(slope.slopeDeg, slope.lower, slope.upper);
  const sizes = { projectionMm: projection.value, heightMm: height.value, given: slope.given };
  const point = askRakePoint(sizes, rise);
  if (!point.ok) return refuse(command, { file: "", troubles: troublesOfRefusal(point) });
  if (!rise.ok) return refuse(command, { file: "", troubles: troublesOfRefusal(rise) });
  return deliver(command, {
    unit,
    file: "",
    numbers: { slopeDeg: slope.slopeDeg, ...pointNumbers(point.value), convention: POINT_CONVENTION },
    lines: pointLines(point.value, slope.slopeDeg, figuresFor(unit)),
    warnings: point.warnings,
    assumed: [],
    cautions: [],
    drawing: () => drawRakePoint(point.value, rise.value, { unit }),
  });
}

const POINT_CONVENTION = {
  heights: "rake square to the slope, level and upper return plumb; projections from the wall",
  slope: "degrees from level",
} as const;

function pointNumbers(point: RakePoint): Readonly<Record<string, number>> {
  return {
    projectionMm: point.projectionMm,
    levelHeightMm: point.levelHeightMm,
    rakeHeightMm: point.rakeHeightMm,
    upperReturnHeightMm: point.upperReturnHeightMm,
  };
}

function pointLines(point: RakePoint, slopeDeg: number, write: Figures): readonly string[] {
  return [
    `Slope ${write.sawDeg(slopeDeg)} from level. Heights of the rake are measured square to the slope, the others plumb; projections from the wall, the same in all three.`,
    "",
    `  Projection     ${write.length(point.projectionMm)}`,
    `  Level height   ${write.length(point.levelHeightMm)}`,
    `  Rake height    ${write.length(point.rakeHeightMm)}`,
    `  Upper return   ${write.length(point.upperReturnHeightMm)}`,
    "",
  ];
}

async function wholeSection(command: Command, slope: Slope): Promise<number> {
  const { given } = command;
  const path = onlyName(given, "a section file or a job, or --projection and --height for one point");
  if (!path.ok) return refuse(command, { file: "", troubles: [path.trouble] });
  const placement = readPlacement(command);
  if (!placement.ok) return refuse(command, placement);
  const input = await readSectionInput(path.value, placement.value);
  if (!input.ok) return refuse(command, input);
  const { section, job } = input.value;
  const unit = unitOf(command.askedUnit, job);
  const found = readPlacing(command, section);
  const run = readLengthIf(given, "run", unit);
  const wrong = firstRefusal([found, run]);
  if (wrong !== null) return refuse(command, { file: "", troubles: troublesOfRefusal(wrong) });
  if (!found.ok || !run.ok) return refuse(command, { file: "", troubles: [] });
  const { placing } = found.value;
  const answer = rake({ section, placing, ...slope });
  if (!answer.ok) return refuse(command, { file: path.value, troubles: troublesOfRefusal(answer) });
  note(command, path.value, input.warnings, unit);
  const lengths = run.value === undefined ? null : rakeLengths(answer.value, run.value);
  const folder = given.values.get("sections");
  return deliver(command, {
    unit,
    file: path.value,
    numbers: rakeNumbers(answer.value, lengths),
    lines: rakeLines(answer.value, found.value, lengths, figuresFor(unit)),
    warnings: answer.warnings,
    assumed: answer.value.assumed,
    cautions: answer.value.cautions,
    drawing: () => drawRake(answer.value, placing, { unit }),
    more: folder === undefined ? [] : sectionFiles(folder, answer.value, unit),
    inputs: [path.value],
  });
}

/** The raking length for a level run at the wall, mm. */
interface RakeLengths {
  readonly runMm: number;
  readonly backMm: number;
  readonly frontMm: number;
}

/**
 * Along the slope: the run over cos a at the wall; in front as much more as the projection runs past both corners in
 * plan, p cot(C/2) at an outside corner, over cos a.
 */
function rakeLengths({ slopeDeg, lower, upper, rake: { projectionMm } }: Rake, runMm: number): RakeLengths {
  const past = ({ cornerDeg, kind }: Corner): number =>
    (projectionMm / Math.tan(toRad(cornerDeg / 2))) * (kind === "outside" ? 1 : -1);
  const alongRatio = 1 / Math.cos(toRad(slopeDeg));
  return {
    runMm,
    backMm: runMm * alongRatio,
    frontMm: (runMm + past(lower) + past(upper)) * alongRatio,
  };
}

/** The three sections as drawings that the planner reads. */
function sectionFiles(
  folder: string,
  { level, rake: raked, upperReturn }: Rake,
  unit: LengthUnit,
): readonly MoreFile[] {
  const file = (name: string, { section }: RakedMember, holds: string): MoreFile => ({
    folder: "made",
    path: join(folder, name),
    text: writeSvgSection(section, { unit }),
    holds,
  });
  return [
    file("level.svg", level, "The level section stands"),
    file("rake.svg", raked, "The rake's section stands"),
    file("upper-return.svg", upperReturn, "The upper return's section stands"),
  ];
}

function rakeNumbers(answer: Rake, lengths: RakeLengths | null): Readonly<Record<string, unknown>> {
  const { slopeDeg, lower, upper, level, rake: raked, upperReturn, points, cuts, convention } = answer;
  return {
    slopeDeg,
    footCornerDeg: lower.cornerDeg,
    headCornerDeg: upper.cornerDeg,
    given: answer.given,
    projectionMm: level.projectionMm,
    levelHeightMm: level.heightMm,
    rakeHeightMm: raked.heightMm,
    upperReturnHeightMm: upperReturn.heightMm,
    levelSpringFromWallDeg: level.springFromWallDeg,
    rakeSpringFromWallDeg: raked.springFromWallDeg,
    upperReturnSpringFromWallDeg: upperReturn.springFromWallDeg,
    runMm: lengths?.runMm ?? null,
    rakeBackMm: lengths?.backMm ?? null,
    rakeFrontMm: lengths?.frontMm ?? null,
    cuts,
    points: points.map(pointNumbers),
    lostArcs: { rake: raked.lostArcs, upperReturn: upperReturn.lostArcs },
    convention,
  };
}

function rakeLines(
  answer: Rake,
  { placing, said }: FoundPlacing,
  lengths: RakeLengths | null,
  write: Figures,
): readonly string[] {
  const { slopeDeg, level, rake: raked, upperReturn, cuts } = answer;
  const member = (name: string, one: RakedMember): string =>
    `  ${name}  height ${write.length(one.heightMm)}, spring ${write.sawDeg(one.springFromWallDeg)} from the wall`;
  const cut = (name: string, one: SawCut): string =>
    `  ${name}  mitre ${write.sawDeg(one.mitreDeg)}, bevel ${write.sawDeg(one.bevelDeg)}; ${cutWords(one)}`;
  return [
    `The slope is ${write.sawDeg(slopeDeg)} from level, up to the right as seen from the front. Heights of the rake are measured square to the slope, those of the level moulding and the upper return plumb; projections from the wall. The ${placing.wallEdge} lies at the wall, the back ${write.sawDeg(placing.springFromWallDeg)} from it (${said}).`,
    "",
    `All three come out ${write.length(level.projectionMm)} from the wall.`,
    member("Level       ", level),
    member("Rake        ", raked),
    member("Upper return", upperReturn),
    ...(lengths === null
      ? []
      : [
          `For a level run of ${write.length(lengths.runMm)} at the wall the rake is ${write.length(lengths.backMm)} long at the back and ${write.length(lengths.frontMm)} in front.`,
        ]),
    "",
    "Laid flat on its back, face up:",
    cut("Level at the foot   ", cuts.levelAtFoot),
    cut("Rake at the foot    ", cuts.rakeAtFoot),
    cut("Rake at the head    ", cuts.rakeAtHead),
    cut("Upper return        ", cuts.upperReturnAtHead),
    cut("Rake against rake   ", cuts.rakeAtApex),
    "",
  ];
}
