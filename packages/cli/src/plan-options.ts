/** What a maker may ask of a plan on the command line, read into what the planner takes. */
import { areShavingsInOrder, handOf, WAY_LIMITS, type WayRequest, workingOf } from "mouldwright/job";
import { fine, type InchDenominator, type LengthUnit, type Outcome } from "mouldwright/measure";
import type { HandAccuracy, KeepSquare, MissSide, Preference, Shavings, Way } from "mouldwright/planning";
import { type Given, type OptionKinds, readChoice, readLengthOption, wrongValue } from "./arguments.ts";
import { type FigureKey, readFigures } from "./figures-option.ts";
import { firstRefusal, missing, readAngle, readCount, readLengthIf } from "./fit-options.ts";

/** Options that say how the work is done. */
export const WAY_OPTIONS: OptionKinds = {
  without: { value: true, sample: "--without round-3-8,rebate-6" },
  lean: { value: true, sample: "--lean 45" },
  prefer: { value: true, sample: "--prefer planes" },
  side: { value: true, sample: "--side proud" },
  way: { value: true, sample: "--way flat" },
  sticks: { value: true, sample: "--sticks 4" },
  length: { value: true, sample: "--length 1.2m" },
  shaving: { value: true, sample: "--shaving 0.3,0.15,0.08" },
  gauge: { value: true, sample: "--gauge right" },
  "keep-square": { value: true, sample: "--keep-square gauge" },
  pace: { value: true, sample: "--pace set=4,stroke=5" },
  hand: { value: true, sample: "--hand gauge=0.05,sideways=0.3" },
  step: { value: true, sample: "--step 64" },
};

type PaceName =
  | "setMinutes"
  | "carryMinutes"
  | "secondsPerMetre"
  | "sharpenMinutes"
  | "sharpForM"
  | "testPieceMm"
  | "sawSetMinutes"
  | "sawSecondsPerMetre";

const { mostSetMinutes, mostSecondsPerMetre, mostSharpForM, largestHandMm } = WAY_LIMITS;
const minutes = { kind: "figure", least: 0, most: mostSetMinutes } as const;
const seconds = { kind: "figure", least: 0.1, most: mostSecondsPerMetre } as const;

/** What the minutes are reckoned with, by the words of `--pace`. */
const PACE: readonly FigureKey<PaceName>[] = [
  { word: "set", name: "setMinutes", ...minutes },
  { word: "carry", name: "carryMinutes", ...minutes },
  { word: "stroke", name: "secondsPerMetre", ...seconds },
  { word: "sharpen", name: "sharpenMinutes", ...minutes },
  { word: "sharp", name: "sharpForM", kind: "figure", least: 1, most: mostSharpForM },
  { word: "test", name: "testPieceMm", kind: "length", least: 0, most: WAY_LIMITS.longestStickMm },
  { word: "sawset", name: "sawSetMinutes", ...minutes },
  { word: "saw", name: "sawSecondsPerMetre", ...seconds },
];

const lengthOfHand = { kind: "length", least: 0, most: largestHandMm } as const;

/** What a maker keeps within, by the words of `--hand`. */
const HAND: readonly FigureKey<keyof HandAccuracy>[] = [
  { word: "gauge", name: "gaugeMm", ...lengthOfHand },
  { word: "line", name: "lineMm", ...lengthOfHand },
  { word: "sideways", name: "sidewaysMm", ...lengthOfHand },
  { word: "fence", name: "fenceMm", ...lengthOfHand },
  { word: "saw", name: "sawMm", ...lengthOfHand },
  { word: "depth", name: "depthMm", ...lengthOfHand },
  { word: "width", name: "widthMm", ...lengthOfHand },
];

/** Options that say from where a half-done stick goes on. */
export const FROM_OPTIONS: OptionKinds = {
  from: { value: true, sample: "--from plan.json" },
  after: { value: true, sample: "--after 4" },
  measured: { value: true, sample: "--measured measured.json" },
};

export interface WayOptions {
  /** What of the planner's request was said; planes left out are not among it. */
  readonly request: WayRequest;
  /** What the minutes are reckoned with: laid over what a job says of it. */
  readonly working: Partial<Record<PaceName | "lengthMm" | "sticks", number>>;
  /** How true the maker works, laid over what a job says of it. */
  readonly hand: Partial<HandAccuracy>;
  /** Planes not to be used, as they were typed. */
  readonly without: readonly string[] | undefined;
}

const PREFERENCES: Readonly<Record<string, Preference>> = {
  planes: "fewer planes",
  settings: "fewer settings",
  strokes: "fewer strokes",
};

/** The way options; lengths without a unit are in `unit`. Each is refused with its name, its value and what is wanted. */
export function readWayOptions(given: Given, unit: LengthUnit): Outcome<WayOptions> {
  const without = readWithout(given);
  const lean = readLean(given);
  const prefer = readChoice(given, "prefer", ["planes", "settings", "strokes"]);
  const side = readChoice<MissSide>(given, "side", ["proud", "under", "either"]);
  const way = readChoice<Way>(given, "way", ["flat", "bevelled", "canted"]);
  const sticks = readSticks(given);
  const length = readStickLength(given, unit);
  const shavings = readShavings(given, unit);
  const gauge = readChoice(given, "gauge", ["left", "right"]);
  const keep = readChoice<KeepSquare>(given, "keep-square", ["gauge", "far", "both"]);
  const pace = readFigures(given, "pace", PACE, unit);
  const hand = readFigures(given, "hand", HAND, unit);
  const step = readChoice(given, "step", ["16", "32", "64"]);
  const wrong = firstRefusal([
    without,
    lean,
    prefer,
    side,
    way,
    sticks,
    length,
    shavings,
    gauge,
    keep,
    pace,
    hand,
    step,
  ]);
  if (wrong !== null) return wrong;
  const greatestLeanDeg = said(lean);
  const preference = said(prefer);
  const missSide = said(side);
  const asked = said(way);
  const edge = said(gauge);
  const keepSquare = said(keep);
  const thicknesses = said(shavings);
  const lengthMm = said(length);
  const count = said(sticks);
  const inchStep = inchStepOf(said(step));
  return fine({
    request: {
      ...(greatestLeanDeg === undefined ? {} : { greatestLeanDeg }),
      ...(preference === undefined ? {} : { prefer: PREFERENCES[preference]! }),
      ...(missSide === undefined ? {} : { missSide }),
      ...(asked === undefined ? {} : { ways: [asked] }),
      ...(edge === undefined ? {} : { gaugeEdge: edge }),
      ...(keepSquare === undefined ? {} : { keepSquare }),
      ...(thicknesses === undefined ? {} : { shavings: thicknesses }),
      ...(inchStep === undefined ? {} : { inchStep }),
    },
    working: {
      ...said(pace),
      ...(lengthMm === undefined ? {} : { lengthMm }),
      ...(count === undefined ? {} : { sticks: count }),
    },
    hand: said(hand) ?? {},
    without: said(without),
  });
}

function inchStepOf(typed: "16" | "32" | "64" | undefined): InchDenominator | undefined {
  switch (typed) {
    case "16":
      return 16;
    case "32":
      return 32;
    case "64":
      return 64;
    default:
      return undefined;
  }
}

/** A job's request with what was said on the command line laid over it. */
export function withOptions(job: WayRequest, { request, working, hand }: WayOptions): WayRequest {
  return {
    ...job,
    ...request,
    ...(Object.keys(working).length === 0 ? {} : { working: workingOf(working, job.working) }),
    ...(Object.keys(hand).length === 0 ? {} : { hand: { ...handOf(job.hand ?? {}), ...hand } }),
  };
}

function said<T>(outcome: Outcome<T | undefined>): T | undefined {
  return outcome.ok ? outcome.value : undefined;
}

function readWithout(given: Given): Outcome<readonly string[] | undefined> {
  const typed = given.values.get("without");
  if (typed === undefined) return fine(undefined);
  const words = typed
    .split(",")
    .map((word) => word.trim())
    .filter((word) => word !== "");
  return words.length === 0
    ? wrongValue("without", typed, "ids of planes with commas between, such as round-3-8,rebate-6")
    : fine(words);
}

function readLean(given: Given): Outcome<number | undefined> {
  const lean = readAngle(given, "lean");
  const most = WAY_LIMITS.greatestLeanDeg;
  if (!lean.ok || lean.value === undefined || (lean.value >= 0 && lean.value <= most)) return lean;
  return wrongValue("lean", given.values.get("lean") ?? "", `an angle from 0 to ${most} degrees`);
}

function readSticks(given: Given): Outcome<number | undefined> {
  const sticks = readCount(given, "sticks");
  const most = WAY_LIMITS.mostSticks;
  if (!sticks.ok || sticks.value === undefined || (sticks.value >= 1 && sticks.value <= most)) return sticks;
  return wrongValue("sticks", given.values.get("sticks") ?? "", `a whole number from 1 to ${most}`);
}

function readStickLength(given: Given, unit: LengthUnit): Outcome<number | undefined> {
  const length = readLengthIf(given, "length", unit);
  const { shortestStickMm, longestStickMm } = WAY_LIMITS;
  if (!length.ok || length.value === undefined) return length;
  if (length.value >= shortestStickMm && length.value <= longestStickMm) return length;
  const wanted = `the length of a stick, ${shortestStickMm} mm to ${longestStickMm / 1000} m, such as 1.2m or 48in`;
  return wrongValue("length", given.values.get("length") ?? "", wanted);
}

function readShavings(given: Given, unit: LengthUnit): Outcome<Shavings | undefined> {
  const typed = given.values.get("shaving");
  if (typed === undefined) return fine(undefined);
  const { thinnestShavingMm, thickestShavingMm } = WAY_LIMITS;
  const refusal = wrongValue(
    "shaving",
    typed,
    `heavy, ordinary, last, ever thinner, ${thinnestShavingMm} to ${thickestShavingMm} mm, such as 0.3mm,0.15mm,0.08mm`,
  );
  // A decimal comma needs another mark between the three.
  const read = typed
    .split(typed.includes(";") ? ";" : ",")
    .map((one) => readLengthOption("shaving", one, unit));
  if (read.length !== 3) return refusal;
  const wrong = firstRefusal(read);
  if (wrong !== null) return wrong;
  const [heavyMm = 0, ordinaryMm = 0, lastMm = 0] = read.map((one) => (one.ok ? one.value : 0));
  const shavings = { heavyMm, ordinaryMm, lastMm };
  const isUsual = lastMm >= thinnestShavingMm && heavyMm <= thickestShavingMm && areShavingsInOrder(shavings);
  return isUsual ? fine(shavings) : refusal;
}

/** Where a half-done stick goes on from; null where the whole stick is meant. */
export interface FromOptions {
  readonly planPath: string;
  readonly after: number;
  readonly measuredPath: string | undefined;
}

/** `--from`, `--after` and `--measured`, which need each other; how many cuts there are the plan will say. */
export function readFromOptions(given: Given): Outcome<FromOptions | null> {
  const planPath = given.values.get("from");
  const measuredPath = given.values.get("measured");
  const after = readCount(given, "after");
  if (!after.ok) return after;
  if (planPath === undefined) {
    return after.value === undefined && measuredPath === undefined
      ? fine(null)
      : missing("from", "plan.json");
  }
  if (after.value === undefined) return missing("after", "4");
  return fine({ planPath, after: after.value, measuredPath });
}
