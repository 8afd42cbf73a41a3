/** One cut made on the wood as it stands: what it takes, what wall it leaves, what holds the plane, what falls off. */
import {
  type Chain,
  difference,
  distanceMm,
  extentsOf,
  intersection,
  type Point,
  type Region,
  type Ring,
  regionAreaMm2,
  splitRegion,
} from "../curve/index.ts";
import type { Shoulder } from "../shelf/index.ts";
import type { CuttingLimits } from "./limits.ts";
import { regionOfOutline } from "./outline.ts";
import { turned, turnedBack, turnOf } from "./profile.ts";
import { type Seat, seatOf } from "./seat.ts";
import { type SoleShape, soleShape } from "./sole-shape.ts";
import { placed, placedSole, type SweepOptions, sweepOf } from "./sweep.ts";
import type { Pose, Run } from "./types.ts";
import { type SoleEnds, spansAlong, wallsBeside } from "./wall.ts";

/** A cut as geometry, ready to be made on any wood. */
export interface CutShape {
  readonly sole: Chain;
  readonly shape: SoleShape;
  readonly ends: SoleEnds;
  readonly runs: readonly Run[];
  readonly cantDeg: number;
  readonly sweep: Region;
  readonly shoulder?: Shoulder;
}

/** A cut of a plane: its sweep is computed once, here. */
export function cutShape(
  sole: Chain,
  runs: readonly Run[],
  cantDeg: number,
  options: SweepOptions,
  shoulder?: Shoulder,
): CutShape {
  const first = sole.pieces[0];
  const last = sole.pieces[sole.pieces.length - 1];
  const base = {
    sole,
    shape: soleShape(sole),
    ends: { left: first.from, right: last.to },
    runs,
    cantDeg,
    sweep: sweepOf(sole, runs, options),
  };
  return shoulder ? { ...base, shoulder } : base;
}

/** What lies right of a saw's line, as a region reaching beyond every stick. */
export function sawnAway(from: Point, to: Point, reachMm: number): Region {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  const ux = (to.x - from.x) / length;
  const uy = (to.y - from.y) / length;
  const a = { x: from.x - ux * reachMm, y: from.y - uy * reachMm };
  const b = { x: to.x + ux * reachMm, y: to.y + uy * reachMm };
  const off = { x: uy * reachMm, y: -ux * reachMm };
  return regionOfOutline(
    [a.x, a.x + off.x, b.x + off.x, b.x],
    [a.y, a.y + off.y, b.y + off.y, b.y],
    [0, 0, 0, 0],
  );
}

/** Poses of a cut at which a wall can stand: each run's ends and its outermost places and leans. */
export function outermostPoses(runs: readonly Run[]): readonly Pose[] {
  const poses: Pose[] = [];
  for (const run of runs) {
    const keep = new Set<Pose>([run[0], run[run.length - 1]]);
    for (const by of [0, 1, 2] as const) {
      keep.add(run.reduce((a, b) => (b[by] < a[by] ? b : a)));
      keep.add(run.reduce((a, b) => (b[by] > a[by] ? b : a)));
    }
    poses.push(...keep);
  }
  return poses;
}

/** New wall at the left and at the right of a cut, the tallest over its outermost poses, mm. */
export function wallsOfCut(before: Region, after: Region, cut: CutShape): readonly [number, number] {
  let left = 0;
  let right = 0;
  for (const pose of outermostPoses(cut.runs)) {
    const [l, r] = wallsBeside(before, after, cut.ends, pose);
    left = Math.max(left, l);
    right = Math.max(right, r);
  }
  return [left, right];
}

/** The seat of a cut's first pose. */
export function firstSeat(before: Region, cut: CutShape, limits: CuttingLimits): Seat | null {
  return seatOf(before, cut.shape, cut.runs[0][0], limits);
}

/** Area of the pieces that a cut parts off the stick, the largest piece being the stick, mm². */
export function looseWoodMm2(after: Region): number {
  const parts = splitRegion(after);
  let loose = 0;
  for (let i = 1; i < parts.length; i++) loose += regionAreaMm2(parts[i]);
  return loose;
}

/**
 * Area of the largest piece that one cut parts off, mm²; 0 if none. What was loose before does not count, however
 * much of it the cut takes.
 */
export function partedOffMm2(before: Region, after: Region): number {
  const parts = splitRegion(after);
  if (parts.length < 2) return 0;
  const stick = splitRegion(before)[0];
  if (stick === undefined) return 0;
  let most = 0;
  for (const part of parts.slice(1)) most = Math.max(most, regionAreaMm2(intersection(part, stick)));
  return most;
}

export function cutAway(before: Region, sweep: Region): Region {
  return difference(before, sweep);
}

/** Height of the bench under the stick as it is turned for a cut, in the turned frame, mm. */
export function benchLevelMm(stick: Ring, cantDeg: number): number {
  return extentsOf(placedSole({ pieces: stick.pieces }, [0, 0, cantDeg])).minY;
}

/** How far below the bench any pose of the cut would have to go, mm; 0 if none. */
export function belowBenchMm(cut: CutShape, benchMm: number): number {
  let deepest = 0;
  // Turned anticlockwise by the cant is what a frame turned clockwise by it sees.
  const turn = turnOf(-cut.cantDeg);
  for (const run of cut.runs) {
    for (const [x, y, tiltDeg] of run) {
      const at = turned(turn, { x, y });
      // The whole sole, not its corners: a round hangs lowest in its middle.
      const { minY } = extentsOf(placedSole(cut.sole, [at.x, at.y, tiltDeg + cut.cantDeg]));
      deepest = Math.max(deepest, benchMm - minY);
    }
  }
  return deepest;
}

/** Area of standing wood that the wider body above a small plane's sole would run into in one of its poses, mm². */
export function bodyMeetsMm2(wood: Region, cut: CutShape, reachMm: number): number {
  const shoulder = cut.shoulder;
  if (!shoulder) return 0;
  const y = extentsOf(cut.sole).minY + shoulder.heightMm;
  const half = shoulder.widthMm / 2;
  let most = 0;
  for (const run of cut.runs) {
    for (const pose of run) {
      const left = placed(pose, { x: -half, y });
      const right = placed(pose, { x: half, y });
      const axis = turnedBack(turnOf(pose[2]), { x: 0, y: 1 });
      if (!meetsBody(wood, left, right, axis)) continue;
      const up = { x: axis.x * reachMm, y: axis.y * reachMm };
      const body = regionOfOutline(
        [left.x, right.x, right.x + up.x, left.x + up.x],
        [left.y, right.y, right.y + up.y, left.y + up.y],
        [0, 0, 0, 0],
      );
      most = Math.max(most, regionAreaMm2(intersection(wood, body)));
    }
  }
  return most;
}

/**
 * Whether wood stands in the body from its lower corners up: it does where a corner of the wood lies inside, or where
 * one of the body's sides runs through wood. What comes in from below and goes out again below has a corner inside.
 */
function meetsBody(wood: Region, left: Point, right: Point, axis: Point): boolean {
  if (spansAlong(wood, left, axis).length > 0 || spansAlong(wood, right, axis).length > 0) return true;
  const width = distanceMm(left, right);
  return wood.some(({ xs, ys }) => {
    for (let i = 0; i < xs.length; i++) {
      const dx = xs[i] - left.x;
      const dy = ys[i] - left.y;
      const across = dx * axis.y - dy * axis.x;
      if (across > 0 && across < width && dx * axis.x + dy * axis.y > 0) return true;
    }
    return false;
  });
}
