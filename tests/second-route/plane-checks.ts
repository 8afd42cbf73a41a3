/** What one cut of a plane is held to: its poses, walls, bench, body, guide, seat and bearing. */
import { type Finding, mm, type Rule } from "./finding.ts";
import {
  arcOf,
  boundaryDistance,
  boundaryPlaces,
  boxOf,
  bulgeOf,
  type FlatRegion,
  flatChain,
  turnedBy,
} from "./flat.ts";
import { guideFaults } from "./guides.ts";
import { heldIn } from "./let-down.ts";
import {
  allowedWallMm,
  BEARS_MM,
  BEARS_RATIO,
  LEAN_DEG,
  LEANING_FROM_DEG,
  LEANING_WALL_MM,
  LIFT_AGREES_MM,
  OVERCUT_MM,
  POSE_APART_DEG,
  POSE_APART_MM,
  POSE_ROUNDING,
  SLOT_MM,
  WALL_AGREES_MM,
} from "./limits.ts";
import type { BulgedVertex, CutJson, PlanJson, PoseXyt } from "./plan-json.ts";
import { newWalls } from "./rays.ts";
import { soleFaults } from "./soles.ts";
import { inPlace } from "./strips.ts";

/** A cut of a plane with the wood as it stands round it. */
export interface PlaneCut {
  readonly plan: PlanJson;
  readonly cut: CutJson;
  readonly sole: readonly BulgedVertex[];
  readonly runs: readonly (readonly PoseXyt[])[];
  /** The stick, then the wood after each cut, this one's the last. */
  readonly woods: readonly FlatRegion[];
  readonly planned: FlatRegion;
}

const FLAT_KINDS: readonly string[] = ["rebate", "moving fillister", "plough", "smoother"];
const CURVED_KINDS: readonly string[] = ["hollow", "round"];

export function planeFindings(made: PlaneCut): readonly Finding[] {
  const { cut } = made;
  const isCurved = CURVED_KINDS.includes(cut.plane.kind);
  const tell =
    (rule: Rule) =>
    (says: string): Finding => ({ rule, cut: cut.number, says });
  return [
    ...soleFaults(made.plan, cut).map(tell("sole")),
    ...leanFaults(made).map(tell("lean")),
    ...poseFaults(made).map(tell("poses")),
    ...wallFindings(made),
    ...benchFaults(made).map(tell("bench")),
    ...bodyFaults(made).map(tell("body")),
    ...(cut.runsAgainst === null && !(isCurved && cut.seat !== null)
      ? [tell("guide")("it has neither a seat nor anything to run against")]
      : []),
    ...guideFaults(made.plan, cut, made.woods).map(tell("guide")),
    ...(isCurved ? seatFindings(made) : []),
    ...(isCurved && cut.purpose === "shape" ? bearingFaults(made).map(tell("bearing")) : []),
  ];
}

/** Lean of the plane in the hand: tilt in the stick's frame and how the stick is turned, -180 to 180. */
function leanOf(pose: PoseXyt, cut: CutJson): number {
  const whole = (pose[2] + cut.cant) % 360;
  return whole > 180 ? whole - 360 : whole < -180 ? whole + 360 : whole;
}

function leanFaults({ cut, runs }: PlaneCut): readonly string[] {
  const most = Math.max(...runs.flat().map((pose) => Math.abs(leanOf(pose, cut))));
  return most > LEAN_DEG + POSE_ROUNDING ? [`the plane leans ${most.toFixed(2)}°`] : [];
}

function poseFaults({ runs }: PlaneCut): readonly string[] {
  let apartMm = 0;
  let apartDeg = 0;
  for (const run of runs)
    for (let k = 1; k < run.length; k++) {
      apartMm = Math.max(apartMm, Math.hypot(run[k][0] - run[k - 1][0], run[k][1] - run[k - 1][1]));
      apartDeg = Math.max(apartDeg, Math.abs(run[k][2] - run[k - 1][2]));
    }
  return apartMm > POSE_APART_MM + POSE_ROUNDING || apartDeg > POSE_APART_DEG + POSE_ROUNDING
    ? [`neighbouring poses stand ${mm(apartMm)} and ${apartDeg.toFixed(3)}° apart`]
    : [];
}

function wallFindings({ cut, sole, runs, woods }: PlaneCut): readonly Finding[] {
  const poses = runs.flat();
  const bands = newWalls(woods[woods.length - 2], woods[woods.length - 1], sole, poses);
  const found: Finding[] = [];
  const tell = (rule: Rule, says: string) => found.push({ rule, cut: cut.number, says });
  (["left", "right"] as const).forEach((side, s) => {
    const { leastMm, mostMm } = bands[s];
    const said = cut.wall[s];
    if (said < leastMm - WALL_AGREES_MM || said > mostMm + WALL_AGREES_MM)
      tell("wall said", `${side}: ${mm(leastMm)} to ${mm(mostMm)}, said ${mm(said)}`);
    const allowed = allowedWallMm(cut.plane, side);
    if (leastMm > allowed + OVERCUT_MM)
      tell("wall", `${side}: ${mm(leastMm)} of new wall, ${mm(allowed)} allowed`);
  });
  if (!FLAT_KINDS.includes(cut.plane.kind)) return found;
  const [left, right] = [bands[0].leastMm, bands[1].leastMm];
  const isLeaning = poses.some((pose) => Math.abs(leanOf(pose, cut)) >= LEANING_FROM_DEG);
  if (isLeaning && Math.max(left, right) > LEANING_WALL_MM + OVERCUT_MM)
    tell("leaning wall", `${mm(Math.max(left, right))} of new wall beside a leaning flat plane`);
  if (Math.min(left, right) > SLOT_MM + OVERCUT_MM) tell("slot", `a slot ${mm(Math.min(left, right))} deep`);
  return found;
}

/** The bench lies under the wood as it stands, turned as the cut says. */
function benchFaults({ cut, sole, runs, woods }: PlaneCut): readonly string[] {
  const before = woods[woods.length - 2];
  const level = boxOf(before.map((outline) => outline.map((p) => turnedBy(cut.cant, p)))).minY;
  let below = 0;
  for (const pose of runs.flat())
    for (const p of flatChain(sole, OVERCUT_MM / 10))
      below = Math.max(below, level - turnedBy(cut.cant, inPlace(pose, p))[1]);
  return below > OVERCUT_MM ? [`the sole runs ${mm(below)} into the bench`] : [];
}

function bodyFaults({ cut, sole, runs, woods }: PlaneCut): readonly string[] {
  const { shoulder } = cut.plane;
  if (!shoulder) return [];
  const from = Math.min(...flatChain(sole).map(([, y]) => y)) + shoulder.height;
  let deep = 0;
  for (const pose of runs.flat())
    for (const p of boundaryPlaces(woods[woods.length - 1], 0.1)) {
      const [x, y] = turnedBy(-pose[2], [p[0] - pose[0], p[1] - pose[1]]);
      deep = Math.max(deep, Math.min(shoulder.width / 2 - Math.abs(x), y - from));
    }
  return deep > 2 * OVERCUT_MM ? [`wood stands ${mm(deep)} inside the wider body`] : [];
}

/** The seat a cut tells of is that of its first pose. */
function seatFindings({ cut, sole, runs, woods }: PlaneCut): readonly Finding[] {
  const { seat } = cut;
  if (seat === null) return [];
  const first = runs[0][0];
  const held = heldIn(woods[woods.length - 2], sole, first);
  if (held === null)
    return [
      { rule: "seat", cut: cut.number, says: `a seat is told, and nothing holds it at ${first.join(", ")}` },
    ];
  return Math.abs(held.liftMm - seat.lift) > LIFT_AGREES_MM
    ? [{ rule: "seat said", cut: cut.number, says: `lift ${mm(held.liftMm)}, said ${mm(seat.lift)}` }]
    : [];
}

/**
 * A sole bears where it lies on the planned face; a plane of another radius than the
 * arc it shapes does so where it lies within half of what the maker allows the face to be off.
 */
function bearingFaults({ plan, sole, runs, planned }: PlaneCut): readonly string[] {
  const run = runs[runs.length - 1];
  const pose = run[run.length - 1];
  const nearMm = isOnPlannedArc(plan, sole, pose) ? BEARS_MM : plan.tolerance / 2;
  const toPlanned = boundaryDistance(planned, nearMm / 4);
  const outline = flatChain(sole).map((p) => inPlace(pose, p));
  let on = 0;
  let all = 0;
  for (let k = 0; k + 1 < outline.length; k++) {
    const [a, b] = [outline[k], outline[k + 1]];
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    all += length;
    if (toPlanned([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]) <= nearMm) on += length;
  }
  // One percent for the places at either end of the stretch that bears.
  return on / all < BEARS_RATIO - 0.01
    ? [`${Math.round((100 * on) / all)} % of the sole lies on the wanted face`]
    : [];
}

/** Whether the sole in this pose lies on the circle of an arc of the planned ring. */
function isOnPlannedArc(plan: PlanJson, sole: readonly BulgedVertex[], pose: PoseXyt): boolean {
  const own = arcOf([sole[0][0], sole[0][1]], [sole[1][0], sole[1][1]], bulgeOf(sole[0]));
  const centre = inPlace(pose, own.centre);
  return plan.planned.some((v, i) => {
    const bulge = bulgeOf(v);
    if (bulge === 0) return false;
    const next = plan.planned[(i + 1) % plan.planned.length];
    const arc = arcOf([v[0], v[1]], [next[0], next[1]], bulge);
    const apartMm = Math.hypot(arc.centre[0] - centre[0], arc.centre[1] - centre[1]);
    return apartMm + Math.abs(arc.radiusMm - own.radiusMm) < BEARS_MM;
  });
}
