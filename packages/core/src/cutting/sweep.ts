/**
 * What a cut removes: the union, over the poses of its runs, of the sole swept up along the plane's own axis.
 *
 * Frame: the stick's own, mm; tilt in degrees anticlockwise, 0 = the plane's axis along +y.
 */
import {
  type Arc,
  arc,
  type Chain,
  circleOf,
  distanceMm,
  flattenPiece,
  line,
  type Piece,
  type Point,
  type Region,
  union,
} from "../curve/index.ts";
import { POSE_ROUNDING, SAME_CIRCLE_MM, toRad } from "../measure/index.ts";
import type { CurveBook } from "./curve-book.ts";
import { POSES_APART } from "./limits.ts";
import { regionOfOutline } from "./outline.ts";
import { type Turn, turnedBack, turnOf } from "./profile.ts";
import type { Pose, Run } from "./types.ts";

export interface SweepOptions {
  /** How far up along the axis a strip is drawn; beyond every stick it is used on. */
  readonly reachMm: number;
  readonly chordTolMm: number;
  readonly book: CurveBook;
}

/** A point of the plane's own frame, in the stick's frame. */
export function placed(pose: Pose, p: Point, turn: Turn = turnOf(pose[2])): Point {
  const q = turnedBack(turn, p);
  return { x: q.x + pose[0], y: q.y + pose[1] };
}

/** The sole in its place on the wood, as a chain in the stick's frame. */
export function placedSole(sole: Chain, pose: Pose): Chain {
  const turn = turnOf(pose[2]);
  return {
    pieces: sole.pieces.map((piece): Piece => {
      const from = placed(pose, piece.from, turn);
      const to = placed(pose, piece.to, turn);
      return piece.kind === "line" ? line(from, to) : arc(from, to, piece.bulge);
    }),
  };
}

/** The strip of one pose: the sole, placed, swept up along the axis by `reachMm`. */
export function stripOf(sole: Chain, pose: Pose, options: SweepOptions): Region {
  const chain = placedSole(sole, pose);
  const xs: number[] = [];
  const ys: number[] = [];
  const sources: number[] = [];
  for (const piece of chain.pieces) {
    let id = 0;
    if (piece.kind === "arc") {
      const circle = circleOf(piece);
      id = options.book.idOf(circle.centre, circle.radiusMm);
    }
    const points = flattenPiece(piece, options.chordTolMm);
    for (let i = 0; i + 1 < points.length; i++) {
      xs.push(points[i].x);
      ys.push(points[i].y);
      sources.push(id);
    }
  }
  const turn = turnOf(pose[2]);
  const up = turnedBack(turn, { x: 0, y: options.reachMm });
  const first = (chain.pieces[0] as Piece).from;
  const last = (chain.pieces[chain.pieces.length - 1] as Piece).to;
  for (const p of [last, { x: last.x + up.x, y: last.y + up.y }, { x: first.x + up.x, y: first.y + up.y }]) {
    xs.push(p.x);
    ys.push(p.y);
    sources.push(0);
  }
  return regionOfOutline(xs, ys, sources);
}

/** What all runs of a cut remove together. */
export function sweepOf(sole: Chain, runs: readonly Run[], options: SweepOptions): Region {
  const parts = runs.map((run) => sweepOfRun(sole, run, options));
  return unionOf(parts);
}

function sweepOfRun(sole: Chain, run: Run, options: SweepOptions): Region {
  const rocked = rockedRun(sole, run);
  if (rocked) return rockedSweep(sole, rocked, options);
  return unionOf(run.map((pose) => stripOf(sole, pose, options)));
}

/** Strips joined at once; neighbours overlap nearly all over, so that joining few first leaves little to join. */
const JOINED_AT_ONCE = 8;

function unionOf(strips: readonly Region[]): Region {
  if (strips.length === 1) return strips[0] as Region;
  if (strips.length <= JOINED_AT_ONCE) return union(...strips);
  const size = Math.ceil(strips.length / JOINED_AT_ONCE);
  const groups: Region[] = [];
  for (let i = 0; i < strips.length; i += size) groups.push(unionOf(strips.slice(i, i + size)));
  return union(...groups);
}

interface Rock {
  readonly centre: Point;
  readonly radiusMm: number;
  /** +1 for a round (its centre above the sole), -1 for a hollow. */
  readonly sign: 1 | -1;
  /** The sole, in the plane's own frame. */
  readonly arc: Arc;
  readonly low: Pose;
  readonly high: Pose;
}

/**
 * A run that only rocks a circular sole about the centre of its arc, without leaps; null for any other. The arc has to
 * pass under its own centre: what lies between two leans of an arc all on one side is no wedge between two axes.
 */
function rockedRun(sole: Chain, run: Run): Rock | null {
  const only = sole.pieces.length === 1 ? sole.pieces[0] : undefined;
  if (only?.kind !== "arc" || run.length < 3) return null;
  const own = circleOf(only);
  if (!(only.from.x < own.centre.x && only.to.x > own.centre.x)) return null;
  const centre = placed(run[0], own.centre);
  let low = run[0];
  let high = run[0];
  let last = run[0];
  for (const pose of run) {
    if (distanceMm(placed(pose, own.centre), centre) > SAME_CIRCLE_MM) return null;
    if (Math.abs(pose[2] - last[2]) > POSES_APART.deg + POSE_ROUNDING) return null;
    if (pose[2] < low[2]) low = pose;
    if (pose[2] > high[2]) high = pose;
    last = pose;
  }
  if (high[2] - low[2] > WIDEST_ROCK_DEG) return null;
  return { centre, radiusMm: own.radiusMm, sign: only.bulge > 0 ? 1 : -1, arc: only, low, high };
}

/** Beyond this the far end of the wedge between two axes would lie out of all reason; no hand rocks so far. */
const WIDEST_ROCK_DEG = 150;

/**
 * Rocking about the arc's centre from one lean to another removes the two outermost strips and what lies between
 * them: the wedge of directions between the two axes, outside the circle for a hollow, on both sides of the centre
 * for a round (inside the circle below, without end above). Every other strip lies within these.
 */
function rockedSweep(sole: Chain, rock: Rock, options: SweepOptions): Region {
  const id = options.book.idOf(rock.centre, rock.radiusMm);
  const strips = [stripOf(sole, rock.low, options), stripOf(sole, rock.high, options)];
  const from = placed(rock.low, soleMiddle(rock.arc));
  const to = placed(rock.high, soleMiddle(rock.arc));
  if (distanceMm(from, to) < SAME_CIRCLE_MM) return union(...strips);
  const spanDeg = rock.high[2] - rock.low[2];
  // As far from the centre as the strips' own far ends; between the axes it is a corner, since a chord would fall short.
  const farMm = options.reachMm + rock.radiusMm;
  const axis = (tiltDeg: number, lengthMm: number): Point => {
    const up = turnedBack(turnOf(tiltDeg), { x: 0, y: lengthMm });
    return { x: rock.centre.x + up.x, y: rock.centre.y + up.y };
  };
  const far = [
    axis(rock.high[2], farMm),
    axis((rock.low[2] + rock.high[2]) / 2, farMm / Math.cos(toRad(spanDeg / 2))),
    axis(rock.low[2], farMm),
  ];
  const edge = flattenPiece(arc(from, to, Math.tan(toRad(spanDeg) / 4)), options.chordTolMm);
  if (rock.sign < 0) return union(...strips, outline([...edge, ...far], edge.length - 1, id));
  const below = outline([...edge, rock.centre], edge.length - 1, id);
  const above = outline([rock.centre, ...far], 0, 0);
  return union(...strips, below, above);
}

/** The place of a circular sole on its axis, in the plane's own frame. */
function soleMiddle(sole: Arc): Point {
  const { centre, radiusMm } = circleOf(sole);
  return { x: centre.x, y: centre.y + (sole.bulge > 0 ? -1 : 1) * radiusMm };
}

function outline(points: readonly Point[], curvedEdges: number, id: number): Region {
  return regionOfOutline(
    points.map((p) => p.x),
    points.map((p) => p.y),
    points.map((_, i) => (i < curvedEdges ? id : 0)),
  );
}

/** How far up a strip must reach to pass right through any stick of this size, whatever its lean, mm. */
export function sweepReachMm(stick: { readonly pieces: readonly Piece[] }): number {
  let size = 0;
  for (const piece of stick.pieces) {
    for (const p of [piece.from, piece.to]) size = Math.max(size, Math.abs(p.x), Math.abs(p.y));
  }
  return 4 * size + 50;
}
