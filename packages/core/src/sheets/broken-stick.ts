/**
 * A stick far thicker than what is worked on it, drawn broken off (ISO 128: interrupted view): a band of it in which
 * nothing happens in any cut is left out, so that the rest can be drawn larger.
 */
import type { Vertex } from "../curve/index.ts";
import type { Plan, PlanCut } from "../cutting/index.ts";
import { SAME_POINT_MM } from "../measure/index.ts";
import { closedPath, fill, group, type Item, openPath, type PaperPoint, stroke } from "./drawing.ts";
import { flatPoints, pathOf } from "./flat-path.ts";
import { PAPER } from "./palette.ts";
import { placedPoint } from "./plane-lines.ts";
import {
  directionToPaper,
  type StickRoom,
  type StickView,
  scaleFor,
  toPaper,
  turnedBox,
} from "./stick-view.ts";

export interface BrokenStick {
  /** The plan with the band taken out: for pictures only, its heights above the band are no measures. */
  readonly plan: Plan;
  /** Height at which the two halves meet, mm from the back; null where nothing is left out. */
  readonly breakAtMm: number | null;
}

/** A band is left out only where it is so much of the stick's thickness. */
const LEAST_LEFT_OUT_RATIO = 0.3;
/** Wood kept on either side of the break, as a share of the thickness and at least mm. */
const KEPT_RATIO = 0.14;
const LEAST_KEPT_MM = 2.5;

/** The plan as it is drawn in a room: broken off only where that lets it be drawn larger. */
export function brokenStick(plan: Plan, room: StickRoom): BrokenStick {
  const broken = withoutIdleBand(plan);
  const isLarger = scaleFor(broken.plan, 0, room) > scaleFor(plan, 0, room);
  return isLarger ? broken : { plan, breakAtMm: null };
}

function withoutIdleBand(plan: Plan): BrokenStick {
  const stick = turnedBox(plan.stick, 0);
  const thicknessMm = stick.maxY - stick.minY;
  const band = idleBand(plan);
  const keptMm = Math.max(LEAST_KEPT_MM, KEPT_RATIO * thicknessMm);
  const leftOutMm = band === null ? 0 : band.topMm - band.bottomMm - 2 * keptMm;
  if (band === null || leftOutMm < LEAST_LEFT_OUT_RATIO * thicknessMm) return { plan, breakAtMm: null };
  const breakAtMm = band.bottomMm + keptMm;
  return { plan: lowered(plan, breakAtMm, leftOutMm), breakAtMm };
}

/** The highest band through which every outline of the plan runs straight down, in one place for all of them. */
function idleBand(plan: Plan): { readonly bottomMm: number; readonly topMm: number } | null {
  const rings = [plan.stick, plan.section, ...plan.cuts.flatMap((cut) => cut.after)];
  const places = rings.flatMap((ring) =>
    flatPoints(pathOf(ring, (point) => point, "ring")).map((point) => point[1]),
  );
  const soles = plan.cuts.flatMap(soleHeights);
  const levels = [
    ...places,
    ...plan.marks.map((mark) => mark.at[1]),
    ...soles.flat(),
    ...plan.cuts.flatMap((cut) => (cut.line ?? []).map((point) => point[1])),
  ].sort((a, b) => a - b);
  let best: { readonly bottomMm: number; readonly topMm: number } | null = null;
  for (let index = 1; index < levels.length; index++) {
    const bottomMm = levels[index - 1] as number;
    const topMm = levels[index] as number;
    if (best !== null && topMm - bottomMm <= best.topMm - best.bottomMm) continue;
    const middleMm = (bottomMm + topMm) / 2;
    const isBesideSole = soles.some(([lowMm, highMm]) => lowMm < middleMm && middleMm < highMm);
    if (!isBesideSole && crossesAlike(rings, middleMm)) best = { bottomMm, topMm };
  }
  const isMeasuredThrough = plan.marks.some((mark) => mark.kind === "depth" && mark.from === "back");
  return isMeasuredThrough ? null : best;
}

/** From where to where the sole reaches in each pose of a cut: a plane whose sole hangs down beside the stick is drawn whole. */
function soleHeights(cut: PlanCut): readonly (readonly [number, number])[] {
  const sole = cut.sole ?? [];
  return (cut.runs ?? []).flat().map((pose) => {
    const heights = [pose[1], ...sole.map(([x, y]) => placedPoint(pose, [x, y])[1])];
    return [Math.min(...heights), Math.max(...heights)] as const;
  });
}

function crossesAlike(rings: readonly (readonly Vertex[])[], heightMm: number): boolean {
  const crossings = rings.map((ring) => {
    const xs: number[] = [];
    ring.forEach((from, index) => {
      const to = ring[(index + 1) % ring.length] as Vertex;
      if (from[1] > heightMm === to[1] > heightMm) return;
      const isUpright = (from[2] ?? 0) === 0 && Math.abs(from[0] - to[0]) <= SAME_POINT_MM;
      xs.push(isUpright ? from[0] : Number.NaN);
    });
    return xs.sort((a, b) => a - b);
  });
  const [first] = crossings;
  return crossings.every(
    (xs) =>
      xs.length === first?.length && xs.every((x, i) => Math.abs(x - (first[i] as number)) <= SAME_POINT_MM),
  );
}

function lowered(plan: Plan, aboveMm: number, byMm: number): Plan {
  const height = (y: number): number => (y > aboveMm ? y - byMm : y);
  const ring = (vertices: readonly Vertex[]): readonly Vertex[] =>
    vertices.map(([x, y, bulge]): Vertex => (bulge === undefined ? [x, height(y)] : [x, height(y), bulge]));
  const cutOf = (cut: PlanCut): PlanCut => ({
    ...cut,
    after: cut.after.map(ring),
    ...(cut.runs === undefined
      ? {}
      : { runs: cut.runs.map((run) => run.map(([x, y, tilt]) => [x, height(y), tilt] as const)) }),
    ...(cut.line === undefined
      ? {}
      : {
          line: [
            [cut.line[0][0], height(cut.line[0][1])],
            [cut.line[1][0], height(cut.line[1][1])],
          ] as const,
        }),
  });
  return {
    ...plan,
    stick: ring(plan.stick),
    section: ring(plan.section),
    planned: ring(plan.planned),
    marks: plan.marks.map((mark) => ({ ...mark, at: [mark.at[0], height(mark.at[1])] as const })),
    cuts: plan.cuts.map(cutOf),
  };
}

/** Half of the gap between the two halves, and how far the break lines reach past the wood, mm on paper. */
const HALF_GAP_MM = 0.9;
const OVERHANG_MM = 2;
const ZIGZAG_MM = 1.3;

/** The gap with a break line on either side; nothing where the stick is whole. */
export function breakItems({ plan, breakAtMm }: BrokenStick, view: StickView): readonly Item[] {
  if (breakAtMm === null) return [];
  const crossings = plan.stick.flatMap((from, index): number[] => {
    const to = plan.stick[(index + 1) % plan.stick.length] as Vertex;
    return from[1] > breakAtMm === to[1] > breakAtMm ? [] : [from[0]];
  });
  const left = toPaper(view, [Math.min(...crossings), breakAtMm]);
  const right = toPaper(view, [Math.max(...crossings), breakAtMm]);
  const along = directionToPaper({ ...view, scaleRatio: 1 }, [1, 0]);
  const up = directionToPaper({ ...view, scaleRatio: 1 }, [0, 1]);
  const lengthMm = Math.hypot(right[0] - left[0], right[1] - left[1]);
  const at = (alongMm: number, upMm: number): PaperPoint => [
    left[0] + along[0] * alongMm + up[0] * upMm,
    left[1] + along[1] * alongMm + up[1] * upMm,
  ];
  const edge = (upMm: number): readonly PaperPoint[] => [
    at(-OVERHANG_MM, upMm),
    ...[0.3, 0.7].flatMap((share) => [
      at(lengthMm * share - ZIGZAG_MM, upMm),
      at(lengthMm * share - ZIGZAG_MM / 2, upMm - ZIGZAG_MM * 1.4),
      at(lengthMm * share + ZIGZAG_MM / 2, upMm + ZIGZAG_MM * 1.4),
      at(lengthMm * share + ZIGZAG_MM, upMm),
    ]),
    at(lengthMm + OVERHANG_MM, upMm),
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
