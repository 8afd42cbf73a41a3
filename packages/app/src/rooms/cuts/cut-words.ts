/** What a page says about its cut: the core's own words, put in the order in which a maker asks for them. */
import type { Plan, PlanCut, PlanMark } from "mouldwright/cutting";
import { formatThickness, type InchDenominator, type LengthUnit, writerFor } from "mouldwright/measure";
import {
  cutCautions,
  ideaOf,
  leanSpan,
  markWords,
  minutesWords,
  planeName,
  titleOf,
} from "mouldwright/sheets";

export interface Rule {
  readonly unit: LengthUnit;
  readonly inchStep?: InchDenominator | undefined;
}

/** One length to set, and from where. */
export interface Distance {
  /** "26.5 mm"; "at" where there is nothing to measure. */
  readonly figure: string;
  /** "from the gauge edge", "fence on the far edge", "down from the face". */
  readonly from: string;
}

export interface CutWords {
  readonly number: number;
  /** What the cut makes; empty where that says no more than how the plane is held. */
  readonly work: string;
  readonly plane: string;
  readonly held: string;
  /** What is set first: the fence, else the line, else the depth; null where the seat alone leads the plane. */
  readonly distance: Distance | null;
  readonly further: readonly Distance[];
  /** Lines to scribe before the cut, each with how true it can be expected. */
  readonly scribe: readonly string[];
  readonly says: string;
  readonly doneWhen: string;
  readonly strokes: string;
  readonly reason: string;
  readonly otherwise: string;
  readonly cautions: readonly string[];
}

export function cutWords(plan: Plan, cut: PlanCut, rule: Rule): CutWords {
  const [distance = null, ...further] = distancesOf(plan, cut, rule);
  return {
    number: cut.number,
    work: workOf(cut, rule),
    plane: planeName(cut),
    held: leanSpan(cut),
    distance,
    further,
    scribe: scribeWords(plan, cut, rule),
    says: cut.says,
    doneWhen: cut.doneWhen,
    strokes: strokesOf(cut, rule),
    ...reasonOf(cut),
    cautions: cutCautions(plan, cut),
  };
}

function workOf(cut: PlanCut, { unit }: Rule): string {
  const title = titleOf(cut, unit);
  return /upright|leaned/.test(title) ? "" : title;
}

/** Everything that is set for a cut, what leads the plane first. */
export function distancesOf(plan: Plan, cut: PlanCut, rule: Rule): readonly Distance[] {
  const { length } = writerFor(rule.unit, "print", rule.inchStep);
  const marks = plan.marks.filter(({ before }) => before === cut.number);
  const fence: readonly Distance[] =
    cut.fence !== undefined && cut.fence > 0 && cut.runsAgainst !== null
      ? [{ figure: length(cut.fence), from: `fence on the ${cut.runsAgainst}` }]
      : [];
  const lines = marks.filter(({ kind }) => kind !== "depth").map((mark) => distanceOf(mark, length));
  const depths = marks.filter(({ kind }) => kind === "depth").map((mark) => distanceOf(mark, length));
  return [...fence, ...lines, ...depths].filter(
    // A fence set to a line from the same edge is one distance, not two.
    (one, index, all) => all.findIndex((other) => isSameSetting(one, other)) === index,
  );
}

function isSameSetting(one: Distance, other: Distance): boolean {
  const edge = (from: string): string => from.replace(/^(fence on|from) /, "");
  return one.figure === other.figure && edge(one.from) === edge(other.from);
}

/** A line in the very foot of an earlier cut is not measured. */
const AT_THE_FOOT_MM = 0.05;

function distanceOf(mark: PlanMark, length: (lengthMm: number) => string): Distance {
  if (mark.distance < AT_THE_FOOT_MM) return { figure: "at", from: `the ${mark.from}` };
  const down = mark.kind === "depth" && mark.from === "face" ? "down " : "";
  return { figure: length(mark.distance), from: `${down}from the ${mark.from}` };
}

function scribeWords(plan: Plan, cut: PlanCut, { unit, inchStep }: Rule): readonly string[] {
  const { length, thickness } = writerFor(unit, "print", inchStep);
  return plan.marks
    .filter(({ before }) => before === cut.number)
    .map((mark) => capital(markWords(mark, length, unit === "in" ? thickness : undefined)));
}

function strokesOf(cut: PlanCut, { unit }: Rule): string {
  const minutes = minutesWords(cut.minutes);
  if (cut.line !== undefined || cut.passes < 1) return minutes;
  const shaving = cut.shaving > 0 ? ` of ${formatThickness(cut.shaving, { unit })}` : "";
  const passes = cut.passes === 1 ? "One pass" : `About ${cut.passes} passes`;
  return `${passes}${shaving}. ${minutes}`.trim();
}

/** The idea of a cut as what it is for, and what goes wrong without it: its first sentences, and its last. */
function reasonOf(cut: PlanCut): Pick<CutWords, "reason" | "otherwise"> {
  const [, ...sentences] = ideaOf(cut).match(/[^.]+\.\s*/g) ?? [];
  const told = otherwiseOf(cut) ?? sentences.pop();
  return { reason: sentences.join("").trim(), otherwise: (told ?? "").trim() };
}

/** Where the idea itself does not say what goes wrong without it. */
const OTHERWISE = {
  saw: "Planed away instead, the same wood takes many times as long and blunts an iron.",
  finish: "Left out, the marks of the heavier cuts show as soon as light falls along the stick.",
  hollow: "Stopped too soon it leaves flats; carried on, it sinks below its lines and the join is lost.",
} as const;

function otherwiseOf({ purpose, plane }: PlanCut): string | null {
  if (purpose === "saw" || purpose === "finish") return OTHERWISE[purpose];
  return purpose === "shape" && plane.kind === "hollow" ? OTHERWISE.hollow : null;
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
