/** A plane in its place: sole and body as long-dashed double-dotted lines, cut off by a break line, with its axis. */
import type { PlanCut, Pose } from "../cutting/index.ts";
import { toDeg, toRad, turnDeg } from "../measure/index.ts";
import { closedPath, fill, type Item, openPath, type PaperPoint, type Path, stroke } from "./drawing.ts";
import { pathOf } from "./flat-path.ts";
import { type Colour, MOVEMENT } from "./palette.ts";
import { directionToPaper, type StickView, toPaper } from "./stick-view.ts";

/** Two leans nearer than this are one to the hand, degrees; two places nearer than this one place, mm. */
const ONE_LEAN_DEG = 0.75;
const ONE_PLACE_MM = 0.3;

/**
 * The poses worth drawing, one or two: the last one of the first lean (or place) and the very last one of the cut; where
 * the plane is rocked to both sides of where it began, the two farthest leans in the order they are reached. One where
 * the plane only goes down; none for a saw.
 */
export function stationsOf(cut: PlanCut): readonly Pose[] {
  const runs = (cut.runs ?? []).filter((run) => run.length > 0);
  const firstRun = runs[0];
  const lastRun = runs[runs.length - 1];
  if (firstRun === undefined || lastRun === undefined) return [];
  const begun = firstRun[0] as Pose;
  const both = rockedBothWays(begun, runs.flat());
  if (both !== null) return both;
  const first = firstRun.reduce((kept, pose) => (isSameHold(begun, pose) ? pose : kept), begun);
  const last = lastRun[lastRun.length - 1] as Pose;
  return isSameHold(first, last) && Math.hypot(first[0] - last[0], first[1] - last[1]) < ONE_PLACE_MM
    ? [last]
    : [first, last];
}

function rockedBothWays(begun: Pose, poses: readonly Pose[]): readonly [Pose, Pose] | null {
  const turned: readonly number[] = poses.map((pose) => turnDeg(begun[2], pose[2]));
  const right = Math.min(...turned);
  const left = Math.max(...turned);
  if (right > -ONE_LEAN_DEG || left < ONE_LEAN_DEG) return null;
  const rightAt = turned.indexOf(right);
  const leftAt = turned.indexOf(left);
  const ordered = rightAt < leftAt ? [rightAt, leftAt] : [leftAt, rightAt];
  return [poses[ordered[0] as number] as Pose, poses[ordered[1] as number] as Pose];
}

/** Same lean, and only moved along the axis. */
function isSameHold(a: Pose, b: Pose): boolean {
  const across = (b[0] - a[0]) * Math.cos(toRad(a[2])) + (b[1] - a[1]) * Math.sin(toRad(a[2]));
  return Math.abs(turnDeg(a[2], b[2])) < ONE_LEAN_DEG && Math.abs(across) < ONE_PLACE_MM;
}

export interface PlaneLook {
  readonly colour: Colour;
  /** From the sole's origin along the axis to the break line, and on to the axis's end, mm on paper. */
  readonly bodyMm: number;
  readonly axisMm: number;
}

export interface PlaneLines {
  readonly items: readonly Item[];
  /** The upper end of the axis, where the lean is written. */
  readonly tip: PaperPoint;
  /** A point on the axis so far from the sole's origin, mm on paper. */
  readonly onAxis: (distanceMm: number) => PaperPoint;
}

const BREAK_OVERHANG_MM = 1.5;
const BREAK_ZIGZAG_MM = 1.1;
const AXIS_BELOW_SOLE_MM = 3;
const BODY_ABOVE_SOLE_END_MM = 4;

export function planeLines(view: StickView, cut: PlanCut, pose: Pose, look: PlaneLook): PlaneLines {
  const sole = cut.sole ?? [];
  const place = (local: PaperPoint): PaperPoint => toPaper(view, placedPoint(pose, local));
  const soleTopMm = Math.max(0, ...sole.map((vertex) => vertex[1])) * view.scaleRatio;
  const bodyMm = Math.max(look.bodyMm, soleTopMm + BODY_ABOVE_SOLE_END_MM);
  const breakAt = bodyMm / view.scaleRatio;
  const solePath = pathOf(sole, place, "chain");
  const [left, right] = bodySides(cut, breakAt);
  const body: Path = {
    start: place([left[left.length - 1]?.[0] ?? 0, breakAt]),
    steps: [
      ...[...left].reverse().map((point) => ({ to: place(point) })),
      ...solePath.steps,
      ...right.map((point) => ({ to: place(point) })),
    ],
    closed: false,
  };
  const onAxis = (distanceMm: number): PaperPoint => place([0, distanceMm / view.scaleRatio]);
  const tip = onAxis(Math.max(look.axisMm, bodyMm + BODY_ABOVE_SOLE_END_MM));
  const outer: readonly [PaperPoint, PaperPoint] = [
    place([left[left.length - 1]?.[0] ?? 0, breakAt]),
    place([right[right.length - 1]?.[0] ?? 0, breakAt]),
  ];
  const items = [
    stroke(body, { line: "long-dashed double-dotted", colour: look.colour }),
    stroke(breakLine(outer[0], outer[1]), { colour: look.colour }),
    stroke(openPath([onAxis(-AXIS_BELOW_SOLE_MM), tip]), { line: "long-dashed dotted", colour: look.colour }),
  ];
  return { items, tip, onAxis };
}

/** Both sides of the body from the sole's ends up to the break, with the shoulder where the body is wider. */
function bodySides(cut: PlanCut, breakAt: number): readonly [readonly PaperPoint[], readonly PaperPoint[]] {
  const sole = cut.sole ?? [];
  const first = sole[0] ?? [0, 0];
  const last = sole[sole.length - 1] ?? [0, 0];
  const shoulder = shoulderOf(cut);
  if (shoulder === null || shoulder.heightMm >= breakAt) {
    return [
      [
        [first[0], first[1]],
        [first[0], breakAt],
      ],
      [[last[0], breakAt]],
    ];
  }
  const { halfWidthMm, heightMm } = shoulder;
  return [
    [
      [first[0], first[1]],
      [first[0], heightMm],
      [-halfWidthMm, heightMm],
      [-halfWidthMm, breakAt],
    ],
    [
      [last[0], heightMm],
      [halfWidthMm, heightMm],
      [halfWidthMm, breakAt],
    ],
  ];
}

function shoulderOf(cut: PlanCut): { readonly halfWidthMm: number; readonly heightMm: number } | null {
  const shoulder = cut.plane.shoulder as { readonly width?: unknown; readonly height?: unknown } | undefined;
  if (typeof shoulder?.width !== "number" || typeof shoulder.height !== "number") return null;
  return { halfWidthMm: shoulder.width / 2, heightMm: shoulder.height };
}

/** A point of the plane's own frame, in the stick's. */
export function placedPoint(pose: Pose, local: PaperPoint): PaperPoint {
  const cos = Math.cos(toRad(pose[2]));
  const sin = Math.sin(toRad(pose[2]));
  return [pose[0] + local[0] * cos - local[1] * sin, pose[1] + local[0] * sin + local[1] * cos];
}

/** ISO 128: a straight break line with one zigzag in its middle. */
function breakLine(from: PaperPoint, to: PaperPoint): Path {
  const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (lengthMm === 0) return openPath([from, to]);
  const along: PaperPoint = [(to[0] - from[0]) / lengthMm, (to[1] - from[1]) / lengthMm];
  const at = (distanceMm: number, asideMm: number): PaperPoint => [
    from[0] + along[0] * distanceMm - along[1] * asideMm,
    from[1] + along[1] * distanceMm + along[0] * asideMm,
  ];
  const middle = lengthMm / 2;
  return openPath([
    at(-BREAK_OVERHANG_MM, 0),
    at(middle - BREAK_ZIGZAG_MM, 0),
    at(middle - BREAK_ZIGZAG_MM / 2, -BREAK_ZIGZAG_MM * 1.4),
    at(middle + BREAK_ZIGZAG_MM / 2, BREAK_ZIGZAG_MM * 1.4),
    at(middle + BREAK_ZIGZAG_MM, 0),
    at(lengthMm + BREAK_OVERHANG_MM, 0),
  ]);
}

const ARROW_LENGTH_MM = 2.6;
const ARROW_HALF_WIDTH_MM = 0.55;
const TAIL_MM = 6;
const NEAREST_ARROW_MM = 7;

/** A filled arrow head with its point at `tip`, flying along `direction` (any length). */
export function arrowHead(tip: PaperPoint, direction: PaperPoint, colour: Colour): Item {
  const lengthMm = Math.hypot(direction[0], direction[1]) || 1;
  const along: PaperPoint = [direction[0] / lengthMm, direction[1] / lengthMm];
  const back: PaperPoint = [tip[0] - along[0] * ARROW_LENGTH_MM, tip[1] - along[1] * ARROW_LENGTH_MM];
  return fill(
    [
      closedPath([
        tip,
        [back[0] - along[1] * ARROW_HALF_WIDTH_MM, back[1] + along[0] * ARROW_HALF_WIDTH_MM],
        [back[0] + along[1] * ARROW_HALF_WIDTH_MM, back[1] - along[0] * ARROW_HALF_WIDTH_MM],
      ]),
    ],
    colour,
  );
}

/**
 * The arc arrow from the first lean to the last, drawn where along the plane the two axes stand farthest apart. Where
 * they stand close all along, the arrow comes in from outside, as a dimension too narrow for its arrows does.
 */
export function leanArrow(
  first: PlaneLines,
  last: PlaneLines,
  reachMm: number,
  turnedDeg: number,
): readonly Item[] {
  const distances = [NEAREST_ARROW_MM, reachMm * 0.5, reachMm];
  const gapAt = (distanceMm: number): number => {
    const a = first.onAxis(distanceMm);
    const b = last.onAxis(distanceMm);
    return Math.hypot(a[0] - b[0], a[1] - b[1]);
  };
  const best = distances.reduce((kept, distance) => (gapAt(distance) > gapAt(kept) ? distance : kept));
  const from = first.onAxis(best);
  const to = last.onAxis(best);
  const gapMm = gapAt(best);
  if (gapMm === 0) return [];
  const bulge = Math.tan(toRad(turnedDeg) / 4);
  const chord: PaperPoint = [(to[0] - from[0]) / gapMm, (to[1] - from[1]) / gapMm];
  // At its end an arc has turned from its chord by half its sweep; anticlockwise as seen is (x, -y) on paper.
  const halfRad = toRad(turnedDeg) / 2;
  const heading: PaperPoint = [
    chord[0] * Math.cos(halfRad) + chord[1] * Math.sin(halfRad),
    chord[1] * Math.cos(halfRad) - chord[0] * Math.sin(halfRad),
  ];
  const look = { colour: MOVEMENT };
  const arc = stroke({ start: from, steps: [{ to, bulge }], closed: false }, look);
  if (gapMm > ARROW_LENGTH_MM * 1.6) return [arc, arrowHead(to, heading, MOVEMENT)];
  const tail: PaperPoint = [from[0] - chord[0] * TAIL_MM, from[1] - chord[1] * TAIL_MM];
  return [stroke(openPath([tail, from]), look), arc, arrowHead(to, heading, MOVEMENT)];
}

/** A saw's cut, as a line reaching past the wood on both sides; and its lean on the bench, degrees from upright. */
export function sawLine(
  view: StickView,
  cut: PlanCut,
  colour: Colour,
): PlaneLines & { readonly leanDeg: number } {
  const line = cut.line ?? [
    [0, 0],
    [0, 1],
  ];
  const ends = line.map((point) => toPaper(view, [point[0], point[1]]));
  const [low, high] = [...ends].sort((a, b) => b[1] - a[1]) as [PaperPoint, PaperPoint];
  const lengthMm = Math.hypot(high[0] - low[0], high[1] - low[1]) || 1;
  const along: PaperPoint = [(high[0] - low[0]) / lengthMm, (high[1] - low[1]) / lengthMm];
  const onAxis = (distanceMm: number): PaperPoint => [
    low[0] + along[0] * distanceMm,
    low[1] + along[1] * distanceMm,
  ];
  const tip = onAxis(lengthMm + 9);
  const path = openPath([onAxis(-4), tip]);
  return {
    items: [stroke(path, { line: "long-dashed double-dotted", colour })],
    tip,
    onAxis,
    leanDeg: toDeg(Math.atan2(-along[0], -along[1])),
  };
}

/** The plane's axis on the paper, pointing up into its body. */
export function axisOnPaper(view: StickView, pose: Pose): PaperPoint {
  const tiltRad = toRad(pose[2]);
  return directionToPaper({ ...view, scaleRatio: 1 }, [-Math.sin(tiltRad), Math.cos(tiltRad)]);
}
