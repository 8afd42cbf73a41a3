/** Whether a stick can be held while its face is planed, and what to do if not. */
import { exceedsMm } from "../../measure/index.ts";
import type { Section } from "../../section/index.ts";
import {
  COMMON_HOLDING,
  COMMON_WIDE_BOARD,
  type HoldingLimits,
  type WideBoardAllowances,
} from "./defaults.ts";
import { viewSection } from "./section-view.ts";
import type { StickAllowances, StockSize, WayOfWorking } from "./types.ts";

export type HoldingRule = "width" | "thickness" | "bed" | "height to bed";

export interface Shortcoming {
  readonly rule: HoldingRule;
  readonly isMm: number;
  /** What it should be at least (for height to bed: the bed that this height asks for). */
  readonly leastMm: number;
}

export interface Holding {
  readonly bedMm: number;
  readonly limits: HoldingLimits;
  readonly shortcomings: readonly Shortcoming[];
  readonly canBeHeld: boolean;
  /** Only where it cannot be held: mould the edge of a board and saw the moulding off. */
  readonly wideBoard: WideBoard | null;
}

/** The board stands on its edge: as thick as the moulding is wide; each moulding takes its thickness and a sawcut. */
export interface WideBoard {
  readonly planed: StockSize;
  readonly buy: StockSize;
  /** Of the board's width, for each moulding. */
  readonly eachMm: number;
  readonly count: number;
  readonly holdMm: number;
}

/**
 * The bed is what bears while the face is moulded: the whole back if the back's corners are cut last, what is left of
 * it if they are cut first. The limits are common practice, no source.
 */
export function bedMm(section: Section, way: WayOfWorking): number {
  const { stick, bed } = viewSection(section);
  if (way !== "bevelled first") return stick.maxX - stick.minX;
  return bed === null ? 0 : bed.toMm - bed.fromMm;
}

export function holding(
  section: Section,
  way: WayOfWorking,
  job: {
    readonly allowances: StickAllowances;
    readonly plannedLengthMm: number;
    readonly count: number;
    readonly limits?: Partial<HoldingLimits>;
    readonly wideBoard?: Partial<WideBoardAllowances>;
  },
): Holding {
  const limits = { ...COMMON_HOLDING, ...job.limits };
  const { stick } = viewSection(section);
  const widthMm = stick.maxX - stick.minX;
  const thicknessMm = stick.maxY - stick.minY;
  const bed = bedMm(section, way);
  const judged: readonly Shortcoming[] = [
    { rule: "width", isMm: widthMm, leastMm: limits.leastWidthMm },
    { rule: "thickness", isMm: thicknessMm, leastMm: limits.leastThicknessMm },
    { rule: "bed", isMm: bed, leastMm: limits.narrowestBedMm },
    { rule: "height to bed", isMm: bed, leastMm: thicknessMm / limits.mostHeightPerBedRatio },
  ];
  const shortcomings = judged.filter(({ isMm, leastMm }) => exceedsMm(leastMm, isMm));
  const canBeHeld = shortcomings.length === 0;
  return {
    bedMm: bed,
    limits,
    shortcomings,
    canBeHeld,
    wideBoard: canBeHeld ? null : wideBoard(widthMm, thicknessMm, job),
  };
}

function wideBoard(widthMm: number, thicknessMm: number, job: Parameters<typeof holding>[2]): WideBoard {
  const { holdMm, sawAndPlaneMm } = { ...COMMON_WIDE_BOARD, ...job.wideBoard };
  const { sawnWidthMm, sawnThicknessMm, endChecksMm } = job.allowances;
  const eachMm = thicknessMm + sawAndPlaneMm;
  const planed = {
    widthMm: job.count * eachMm + holdMm,
    thicknessMm: widthMm,
    lengthMm: job.plannedLengthMm,
  };
  return {
    planed,
    buy: {
      widthMm: planed.widthMm + sawnWidthMm,
      thicknessMm: planed.thicknessMm + sawnThicknessMm,
      lengthMm: planed.lengthMm + 2 * endChecksMm,
    },
    eachMm,
    count: job.count,
    holdMm,
  };
}
