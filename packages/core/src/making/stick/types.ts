/** What the answers of this folder are made of. Section frame: mm, x from the gauge edge, y up from the back. */
import type { Point } from "../../curve/index.ts";
import type { Trouble, TroubleCode } from "../../measure/index.ts";

export type StickTrouble = Trouble<TroubleCode>;

/**
 * `flat`: on its back in a square stick; back corners are cut last.
 * `bevelled first`: the back's bevels are sawn and planed before the face is moulded.
 * `canted`: the section lies turned in a square stick of its own, so that its curves stand upright; what was its back
 * is sawn last.
 */
export type WayOfWorking = "flat" | "bevelled first" | "canted";

export type EdgeName = "gauge edge" | "far edge";

export interface StickAllowances {
  /** Bought over the planed width and thickness. */
  readonly sawnWidthMm: number;
  readonly sawnThicknessMm: number;
  /** At each end, where planes come on and run off; trimmed when the moulding is done. */
  readonly planingMm: number;
  /** At each end of a bought stick, for checks and a square start. */
  readonly endChecksMm: number;
  /** Left on a sawn bevel for planing. */
  readonly bevelPlaningMm: number;
}

export interface StockSize {
  readonly widthMm: number;
  readonly thicknessMm: number;
  readonly lengthMm: number;
}

export interface Stock {
  readonly way: WayOfWorking;
  /** The moulding itself, when its ends are trimmed. */
  readonly finishedLengthMm: number;
  readonly planed: StockSize;
  readonly buy: StockSize;
  /** Share of the planed stick that is shavings and offcuts when the section is done, 0 to 1. */
  readonly wasteRatio: number;
}

export interface FromTo {
  readonly from: Point;
  readonly to: Point;
}
