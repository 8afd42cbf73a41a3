/**
 * The plan file: read with bounds and a place for every fault, written so that the same plan is always the same
 * text. The format is `mouldwright/plan` version 1; readers ignore keys they do not know.
 */
import type { Vertex } from "../curve/index.ts";
import { cataloguedTrouble, fine, type Outcome, refused, type Trouble, z } from "../measure/index.ts";
import { outlineFaults, samePlace } from "./file-outline.ts";
import { troublesOf } from "./file-shape.ts";
import { readJsonText, shown } from "./json-text.ts";
import type {
  Plan,
  PlanBand,
  PlanCure,
  PlanCut,
  PlaneEntry,
  PlanJoin,
  PlanMark,
  PlanTime,
  PlanWay,
  Pose,
} from "./types.ts";
import { inStableOrder, jsonText } from "./write-json.ts";

export const PLAN_FORMAT = "mouldwright/plan";
export const PLAN_VERSION = 1;

/** Bounds of a plan file. A cornice of ten parts stays a hundred times below them. */
export const PLAN_LIMITS = {
  mostCharacters: 20_000_000,
  mostCuts: 200,
  mostVertices: 20_000,
  /** Poses of one run, and runs of one cut. */
  mostPoses: 2000,
  mostRuns: 200,
  mostRings: 200,
  mostEntries: 2000,
  mostTextCharacters: 2000,
  /** No stick reaches further from its corner than this, mm; it keeps squares and sums far from overflow. */
  farthestMm: 10_000,
} as const;

const millimetres = z.number().min(-PLAN_LIMITS.farthestMm).max(PLAN_LIMITS.farthestMm);
const notNegative = z.number().min(0).max(1e9);
const degrees = z.number().min(-360).max(360);
const count = z.int().min(0).max(1_000_000);
const text = z.string().max(PLAN_LIMITS.mostTextCharacters);
const texts = z.array(text).max(PLAN_LIMITS.mostEntries);

// A list of two or three numbers rather than a choice of two tuples: a choice hides which number is wrong.
const vertex = z.array(millimetres).min(2).max(3) as unknown as z.ZodType<Vertex>;
const place = z.tuple([millimetres, millimetres]);
const pose = z.tuple([millimetres, millimetres, degrees]) as unknown as z.ZodType<Pose>;
const chain = z.array(vertex).min(2).max(PLAN_LIMITS.mostVertices);
const ring = z.array(vertex).min(2).max(PLAN_LIMITS.mostVertices);

const planeEntry = z.looseObject({
  id: text,
  kind: text,
  name: text.optional(),
}) as unknown as z.ZodType<PlaneEntry>;

const cut = z.object({
  number: z.int().min(1).max(PLAN_LIMITS.mostCuts),
  purpose: z.enum(["relief", "waste", "guide", "shape", "finish", "saw"]),
  plane: planeEntry,
  cant: degrees,
  sole: chain.optional(),
  runs: z.array(z.array(pose).min(1).max(PLAN_LIMITS.mostPoses)).min(1).max(PLAN_LIMITS.mostRuns).optional(),
  line: z.tuple([place, place]).optional(),
  after: z.array(ring).max(PLAN_LIMITS.mostRings),
  takes: notNegative,
  wall: z.tuple([notNegative, notNegative]),
  seat: z.object({ lift: millimetres, shift: millimetres }).nullable(),
  runsAgainst: text.nullable(),
  fence: millimetres.optional(),
  setting: count,
  passes: count,
  shaving: notNegative,
  minutes: notNegative,
  says: text,
  doneWhen: text,
});

const part = z.object({
  id: text,
  kind: text,
  name: text,
  from: place,
  to: place,
  madeBy: z.array(count).max(PLAN_LIMITS.mostCuts),
});

const mark = z.object({
  id: text,
  before: count,
  kind: z.enum(["place", "depth", "end"]),
  at: place,
  from: text,
  distance: millimetres,
  fromGaugeEdge: millimetres,
  error: notNegative,
  serves: z.enum(["place", "join", "band"]).optional(),
  errorFromEdge: notNegative.optional(),
  errorFromFoot: notNegative.optional(),
});

const band = z.object({
  name: text,
  from: place,
  to: place,
  width: notNegative,
  cuts: z.array(count).max(PLAN_LIMITS.mostCuts),
  linesFrom: z.enum(["gauge edge", "foot"]),
  error: notNegative,
  errorFromEdge: notNegative,
  errorFromFoot: notNegative,
});

const time = z.object({
  totalMinutes: notNegative,
  settingMinutes: notNegative,
  strokeMinutes: notNegative,
  testPieceMinutes: notNegative,
  sharpeningMinutes: notNegative,
  reckonedWith: z.record(z.string().max(PLAN_LIMITS.mostTextCharacters), notNegative),
});

const join = z.object({
  at: place,
  kind: z.enum(["smooth", "arris", "quirk", "step"]),
  angle: degrees,
  gap: millimetres,
  error: notNegative,
  errorFromEdge: notNegative.optional(),
  errorFromFoot: notNegative.optional(),
});

const uncut = z.object({
  from: place,
  to: place,
  left: notNegative,
  rule: z.enum(["out of reach", "wall", "seat", "body", "bench", "loose wood", "bearing", "lean", "guide"]),
  why: text,
  try: text,
});

const cure = z.object({
  kind: z.enum(["plane", "change"]),
  says: text,
  planes: z.array(z.looseObject({})).max(PLAN_LIMITS.mostEntries).optional(),
  change: z
    .object({
      what: z.enum(["radius", "width", "flat", "wall"]),
      from: place,
      to: place,
      toMm: notNegative.optional(),
      byMm: notNegative.optional(),
    })
    .optional(),
  places: z.array(count).max(PLAN_LIMITS.mostEntries),
  placesBefore: count,
  placesAfter: count,
  cutsBefore: count,
  cutsAfter: count,
  settingsBefore: count.optional(),
  settingsAfter: count.optional(),
});

const way = z.object({
  way: text,
  cuts: count,
  settings: count,
  minutes: notNegative,
  uncut: count.optional(),
  curved: count.optional(),
  seats: count.optional(),
  lines: count.optional(),
  linesAtFirst: count.optional(),
  planed: notNegative.optional(),
  sawn: notNegative.optional(),
  why: text,
});

const plan = z.object({
  format: z.literal(PLAN_FORMAT),
  version: z.literal(PLAN_VERSION),
  unit: z.literal("mm"),
  name: text,
  tolerance: z.number().min(0).max(PLAN_LIMITS.farthestMm),
  shelf: z.looseObject({ planes: z.array(z.looseObject({})).max(PLAN_LIMITS.mostEntries) }),
  gaugeEdge: z.enum(["left", "right"]).optional(),
  assumed: texts,
  warnings: texts,
  way: text,
  ways: z.array(way).max(PLAN_LIMITS.mostEntries),
  standing: z.enum(["proven least", "best found"]),
  stick: ring,
  section: ring,
  planned: ring,
  parts: z.array(part).max(PLAN_LIMITS.mostEntries),
  marks: z.array(mark).max(PLAN_LIMITS.mostEntries),
  bands: z.array(band).max(PLAN_LIMITS.mostEntries).optional(),
  time: time.optional(),
  cuts: z.array(cut).max(PLAN_LIMITS.mostCuts),
  finish: z.object({
    proud: millimetres,
    under: millimetres,
    rms: notNegative,
    joins: z.array(join).max(PLAN_LIMITS.mostEntries),
  }),
  uncut: z.array(uncut).max(PLAN_LIMITS.mostEntries),
  cures: z.array(cure).max(PLAN_LIMITS.mostEntries).optional(),
});

/**
 * The plan a plan file holds; millimetres and degrees.
 *
 * Refuses, with the path of the fault (`cuts[3].runs[0][2]`): what is no JSON, another format, a newer version
 * (`file-version-newer`; nothing in it is looked at), missing keys, numbers that are not finite or past
 * `PLAN_LIMITS`, a cut with neither sole and runs nor a line, cut numbers that do not rise, marks and parts that
 * name no cut, and vertices that fall on each other. Whether the plan holds is not judged here but by
 * `recutPlan`. Never throws.
 */
export function readPlan(fileText: string): Outcome<Plan> {
  const json = readJsonText(fileText, PLAN_LIMITS);
  if (!json.ok) return json;
  const otherFile = checkHeader(json.value, PLAN_FORMAT, PLAN_VERSION);
  if (otherFile !== null) return refused(otherFile);
  const parsed = plan.safeParse(json.value);
  if (!parsed.success) return refused(...troublesOf(parsed.error.issues, json.value));
  // `exactOptionalPropertyTypes`: the schema's optional keys are absent, never undefined, since JSON has no undefined.
  const value = parsed.data as Plan;
  const [first, ...more] = faultsAcrossKeys(value);
  return first === undefined ? fine(value) : refused(first, ...more);
}

/**
 * Null if the value is a file of this format in a version known here; else `file-format-other` or
 * `file-version-newer`. Judged before anything else is looked at, so that a newer file is left untouched.
 */
export function checkHeader(value: unknown, format: string, version: number): Trouble | null {
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    return cataloguedTrouble("file-value-wrong", "", {
      found: shown(value),
      wanted: "a group of keys { … }",
    });
  }
  const header = value as { readonly format?: unknown; readonly version?: unknown };
  if (!Object.hasOwn(value, "format"))
    return cataloguedTrouble("file-key-missing", "format", { key: "format" });
  if (header.format !== format) {
    return cataloguedTrouble("file-format-other", "format", { found: shown(header.format), wanted: format });
  }
  if (!Object.hasOwn(value, "version"))
    return cataloguedTrouble("file-key-missing", "version", { key: "version" });
  if (typeof header.version === "number" && header.version > version) {
    return cataloguedTrouble("file-version-newer", "version", { found: header.version, known: version });
  }
  return header.version === version
    ? null
    : cataloguedTrouble("file-value-wrong", "version", {
        found: shown(header.version),
        wanted: String(version),
      });
}

/** What no schema sees: things that must fit each other. */
function faultsAcrossKeys(value: Plan): readonly Trouble[] {
  const faults: Trouble[] = [];
  const numbers = new Set<number>();
  let last = 0;
  for (const [i, one] of value.cuts.entries()) {
    const where = `cuts[${i}]`;
    if (one.number <= last) {
      faults.push(
        cataloguedTrouble("plan-cuts-out-of-order", `${where}.number`, { number: one.number, after: last }),
      );
    }
    last = one.number;
    numbers.add(one.number);
    const sawn = one.line !== undefined;
    const planed = one.sole !== undefined && one.runs !== undefined;
    const saysSaw = one.plane.kind === "saw";
    if (sawn === planed || saysSaw !== sawn || (sawn && (one.sole ?? one.runs) !== undefined)) {
      faults.push(
        cataloguedTrouble("plan-cut-has-no-movement", where, {
          number: one.number,
          kind: shown(one.plane.kind),
        }),
      );
    }
    for (const [j, standing] of one.after.entries())
      faults.push(...outlineFaults(standing, `${where}.after[${j}]`, true));
    if (one.sole !== undefined) faults.push(...outlineFaults(one.sole, `${where}.sole`, false));
    if (sawn && samePlace(one.line[0], one.line[1])) {
      faults.push(cataloguedTrouble("file-points-coincide", `${where}.line[1]`, {}));
    }
  }
  for (const key of ["stick", "section", "planned"] as const)
    faults.push(...outlineFaults(value[key], key, true));
  for (const [i, one] of value.marks.entries()) {
    if (!numbers.has(one.before)) {
      faults.push(cataloguedTrouble("plan-names-no-cut", `marks[${i}].before`, { number: one.before }));
    }
  }
  for (const [i, one] of value.parts.entries()) {
    const stray = one.madeBy.findIndex((number) => !numbers.has(number));
    if (stray >= 0) {
      faults.push(
        cataloguedTrouble("plan-names-no-cut", `parts[${i}].madeBy[${stray}]`, {
          number: one.madeBy[stray]!,
        }),
      );
    }
  }
  return faults;
}

/**
 * The plan as its file: two spaces of indent, keys in the order of the format, numbers unrounded so that
 * `readPlan` gives the very same plan, points side by side so that a person can read it. The same plan gives the
 * same text, byte for byte. Throws (Bug) on a number that is not finite.
 */
export function writePlan(value: Plan): string {
  return `${jsonText({
    format: value.format,
    version: value.version,
    unit: value.unit,
    name: value.name,
    tolerance: value.tolerance,
    shelf: inStableOrder(value.shelf),
    gaugeEdge: value.gaugeEdge,
    assumed: value.assumed,
    warnings: value.warnings,
    way: value.way,
    ways: value.ways.map(wayInOrder),
    standing: value.standing,
    stick: value.stick,
    section: value.section,
    planned: value.planned,
    parts: value.parts.map(({ id, kind, name, from, to, madeBy }) => ({ id, kind, name, from, to, madeBy })),
    marks: value.marks.map(markInOrder),
    bands: value.bands?.map(bandInOrder),
    time: value.time && timeInOrder(value.time),
    cuts: value.cuts.map(cutInOrder),
    finish: {
      proud: value.finish.proud,
      under: value.finish.under,
      rms: value.finish.rms,
      joins: value.finish.joins.map(joinInOrder),
    },
    uncut: value.uncut.map((one) => ({
      from: one.from,
      to: one.to,
      left: one.left,
      rule: one.rule,
      why: one.why,
      try: one.try,
    })),
    cures: value.cures?.map(cureInOrder),
  })}\n`;
}

function cureInOrder(one: PlanCure): Readonly<Record<string, unknown>> {
  const { kind, says, planes, change, places, placesBefore, placesAfter, cutsBefore, cutsAfter } = one;
  return {
    kind,
    says,
    planes: planes?.map(inStableOrder),
    change: change && {
      what: change.what,
      from: change.from,
      to: change.to,
      toMm: change.toMm,
      byMm: change.byMm,
    },
    places,
    placesBefore,
    placesAfter,
    cutsBefore,
    cutsAfter,
    settingsBefore: one.settingsBefore,
    settingsAfter: one.settingsAfter,
  };
}

function wayInOrder(value: PlanWay): Readonly<Record<string, unknown>> {
  const { way, cuts, settings, minutes, uncut, curved, seats, lines, linesAtFirst, planed, sawn, why } =
    value;
  return { way, cuts, settings, minutes, uncut, curved, seats, lines, linesAtFirst, planed, sawn, why };
}

function markInOrder(one: PlanMark): Readonly<Record<string, unknown>> {
  const { id, before, kind, at, from, distance, fromGaugeEdge, error, serves, errorFromEdge, errorFromFoot } =
    one;
  return { id, before, kind, at, from, distance, fromGaugeEdge, error, serves, errorFromEdge, errorFromFoot };
}

function joinInOrder(one: PlanJoin): Readonly<Record<string, unknown>> {
  const { at, kind, angle, gap, error, errorFromEdge, errorFromFoot } = one;
  return { at, kind, angle, gap, error, errorFromEdge, errorFromFoot };
}

function bandInOrder(one: PlanBand): Readonly<Record<string, unknown>> {
  const { name, from, to, width, cuts, linesFrom, error, errorFromEdge, errorFromFoot } = one;
  return { name, from, to, width, cuts, linesFrom, error, errorFromEdge, errorFromFoot };
}

function timeInOrder(one: PlanTime): Readonly<Record<string, unknown>> {
  const { totalMinutes, settingMinutes, strokeMinutes, testPieceMinutes, sharpeningMinutes } = one;
  const reckonedWith = inStableOrder(one.reckonedWith);
  return {
    totalMinutes,
    settingMinutes,
    strokeMinutes,
    testPieceMinutes,
    sharpeningMinutes,
    reckonedWith,
  };
}

function cutInOrder(one: PlanCut): Readonly<Record<string, unknown>> {
  return {
    number: one.number,
    purpose: one.purpose,
    plane: inStableOrder(one.plane),
    cant: one.cant,
    sole: one.sole,
    runs: one.runs,
    line: one.line,
    after: one.after,
    takes: one.takes,
    wall: one.wall,
    seat: one.seat === null ? null : { lift: one.seat.lift, shift: one.seat.shift },
    runsAgainst: one.runsAgainst,
    fence: one.fence,
    setting: one.setting,
    passes: one.passes,
    shaving: one.shaving,
    minutes: one.minutes,
    says: one.says,
    doneWhen: one.doneWhen,
  };
}
