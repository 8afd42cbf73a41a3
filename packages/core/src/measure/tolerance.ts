/**
 * The only home of tolerances. Each has a unit, a reason and its rung: a rung is at least 20 times the one
 * below it (a test holds that), so that a decision on one rung is never made by the noise of another.
 */

/** Two points nearer than this are one, mm. Inputs are snapped to it, so an inch file and a millimetre file agree. */
export const SAME_POINT_MM = 1e-6;

/** Chord error of flattened arcs wherever a figure of a plan is computed, mm. */
export const FLATTEN_MM = 1e-4;

/** Chord error of flattened arcs while orders of cuts are searched, mm; the proof uses `FLATTEN_MM`. */
export const SEARCH_FLATTEN_MM = 1e-3;

/** Overcut up to this depth is none, mm. */
export const OVERCUT_MM = 0.01;

/** How far what a drawing program saved may lie from what it meant (stick's sides, ends, tangency), mm. */
export const DRAWING_NOISE_MM = 0.01;

/** How far the finished face may stand from the drawing unless the maker says otherwise, mm. */
export const DEFAULT_TOLERANCE_MM = 0.2;

/** The least tolerance a maker may ask for, mm: below it the kernel's own noise would decide. */
export const LEAST_TOLERANCE_MM = 0.02;

/** A join whose tangents differ by no more than this is smooth, degrees. */
export const SMOOTH_JOIN_DEG = 0.5;

/** Numerical slack of areas compared between two routes, mm² a cut. */
export const AREA_AGREEMENT_MM2 = 0.02;
