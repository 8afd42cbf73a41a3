/** Words of the bench card, as text and on paper: what a plan's figures say to its maker. */
import {
  COMMON_LIMITS,
  isSmallStick,
  type Plan,
  type PlanBand,
  type PlanCut,
  type PlanMark,
  type PlanUncut,
} from "../cutting/index.ts";
import { type InchDenominator, type LengthUnit, writerFor } from "../measure/index.ts";
import { planeName } from "./cut-facts.ts";
import { acrossFromGaugeMm } from "./gauge-edge.ts";
import { turnedBox } from "./stick-view.ts";

export type Length = (valueMm: number) => string;

export function stickWords(plan: Plan, length: Length): string {
  const box = turnedBox(plan.stick, 0);
  return `${length(box.maxX - box.minX)} wide, ${length(box.maxY - box.minY)} thick, straight and square; ends to spare for planing on and off`;
}

/** Each plane once, in the order it is first wanted. */
export function planesToFetch(plan: Plan): readonly string[] {
  const names = new Map<string, string>();
  for (const cut of plan.cuts) if (!names.has(cut.plane.id)) names.set(cut.plane.id, planeName(cut));
  return [...new Set(names.values())];
}

export function timeWords(plan: Plan): string {
  const settings = new Set(plan.cuts.map((cut) => cut.setting)).size;
  const figures = `${counted(plan.cuts.length, "cut")}, ${counted(settings, "setting")}`;
  const { time } = plan;
  if (time === undefined) {
    const minutes = plan.cuts.reduce((sum, cut) => sum + cut.minutes, 0);
    return `about ${Math.round(minutes)} minutes, ${figures}; sharpening and the test piece not counted`;
  }
  const sticks = counted(time.reckonedWith.sticks ?? 1, "stick");
  const shares = [
    `settings ${Math.round(time.settingMinutes)}`,
    `strokes ${Math.round(time.strokeMinutes)}`,
    `test piece ${Math.round(time.testPieceMinutes)}`,
    `sharpening ${Math.round(time.sharpeningMinutes)}`,
  ].join(", ");
  return `about ${counted(Math.round(time.totalMinutes), "minute")} for ${sticks}, ${figures} (${shares}); what it is reckoned with stands below`;
}

export function wayWords(plan: Plan): string {
  const chosen = plan.ways.find((way) => way.way === plan.way);
  const standing = plan.standing === "proven least" ? "proven the least there is" : "the best found";
  // Where ways are compared, each has its reason there.
  if (plan.ways.length > 1)
    return `${plan.way}, of ${plan.ways.length} compared below, all from this stick (${standing})`;
  const why = chosen === undefined ? "" : `: ${chosen.why.trim().replace(/[.]$/, "")}`;
  return `${plan.way}${why} (${standing})`;
}

export function markWords(mark: PlanMark, length: Length, error: Length = expected(length)): string {
  const what = mark.kind === "depth" ? "depth line" : mark.kind === "end" ? "end line" : "line";
  const from = mark.from === "" ? "" : ` from the ${mark.from}`;
  const isFromEdge = mark.from === "gauge edge" || mark.kind === "depth";
  const also = isFromEdge ? "" : `; that is ${length(mark.fromGaugeEdge)} from the gauge edge`;
  const isAtFoot = mark.from.startsWith("foot") && mark.distance < AT_THE_FOOT_MM;
  const where = isAtFoot ? ` at the ${mark.from}` : ` ${length(mark.distance)}${from}`;
  return `${what}${where}${also}${errorWords(mark, error)}`;
}

/** Expected errors are themselves no truer than a tenth of a millimetre, and never told as less than one. */
function expected(length: Length): Length {
  return (errorMm) => length(Math.max(1, Math.round(errorMm * 10)) / 10);
}

/** How errors are told: in inches no rule shows them, so as a feeler gauge has it; in millimetres to a tenth. */
export function errorWriter(unit: LengthUnit, inchStep?: InchDenominator): Length {
  const { length, thickness } = writerFor(unit, "print", inchStep);
  return unit === "in" ? thickness : expected(length);
}

/** Nearer than a gauge can be set a line runs in the foot's own corner, mm. */
const AT_THE_FOOT_MM = 0.05;

/** How true the line can be expected, and the other way beside it where there is one. */
function errorWords(mark: PlanMark, error: Length): string {
  if (!(mark.error > 0)) return "";
  const good = `good to ${error(mark.error)}`;
  if (mark.errorFromEdge === undefined || mark.errorFromFoot === undefined) return `; ${good}`;
  const other = mark.from.startsWith("foot")
    ? `from the edge ${error(mark.errorFromEdge)}`
    : `from the foot ${error(mark.errorFromFoot)}`;
  const band = mark.serves === "band" ? ", taken so for the band's width" : "";
  return `; the join ${good} (${other})${band}`;
}

/** How true a band's width can be expected, both ways. */
export function bandWords(band: PlanBand, length: Length, error: Length = expected(length)): string {
  const isChained = band.linesFrom === "foot";
  const from = isChained ? "each from the foot of the one before" : "from the gauge edge";
  const other = isChained
    ? `from the gauge edge ${error(band.errorFromEdge)}`
    : `each from the foot of the one before ${error(band.errorFromFoot)}`;
  const share = isChained ? " Measure the test piece and share the difference out before starting." : "";
  return `${capital(band.name)}, ${length(band.width)} wide: lines ${from}, the width good to ${error(band.error)} (${other}).${share}`;
}

export function finishWords(plan: Plan, length: Length, error: Length = expected(length)): string {
  const { proud, under } = plan.finish;
  const across = (at: readonly [number, number]): string => length(acrossFromGaugeMm(plan, at));
  const within = (errorMm: number): string => (errorMm > 0 ? ` ± ${error(errorMm)}` : "");
  const stands =
    proud > 0
      ? `stands proud of the drawing by ${length(proud)} at most`
      : "stands nowhere proud of the drawing";
  const lies = under > 0 ? `lies under it by ${length(under)} at most` : "lies nowhere under it";
  const joins = plan.finish.joins
    .filter((join) => join.kind !== "smooth")
    .map((join) => `${join.kind} at ${across(join.at)}${within(join.error)}`);
  const smooth = plan.finish.joins
    .filter((join) => join.kind === "smooth")
    .map((join) => `${across(join.at)}${within(join.error)}`);
  const joinWords = [
    ...(smooth.length > 0 ? [`Smooth joins, felt with a fingertip, at ${smooth.join(", ")}.`] : []),
    ...(joins.length > 0 ? [`Sharp: ${joins.join(", ")} (all from the gauge edge).`] : []),
    ...(plan.finish.joins.some((join) => join.error > 0)
      ? ["± is how far the two sides of a join may stand out from each other; 95 in 100 keep within it."]
      : []),
  ];
  return [`If every line is kept, the face ${stands} and ${lies}.`, ...joinWords].join(" ");
}

export function minutesWords(minutes: number): string {
  return minutes > 0 ? `About ${counted(Math.max(1, Math.round(minutes)), "minute")}.` : "";
}

const EDGE_TOOL = "Edge tools: both hands behind the edge, never plane towards a hand; the stick held fast.";
const SMALL_SECTION = "A small section: hold it on a sticking board, not in fingers.";
const SAW =
  "Saw: guard and push stick in use, bevelled and short pieces supported; follow the machine's manual.";

export function cautions(plan: Plan): readonly string[] {
  return [
    EDGE_TOOL,
    ...(isSmall(plan) ? [SMALL_SECTION] : []),
    ...(plan.cuts.some(isSawn) ? [SAW] : []),
    "Dust harms the lungs and some timbers sensitise: extract it, wear a mask; local exposure limits apply.",
    "Where the moulding is fixed overhead, or old paint is disturbed, local codes and licensed practice decide.",
  ];
}

/** What can hurt at one cut of a plan. */
export function cutCautions(plan: Plan, cut: PlanCut): readonly string[] {
  return [isSawn(cut) ? SAW : EDGE_TOOL, ...(isSmall(plan) ? [SMALL_SECTION] : [])];
}

function isSmall(plan: Plan): boolean {
  const box = turnedBox(plan.stick, 0);
  return isSmallStick(box.maxX - box.minX, box.maxY - box.minY, COMMON_LIMITS.holding);
}

function isSawn(cut: PlanCut): boolean {
  return cut.line !== undefined || cut.plane.kind === "saw";
}

/** The planes that would save cuts or settings, where they were looked for: what they are and what they save. */
export function saversWords(plan: Plan): string[] {
  const savers = (plan.cures ?? []).filter((cure) => cure.places.length === 0);
  return savers.map((cure) => {
    const cuts = `${cure.cutsAfter} cuts instead of ${cure.cutsBefore}`;
    const { settingsBefore, settingsAfter } = cure;
    const settings =
      settingsBefore === undefined || settingsAfter === undefined
        ? ""
        : `, planes set ${settingsAfter} times instead of ${settingsBefore}`;
    return `${sentence(cure.says)} Planned so: ${cuts}${settings}.`;
  });
}

/** Where wood stays, how much of it, why, and what would cure it. */
export function uncutWords(plan: Plan, place: PlanUncut, length: Length): string {
  const left = `${length(place.left)} of wood is left (${place.rule})`;
  const cure = place.try.trim() === "" ? "" : `Try: ${sentence(place.try)}`;
  return [`${placeWords(plan, place, length)}: ${left}.`, sentence(place.why), cure]
    .filter((words) => words !== "")
    .join(" ");
}

/** A place on the stick's end as a maker finds it with a rule: from the gauge edge, and from the back where that tells more. */
function placeWords(plan: Plan, { from, to }: PlanUncut, length: Length): string {
  const across = span([acrossFromGaugeMm(plan, from), acrossFromGaugeMm(plan, to)], length);
  const up = span([from[1], to[1]], length);
  if (across.isOne && up.isOne) {
    return `At one place, ${across.words} from the gauge edge and ${up.words} above the back`;
  }
  if (across.isOne) return `Upright at ${across.words} from the gauge edge, ${up.words} above the back`;
  if (up.isOne) return `Level, ${across.words} from the gauge edge, ${up.words} above the back`;
  return `${capital(across.words)} from the gauge edge, ${up.words} above the back`;
}

/** Two distances, the smaller first; one figure where a rule would read the same twice. */
function span(
  [one, other]: readonly [number, number],
  length: Length,
): { readonly words: string; readonly isOne: boolean } {
  const near = length(Math.min(one, other));
  const far = length(Math.max(one, other));
  return near === far ? { words: near, isOne: true } : { words: `from ${near} to ${far}`, isOne: false };
}

export function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? "" : "s"}`;
}

export function sentence(words: string): string {
  const trimmed = words.trim();
  return trimmed === "" || /[.!?]$/.test(trimmed) ? trimmed : `${trimmed}.`;
}

export function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
