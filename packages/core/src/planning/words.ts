/**
 * The plan's sentences for the bench: which plane, where, how it leans, how deep, and when to stop.
 *
 * Plain facts in, plain words out; no geometry is done here. Left and right are the maker's own, looking along the
 * stroke. The words are common practice of the trade, no source.
 */
import { isSquareLay } from "../cutting/index.ts";
import { type InchDenominator, writerFor } from "../measure/index.ts";

export type BenchUnit = "mm" | "in";

/** What the maker does in a cut, where purpose and plane alone do not tell. Derived by `workOf` when absent. */
export type Work =
  | "step"
  | "chamfer"
  | "flat"
  | "groove"
  | "snipe line"
  | "open V"
  | "wall"
  | "curve"
  | "rocked curve"
  | "ridges"
  | "facets"
  | "bead"
  | "sawn bevel"
  | "ripped waste";

export interface CutFacts {
  readonly purpose: "relief" | "waste" | "guide" | "shape" | "finish" | "saw";
  readonly planeName: string;
  /** The plane's kind as in the shelf file, or "saw". */
  readonly kind: string;
  /** Lean of the plane in the hand (tilt + cant), 0 upright, positive to the left; of the last pose where it moves. */
  readonly leanDeg: number;
  /** How the stick is turned on the bench, anticlockwise seen from the end where the stroke starts. */
  readonly cantDeg: number;
  readonly rocked: { readonly fromDeg: number; readonly toDeg: number; readonly begunDeg?: number } | null;
  /** What the sole stands on or in: "the V", "the two snipe lines", "the two arrises". */
  readonly seatOn: string | null;
  /** "gauge edge", "far edge", "wall of cut 1", "standing wall", "line m2", "batten". */
  readonly runsAgainst: string | null;
  readonly fenceMm: number | null;
  readonly line: { readonly distanceMm: number; readonly from: string } | null;
  /** The second of two lines that a chamfer runs between. */
  readonly otherLine?: { readonly distanceMm: number; readonly from: string };
  /** Depth along the plane's axis, from the surface as it stands before the cut. */
  readonly depthMm: number | null;
  readonly passes: number;
  readonly shavingMm: number;
  readonly unit: BenchUnit;
  /** Finest division of an inch rule; thirty-seconds when absent. */
  readonly inchStep?: InchDenominator;
  readonly work?: Work;
  /** False where the cut only takes wood down and leaves no wall standing; true when absent. */
  readonly leavesWall?: boolean;
  /** How often the plane is set anew across the cut (cleaning ridges); 1 when absent. */
  readonly placesCount?: number;
  /** Those of several widths, counted from one, that run on a wall of their own: the earlier cut that left it. */
  readonly laterWalls?: readonly { readonly width: number; readonly ofCut: number }[];
  /** The lean of each of those settings, in their order, positive to the left; given where they differ. */
  readonly leansDeg?: readonly number[];
  /** Where each of them stands across, seen along the stroke, rising to the right, mm. */
  readonly acrossMm?: readonly number[];
  /** How often planes are set over the same curve in all cuts of the plan; as often as in this one when absent. */
  readonly curveSettings?: number;
  /** How high the ridges between the settings stand, where the plane leaves any, mm. */
  readonly ridgeMm?: number;
  /** The sign that it is done, continuing "until …": "the ridge beside the bead is gone". */
  readonly until?: string;
  /** Greatest lean to which a V is opened after the upright strokes, positive to the left. */
  readonly openedToDeg?: number;
}

const HEAVY_SHAVING_MM = 0.25;
const FINE_SHAVING_MM = 0.1;
/** Below this a plane is held upright: the hand sets whole degrees. */
const UPRIGHT_BELOW_DEG = 0.5;

/** What is done in the cut, from purpose and plane, unless the facts say it themselves. */
export function workOf(facts: CutFacts): Work {
  if (facts.work !== undefined) return facts.work;
  switch (facts.kind) {
    case "saw":
      return "sawn bevel";
    case "snipe bill":
      return facts.purpose === "guide" ? "open V" : "snipe line";
    case "plough":
      return "groove";
    case "side round":
    case "side snipe":
    case "side rebate":
      return "wall";
    case "bead":
      return "bead";
    case "rebate":
    case "moving fillister":
    case "smoother":
      if (Math.abs(facts.leanDeg) >= UPRIGHT_BELOW_DEG && facts.purpose !== "finish") return "chamfer";
      return facts.kind === "smoother" || facts.purpose === "finish" ? "flat" : "step";
    default:
      if (facts.rocked !== null) return "rocked curve";
      return (facts.placesCount ?? 1) > 1 ? "ridges" : "curve";
  }
}

/** The card's title: a few words, no figures but the lean. */
export function cutTitle(facts: CutFacts): string {
  const side = edgeSide(facts);
  switch (workOf(facts)) {
    case "step":
      if (facts.leavesWall === false) return "Planed down level";
      return side === null ? "Step" : `Step from the ${side}`;
    case "chamfer":
      return "Chamfer between two lines";
    case "flat":
      return "Flat, finished";
    case "groove":
      return "Groove";
    case "snipe line":
      return "Snipe line";
    case "open V":
      return "V opened along the line";
    case "wall":
      return "Wall pared";
    case "bead":
      return "Bead";
    case "sawn bevel":
      return "Bevel sawn";
    case "ripped waste":
      return "Waste sawn off";
    case "rocked curve":
      return `${curveName(facts)} rocked from lean to lean`;
    case "ridges":
      return (facts.placesCount ?? 1) > 1
        ? `${curveName(facts)} in ${numberWords(facts.placesCount ?? 1)} settings`
        : `${curveName(facts)}, ${leanWords(facts.leanDeg)}`;
    case "facets":
      return (facts.placesCount ?? 1) > 1
        ? `Curve in ${numberWords(facts.placesCount ?? 1)} flats`
        : "Curve as one flat";
    case "curve":
      return `${curveName(facts)}, ${leanWords(facts.leanDeg)}`;
  }
}

/** One sentence (two where the stick is turned first): plane, lean, place, depth, until when. */
export function cutSentence(facts: CutFacts): string {
  const turned = stickWords(facts.cantDeg);
  const sentence = capital(joinPhrases([planeWords(facts), ...phrasesOf(facts)])) + finishWords(facts);
  const whole = sentence.endsWith(".") ? sentence : `${sentence}.`;
  return clean(turned === null ? whole : `${turned} ${whole}`);
}

/** The sign that the cut is done, as a sentence of its own. */
export function doneSentence(facts: CutFacts): string {
  if (facts.until !== undefined && facts.until.trim() !== "")
    return clean(`Done when ${facts.until.trim()}.`);
  const depth = facts.depthMm === null ? null : told(facts.depthMm, facts);
  switch (workOf(facts)) {
    case "step":
      if (facts.leavesWall === false)
        return `Done when it is level and ${depth === null ? "" : `${depth} `}down from end to end: the gauge line is just split.`;
      return depth === null
        ? "Done when the floor is down to the line from end to end."
        : `Done when the floor is ${depth} down from end to end: ${STOPPED.has(facts.kind) ? "the depth stop bears" : "the gauge line is just split"}.`;
    case "chamfer":
      return "Done when the flat reaches both lines and splits them from end to end.";
    case "flat":
      return "Done when one unbroken shaving, as wide as the flat, comes from end to end.";
    case "groove":
      return depth === null
        ? "Done when the depth stop bears from end to end."
        : `Done when the groove is ${depth} deep and the depth stop bears from end to end.`;
    case "snipe line":
      return depth === null
        ? "Done when the line is clean, its wall upright, and as deep at both ends as in the middle."
        : `Done when the line is ${depth} deep, as deep at both ends as in the middle, and its wall clean.`;
    case "open V":
      return "Done when the next plane stands in the V and cannot be pushed sideways.";
    case "wall":
      return "Done when the wall is clean and meets the line on both ends.";
    case "bead":
      return "Done when the bead is round all over: the plane stops cutting by itself.";
    case "ripped waste":
    case "sawn bevel":
      return "Done when the offcut is free and the sawn face meets the line on both ends.";
    case "rocked curve":
      return "Done when no flat is left between the two leans and the lines on both ends are met.";
    case "ridges":
      return "Done when the settings meet in even ridges along the curve and the lines on both ends are met; a scraper takes the ridges off.";
    case "facets":
      return (facts.placesCount ?? 1) > 1
        ? "Done when each flat just touches the curve drawn on both ends; a scraper, and a block shaped to the curve, take the arrises between them off."
        : "Done when the flat just touches the curve drawn on both ends; a scraper, and a block shaped to the curve, take the arrises beside it off.";
    case "curve":
      return "Done when one shaving as wide as the sole comes from end to end and the lines on both ends are met.";
  }
}

/** Planes with a depth stop; a rebate plane or smoother has none and goes down to a gauge line. */
const STOPPED: ReadonlySet<string> = new Set(["moving fillister", "plough"]);

/** "upright", "leaned 12° to the left": degrees to 1, as a hand holds them. */
export function leanWords(leanDeg: number): string {
  if (Math.abs(leanDeg) < UPRIGHT_BELOW_DEG) return "upright";
  return `leaned ${wholeDegrees(leanDeg)} to the ${leanDeg > 0 ? "left" : "right"}`;
}

/** How to lay the stick first, or null when it lies face up. */
export function stickWords(cantDeg: number): string | null {
  const turn = ((((cantDeg + 180) % 360) + 360) % 360) - 180;
  if (Math.abs(turn) < UPRIGHT_BELOW_DEG) return null;
  if (180 - Math.abs(turn) < UPRIGHT_BELOW_DEG) return "Turn the stick back up.";
  if (Math.abs(turn - 90) < UPRIGHT_BELOW_DEG) return "Stand the stick on its gauge edge, far edge up.";
  if (Math.abs(turn + 90) < UPRIGHT_BELOW_DEG) return "Stand the stick on its far edge, gauge edge up.";
  const raised = turn > 0 ? "far edge" : "gauge edge";
  if (Math.abs(turn) > 90) {
    // From 90° on, the back looks up and the edge that was raised comes over to the other side.
    return `Turn the stick back up in a jaw canted ${wholeDegrees(180 - Math.abs(turn))}, ${raised} raised.`;
  }
  return `Hold the stick in a jaw canted ${wholeDegrees(turn)}, ${raised} raised.`;
}

function phrasesOf(facts: CutFacts): readonly string[] {
  const lean = leanWords(facts.leanDeg);
  const depth = facts.depthMm === null ? "" : `${told(facts.depthMm, facts)} deep`;
  const until = facts.until === undefined ? "" : `until ${facts.until.trim()}`;
  switch (workOf(facts)) {
    case "step":
      return [
        lean === "upright" ? "" : lean,
        facts.leavesWall === false ? levelGuideWords(facts) : guideWords(facts),
        depth,
        widthsWords(facts),
        facts.leavesWall === false ? "planing it down level" : "taking the step's floor and wall",
        ironWords(facts),
        until,
      ];
    case "chamfer":
      return [
        lean,
        facts.otherLine && facts.line
          ? `from the line ${lineWords(facts)} to the one ${lineWords({ ...facts, line: facts.otherLine })}`
          : placeWords(facts, "between the two lines"),
        facts.runsAgainst === "batten" ? guideWords(facts) : "",
        ironWords(facts),
        until || "until the flat meets both lines",
      ];
    case "flat":
      return [
        lean === "upright" ? "" : lean,
        guideWords(facts),
        "with a fine iron",
        until || "until one shaving as wide as the flat comes from end to end",
      ];
    case "groove":
      return [guideWords(facts), depth, ironWords(facts), until];
    case "snipe line":
      return [lean, placeWords(facts, "on the line"), depth, until];
    case "open V": {
      const openedToDeg = facts.openedToDeg ?? (facts.rocked === null ? null : facts.rocked.toDeg);
      const how =
        openedToDeg === null || openedToDeg === undefined
          ? lean
          : `upright first and then ${leanWords(openedToDeg).replace("leaned", "leaned little by little,")}`;
      return [
        how,
        placeWords(facts, "along the line"),
        depth,
        until || "until the V is wide enough to hold the next plane",
      ];
    }
    case "wall":
      return [lean, placeWords(facts, "along the wall"), "paring it with a fine iron", until];
    case "bead":
      return [guideWords(facts), ironWords(facts), until || "until the plane stops cutting by itself"];
    case "ripped waste":
    case "sawn bevel":
      return [
        angleOfSaw(facts),
        placeWords(facts, "to the line"),
        "the stick held so that the offcut falls free",
        until,
      ];
    case "rocked curve": {
      const rocked = facts.rocked ?? { fromDeg: facts.leanDeg, toDeg: facts.leanDeg };
      const begunDeg = rocked.begunDeg ?? rocked.fromDeg;
      const start = Math.abs(begunDeg) < UPRIGHT_BELOW_DEG ? "begun upright" : `begun ${leanWords(begunDeg)}`;
      const between =
        Math.min(Math.abs(begunDeg - rocked.fromDeg), Math.abs(begunDeg - rocked.toDeg)) > UPRIGHT_BELOW_DEG;
      const end =
        Math.abs(rocked.toDeg) < UPRIGHT_BELOW_DEG
          ? "brought upright"
          : `rocked little by little until it is ${leanWords(rocked.toDeg)}`;
      const both = `rocked little by little, to one side until it is ${leanWords(rocked.fromDeg)}, to the other until it is ${leanWords(rocked.toDeg)}`;
      return [
        start,
        placeWords(facts, ""),
        between ? both : end,
        until || "until no flat is left between the two leans",
      ];
    }
    case "ridges":
      return [
        (facts.placesCount ?? 1) > 1
          ? `set ${countWords(facts.placesCount ?? 1)} side by side${wantWords(facts)}: ${settingLeans(facts)}`
          : `${lean}${wantWords(facts)}`,
        placeWords(facts, ""),
        "with a fine iron",
        until ||
          `until ${(facts.placesCount ?? 1) > 1 ? "the settings meet" : "it bears on the curve"}${ridgeWords(facts)}`,
      ];
    case "facets":
      return [
        (facts.placesCount ?? 1) > 1
          ? `set ${countWords(facts.placesCount ?? 1)}${wantWords(facts)}: ${settingLeans(facts)}`
          : `${lean}${wantWords(facts)}`,
        facts.otherLine && facts.line
          ? `${(facts.placesCount ?? 1) > 1 ? "the first from" : "from"} the line ${lineWords(facts)} to the one ${lineWords({ ...facts, line: facts.otherLine })}`
          : facts.runsAgainst === "batten"
            ? guideWords(facts)
            : "",
        until ||
          `until ${(facts.placesCount ?? 1) > 1 ? "each" : "the"} flat just touches the curve${ridgeWords(facts)}`,
      ];
    case "curve":
      return [
        lean,
        placeWords(facts, ""),
        depthBeforeCurve(facts),
        until || "until the lines on both ends are just met",
      ];
  }
}

/** Runs side by side over a floor wider than the sole. */
function widthsWords(facts: CutFacts): string {
  const count = facts.placesCount ?? 1;
  if (count < 2) return "";
  const along = (facts.laterWalls ?? []).map(
    ({ width, ofCut }) => ` (the ${ORDINALS[width - 1] ?? `${width}th`} along the wall of cut ${ofCut})`,
  );
  return `in ${numberWords(count)} widths side by side${along.join("")}`;
}

/** What leads a plane that leaves no wall: an edge it hangs over needs no fence, the plane only has to reach over it. */
function levelGuideWords(facts: CutFacts): string {
  const edge = edgeSide(facts);
  return edge === null ? guideWords(facts) : `hanging over the ${edge}`;
}

/** Two settings nearer than this across are one place to the hand, mm. */
const SAME_PLACE_MM = 0.05;

/**
 * "leaned 52° and 41° to the right", "upright, upright again 0.6 mm further to the right": every setting's own lean, in
 * the order they are worked, and of two leaned alike how far apart they are.
 */
function settingLeans(facts: CutFacts): string {
  const leans = facts.leansDeg ?? [facts.leanDeg];
  const again = (i: number): string => {
    const [before, here] = [leans[i - 1], leans[i]];
    if (before === undefined || here === undefined || leanWords(before) !== leanWords(here)) return "";
    const apartMm = (facts.acrossMm?.[i] ?? 0) - (facts.acrossMm?.[i - 1] ?? 0);
    if (Math.abs(apartMm) < SAME_PLACE_MM) return " again";
    return ` again ${told(Math.abs(apartMm), facts)} further to the ${apartMm > 0 ? "right" : "left"}`;
  };
  const words: string[] = [];
  let side = "";
  for (const [i, leanDeg] of leans.entries()) {
    const isUpright = Math.abs(leanDeg) < UPRIGHT_BELOW_DEG;
    const ownSide = isUpright ? "" : leanDeg > 0 ? "left" : "right";
    const next = leans[i + 1];
    const nextSide =
      next === undefined ? "" : Math.abs(next) < UPRIGHT_BELOW_DEG ? "" : next > 0 ? "left" : "right";
    const leaned = side === ownSide && side !== "" ? "" : "leaned ";
    const same = again(i);
    // The side is named once for leans that follow one another; a place told by another side would be misread.
    const goesOn = nextSide === ownSide && same === "" && again(i + 1) === "";
    words.push(
      `${isUpright ? "upright" : `${leaned}${wholeDegrees(leanDeg)}${goesOn ? "" : ` to the ${ownSide}`}`}${same}`,
    );
    side = goesOn ? ownSide : "";
  }
  const last = words.pop() ?? "";
  return words.length > 0 ? `${words.join(", ")} and ${last}` : last;
}

/** Why one curve takes so many settings, where they are more than a maker would take for granted. */
function wantWords(facts: CutFacts): string {
  if (Math.max(facts.curveSettings ?? 1, facts.placesCount ?? 1) <= SETTINGS_UNASKED) return "";
  return workOf(facts) === "facets"
    ? ", for want of a hollow that goes in"
    : `, for want of a ${facts.kind} of this curve's radius that goes in`;
}

/** Up to this many settings for one curve no maker asks why. */
const SETTINGS_UNASKED = 3;

function ridgeWords(facts: CutFacts): string {
  if (facts.ridgeMm === undefined || facts.ridgeMm < LEAST_TOLD_RIDGE_MM) return "";
  return `; ridges ${told(facts.ridgeMm, facts)} high stay, for a scraper`;
}

/** Lower ridges are felt by nobody, mm. */
const LEAST_TOLD_RIDGE_MM = 0.02;

function depthBeforeCurve(facts: CutFacts): string {
  return facts.purpose === "waste" && facts.depthMm !== null ? `${told(facts.depthMm, facts)} deep` : "";
}

/** Depth is told by the join or the lines; the last shaving's width only tells that the sole bears all over. */
function finishWords(facts: CutFacts): string {
  if (facts.purpose === "waste") return "";
  switch (workOf(facts)) {
    case "curve":
    case "rocked curve":
      return "; finish with one fine shaving, as wide as the sole, from end to end.";
    case "step":
      return facts.purpose === "shape" ? "; finish with one fine shaving from end to end." : "";
    default:
      return "";
  }
}

/** Seat first, then the line that places it, or whatever it runs against. */
function placeWords(facts: CutFacts, otherwise: string): string {
  const lineWhere = facts.line === null ? null : lineWords(facts);
  if (facts.seatOn !== null && facts.seatOn.trim() !== "") {
    const seat = seatWords(facts.seatOn.trim());
    if (lineWhere === null) return seat;
    // A V, a line, a groove has a line of its own; between arrises the line is only where the plane's middle goes.
    return seat.startsWith("in ") ? `${seat} whose line is ${lineWhere}` : `${seat}, its middle ${lineWhere}`;
  }
  const against = guideWords(facts);
  if (lineWhere !== null) {
    const onLine = `on the line ${lineWhere}`;
    return against === "" || isOwnLine(facts.runsAgainst) ? onLine : `${onLine}, ${against}`;
  }
  return against === "" ? otherwise : against;
}

function lineWords(facts: CutFacts): string {
  const line = facts.line;
  if (line === null) return "";
  const from = /^(gauge edge|far edge|foot|face|back|wall|line|near edge)\b/.test(line.from)
    ? `the ${line.from}`
    : line.from;
  if (line.distanceMm < AT_THE_VERY_PLACE_MM) return `at ${from}`;
  return `${told(line.distanceMm, facts)} from ${from}`;
}

/** Nearer than a hand can set a gauge, a line is at its place and not some way from it, mm. */
const AT_THE_VERY_PLACE_MM = 0.05;

function seatWords(seatOn: string): string {
  if (/^(in|on|between|against|along|over) /.test(seatOn)) return seatOn;
  const phrase = /^(the|a|an|both|two) /.test(seatOn) ? seatOn : `the ${seatOn}`;
  if (/arris|edge|flank|chamfer|corners/.test(phrase)) return `on ${phrase}`;
  if (/lines|walls/.test(phrase)) return `between ${phrase}`;
  return `in ${phrase}`;
}

function guideWords(facts: CutFacts): string {
  const against = facts.runsAgainst?.trim() ?? "";
  if (against === "") return "";
  if (against === "batten") return "against a batten clamped on to guide it";
  const set = facts.fenceMm === null ? "" : `, ${told(facts.fenceMm, facts)} from it`;
  if (against === "gauge edge" || against === "far edge") {
    const fence = isSquareLay(facts.cantDeg)
      ? "its fence"
      : `a strip planed to ${Math.round(Math.abs(facts.cantDeg))}° on its fence, this`;
    return facts.fenceMm !== null && facts.fenceMm > 0
      ? `${fence} on the ${against} and set ${told(facts.fenceMm, facts)} out`
      : `${fence} on the ${against}`;
  }
  if (isOwnLine(against)) return "fingers guiding it along the gauge line";
  return `against the ${against.replace(/^the /, "")}${set}`;
}

function isOwnLine(runsAgainst: string | null): boolean {
  return runsAgainst?.startsWith("line ") ?? false;
}

function ironWords(facts: CutFacts): string {
  if (!(facts.passes > 0)) return "";
  const iron =
    facts.shavingMm >= HEAVY_SHAVING_MM ? "heavy" : facts.shavingMm <= FINE_SHAVING_MM ? "fine" : "ordinary";
  return facts.passes === 1
    ? `one pass with ${article(iron)} iron`
    : `about ${facts.passes} passes with ${article(iron)} iron`;
}

function angleOfSaw(facts: CutFacts): string {
  if (Math.abs(facts.leanDeg) < UPRIGHT_BELOW_DEG) return "blade upright";
  // A saw's scale is set to a quarter of a degree, a plane in the hand only to a whole one.
  const quarters = Math.round(Math.abs(facts.leanDeg) * 4);
  const rest = ["", "¼", "½", "¾"][quarters % 4] ?? "";
  return `blade leaned ${Math.floor(quarters / 4)}${rest}° to the ${facts.leanDeg > 0 ? "left" : "right"}`;
}

function edgeSide(facts: CutFacts): string | null {
  return facts.runsAgainst === "gauge edge" || facts.runsAgainst === "far edge" ? facts.runsAgainst : null;
}

function curveName(facts: CutFacts): string {
  return facts.kind === "hollow" ? "Hollow" : facts.kind === "round" ? "Round" : "Shaped plane";
}

/** "5/8 in round" and "⅝ in round" are spoken "five-eighths round"; any other name stays as its owner wrote it. */
function planeWords(facts: CutFacts): string {
  const name = clean(facts.planeName).trim();
  const spelled = inPlainDigits(name).replace(/^(\d*)([¼½¾⅛⅜⅝⅞])/, (_, whole: string, part: string) => {
    const fraction = READY_FRACTIONS.get(part) ?? part;
    return whole === "" ? fraction : `${whole} ${fraction}`;
  });
  const match = /^(?:(\d+)[ -])?(\d+)\/(\d+)\s*(?:in|inch|″|")\s+(\S.*)$/.exec(spelled);
  if (match === null) return name === "" ? facts.kind : name;
  const spoken = spokenFraction(Number(match[1] ?? 0), Number(match[2]), Number(match[3]));
  return spoken === null ? name : `${spoken} ${match[4]}`;
}

/** "³⁄₁₆" is set with raised and lowered digits. */
function inPlainDigits(name: string): string {
  return [...name]
    .map((letter) => {
      const raised = "⁰¹²³⁴⁵⁶⁷⁸⁹".indexOf(letter);
      const lowered = "₀₁₂₃₄₅₆₇₈₉".indexOf(letter);
      return letter === "⁄" ? "/" : raised >= 0 ? String(raised) : lowered >= 0 ? String(lowered) : letter;
    })
    .join("");
}

const READY_FRACTIONS: ReadonlyMap<string, string> = new Map([
  ["⅛", "1/8"],
  ["¼", "1/4"],
  ["⅜", "3/8"],
  ["½", "1/2"],
  ["⅝", "5/8"],
  ["¾", "3/4"],
  ["⅞", "7/8"],
]);

const COUNTS = [
  "",
  "one",
  "two",
  "three",
  "four",
  "five",
  "six",
  "seven",
  "eight",
  "nine",
  "ten",
  "eleven",
  "twelve",
  "thirteen",
  "fourteen",
  "fifteen",
];
const PARTS: ReadonlyMap<number, readonly [string, string]> = new Map([
  [2, ["half", "halves"]],
  [4, ["quarter", "quarters"]],
  [8, ["eighth", "eighths"]],
  [16, ["sixteenth", "sixteenths"]],
]);

function spokenFraction(whole: number, top: number, bottom: number): string | null {
  const part = PARTS.get(bottom);
  const count = COUNTS[top];
  if (part === undefined || count === undefined || count === "" || top >= bottom) return null;
  if (whole === 0)
    return bottom === 2 ? "half-inch" : `${count === "one" ? "one" : count}-${top === 1 ? part[0] : part[1]}`;
  const wholeWord = COUNTS[whole];
  if (wholeWord === undefined) return null;
  const inches = whole === 1 ? "inch" : `${wholeWord} inches`;
  const rest = top === 1 ? `${bottom === 8 ? "an" : "a"}-${part[0]}` : `${count}-${part[1]}`;
  return `${whole === 1 ? inches : `${wholeWord}-inch`}-and-${rest}`;
}

function countWords(count: number): string {
  if (count === 2) return "twice";
  return `${COUNTS[count] ?? String(count)} times`;
}

const ORDINALS = ["first", "second", "third", "fourth", "fifth"];

function numberWords(count: number): string {
  return count === 2 ? "two" : (COUNTS[count] ?? String(count));
}

function article(word: string): string {
  return /^[aeiou]/.test(word) ? `an ${word}` : `a ${word}`;
}

function wholeDegrees(deg: number): string {
  return `${Math.round(Math.abs(deg))}°`;
}

/** A length as the bench says it: the steps of the rule, finer only for what is too small for one. */
export function sayLength(lengthMm: number, unit: BenchUnit, inchStep?: InchDenominator): string {
  return writerFor(unit, "print", inchStep).length(lengthMm);
}

function told(lengthMm: number, { unit, inchStep }: CutFacts): string {
  return sayLength(lengthMm, unit, inchStep);
}

function joinPhrases(phrases: readonly string[]): string {
  return phrases.filter((phrase) => phrase !== "").join(", ");
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** Names come from the maker's files: control characters and line breaks never reach a card or a terminal. */
function clean(text: string): string {
  return text.replace(/[\p{Cc}\p{Cf}\u2028\u2029]+/gu, " ").replace(/ {2,}/g, " ");
}
