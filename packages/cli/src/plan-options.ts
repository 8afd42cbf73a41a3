/** What a maker may ask of a plan on the command line, read into what the planner takes. */
import { areShavingsInOrder, WAY_LIMITS, type WayRequest, workingOf } from "mouldwright/job";
import { fine, type LengthUnit, type Outcome } from "mouldwright/measure";
import type { MissSide, Preference, Shavings, Way } from "mouldwright/planning";
import { type Given, type OptionKinds, readChoice, readLengthOption, wrongValue } from "./arguments.ts";
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
};

/** Options that say from where a half-done stick goes on. */
export const FROM_OPTIONS: OptionKinds = {
  from: { value: true, sample: "--from plan.json" },
  after: { value: true, sample: "--after 4" },
  measured: { value: true, sample: "--measured measured.json" },
};

export interface WayOptions {
  /** What of the planner's request was said; planes left out are not among it. */
  readonly request: WayRequest;
  /** Length of a stick and how many there are: laid over what a job says of them. */
  readonly working: { readonly lengthMm?: number; readonly sticks?: number };
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
  const wrong = firstRefusal([without, lean, prefer, side, way, sticks, length, shavings, gauge]);
  if (wrong !== null) return wrong;
  const greatestLeanDeg = said(lean);
  const preference = said(prefer);
  const missSide = said(side);
  const asked = said(way);
  const edge = said(gauge);
  const thicknesses = said(shavings);
  const lengthMm = said(length);
  const count = said(sticks);
  return fine({
    request: {
      ...(greatestLeanDeg === undefined ? {} : { greatestLeanDeg }),
      ...(preference === undefined ? {} : { prefer: PREFERENCES[preference]! }),
      ...(missSide === undefined ? {} : { missSide }),
      ...(asked === undefined ? {} : { ways: [asked] }),
      ...(edge === undefined ? {} : { gaugeEdge: edge }),
      ...(thicknesses === undefined ? {} : { shavings: thicknesses }),
    },
    working: {
      ...(lengthMm === undefined ? {} : { lengthMm }),
      ...(count === undefined ? {} : { sticks: count }),
    },
    without: said(without),
  });
}

/** A job's request with what was said on the command line laid over it. */
export function withOptions(job: WayRequest, { request, working }: WayOptions): WayRequest {
  if (working.lengthMm === undefined && working.sticks === undefined) return { ...job, ...request };
  const own = job.working ?? workingOf({});
  const { lengthM } = working.lengthMm === undefined ? own : workingOf({ lengthMm: working.lengthMm });
  const sticks = working.sticks ?? own.sticks;
  return { ...job, ...request, working: { ...own, lengthM, ...(sticks === undefined ? {} : { sticks }) } };
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
