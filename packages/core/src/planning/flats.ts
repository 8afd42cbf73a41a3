/**
 * Cuts that finish the straight pieces of a section: floors under a flat sole, and walls along a plane's side.
 *
 * A floor is cut by a flat plane standing square on it. Seen from that plane the piece is level; to either side the
 * section falls away or rises, and the sole must lie between the rises. A wall stands beside a plane's side: the
 * plane is held along it, its sole's end at the wall, as deep as the section beside the wall allows.
 */
import {
  cutAway,
  leanDeg,
  type Profile,
  type Run,
  restBesideWalls,
  turned,
  turnOf,
} from "../cutting/index.ts";
import { OVERCUT_MM, SAME_POINT_MM, SAME_SCORE } from "../measure/index.ts";
import type { Bench, Tool } from "./bench.ts";
import { areaOf, type PlaneDraft, planeDraft, poseAt, tidy } from "./draft-cut.ts";
import { cantFor } from "./turning.ts";
import type { WorkedPiece } from "./worked-piece.ts";

/** Level stretch of the section in a plane's upright frame, and how far a sole may reach beyond it. */
export interface FloorSpan {
  readonly tiltDeg: number;
  readonly heightMm: number;
  readonly leftMm: number;
  readonly rightMm: number;
  /** Where the section rises above the floor to the left and right; infinite where it never does. */
  readonly leftStopMm: number;
  readonly rightStopMm: number;
}

const FLAT_KINDS_FOR_FLOORS = new Set(["rebate", "moving fillister", "smoother", "plough"]);
const MOST_WIDTHS = 6;

/** Every way to cut a straight piece as a floor with one flat plane, the fewest widths first. */
export function floorCuts(bench: Bench, piece: WorkedPiece): PlaneDraft[] {
  const span = floorSpan(bench, piece);
  const cant = cantFor(bench, span.tiltDeg);
  if (cant === null) return [];
  const found: { draft: PlaneDraft; rank: number }[] = [];
  const leaning = Math.abs(leanDeg(span.tiltDeg, cant)) >= bench.limits.leaningFromDeg;
  for (const tool of bench.tools) {
    if (!FLAT_KINDS_FOR_FLOORS.has(tool.plane.kind) || (leaning && isFenced(tool))) continue;
    for (const shifts of placesOver(span, tool, bench)) {
      if (!sparesTips(span, tool, bench, shifts)) continue;
      const runs: Run[] = shifts.map((shift) => [poseAt(span.tiltDeg, shift, span.heightMm)]);
      const draft = planeDraft(bench, {
        work: leaning ? "chamfer" : "step",
        purpose: "shape",
        cantDeg: cant,
        shapes: [piece.index],
        tool,
        runs,
      });
      const takesMm2 = areaOf(bench.startRegion) - areaOf(cutAway(bench.startRegion, draft.cut.sweep));
      const spared = Math.min(MOST_SPARED, takesMm2 * SPARED_PER_MM2);
      found.push({
        draft,
        rank: rankOf(tool, runs.length, span) + guideRank(bench, span, tool, shifts) - spared,
      });
    }
  }
  return found.sort((a, b) => a.rank - b.rank).map((f) => f.draft);
}

/** Planes whose fence keeps them upright: leaned they have nothing to run on. */
function isFenced(tool: Tool): boolean {
  return tool.plane.kind === "plough" || tool.plane.kind === "moving fillister";
}

/** Fewest widths first; then the plane that overhangs least, so that a fence or finger finds the edge. */
function rankOf(tool: Tool, widths: number, span: FloorSpan): number {
  const over = Math.max(0, tool.sole.widthMm - (span.rightMm - span.leftMm));
  const ploughed = tool.plane.kind === "plough" ? 5 : 0;
  return widths * 1000 + over * 0.3 + ploughed;
}

/** Waste that goes with the floor need not be taken by a cut of its own: what a mm² of it counts, and at most. */
const SPARED_PER_MM2 = 0.5;
const MOST_SPARED = 60;

/**
 * Where a flat sole can be set on the stretch: as `shiftsOver` has it, and, where the section falls away on both
 * sides, as far to either side as it goes, which takes the waste beside the floor along.
 */
function placesOver(span: FloorSpan, tool: Tool, bench: Bench): number[][] {
  const first = shiftsOver(span, tool, bench);
  if (!first) return [];
  const width = tool.sole.widthMm;
  const { leftMm, rightMm, leftStopMm, rightStopMm } = span;
  const isOpen = leftStopMm < leftMm - OVERCUT_MM && rightStopMm > rightMm + OVERCUT_MM;
  if (first.length > 1 || !isOpen) return [first];
  const places = [first];
  for (const left of [Math.max(leftStopMm, rightMm - width), Math.min(leftMm, rightStopMm - width)]) {
    const shift = left - tool.sole.leftMm;
    if (Math.abs(shift - first[0]) > SAME_POINT_MM) places.push([shift]);
  }
  return places;
}

/** Whether a sole a hair wider than the room between two rises runs into walls only, and takes no tip of a cusp along. */
function sparesTips(span: FloorSpan, tool: Tool, bench: Bench, shifts: readonly number[]): boolean {
  if (tool.sole.widthMm <= span.rightStopMm - span.leftStopMm) return true;
  const profile = bench.profileOfPlanned(span.tiltDeg);
  return shifts.every((shift) => {
    const rest = restBesideWalls(profile, tool.shape, shift, { gapMm: OVERCUT_MM });
    return !rest || rest.heightMm <= span.heightMm + OVERCUT_MM;
  });
}

/** A plane that hangs over an edge within a fence's reach has something to run on; one in the middle of a face has not. */
function guideRank(bench: Bench, span: FloorSpan, tool: Tool, shifts: readonly number[]): number {
  const { low, high } = edgesAcross(bench, span.tiltDeg);
  const left = Math.min(...shifts) + tool.sole.leftMm;
  const right = Math.max(...shifts) + tool.sole.rightMm;
  const overLeft = left < low && right - low <= bench.limits.fenceMm;
  const overRight = right > high && high - left <= bench.limits.fenceMm;
  if (overLeft || overRight) return 0;
  if (tool.plane.kind === "plough" || tool.plane.kind === "moving fillister") return FENCED_RANK;
  return UNGUIDED_RANK;
}

/** Where the stick ends to the left and right in a plane's upright frame. */
function edgesAcross(bench: Bench, tiltDeg: number) {
  const turn = turnOf(tiltDeg);
  const { minX, maxX, minY, maxY } = bench.box;
  const xs = [minX, maxX].flatMap((x) => [minY, maxY].map((y) => turned(turn, { x, y }).x));
  return { low: Math.min(...xs), high: Math.max(...xs) };
}

const FENCED_RANK = 45;
const UNGUIDED_RANK = 90;

export function floorSpan(bench: Bench, piece: WorkedPiece): FloorSpan {
  const tiltDeg = tidy(piece.startTiltDeg);
  const turn = turnOf(tiltDeg);
  const a = turned(turn, piece.piece.from);
  const b = turned(turn, piece.piece.to);
  const heightMm = Math.max(a.y, b.y);
  const leftMm = Math.min(a.x, b.x);
  const rightMm = Math.max(a.x, b.x);
  const profile = bench.profileOfPlanned(tiltDeg);
  // A plane that leans into the corner under an overhang leaves more than it takes: that is for a bill or a chisel.
  const isUpright = Math.abs(leanDeg(tiltDeg, cantFor(bench, tiltDeg) ?? 0)) < bench.limits.leaningFromDeg;
  const open = isUpright ? openStretch(profile, heightMm, leftMm, rightMm) : { leftMm, rightMm };
  const { left, right } = risesBeside(profile, heightMm, open.leftMm, open.rightMm);
  return { tiltDeg, heightMm, ...open, leftStopMm: left, rightStopMm: right };
}

/** Less of a floor that runs in under an overhang than this is not worth a cut, mm. */
const LEAST_OPEN_MM = 1;

/** The stretch of a floor that nothing overhangs: the section may lean out over either of its ends. */
function openStretch(profile: Profile, heightMm: number, leftMm: number, rightMm: number) {
  const over = overEdges(profile, heightMm);
  const open = { leftMm, rightMm };
  // What hangs over an end may be of many edges: each lets the next be seen, from either side alike.
  for (let i = 0; i < over.length; i++) {
    const before = { ...open };
    for (const { from, to } of over) {
      const isOver = to > open.leftMm + OVERCUT_MM && from < open.rightMm - OVERCUT_MM;
      if (!isOver) continue;
      if (to >= open.rightMm - OVERCUT_MM && from > open.leftMm + LEAST_OPEN_MM) open.rightMm = from;
      else if (from <= open.leftMm + OVERCUT_MM && to < open.rightMm - LEAST_OPEN_MM) open.leftMm = to;
    }
    if (open.leftMm === before.leftMm && open.rightMm === before.rightMm) break;
  }
  return open;
}

/** The stretches of a profile's edges that lie above a height. */
function overEdges(profile: Profile, heightMm: number): { readonly from: number; readonly to: number }[] {
  const limit = heightMm + OVERCUT_MM / 4;
  const found: { readonly from: number; readonly to: number }[] = [];
  for (let i = 0; i < profile.count; i++) {
    const y0 = profile.y0[i];
    const y1 = profile.y1[i];
    if (y0 <= limit && y1 <= limit) continue;
    const x0 = profile.x0[i];
    const x1 = profile.x1[i];
    const t = y0 === y1 ? 0 : (limit - y0) / (y1 - y0);
    const crossing = x0 + (x1 - x0) * t;
    // The part of the edge above the floor: from the crossing to its higher end.
    found.push({ from: y0 > limit ? x0 : crossing, to: y1 > limit ? x1 : crossing });
  }
  return found;
}

/** How far to either side of a level stretch the outline stays at or below its height. */
function risesBeside(profile: Profile, heightMm: number, leftMm: number, rightMm: number) {
  let left = Number.NEGATIVE_INFINITY;
  let right = Number.POSITIVE_INFINITY;
  for (const { from, to } of overEdges(profile, heightMm)) {
    if (to <= leftMm + OVERCUT_MM) left = Math.max(left, Math.min(to, leftMm));
    else if (from >= rightMm - OVERCUT_MM) right = Math.min(right, Math.max(from, rightMm));
    else {
      left = leftMm;
      right = leftMm;
    }
  }
  return { left, right };
}

/** Places across (of the sole's origin) that let a flat sole cover the whole stretch, or null if it cannot. */
function shiftsOver(span: FloorSpan, tool: Tool, bench: Bench): number[] | null {
  const width = tool.sole.widthMm;
  const { leftMm, rightMm, leftStopMm, rightStopMm } = span;
  const room = rightStopMm - leftStopMm;
  if (width > room + OVERCUT_MM) return null;
  const beside = leftStopMm >= leftMm - OVERCUT_MM || rightStopMm <= rightMm + OVERCUT_MM;
  if (beside && !tool.sole.cutsWall.left && !tool.sole.cutsWall.right) return null;
  const length = rightMm - leftMm;
  const origin = (left: number) => left - tool.sole.leftMm;
  if (width >= length) {
    // Against a rise where there is one; otherwise over the piece's middle, kept off the rises further out.
    const closedLeft = leftStopMm >= leftMm - OVERCUT_MM;
    const closedRight = rightStopMm <= rightMm + OVERCUT_MM;
    if (closedLeft) return [origin(leftMm)];
    if (closedRight) return [origin(rightMm - width)];
    const left = clamp((leftMm + rightMm - width) / 2, leftStopMm, rightStopMm - width);
    return [origin(left)];
  }
  const lap = bench.limits.bodyClearanceMm * 4;
  // A sole a hair narrower than the stretch still takes two widths.
  const count = Math.max(2, Math.ceil((length - lap) / (width - lap) - SAME_SCORE));
  if (count > MOST_WIDTHS) return null;
  // The stretch beside an edge of the stick is left by what the widths cover more than it: a sole set flush finds nothing to run on.
  const spareMm = count * (width - lap) + lap - length;
  const edges = edgesAcross(bench, span.tiltDeg);
  const goesOut = (stopMm: number, edgeMm: number, endMm: number, sign: -1 | 1) =>
    sign * (stopMm - endMm) > spareMm && sign * (edgeMm - endMm) < spareMm - SAME_POINT_MM;
  const first = goesOut(leftStopMm, edges.low, leftMm, -1) ? leftMm - spareMm : leftMm;
  const isOutRight = first === leftMm && goesOut(rightStopMm, edges.high, rightMm, 1);
  const last = (isOutRight ? rightMm + spareMm : rightMm) - width;
  return Array.from({ length: count }, (_, i) => origin(first + ((last - first) * i) / (count - 1)));
}

function clamp(x: number, low: number, high: number): number {
  return Math.max(low, Math.min(high, x));
}

/** Every way to cut a straight piece as a wall beside a plane, the one that leaves least standing first. */
export function wallCuts(bench: Bench, piece: WorkedPiece): PlaneDraft[] {
  const found: { draft: PlaneDraft; rank: number }[] = [];
  for (const quarter of [90, -90]) {
    const tiltDeg = tidy(normal(piece.startTiltDeg + quarter));
    const cantDeg = cantFor(bench, tiltDeg);
    if (cantDeg === null) continue;
    const turn = turnOf(tiltDeg);
    const a = turned(turn, piece.piece.from);
    const b = turned(turn, piece.piece.to);
    const foot = Math.min(a.y, b.y);
    const height = Math.abs(a.y - b.y);
    // Seen upright the wood lies to the left of an edge running up (anticlockwise), so the plane runs to its right.
    const wallOnLeft = b.y > a.y;
    const wall: WallLine = {
      tiltDeg,
      cantDeg,
      atMm: (a.x + b.x) / 2,
      footMm: foot,
      side: wallOnLeft ? 1 : -1,
    };
    for (const tool of bench.tools) {
      const cutsIt = wallOnLeft ? tool.sole.cutsWall.left : tool.sole.cutsWall.right;
      if (!cutsIt || tool.plane.kind === "smoother" || tool.plane.kind === "bead") continue;
      if (Math.abs(leanDeg(tiltDeg, cantDeg)) >= bench.limits.leaningFromDeg && isFenced(tool)) continue;
      const spreadMm = Math.abs(piece.piece.to.x - piece.piece.from.x);
      const pared = paredRuns(bench, wall, tool, spreadMm);
      for (const runs of pared ? [pared] : [runsToEdge(bench, wall, tool), oneRun(bench, wall, tool)]) {
        if (!runs) continue;
        const left = runs.heightMm - foot;
        if (left > height - OVERCUT_MM) continue;
        const snipe = tool.plane.kind === "snipe bill";
        const draft = planeDraft(bench, {
          work: snipe
            ? "snipe line"
            : runs.reachesEdge
              ? "step"
              : tool.plane.kind === "plough"
                ? "groove"
                : "wall",
          purpose: snipe ? "relief" : "shape",
          cantDeg,
          shapes: [piece.index],
          tool,
          runs: runs.runs,
        });
        // A step that runs out over an edge in one width is guided by it; a beak by its line; a groove wants a fence.
        // In several widths the one beside the wall has nothing to run on.
        const plough = tool.plane.kind === "plough";
        const overEdge = runs.reachesEdge && runs.runs.length === 1;
        const guided = overEdge
          ? plough
            ? 2
            : 0
          : snipe
            ? height > DEEP_FOR_A_BEAK_MM
              ? 6
              : 3
            : plough
              ? 5
              : 12;
        const rank =
          left * 100 +
          guided +
          (runs.runs.length - 1) * 2 +
          tool.sole.widthMm / 100 +
          Math.abs(leanDeg(tiltDeg, cantDeg)) / 10;
        found.push({ draft, rank });
      }
    }
  }
  return found.sort((p, q) => p.rank - q.rank).map((f) => f.draft);
}

/** A wall in a plane's upright frame: where across, its foot, and the side the plane runs on (+1: to its right). */
interface WallLine {
  readonly tiltDeg: number;
  readonly cantDeg: number;
  readonly atMm: number;
  readonly footMm: number;
  readonly side: 1 | -1;
}

interface WallRuns {
  readonly runs: readonly Run[];
  readonly heightMm: number;
  readonly reachesEdge: boolean;
}

function oneRun(bench: Bench, wall: WallLine, tool: Tool): WallRuns | null {
  const shift = wall.side > 0 ? wall.atMm - tool.sole.leftMm : wall.atMm - tool.sole.rightMm;
  const heightMm = Math.max(wall.footMm, lowest(bench, wall.tiltDeg, tool, [shift]));
  const far = wall.atMm + wall.side * tool.sole.widthMm;
  const reachesEdge = wall.side * (edgeBeside(bench, wall) - far) < 0;
  return { runs: [[poseAt(wall.tiltDeg, shift, heightMm)]], heightMm, reachesEdge };
}

/** A step from the wall out over the stick's edge in several widths, the outermost first. */
function runsToEdge(bench: Bench, wall: WallLine, tool: Tool): WallRuns | null {
  if (tool.plane.kind !== "rebate" && tool.plane.kind !== "moving fillister") return null;
  const room = wall.side * (edgeBeside(bench, wall) - wall.atMm);
  const width = tool.sole.widthMm;
  if (room <= width || room > width * MOST_WALL_WIDTHS) return null;
  const lap = width / 10;
  const count = Math.ceil((room - lap) / (width - lap));
  if (count > MOST_WALL_WIDTHS) return null;
  const shifts = Array.from({ length: count }, (_, i) => {
    const near = wall.atMm + wall.side * i * (width - lap);
    return wall.side > 0 ? near - tool.sole.leftMm : near - tool.sole.rightMm;
  });
  const heightMm = Math.max(wall.footMm, lowest(bench, wall.tiltDeg, tool, shifts));
  const runs = [...shifts].reverse().map((shift): Run => [poseAt(wall.tiltDeg, shift, heightMm)]);
  return { runs, heightMm, reachesEdge: true };
}

/**
 * A side rebate plane under a wall that leans out over its floor: pared from outside, a foot's width at a time, the last
 * time along the wall. Null for other planes, and where one setting does.
 */
function paredRuns(bench: Bench, wall: WallLine, tool: Tool, spreadMm: number): WallRuns | null {
  if (tool.plane.kind !== "side rebate") return null;
  const width = tool.sole.widthMm;
  const step = width * (1 - PARED_LAP_RATIO);
  const more = Math.ceil((spreadMm - width) / step);
  if (more < 1 || more > MOST_PARED) return null;
  const own = wall.side > 0 ? wall.atMm - tool.sole.leftMm : wall.atMm - tool.sole.rightMm;
  const runs = Array.from({ length: more + 1 }, (_, i): Run => {
    const shift = own + wall.side * step * (more - i);
    return [poseAt(wall.tiltDeg, shift, Math.max(wall.footMm, lowest(bench, wall.tiltDeg, tool, [shift])))];
  });
  const heightMm = Math.max(wall.footMm, lowest(bench, wall.tiltDeg, tool, [own]));
  return { runs, heightMm, reachesEdge: false };
}

/** How far the settings of a plane that pares lap over one another, share of its foot, and most of them. */
const PARED_LAP_RATIO = 0.1;
const MOST_PARED = 6;

const MOST_WALL_WIDTHS = 3;
/** Above this a wall is a plough's or fillister's work rather than a beak's, mm. */
const DEEP_FOR_A_BEAK_MM = 2;

function lowest(bench: Bench, tiltDeg: number, tool: Tool, shifts: readonly number[]): number {
  let height = Number.NEGATIVE_INFINITY;
  for (const shift of shifts) {
    const rest = restBesideWalls(bench.profileOfPlanned(tiltDeg), tool.shape, shift, {
      gapMm: WALL_GAP_MM,
    });
    if (rest) height = Math.max(height, rest.heightMm);
  }
  return height;
}

/** Where the stick ends on the plane's side of a wall, in the upright frame. */
function edgeBeside(bench: Bench, wall: WallLine): number {
  const { low, high } = edgesAcross(bench, wall.tiltDeg);
  return wall.side > 0 ? high : low;
}

/** A sole that touches the very wall it cuts is not stopped by it. */
const WALL_GAP_MM = OVERCUT_MM / 4;

function normal(deg: number): number {
  const d = ((deg % 360) + 360) % 360;
  return d > 180 ? d - 360 : d;
}
