/**
 * What a cut removes: the union, over the poses of its runs, of the sole swept up along the plane's own axis.
 *
 * Frame: the stick's own, mm; tilt in degrees anticlockwise, 0 = the plane's axis along +y.
 */
import {
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
import { SAME_CIRCLE_MM } from "../measure/index.ts";
import type { CurveBook } from "./curve-book.ts";
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
  return parts.length === 1 ? (parts[0] as Region) : union(...parts);
}

function sweepOfRun(sole: Chain, run: Run, options: SweepOptions): Region {
  const rocked = rockedRun(sole, run);
  if (rocked) return rockedSweep(sole, rocked, options);
  const strips = run.map((pose) => stripOf(sole, pose, options));
  return strips.length === 1 ? (strips[0] as Region) : union(...strips);
}

interface Rock {
  readonly centre: Point;
  readonly radiusMm: number;
  /** +1 for a round (its centre above the sole), -1 for a hollow. */
  readonly sign: 1 | -1;
  readonly low: Pose;
  readonly high: Pose;
}

/** A run that only rocks a circular sole about the centre of its arc. */
function rockedRun(sole: Chain, run: Run): Rock | null {
  const only = sole.pieces.length === 1 ? sole.pieces[0] : undefined;
  if (!only || only.kind !== "arc" || run.length < 3) return null;
  const own = circleOf(only);
  const centre = placed(run[0], own.centre);
  let low = run[0];
  let high = run[0];
  for (const pose of run) {
    if (distanceMm(placed(pose, own.centre), centre) > SAME_CIRCLE_MM) return null;
    if (pose[2] < low[2]) low = pose;
    if (pose[2] > high[2]) high = pose;
  }
  if (high[2] - low[2] > 150) return null;
  return { centre, radiusMm: own.radiusMm, sign: only.bulge > 0 ? 1 : -1, low, high };
}

/**
 * Rocking about the arc's centre from one lean to another removes the two outermost strips and what lies between
 * them: the wedge of directions between the two axes, outside the circle for a hollow, on both sides of the centre
 * for a round (inside the circle below, without end above). Every other strip lies within these.
 */
function rockedSweep(sole: Chain, rock: Rock, options: SweepOptions): Region {
  const id = options.book.idOf(rock.centre, rock.radiusMm);
  const strips = [stripOf(sole, rock.low, options), stripOf(sole, rock.high, options)];
  const middle = (pose: Pose): Point => placed(pose, { x: 0, y: soleMiddleY(sole) });
  const from = middle(rock.low);
  const to = middle(rock.high);
  const far = (pose: Pose): Point => {
    const up = turnedBack(turnOf(pose[2]), { x: 0, y: options.reachMm });
    return { x: rock.centre.x + up.x, y: rock.centre.y + up.y };
  };
  const bulge = Math.tan(((rock.high[2] - rock.low[2]) * Math.PI) / 720);
  if (distanceMm(from, to) < SAME_CIRCLE_MM) return union(...strips);
  const edge = flattenPiece(arc(from, to, bulge), options.chordTolMm);
  if (rock.sign < 0) {
    const corners = [...edge, far(rock.high), far(rock.low)];
    return union(...strips, outline(corners, edge.length - 1, id));
  }
  const below = outline([...edge, rock.centre], edge.length - 1, id);
  const above = outline([rock.centre, far(rock.high), far(rock.low)], 0, 0);
  return union(...strips, below, above);
}

function soleMiddleY(sole: Chain): number {
  const only = sole.pieces[0] as Piece;
  const circle = circleOf(only as Extract<Piece, { kind: "arc" }>);
  return circle.centre.y + ((only as Extract<Piece, { kind: "arc" }>).bulge > 0 ? -1 : 1) * circle.radiusMm;
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
