/**
 * The only home of tolerances. Each has a unit and a reason.
 *
 * The ladder (`LADDER_MM`): round-off, which never decides, then `SAME_POINT_MM`, `FLATTEN_MM`, `OVERCUT_MM` (and
 * `DRAWING_NOISE_MM`, the same rung) and `DEFAULT_TOLERANCE_MM`. Each rung is at least 20 times the one below (a test
 * holds that), so that a decision on one rung is never made by the noise of another.
 * Two lengths are no rungs and stand nearer: `SEARCH_FLATTEN_MM` lies between flattening and overcut, and nothing
 * decided on it stands before the proof has decided it again on `FLATTEN_MM`; `LEAST_TOLERANCE_MM` is the least a
 * maker may ask for, only twice the overcut rung, so a face asked for that finely may spend half of it on overcut.
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

/** How far past 1 a sine or cosine made of two computed lengths may come out by round-off alone, no unit. */
export const RATIO_OVERSHOOT = 1e-9;

/** The rungs in order, mm. */
export const LADDER_MM: readonly number[] = [SAME_POINT_MM, FLATTEN_MM, OVERCUT_MM, DEFAULT_TOLERANCE_MM];

/** Two angles nearer than this round alike, degrees: at a tenth of a millimetre's radius still no length to speak of. */
export const SAME_POINT_DEG = 1e-6;

/** Two circles whose centres and radii differ by no more than this are one, mm: what poses written to a file lose. */
export const SAME_CIRCLE_MM = 2e-5;

/** How far beside a plane's side the wood is looked at when a wall is measured, mm: above the flattening, below any wall. */
export const BESIDE_MM = 0.005;

/** Heights of a plane let down that differ by less than this are level, mm. */
export const SEAT_LEVEL_MM = 1e-4;

/** An arc that leaves its chord by less than this is a line, mm: a twentieth of `SAME_POINT_MM`, so nobody can see it. */
export const FLAT_SAGITTA_MM = 5e-8;

/** Flattest bulge an arc may have: below it radius and squares leave the range of numbers. Nobody draws it. */
export const LEAST_BULGE = 1e-100;

/** Grid of the polygon booleans, mm: 1e-6 was too coarse for long sequences of cuts. */
export const BOOLEAN_GRID_MM = 1e-8;

/** Edges shorter than this are noise of the boolean grid and are closed up, mm. */
export const LEAST_EDGE_MM = 1e-5;

/** Rings smaller than this after a boolean are slivers between two flattened curves and are dropped, mm². */
export const LEAST_RING_MM2 = 1e-4;

/** An inner vertex of a flattened arc nearer to one of its ends than this part of the step is left out. */
export const NEAR_END_STEP_RATIO = 1e-3;

/** Radii are rounded to this before the step of flattening is chosen, mm, so that two arcs of one circle share it. */
export const RADIUS_GRID_MM = 1e-9;

/** How much of a turn rounding may add before an arc counts as more than a half circle, radians. */
export const HALF_CIRCLE_SLACK_RAD = 1e-9;

/** Largest coordinate the kernel takes, mm (a kilometre): its multiples of the boolean grid stay whole numbers. */
export const FARTHEST_MM = 1e6;

/** Area under which a leftover of a boolean is rounding, not wood, mm². */
export const SLIVER_MM2 = 1e-4;

/** How near the planned section a sole's place must lie to count as bearing on it, mm. */
export const BEARS_MM = 0.02;

/** How far two routes may differ on the height of a wall, mm: a wall's line is looked at a little beside it. */
export const WALL_AGREEMENT_MM = 0.05;

/**
 * A Bézier's handle this near (as a part of its length) to the one that stands for an arc was saved as that arc:
 * programs round the quarter circle's 0.55228 to 0.5523, or take 0.5519 instead.
 */
export const ARC_HANDLE_RATIO = 1e-3;

/** A piece of a section shorter than this is a slip of the drawing, not a shape anyone cuts, mm. */
export const LEAST_PIECE_MM = 0.01;

/** Two costs or scores of the planner nearer than this are a tie, broken by the order of the drawing. */
export const SAME_SCORE = 1e-6;

/** Two leans of a plane nearer than this are one, degrees: far below what a hand can set. */
export const SAME_LEAN_DEG = 1e-3;

/** Rounding of poses written to a file, with a margin, mm or degrees. */
export const POSE_ROUNDING = 1e-5;

/** How far two routes may differ on the lift of a seat, mm: they step sideways in different strides. */
export const SEAT_AGREEMENT_MM = 0.02;

/** How far two routes may differ on how proud of or under the drawing a face comes out, mm: as deep as no overcut. */
export const FINISH_AGREEMENT_MM = 0.01;

/** How far the sole drawn for a cut may lie from its plane's own, mm: what writing both to files loses, and a margin. */
export const SOLE_AGREEMENT_MM = 1e-3;

/** A closed run of walls that misses its own start by no more than this was measured well enough to cut from, mm. */
export const RUN_CLOSES_MM = 5;

/** Below this bulge one term of the series is exact to rounding (the next is a fifth of the bulge squared). */
export const FLAT_BULGE = 1e-8;

/** Programs write the direction with nine digits or more; a lean this small moves a moulding by less than the grid. */
export const ASLANT_RATIO = 1e-9;

/** What is missing from a full turn in a file of six digits, radians. */
export const FULL_TURN_SLACK = 1e-5;

/** A pivot smaller than this part of the largest entry is dependent on the others: its unknown is taken as 0. */
export const DEPENDENT_RATIO = 1e-12;

/** Wood thinner than this that stands between two cuts comes away with the shaving, mm: a fifth of the finest shaving. */
export const FIN_MM = 0.01;

/** A neck of wood thinner than this breaks as the plane leaves it, mm. */
export const THREAD_MM = 0.02;

/** A step of an iteration smaller than this part of what it improves no longer improves it, no unit. */
export const CONVERGED_RATIO = 1e-14;

/** How far a corner of a chain of short lines may lie off the arc that the lines stand for, mm: files keep hundredths. */
export const CORNER_NOISE_MM = 0.005;

/** A line that leaves the arc it may stand for by more than this is a facet, mm: half of what a face may be off anyway. */
export const CHORD_SAGITTA_MM = 0.1;

/** A face that the light meets at a smaller sine than this is grazed: no eye tells it from one turned away, no unit. */
export const GRAZING_RATIO = 1e-9;

/** How far a length as a field writes it may lie from the length itself, mm: half of the last of three decimals. */
export const WRITTEN_MM = 0.0005;
