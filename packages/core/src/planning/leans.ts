/** Leans that a hand keeps by eye. */

/** A plane leaned further than this wants to be held well or guided, degrees (common practice, no source). */
export const MOST_FREE_LEAN_DEG = 45.25;
