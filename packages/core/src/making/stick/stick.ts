/** From a section to the stick: what to buy, how it lies, how it is held, which way it is pushed. */
import { areaMm2, lengthMm } from "../../curve/index.ts";
import type { Plan } from "../../cutting/index.ts";
import {
  cataloguedTrouble,
  fine,
  type Outcome,
  refused,
  type TroubleCode,
  toDeg,
} from "../../measure/index.ts";
import { type Section, workedFaces } from "../../section/index.ts";
import type { DrawnView } from "../fit/index.ts";
import { type BestCant, bestCant } from "./best-cant.ts";
import { allowanceTrouble, cantTrouble, countTrouble, grainTrouble, lengthTrouble } from "./checks.ts";
import {
  type BoardSizes,
  COMMON_STICK_ALLOWANCES,
  type HoldingLimits,
  type WideBoardAllowances,
} from "./defaults.ts";
import { type GrainAdvice, type GrainSeen, grainAdvice } from "./grain.ts";
import { type Holding, holding } from "./holding.ts";
import { viewSection } from "./section-view.ts";
import { type SpringBevels, springBevels } from "./spring-bevels.ts";
import { stickDrawing } from "./stick-drawing.ts";
import { type StickingBoard, stickingBoard } from "./sticking-board.ts";
import { turnSection } from "./turn-section.ts";
import type { FromTo, StickAllowances, StickTrouble, Stock, WayOfWorking } from "./types.ts";

export interface StickQuestion {
  readonly section: Section;
  readonly way: WayOfWorking;
  /** Length of the finished moulding, ends trimmed. */
  readonly lengthMm: number;
  /** Sticks alike; 1 unless given. Only a wide board's size depends on it. */
  readonly count?: number;
  /** A plan of this section: its leans, fence and hands are then taken from what is really cut. */
  readonly plan?: Plan;
  /** For the way "canted": the turn of the section, anticlockwise; the best cant unless given. */
  readonly cantDeg?: number;
  /** Gain that makes a cant worth its sawcut, degrees; `CANT_WORTH_DEG` unless given. */
  readonly cantWorthDeg?: number;
  readonly grain?: GrainSeen;
  readonly allowances?: Partial<StickAllowances>;
  readonly holding?: Partial<HoldingLimits>;
  readonly wideBoard?: Partial<WideBoardAllowances>;
  readonly board?: Partial<BoardSizes>;
}

export interface StickAnswer {
  /** The section as it lies in its stick: turned, if the way is canted. */
  readonly section: Section;
  /** How far it was turned, anticlockwise; 0 unless canted. */
  readonly cantDeg: number;
  readonly stock: Stock;
  readonly bevels: SpringBevels;
  /** Canted only: what were the drawn stick's sides, sawn when the face is moulded. In the turned section's frame. */
  readonly sawnLast: readonly SawnSide[];
  readonly cant: BestCant | null;
  readonly holding: Holding;
  readonly board: StickingBoard;
  readonly grain: GrainAdvice;
  readonly drawing: readonly DrawnView[];
  readonly convention: typeof STICK_CONVENTION;
  readonly assumed: readonly StickTrouble[];
  readonly cautions: readonly StickTrouble[];
}

export interface SawnSide extends FromTo {
  readonly widthMm: number;
  /** Slope of the cut from the turned stick's back, degrees, 0 to 90. */
  readonly fromBackDeg: number;
}

export const STICK_CONVENTION = {
  frame: "seen from the end where the stroke starts; across from the gauge edge, up from the back",
  lengths: "finished, then planed (with both ends for planing on and off), then bought",
  fromBackDeg: "between bevel and back; the spring from the surface that the bevel lies on",
  bladeDeg: "lean of the blade from upright",
  cantDeg: "turn of the stick anticlockwise; a plane's lean in the hand is its tilt plus this",
} as const;

/**
 * All that is to be said about the stick for one way of working it. Refused: lengths, counts, allowances and cants
 * that are none, and a canted way for a section without a curve when no cant is given.
 */
export function stickFor(question: StickQuestion): Outcome<StickAnswer, TroubleCode> {
  const trouble = questionTrouble(question);
  if (trouble !== null) return refused(trouble);
  const plan = question.plan ?? null;
  const cant = bestCant(question.section, plan, question.cantWorthDeg);
  const cantDeg = question.way === "canted" ? (question.cantDeg ?? cant?.best.cantDeg ?? null) : 0;
  if (cantDeg === null) return refused(cataloguedTrouble("stick-no-curve", "cantDeg", {}));
  const section = cantDeg === 0 ? question.section : turnSection(question.section, cantDeg);
  const allowances = { ...COMMON_STICK_ALLOWANCES, ...question.allowances };
  const stock = stockFor(section, question, allowances);
  const bevels = springBevels(question.section);
  const held = holding(section, question.way, {
    allowances,
    plannedLengthMm: stock.planed.lengthMm,
    count: question.count ?? 1,
    ...(question.holding ? { limits: question.holding } : {}),
    ...(question.wideBoard ? { wideBoard: question.wideBoard } : {}),
  });
  const board = stickingBoard({
    section,
    way: question.way,
    plannedLengthMm: stock.planed.lengthMm,
    plan: cantDeg === 0 ? question.plan : undefined,
    sizes: question.board,
  });
  return fine({
    section,
    cantDeg,
    stock,
    bevels,
    sawnLast: cantDeg === 0 ? [] : sawnSides(question.section, section),
    cant,
    holding: held,
    board,
    grain: grainAdvice(section, question.grain ?? null, plan),
    drawing: stickDrawing(section, question.way, springBevels(section).bevels, board),
    convention: STICK_CONVENTION,
    assumed: assumptions(question, allowances, cant),
    cautions: cautions(bevels, held),
  });
}

function questionTrouble(question: StickQuestion): StickTrouble | null {
  const { grain } = question;
  return (
    lengthTrouble(question.lengthMm) ??
    countTrouble(question.count ?? 1) ??
    cantTrouble(question.cantDeg ?? 0) ??
    cantTrouble(question.cantWorthDeg ?? 0) ??
    (grain === undefined ? null : grainTrouble(grain.risesDeg, grain.driftsDeg)) ??
    allowanceTrouble("allowances", question.allowances ?? {}) ??
    allowanceTrouble("holding", question.holding ?? {}) ??
    allowanceTrouble("wideBoard", question.wideBoard ?? {}) ??
    allowanceTrouble("board", question.board ?? {})
  );
}

function stockFor(section: Section, question: StickQuestion, allowances: StickAllowances): Stock {
  const { stick, stickMm2 } = viewSection(section);
  const planed = {
    widthMm: stick.maxX - stick.minX,
    thicknessMm: stick.maxY - stick.minY,
    lengthMm: question.lengthMm + 2 * allowances.planingMm,
  };
  return {
    way: question.way,
    finishedLengthMm: question.lengthMm,
    planed,
    buy: {
      widthMm: planed.widthMm + allowances.sawnWidthMm,
      thicknessMm: planed.thicknessMm + allowances.sawnThicknessMm,
      lengthMm: planed.lengthMm + 2 * allowances.endChecksMm,
    },
    wasteRatio: 1 - areaMm2(section.outline) / stickMm2,
  };
}

/** Sides keep their place in the ring when the section is turned. */
function sawnSides(drawn: Section, turned: Section): SawnSide[] {
  const worked = workedFaces(drawn).pieces;
  return turned.outline.pieces.flatMap((piece, index) => {
    if (worked[index] || piece.kind !== "line") return [];
    const { from, to } = piece;
    const fromBackDeg = toDeg(Math.atan2(Math.abs(to.y - from.y), Math.abs(to.x - from.x)));
    return [{ from, to, widthMm: lengthMm(piece), fromBackDeg }];
  });
}

function assumptions(
  question: StickQuestion,
  allowances: StickAllowances,
  cant: BestCant | null,
): StickTrouble[] {
  const { sawnWidthMm, sawnThicknessMm, planingMm, endChecksMm, bevelPlaningMm } = allowances;
  const common = [
    cataloguedTrouble("stick-allowed-for", "", { sawnWidthMm, sawnThicknessMm, planingMm, endChecksMm }),
    cataloguedTrouble("stick-holding-common", "", {}),
  ];
  const way = {
    flat: cataloguedTrouble("stick-way-flat", "", {}),
    "bevelled first": cataloguedTrouble("stick-way-bevelled", "", { bevelPlaningMm }),
    canted: cataloguedTrouble("stick-way-canted", "", {}),
  }[question.way];
  if (cant === null) return [...common, way];
  const { gainDeg, worthDeg } = cant;
  const facts = { cantDeg: cant.best.cantDeg, gainDeg, worthDeg };
  const code = cant.isWorthIt ? "stick-cant-worth" : "stick-cant-little";
  return [...common, way, cataloguedTrouble(code, "", facts)];
}

function cautions(bevels: SpringBevels, held: Holding): StickTrouble[] {
  const isSawn = bevels.bevels.length > 0 || !held.canBeHeld;
  return [
    cataloguedTrouble("caution-edge-tools", "", {}),
    ...(isSawn ? [cataloguedTrouble("caution-saw", "", {})] : []),
    ...(held.canBeHeld ? [] : [cataloguedTrouble("caution-small-stick", "", {})]),
    cataloguedTrouble("caution-dust", "", {}),
  ];
}
