/** Allowances unless the maker gives others, and how large a job may be. */
import type { LengthsAllowances, LengthsSearch } from "./types.ts";

/** Common practice, no source: a machine saw's kerf, a shooting board's trim, planing on and off. */
export const COMMON_LENGTHS_ALLOWANCES: LengthsAllowances = { kerfMm: 3, trimMm: 3, planingMm: 50 };

/** Enough to prove the sticks of thirty pieces on ten sticks; what it proves of neighbours is measured in README.md. */
export const LENGTHS_SEARCH: LengthsSearch = { packingSteps: 200_000, neighbourSteps: 100_000 };

export const MOST_PIECES = 200;
export const MOST_STICKS = 100;
export const MOST_BAD_PLACES = 50;
export const LONGEST_STICK_MM = 100_000;
