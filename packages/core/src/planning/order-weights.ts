/** The one soft cost that orders of cuts are compared by. Common practice, no source. */
/** What the maker prefers where several orders would do. */
export type Preference = "fewer planes" | "fewer settings" | "fewer strokes";

export interface OrderWeights {
  readonly setting: number;
  /** Each further setting of a plane that makes one curve in several. */
  readonly nextSetting: number;
  readonly planeChange: number;
  readonly turnStick: number;
  readonly batten: number;
  /** A curved plane that nothing holds: against a batten it still wanders on a bare face. */
  readonly noSeat: number;
  readonly weakSeat: number;
  /** A groove that runs into an older one at another depth. */
  readonly intoGroove: number;
  /** A fin of waste left standing. */
  readonly fin: number;
  readonly wasteLeftPerMm2: number;
  /** Each stroke of a flat plane or a beak. */
  readonly perPass: number;
  /** A plough with no wall on one of its sides, for each width it is set to. */
  readonly openPlough: number;
  readonly leanPerDegree: number;
  readonly apart: number;
  readonly earlyLine: number;
  readonly closedGap: number;
  readonly startPer100Mm: number;
  readonly edgeGone: number;
  readonly refused: number;
  readonly drawnIn: number;
  readonly leftPerMm2: number;
}

/** Named weights of the one soft cost that orders are compared by; a setting is the unit. Common practice, no source. */
export const ORDER_WEIGHTS: OrderWeights = {
  setting: 1,
  nextSetting: 0.5,
  planeChange: 0.3,
  turnStick: 0.5,
  batten: 3,
  noSeat: 9,
  weakSeat: 0.4,
  intoGroove: 6,
  fin: 4,
  wasteLeftPerMm2: 0.02,
  /** Small beside a setting, so that it decides between planes, not between more settings and fewer. */
  perPass: 0.01,
  /** Dearer than the change to a rebate plane. */
  openPlough: 0.4,
  leanPerDegree: 0.004,
  /** A curve begun away from the last one finished: its lines cannot be taken from a foot. */
  apart: 0.15,
  /** A line cut before the neighbour is finished from whose foot it should be taken; dearer than the changes of plane it saves. */
  earlyLine: 1,
  /** A curve worked last between two finished ones: it has to meet both. */
  closedGap: 1,
  /** First curve of a face, for each 100 mm from the gauge edge: the work grows away from the edge it is gauged from. */
  startPer100Mm: 0.05,
  /** A cut made when an edge that is to be kept square is touched already. */
  edgeGone: 12,
  refused: 100,
  /** A rock drawn in for want of room leaves part of its arc uncut. */
  drawnIn: 50,
  /** Wood left over the section when all its curves are cut. */
  leftPerMm2: 4,
};

/** The weights with what the maker prefers made dearer to go against. */
export function weightsFor(prefer: Preference | undefined): OrderWeights {
  switch (prefer) {
    case "fewer planes":
      return { ...ORDER_WEIGHTS, planeChange: ORDER_WEIGHTS.planeChange * 4 };
    case "fewer settings":
      return { ...ORDER_WEIGHTS, setting: ORDER_WEIGHTS.setting * 2 };
    case "fewer strokes":
      return {
        ...ORDER_WEIGHTS,
        wasteLeftPerMm2: ORDER_WEIGHTS.wasteLeftPerMm2 * 4,
        perPass: ORDER_WEIGHTS.perPass * 4,
      };
    default:
      return ORDER_WEIGHTS;
  }
}
