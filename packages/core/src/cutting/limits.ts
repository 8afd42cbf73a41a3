/**
 * What a plane and a hand are held to: the limits of the cutting model. All are common practice, no source, and
 * all can be changed by the maker; a plane's own measured wall goes before the general one.
 */
export interface CuttingLimits {
  /** Greatest lean of a plane in the hand, degrees from upright. */
  readonly leanDeg: number;
  /** New wall that a leaning flat plane may cut beside itself, mm. */
  readonly leaningFlatWallMm: number;
  /** Lean from which a flat plane counts as leaning, degrees. */
  readonly leaningFromDeg: number;
  /** Depth of a slot with both walls standing that a flat plane may be sunk to, mm. */
  readonly slotMm: number;
  /** How much narrower than its sole a body is taken on each side when it looks for its seat, mm. */
  readonly bodyClearanceMm: number;
  /** How far from the aim a plane may come to rest: the larger of a length and a share of the width. */
  readonly seatOffMm: number;
  readonly seatOffRatio: number;
  /** How far to either side a seat is tried, share of the width. */
  readonly seatShiftRatio: number;
  /** Lift at that shift for a seat that holds, and one that holds well, share of the width. */
  readonly seatHeldRatio: number;
  readonly seatWellHeldRatio: number;
  /** Share of a curved sole that must lie on the wanted section in the last pose. */
  readonly bearingRatio: number;
  /** Piece that may fall off at a cut: what a shaving is, mm². */
  readonly shavingMm2: number;
  /** Reach of a fence from the edge it runs on, mm. */
  readonly fenceMm: number;
  /** How far below the sole, as it is first set down, a fence or a finger still finds an edge, mm. */
  readonly fenceHangMm: number;
  /** The same of a plough's fence, which is a deep board of its own, mm. */
  readonly ploughFenceHangMm: number;
  /** Height of wood above the sole that a fence's arms pass over, mm; a plough that sinks deeper carries them higher. */
  readonly fenceArmsMm: number;
  /** Stretch of an edge, upright in the lay of the stick, that a fence or a finger bears on, mm. */
  readonly edgeBearsMm: number;
  /** Wall or line that is tall enough to guide a plane's side, mm. */
  readonly guideWallMm: number;
  readonly holding: HoldingLimits;
}

/** Which sticks are too small to be held like any other, by the lesser of width and thickness, mm. */
export interface HoldingLimits {
  /** Smaller sticks are held on a sticking board, not in fingers. */
  readonly stickingBoardBelowMm: number;
  /** Wider ones lie on the bench between stops like any board, however thin. */
  readonly widestOnStickingBoardMm: number;
  /** Smaller ones are worked on a board and ripped off. */
  readonly boardEdgeBelowMm: number;
  /** On the edge of a board up to this thickness, on the face of one for wider sticks. */
  readonly thickestBoardMm: number;
}

export const COMMON_LIMITS: CuttingLimits = {
  leanDeg: 60,
  leaningFlatWallMm: 4,
  leaningFromDeg: 3,
  slotMm: 16,
  bodyClearanceMm: 0.05,
  seatOffMm: 0.2,
  seatOffRatio: 1 / 20,
  seatShiftRatio: 1 / 8,
  seatHeldRatio: 1 / 100,
  seatWellHeldRatio: 1 / 40,
  bearingRatio: 0.3,
  shavingMm2: 0.3,
  fenceMm: 50,
  fenceHangMm: 12,
  ploughFenceHangMm: 16,
  fenceArmsMm: 22,
  edgeBearsMm: 2,
  guideWallMm: 0.25,
  holding: {
    stickingBoardBelowMm: 25,
    widestOnStickingBoardMm: 75,
    boardEdgeBelowMm: 12,
    thickestBoardMm: 32,
  },
};

/** Whether a stick of this size is too small to be held like any other. */
export function isSmallStick(widthMm: number, thicknessMm: number, holding: HoldingLimits): boolean {
  const least = Math.min(widthMm, thicknessMm);
  if (least >= holding.stickingBoardBelowMm) return false;
  return (
    least < holding.boardEdgeBelowMm || Math.max(widthMm, thicknessMm) <= holding.widestOnStickingBoardMm
  );
}

/** How far apart neighbouring poses of a run may stand: the plan file's own rule, no limit of a hand. */
export const POSES_APART = { mm: 0.2, deg: 1 } as const;
