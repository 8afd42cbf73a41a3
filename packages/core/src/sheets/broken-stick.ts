/**
 * A stick far thicker or wider than what is worked on it, drawn broken off (ISO 128: interrupted view): a band of it in
 * which nothing happens in any cut is left out, so that the rest can be drawn larger.
 */
import type { Vertex } from "../curve/index.ts";
import type { Plan, PlanCut } from "../cutting/index.ts";
import { SAME_POINT_MM } from "../measure/index.ts";
import { closedPath, fill, group, type Item, openPath, type PaperPoint, stroke } from "./drawing.ts";
import { flatPoints, pathOf } from "./flat-path.ts";
import { PAPER } from "./palette.ts";
import { placedPoint } from "./plane-lines.ts";
import { directionToPaper, type StickRoom, type StickView, scaleFor, toPaper } from "./stick-view.ts";

export interface BrokenStick {
  /** The plan with the bands taken out: for pictures only, its places beyond a band are no measures. */
  readonly plan: Plan;
  /** Height at which the two halves meet, mm from the back; null where nothing is left out. */
  readonly breakAtMm: number | null;
  /** Places across at which parts meet, mm from the stick's left side; none where nothing is left out. */
  readonly breaksAcrossMm?: readonly number[];
}

/** Which way places are counted: across the stick, or up from its back. */
type Axis = 0 | 1;
const ACROSS: Axis = 0;
const UP: Axis = 1;

/** A band is left out only where it is so much of the stick's thickness or width. */
const LEAST_LEFT_OUT_RATIO = 0.3;
/** Wood kept on either side of the break, as a share of the thickness and at least mm. */
const KEPT_RATIO = 0.14;
const LEAST_KEPT_MM = 2.5;
/** The same across, where a wide board's worked edge is to stand out, mm. */
const KEPT_ACROSS_MM = 12;
/** One for a board worked along an edge, two for one worked in its middle. */
const MOST_BREAKS_ACROSS = 2;

/** The plan as it is drawn in a room: broken off only where that lets it be drawn larger. */
export function brokenStick(plan: Plan, room: StickRoom): BrokenStick {
  const whole = { plan, breakAtMm: null };
  const thicknessMm = extentMm(plan, UP);
  const isMeasuredThrough = plan.marks.some((mark) => mark.kind === "depth" && mark.from === "back");
  if (isMeasuredThrough) return whole;
  const keptMm = Math.max(LEAST_KEPT_MM, KEPT_RATIO * thicknessMm);
  const broken = withoutIdleBand(plan, UP, keptMm, []);
  if (broken === null || scaleFor(broken.plan, 0, room) <= scaleFor(plan, 0, room)) return whole;
  return { plan: broken.plan, breakAtMm: broken.atMm };
}

/**
 * The same, its width broken off too: for pictures that tell no distances across, since every line is gauged from an
 * edge.
 */
export function brokenAcross(broken: BrokenStick, room: StickRoom): BrokenStick {
  let best = broken;
  let narrowed = broken;
  for (let count = 0; count < MOST_BREAKS_ACROSS; count++) {
    const breaks = narrowed.breaksAcrossMm ?? [];
    const next = withoutIdleBand(narrowed.plan, ACROSS, KEPT_ACROSS_MM, breaks);
    if (next === null) break;
    const { plan, atMm, leftOutMm } = next;
    const moved = breaks.map((place) => (place > atMm ? place - leftOutMm : place));
    narrowed = { ...narrowed, plan, breaksAcrossMm: [...moved, atMm] };
    if (scaleFor(plan, 0, room) > scaleFor(best.plan, 0, room)) best = narrowed;
  }
  return best;
}

interface Shortened {
  readonly plan: Plan;
  readonly atMm: number;
  readonly leftOutMm: number;
}

function withoutIdleBand(
  plan: Plan,
  axis: Axis,
  keptMm: number,
  breaks: readonly number[],
): Shortened | null {
  const band = idleBand(plan, axis, breaks);
  if (band === null) return null;
  const leftOutMm = band.toMm - band.fromMm - 2 * keptMm;
  if (leftOutMm < LEAST_LEFT_OUT_RATIO * extentMm(plan, axis)) return null;
  const atMm = band.fromMm + keptMm;
  return { plan: shortenedPlan(plan, axis, atMm, leftOutMm), atMm, leftOutMm };
}

function extentMm(plan: Plan, axis: Axis): number {
  const places = plan.stick.map((point) => point[axis]);
  return Math.max(...places) - Math.min(...places);
}

interface Band {
  readonly fromMm: number;
  readonly toMm: number;
}

/** The widest band through which every outline of the plan runs straight, in one place for all of them. */
function idleBand(plan: Plan, axis: Axis, breaks: readonly number[]): Band | null {
  const rings = [plan.stick, plan.section, ...plan.cuts.flatMap((cut) => cut.after)];
  const places = rings.flatMap((ring) =>
    flatPoints(pathOf(ring, (point) => point, "ring")).map((point) => point[axis]),
  );
  const soles = plan.cuts.flatMap((cut) => soleReach(cut, axis));
  const levels = [
    ...places,
    ...breaks,
    ...plan.marks.map((mark) => mark.at[axis]),
    ...soles.flat(),
    ...plan.cuts.flatMap((cut) => (cut.line ?? []).map((point) => point[axis])),
  ].sort((a, b) => a - b);
  let best: Band | null = null;
  for (let index = 1; index < levels.length; index++) {
    const fromMm = levels[index - 1] as number;
    const toMm = levels[index] as number;
    if (best !== null && toMm - fromMm <= best.toMm - best.fromMm) continue;
    const middleMm = (fromMm + toMm) / 2;
    const isBesideSole = soles.some(([lowMm, highMm]) => lowMm < middleMm && middleMm < highMm);
    if (!isBesideSole && crossesAlike(rings, axis, middleMm)) best = { fromMm, toMm };
  }
  return best;
}

/** From where to where the sole reaches in each pose of a cut: a plane whose sole hangs down beside the stick is drawn whole. */
function soleReach(cut: PlanCut, axis: Axis): readonly (readonly [number, number])[] {
  const sole = cut.sole ?? [];
  return (cut.runs ?? []).flat().map((pose) => {
    const places = [pose[axis], ...sole.map(([x, y]) => placedPoint(pose, [x, y])[axis])];
    return [Math.min(...places), Math.max(...places)] as const;
  });
}

function crossesAlike(rings: readonly (readonly Vertex[])[], axis: Axis, placeMm: number): boolean {
  const beside = axis === UP ? ACROSS : UP;
  const crossings = rings.map((ring) => {
    const found: number[] = [];
    ring.forEach((from, index) => {
      const to = ring[(index + 1) % ring.length] as Vertex;
      if (from[axis] > placeMm === to[axis] > placeMm) return;
      const isStraight = (from[2] ?? 0) === 0 && Math.abs(from[beside] - to[beside]) <= SAME_POINT_MM;
      found.push(isStraight ? from[beside] : Number.NaN);
    });
    return found.sort((a, b) => a - b);
  });
  const [first] = crossings;
  return crossings.every(
    (found) =>
      found.length === first?.length &&
      found.every((place, i) => Math.abs(place - (first[i] as number)) <= SAME_POINT_MM),
  );
}

function shortenedPlan(plan: Plan, axis: Axis, beyondMm: number, byMm: number): Plan {
  const moved = (place: number): number => (place > beyondMm ? place - byMm : place);
  const at = ([x, y]: readonly [number, number]) =>
    axis === UP ? ([x, moved(y)] as const) : ([moved(x), y] as const);
  const ring = (vertices: readonly Vertex[]): readonly Vertex[] =>
    vertices.map(([x, y, bulge]): Vertex => (bulge === undefined ? at([x, y]) : [...at([x, y]), bulge]));
  const cutOf = (cut: PlanCut): PlanCut => ({
    ...cut,
    after: cut.after.map(ring),
    ...(cut.runs === undefined
      ? {}
      : { runs: cut.runs.map((run) => run.map(([x, y, tilt]) => [...at([x, y]), tilt] as const)) }),
    ...(cut.line === undefined ? {} : { line: [at(cut.line[0]), at(cut.line[1])] as const }),
  });
  return {
    ...plan,
    stick: ring(plan.stick),
    section: ring(plan.section),
    planned: ring(plan.planned),
    marks: plan.marks.map((mark) => ({ ...mark, at: at(mark.at) })),
    cuts: plan.cuts.map(cutOf),
  };
}

/** Half of the gap between the two halves, and how far the break lines reach past the wood, mm on paper. */
const HALF_GAP_MM = 0.9;
const OVERHANG_MM = 2;
const ZIGZAG_MM = 1.3;
/** A shorter break has one zigzag in its middle, mm on paper. */
const SHORT_BREAK_MM = 18;

/** The gaps with a break line on either side; nothing where the stick is whole. */
export function breakItems(broken: BrokenStick, view: StickView): readonly Item[] {
  const { plan, breakAtMm, breaksAcrossMm = [] } = broken;
  return [
    ...(breakAtMm === null ? [] : breakAt(plan, UP, breakAtMm, view)),
    ...breaksAcrossMm.flatMap((placeMm) => breakAt(plan, ACROSS, placeMm, view)),
  ];
}

function breakAt(plan: Plan, axis: Axis, placeMm: number, view: StickView): readonly Item[] {
  const beside = axis === UP ? ACROSS : UP;
  const crossings = plan.stick.flatMap((from, index): number[] => {
    const to = plan.stick[(index + 1) % plan.stick.length] as Vertex;
    return from[axis] > placeMm === to[axis] > placeMm ? [] : [from[beside]];
  });
  const onPaper = (besideMm: number): PaperPoint =>
    toPaper(view, axis === UP ? [besideMm, placeMm] : [placeMm, besideMm]);
  const start = onPaper(Math.min(...crossings));
  const end = onPaper(Math.max(...crossings));
  const step = { ...view, scaleRatio: 1 };
  const along = directionToPaper(step, axis === UP ? [1, 0] : [0, 1]);
  const beyond = directionToPaper(step, axis === UP ? [0, 1] : [1, 0]);
  const lengthMm = Math.hypot(end[0] - start[0], end[1] - start[1]);
  const at = (alongMm: number, beyondMm: number): PaperPoint => [
    start[0] + along[0] * alongMm + beyond[0] * beyondMm,
    start[1] + along[1] * alongMm + beyond[1] * beyondMm,
  ];
  const zigzags = lengthMm < SHORT_BREAK_MM ? [0.5] : [0.3, 0.7];
  const edge = (beyondMm: number): readonly PaperPoint[] => [
    at(-OVERHANG_MM, beyondMm),
    ...zigzags.flatMap((share) => [
      at(lengthMm * share - ZIGZAG_MM, beyondMm),
      at(lengthMm * share - ZIGZAG_MM / 2, beyondMm - ZIGZAG_MM * 1.4),
      at(lengthMm * share + ZIGZAG_MM / 2, beyondMm + ZIGZAG_MM * 1.4),
      at(lengthMm * share + ZIGZAG_MM, beyondMm),
    ]),
    at(lengthMm + OVERHANG_MM, beyondMm),
  ];
  const upper = edge(HALF_GAP_MM);
  const lower = edge(-HALF_GAP_MM);
  return [
    group("break", [
      fill([closedPath([...upper, ...[...lower].reverse()])], PAPER),
      stroke(openPath(upper)),
      stroke(openPath(lower)),
    ]),
  ];
}
