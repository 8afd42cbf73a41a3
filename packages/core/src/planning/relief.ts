/**
 * Room beside a curved plane, and a seat to run in: snipe lines at its ends, a V opened by both snipe bills, a
 * plough's groove or a rebate where an edge or fence allows one.
 */
import type { Point, Region } from "../curve/index.ts";
import {
  leanDeg,
  type Pose,
  restBesideWalls,
  restOn,
  soleHeightMm,
  turned,
  turnOf,
} from "../cutting/index.ts";
import { OVERCUT_MM, SAME_LEAN_DEG, SAME_POINT_MM, toDeg } from "../measure/index.ts";
import type { Bench, Tool } from "./bench.ts";
import { endsInPlace, type PlaneDraft, planeDraft, poseAt, type SharedLine, tidy } from "./draft-cut.ts";
import { lostItsEdge } from "./never-guided.ts";
import { seenAt } from "./seen.ts";
import { tryCut } from "./try-cut.ts";
import { uprightTiltDeg } from "./turning.ts";

/** Lowest legal place of a tool at a shift across, leaving room above arcs; null where it would hang in the air. */
function lowestAt(bench: Bench, tool: Tool, tiltDeg: number, shift: number, roomMm: number): number | null {
  const rest = restBesideWalls(bench.profileOfPlanned(tiltDeg), tool.shape, shift, {
    gapMm: OVERCUT_MM / 4,
    clearance: (source) => (source > 0 ? roomMm : 0),
  });
  return rest ? rest.heightMm : null;
}

/** Lines along one end of a curved cut that would give it room there, the likeliest first. */
export function reliefsAt(
  bench: Bench,
  before: Region,
  draft: PlaneDraft,
  side: "left" | "right",
): PlaneDraft[] {
  const pose = outermostPose(draft, side);
  const end = endsInPlace(draft, pose)[side];
  const found: { draft: PlaneDraft; rank: number }[] = [];
  const upright = uprightTiltDeg(draft.cantDeg);
  for (const tiltDeg of reliefTilts(bench, draft, pose)) {
    const at = turned(turnOf(tiltDeg), end);
    for (const tool of bench.tools) {
      const snipe = tool.plane.kind === "snipe bill";
      const cutsIt = side === "left" ? tool.sole.cutsWall.left : tool.sole.cutsWall.right;
      if (!cutsIt || !(snipe || tool.plane.kind === "rebate" || tool.plane.kind === "plough")) continue;
      if (!snipe && tiltDeg !== upright) continue;
      const shift = side === "left" ? at.x - tool.sole.leftMm : at.x - tool.sole.rightMm;
      const low = lowestAt(bench, tool, tiltDeg, shift, 0);
      if (low === null) continue;
      const relief = cutToReach(bench, before, draft, tool, tiltDeg, shift, Math.max(low, at.y));
      if (relief)
        found.push({
          draft: relief,
          rank: (low - at.y) * 10 + (snipe ? 0 : 1) + Math.abs(tiltDeg - upright) / 30,
        });
    }
  }
  return found.sort((a, b) => a.rank - b.rank).map((f) => f.draft);
}

/** The outermost place that a curved cut's sole reaches on one side, in the stick's frame. */
export function reliefEnd(draft: PlaneDraft, side: "left" | "right"): Point {
  return endsInPlace(draft, outermostPose(draft, side))[side];
}

/** A line leaned further than this lies so flat that a beak skids off it, degrees. */
const MOST_LINE_LEAN_DEG = 45;

/** Upright first; then along the side of the curved plane itself, if a beak can be held so. */
function reliefTilts(bench: Bench, draft: PlaneDraft, pose: Pose): readonly number[] {
  const upright = uprightTiltDeg(draft.cantDeg);
  const along = tidy(pose[2]);
  const lean = Math.abs(leanDeg(along, draft.cantDeg));
  const leansTooFar = lean > Math.min(MOST_LINE_LEAN_DEG, bench.limits.leanDeg);
  return along === upright || leansTooFar ? [upright] : [upright, along];
}

/** A line as deep as asked, or only as deep as the plane's own wall allows. */
function cutToReach(
  bench: Bench,
  before: Region,
  draft: PlaneDraft,
  tool: Tool,
  tiltDeg: number,
  shift: number,
  heightMm: number,
): PlaneDraft | null {
  let height = heightMm;
  for (let tries = 0; tries < 2; tries++) {
    const relief = planeDraft(bench, {
      work:
        tool.plane.kind === "snipe bill" ? "snipe line" : tool.plane.kind === "plough" ? "groove" : "step",
      purpose: "relief",
      cantDeg: draft.cantDeg,
      shapes: [],
      tool,
      runs: [[poseAt(tiltDeg, shift, height)]],
      ...(draft.shapes[0] === undefined ? {} : { roomFor: draft.shapes[0] }),
    });
    const tried = tryCut(bench, before, relief);
    if (tried.takesMm2 < LEAST_LINE_MM2) return null;
    if (tried.refusals.length === 0) {
      return tool.plane.kind === "snipe bill" || tried.guide?.kind !== "batten" ? relief : null;
    }
    const wall = tried.refusals.find((r) => r.rule === "wall");
    if (!wall || wall.foundMm === undefined || wall.limitMm === undefined) return null;
    height += wall.foundMm - wall.limitMm + 0.05;
  }
  return null;
}

/** A line that takes less is no line, mm². */
const LEAST_LINE_MM2 = 0.02;

function outermostPose(draft: PlaneDraft, side: "left" | "right"): Pose {
  // Rocked to the left the plane's left end goes furthest left, and the other way round.
  const poses = draft.runs.flat();
  return poses.reduce((a, b) => {
    const ax = endsInPlace(draft, a)[side].x;
    const bx = endsInPlace(draft, b)[side].x;
    return (side === "left" ? bx < ax - SAME_POINT_MM : bx > ax + SAME_POINT_MM) ? b : a;
  });
}

/** Sets of cuts, each of which may give a curved plane a seat on the wood as it stands; the cheapest first. */
export function seatMakers(bench: Bench, before: Region, draft: PlaneDraft): PlaneDraft[][] {
  const sets: PlaneDraft[][] = evenedArrises(bench, before, draft).map((cut) => [cut]);
  if (draft.tool.plane.kind === "round") {
    for (const pose of seatPoses(draft)) {
      sets.push(...grooves(bench, before, draft, pose).map((groove) => [groove]));
      sets.push(...openedV(bench, draft, pose));
    }
    sets.sort((a, b) => a.length - b.length);
  } else {
    const lines = (["left", "right"] as const).map((side) => reliefsAt(bench, before, draft, side)[0]);
    const both = lines.filter((line): line is PlaneDraft => line !== undefined);
    for (const line of both) sets.push([line]);
    if (both.length === 2) sets.push(both);
  }
  return sets;
}

/** Grooves whose two arrises would carry a round: a plough's or a rebate plane's, centred on its axis. */
function grooves(bench: Bench, before: Region, draft: PlaneDraft, pose: Pose): PlaneDraft[] {
  const found: { draft: PlaneDraft; rank: number }[] = [];
  const width = draft.tool.sole.widthMm;
  const tiltDeg = uprightTiltDeg(draft.cantDeg);
  const turn = turnOf(tiltDeg);
  const axis = turned(turn, { x: pose[0], y: pose[1] });
  for (const tool of bench.tools) {
    if (tool.plane.kind !== "plough" && tool.plane.kind !== "rebate") continue;
    const share = tool.sole.widthMm / width;
    if (share < 0.3 || share > 0.85) continue;
    const shift = axis.x - (tool.sole.leftMm + tool.sole.rightMm) / 2;
    const low = lowestAt(bench, tool, tiltDeg, shift, bench.shavings.ordinaryMm);
    if (low === null) continue;
    const groove = planeDraft(bench, {
      work: "groove",
      purpose: "guide",
      cantDeg: draft.cantDeg,
      shapes: [],
      tool,
      runs: [[poseAt(tiltDeg, shift, low)]],
      onLine: lineOf(draft, pose),
    });
    const tried = tryCut(bench, before, groove);
    const isUnguided = tried.guide?.kind === "batten" && !lostItsEdge(bench, tried);
    if (tried.refusals.length > 0 || isUnguided || tried.takesMm2 < LEAST_LINE_MM2) continue;
    found.push({ draft: groove, rank: Math.abs(share - 0.5) });
  }
  return found.sort((a, b) => a.rank - b.rank).map((f) => f.draft);
}

/** How far the snipe bills are leaned to widen a V, degrees: less than half the beak's free angle, so that nothing is parted off between them. */
const V_LEAN_DEG = 28;

/** How often a leaning beak's nose is brought back over its line: each time it is off by a fraction of the last. */
const MOST_NOSE_TRIES = 4;

/** A V centred on a round's axis: both snipe bills upright, then, in a second set, leaned to widen it. */
function openedV(bench: Bench, draft: PlaneDraft, pose: Pose): PlaneDraft[][] {
  const left = bench.tools.find((t) => t.plane.kind === "snipe bill" && t.plane.hand === "left");
  const right = bench.tools.find((t) => t.plane.kind === "snipe bill" && t.plane.hand === "right");
  if (!left || !right) return [];
  const upright = uprightTiltDeg(draft.cantDeg);
  const axis = turned(turnOf(upright), { x: pose[0], y: pose[1] });
  const line = (tool: Tool, sign: -1 | 1, leanDeg: number): PlaneDraft | null => {
    const tiltDeg = tidy(upright + leanDeg);
    const turn = turnOf(tiltDeg);
    // The nose is set a little past the axis, so that the two lines meet and the V's foot is centred on it. Where the
    // section holds a leaning beak up, its nose is brought back over the line.
    let noseMm = axis.y;
    let foot = turned(turn, turnBack(upright, { x: axis.x + sign * 0.15, y: noseMm }));
    let low: number | null = null;
    for (let tries = 0; tries < MOST_NOSE_TRIES; tries++) {
      foot = turned(turn, turnBack(upright, { x: axis.x + sign * 0.15, y: noseMm }));
      low = lowestAt(bench, tool, tiltDeg, foot.x, bench.shavings.ordinaryMm);
      if (low === null) return null;
      noseMm = turned(turnOf(upright), turnBack(tiltDeg, { x: foot.x, y: low })).y;
    }
    if (low === null) return null;
    return planeDraft(bench, {
      work: "open V",
      purpose: "guide",
      cantDeg: draft.cantDeg,
      shapes: [],
      tool,
      runs: [[poseAt(tiltDeg, foot.x, low)]],
      onLine: lineOf(draft, pose),
    });
  };
  const first = [line(left, -1, 0), line(right, 1, 0)];
  // Leaned to the right (a negative lean) the left-hand beak's slope lies flatter, and the other way round.
  const second = [line(left, -1, -V_LEAN_DEG), line(right, 1, V_LEAN_DEG)];
  const whole = (drafts: (PlaneDraft | null)[]): drafts is PlaneDraft[] => drafts.every((d) => d !== null);
  const sets: PlaneDraft[][] = [];
  if (whole(first)) sets.push(first);
  if (whole(first) && whole(second)) sets.push([...first, ...second]);
  return sets;
}

function turnBack(tiltDeg: number, p: { x: number; y: number }) {
  const turn = turnOf(tiltDeg);
  return { x: p.x * turn.cos - p.y * turn.sin, y: p.x * turn.sin + p.y * turn.cos };
}

/**
 * Shavings off the higher of two arrises that make a curved plane lie even: where it touches on one side only, a
 * flat plane laid along the sole's own slope there takes that arris down until the other side bears too.
 */
export function evenedArrises(bench: Bench, before: Region, draft: PlaneDraft): PlaneDraft[] {
  const found: PlaneDraft[] = [];
  for (const pose of seatPoses(draft)) {
    const tiltDeg = pose[2];
    const profile = seenAt(before, tiltDeg);
    const aim = turned(turnOf(tiltDeg), { x: pose[0], y: pose[1] }).x;
    const shape = draft.cut.shape;
    const half = shape.widthMm * HALF_APART_RATIO;
    const left = restOn(profile, shape, aim, {
      toMm: -half,
      fromMm: shape.leftMm + bench.limits.bodyClearanceMm,
    });
    const right = restOn(profile, shape, aim, {
      fromMm: half,
      toMm: shape.rightMm - bench.limits.bodyClearanceMm,
    });
    if (!left || !right) continue;
    const [high, low] = left.heightMm > right.heightMm ? [left, right] : [right, left];
    if (high.heightMm - low.heightMm < LEAST_UNEVEN_MM) continue;
    found.push(...arrisLowered(bench, draft, tiltDeg, aim, high.touchXMm - aim, low.heightMm));
  }
  return found;
}

/** How far from its axis, as a share of the width, a curved plane's two bearings must lie at least. */
const HALF_APART_RATIO = 0.12;
const LEAST_UNEVEN_MM = 0.03;

function arrisLowered(
  bench: Bench,
  draft: PlaneDraft,
  tiltDeg: number,
  aim: number,
  touch: number,
  heightMm: number,
): PlaneDraft[] {
  const shape = draft.cut.shape;
  const h = SLOPE_STEP_MM;
  const slope = (soleHeightMm(shape, touch + h) - soleHeightMm(shape, touch - h)) / (2 * h);
  const flatTilt = tidy(tiltDeg + toDeg(Math.atan(slope)));
  if (Math.abs(leanDeg(flatTilt, draft.cantDeg)) > bench.limits.leanDeg) return [];
  const at = turnBack(tiltDeg, { x: aim + touch, y: heightMm + soleHeightMm(shape, touch) });
  const place = turned(turnOf(flatTilt), at);
  const drafts: PlaneDraft[] = [];
  for (const tool of bench.tools) {
    if (tool.plane.kind !== "rebate" && tool.plane.kind !== "smoother") continue;
    const shift = place.x - (tool.sole.leftMm + tool.sole.rightMm) / 2;
    const low = lowestAt(bench, tool, flatTilt, shift, bench.shavings.lastMm);
    if (low !== null && low > place.y) continue;
    drafts.push(
      planeDraft(bench, {
        work: Math.abs(leanDeg(flatTilt, draft.cantDeg)) < bench.limits.leaningFromDeg ? "step" : "chamfer",
        purpose: "waste",
        cantDeg: draft.cantDeg,
        shapes: [],
        tool,
        runs: [[poseAt(flatTilt, shift, place.y)]],
        ...(draft.shapes[0] === undefined ? {} : { roomFor: draft.shapes[0] }),
      }),
    );
  }
  return drafts;
}

/** Step over which a sole's slope is taken, mm. */
const SLOPE_STEP_MM = 0.01;

/** The line of a curve to come: its axis, in the pose it is begun in. */
function lineOf(draft: PlaneDraft, pose: Pose): SharedLine {
  return { at: { x: pose[0], y: pose[1] }, forPiece: draft.shapes[0] ?? -1 };
}

/** Poses of a cut at which a seat is worth making: the one nearest to upright, and the middle of its rock. */
function seatPoses(draft: PlaneDraft): Pose[] {
  const poses = draft.runs.flat();
  const upright = uprightTiltDeg(draft.cantDeg);
  const nearest = (wanted: number): Pose =>
    poses.reduce((a, b) => (Math.abs(b[2] - wanted) < Math.abs(a[2] - wanted) - SAME_LEAN_DEG ? b : a));
  const first = nearest(upright);
  if (!draft.rock) return [first];
  const middle = nearest((draft.rock.lowDeg + draft.rock.highDeg) / 2);
  return first === middle ? [first] : [first, middle];
}
