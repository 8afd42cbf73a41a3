/**
 * How true a maker works: each figure is what a good hand keeps within 95 times in 100, mm. Common practice, no source;
 * a maker's own figures go before them.
 */
export interface HandAccuracy {
  /** The gauge, or the dividers, set to a distance; drawn once for all lines of one setting. */
  readonly gaugeMm: number;
  /** The knife line along the stick against that setting. */
  readonly lineMm: number;
  /** A plane guided by hand along a line, sideways. */
  readonly sidewaysMm: number;
  /** A fence or fingers set to the line and held against an edge. */
  readonly fenceMm: number;
  /** A saw cut along a line, sideways. */
  readonly sawMm: number;
  /** Where a cut is stopped, in depth. */
  readonly depthMm: number;
  /** The width of a sole as the shelf has it: the same for every pass of that plane. */
  readonly widthMm: number;
}

/** Setting and line together are good to 0.1 mm. */
export const GOOD_HAND: HandAccuracy = {
  gaugeMm: 0.08,
  lineMm: 0.06,
  sidewaysMm: 0.2,
  fenceMm: 0.1,
  sawMm: 0.3,
  depthMm: 0.15,
  widthMm: 0.1,
};
