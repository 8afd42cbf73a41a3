/** A section too big for one stick, made of several: least wood among the joints that can be hidden. */
import { areaMm2 } from "../../curve/index.ts";
import type { Plan } from "../../cutting/index.ts";
import { cataloguedTrouble, fine, type Outcome, refused, type TroubleCode } from "../../measure/index.ts";
import { type PlanProgress, type PlanRequest, planSteps } from "../../planning/index.ts";
import { type Section, workedFaces } from "../../section/index.ts";
import { allowanceTrouble, lengthTrouble } from "./checks.ts";
import { type BuiltUpLimits, COMMON_BUILT_UP, COMMON_STICK_ALLOWANCES } from "./defaults.ts";
import { type GluingStep, gluingOrder } from "./gluing.ts";
import type { Joint } from "./joints.ts";
import { type PartOutline, partSection, sizeOf } from "./part-outline.ts";
import { leastWoodSplits, type Split, standingOf } from "./splits.ts";
import type { StickAllowances, StickTrouble, StockSize } from "./types.ts";

export interface BuiltUpQuestion {
  readonly section: Section;
  /** Planed timber at hand: the most that one stick can measure. */
  readonly timber: { readonly widthMm: number; readonly thicknessMm: number };
  readonly lengthMm: number;
  /** Most parts; 4 unless given. */
  readonly mostParts?: number;
  readonly allowances?: Partial<StickAllowances>;
  readonly limits?: Partial<BuiltUpLimits>;
}

const COMMON_MOST_PARTS = 4;
const MOST_PARTS = 6;

export interface BuiltUpPart {
  /** From 1, from the gauge edge and the back. */
  readonly number: number;
  /** A section of its own, in its own stick. */
  readonly section: Section;
  /** Where its stick's lower left corner lies in the whole section. */
  readonly at: { readonly x: number; readonly y: number };
  readonly planed: StockSize;
  readonly buy: StockSize;
  /** `its edge`: the stick is sawn from timber standing on its edge, because it is thicker than wide. */
  readonly sawnLying: "on its back" | "on its edge";
  /** A part square all round is planed to size and not moulded. */
  readonly work: "moulded" | "square";
}

export interface BuiltUpWay {
  readonly parts: readonly BuiltUpPart[];
  readonly joints: readonly Joint[];
  readonly gluing: readonly GluingStep[];
  /** Section of the timber bought, all parts together. */
  readonly woodMm2: number;
  readonly wasteRatio: number;
}

export interface BuiltUp {
  readonly best: BuiltUpWay;
  /** The next one with other joints; null if there is none. */
  readonly runnerUp: BuiltUpWay | null;
  readonly standing: "proven least" | "best found";
  readonly assumed: readonly StickTrouble[];
  readonly cautions: readonly StickTrouble[];
}

/**
 * Parts a section until every part can be had from the timber at hand, by level and upright joints that start in a
 * quirk, in the corner of a step or at the edge of a fillet and come out on a side, the back or an earlier joint. A
 * part that fits is not parted further. Least wood: the sections of timber bought, allowances included, added up;
 * equal ones by fewer parts, then by better hidden joints.
 * A section that fits as it is comes back as one part. Refused: sizes that are none, and sections without a way.
 */
export function builtUp(question: BuiltUpQuestion): Outcome<BuiltUp, TroubleCode> {
  const trouble = questionTrouble(question);
  if (trouble !== null) return refused(trouble);
  const allowances = { ...COMMON_STICK_ALLOWANCES, ...question.allowances };
  const limits = { ...COMMON_BUILT_UP, ...question.limits };
  const { splits, isComplete } = leastWoodSplits(question.section, {
    timber: question.timber,
    allowances,
    limits,
    mostParts: question.mostParts ?? COMMON_MOST_PARTS,
  });
  const [best, runnerUp] = splits;
  if (best === undefined) return refused(noSplit(question));
  const wayOf = (split: Split) => way(question, split, allowances, limits);
  return fine({
    best: wayOf(best),
    runnerUp: runnerUp === undefined ? null : wayOf(runnerUp),
    standing: isComplete ? "proven least" : "best found",
    assumed: [
      cataloguedTrouble("built-up-edges-unseen", "", {}),
      cataloguedTrouble("built-up-one-timber", "", {}),
    ],
    cautions: [
      cataloguedTrouble("caution-edge-tools", "", {}),
      cataloguedTrouble("caution-overhead", "", {}),
    ],
  });
}

function questionTrouble(question: BuiltUpQuestion): StickTrouble | null {
  const { timber } = question;
  const parts = question.mostParts ?? COMMON_MOST_PARTS;
  if (!(Number.isInteger(parts) && parts >= 1 && parts <= MOST_PARTS)) {
    return cataloguedTrouble("built-up-parts", "mostParts", { parts, most: MOST_PARTS });
  }
  for (const [size, valueMm] of [
    ["width", timber.widthMm],
    ["thickness", timber.thicknessMm],
  ] as const) {
    if (!(valueMm > 0 && Number.isFinite(valueMm))) {
      return cataloguedTrouble("built-up-timber", `timber.${size}Mm`, { size, valueMm });
    }
  }
  return (
    lengthTrouble(question.lengthMm) ??
    allowanceTrouble("allowances", question.allowances ?? {}) ??
    allowanceTrouble("limits", question.limits ?? {})
  );
}

function noSplit({ section, timber }: BuiltUpQuestion): StickTrouble {
  const { pieces } = section.stick;
  const xs = pieces.map((piece) => piece.from.x);
  const ys = pieces.map((piece) => piece.from.y);
  return cataloguedTrouble("built-up-no-way", "section", {
    widthMm: Math.max(...xs) - Math.min(...xs),
    thicknessMm: Math.max(...ys) - Math.min(...ys),
    timberWidthMm: timber.widthMm,
    timberThicknessMm: timber.thicknessMm,
  });
}

function way(
  question: BuiltUpQuestion,
  split: Split,
  allowances: StickAllowances,
  limits: BuiltUpLimits,
): BuiltUpWay {
  const outlines = [...split.parts].sort(byPlace);
  return {
    parts: outlines.map((outline, index) => part(question, outline, index, outlines.length, allowances)),
    joints: split.joints,
    gluing: gluingOrder(outlines, limits.leastGluedMm),
    woodMm2: split.woodMm2,
    wasteRatio: 1 - areaMm2(question.section.outline) / split.woodMm2,
  };
}

function part(
  { section, timber, lengthMm }: BuiltUpQuestion,
  outline: PartOutline,
  index: number,
  count: number,
  allowances: StickAllowances,
): BuiltUpPart {
  const number = index + 1;
  const size = sizeOf(outline);
  const planedLengthMm = lengthMm + 2 * allowances.planingMm;
  const own = partSection(section, outline, count === 1 ? section.name : `${section.name}, part ${number}`);
  const sawnLying = standingOf(size, timber) === "edge" ? "on its edge" : "on its back";
  return {
    number,
    section: own,
    at: cornerOf(outline),
    planed: { ...size, lengthMm: planedLengthMm },
    buy: {
      widthMm: size.widthMm + allowances.sawnWidthMm,
      thicknessMm: size.thicknessMm + allowances.sawnThicknessMm,
      lengthMm: planedLengthMm + 2 * allowances.endChecksMm,
    },
    sawnLying,
    work: workedFaces(own).faces.length > 0 ? "moulded" : "square",
  };
}

function byPlace(a: PartOutline, b: PartOutline): number {
  const [first, second] = [cornerOf(a), cornerOf(b)];
  return first.x - second.x || first.y - second.y;
}

function cornerOf(outline: PartOutline): { readonly x: number; readonly y: number } {
  const points = outline.map(({ piece }) => piece.from);
  return { x: Math.min(...points.map((p) => p.x)), y: Math.min(...points.map((p) => p.y)) };
}

export interface PlannedPart {
  readonly number: number;
  /** Null for a part that is square all round. */
  readonly plan: Outcome<Plan> | null;
}

/** Plans every part of a way with one shelf, handing control back between the planner's steps. */
export function* planParts(
  built: BuiltUpWay,
  request: Omit<PlanRequest, "section" | "name">,
): Generator<PlanProgress, readonly PlannedPart[]> {
  const planned: PlannedPart[] = [];
  for (const { number, section, work } of built.parts) {
    planned.push({ number, plan: work === "square" ? null : yield* planSteps({ ...request, section }) });
  }
  return planned;
}
