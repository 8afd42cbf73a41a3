/** One cut made on the wood as it stands: what it takes, what wall it leaves, what holds the plane, what falls off. */
import {
  type Chain,
  difference,
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
import { type SoleEnds, wallsBeside } from "./wall.ts";

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

export function cutAway(before: Region, sweep: Region): Region {
  return difference(before, sweep);
}

/** Height of the bench under the stick as it is turned for a cut, in the turned frame, mm. */
export function benchLevelMm(stick: Ring, cantDeg: number): number {
  // Turned anticlockwise by the cant is what a frame turned clockwise by it sees.
  const turn = turnOf(-cantDeg);
  let level = Number.POSITIVE_INFINITY;
  for (const piece of stick.pieces) level = Math.min(level, turned(turn, piece.from).y);
  return level;
}

/** How far below the bench any pose of the cut would have to go, mm; 0 if none. */
export function belowBenchMm(cut: CutShape, benchMm: number): number {
  let deepest = 0;
  const turn = turnOf(-cut.cantDeg);
  for (const pose of outermostPoses(cut.runs)) {
    for (const piece of placedSole(cut.sole, pose).pieces) {
      deepest = Math.max(deepest, benchMm - turned(turn, piece.from).y, benchMm - turned(turn, piece.to).y);
    }
  }
  return deepest;
}

/** Area of standing wood that the wider body above a small plane's sole would run into, mm². */
export function bodyMeetsMm2(wood: Region, cut: CutShape, reachMm: number): number {
  const shoulder = cut.shoulder;
  if (!shoulder) return 0;
  const { minY } = extentsOf(cut.sole);
  let most = 0;
  for (const pose of outermostPoses(cut.runs)) {
    const up = turnedBack(turnOf(pose[2]), { x: 0, y: reachMm });
    const a = placed(pose, { x: -shoulder.widthMm / 2, y: minY + shoulder.heightMm });
    const b = placed(pose, { x: shoulder.widthMm / 2, y: minY + shoulder.heightMm });
    const body = regionOfOutline(
      [a.x, b.x, b.x + up.x, a.x + up.x],
      [a.y, b.y, b.y + up.y, a.y + up.y],
      [0, 0, 0, 0],
    );
    most = Math.max(most, regionAreaMm2(intersection(wood, body)));
  }
  return most;
}
