/**
 * What stops a plane of a curve's own radius from lying on a place of it: the hand that cannot lean so far, or a part of
 * the section that the sole meets first.
 */
import { circleOf, insideRing, nearestOnPiece, type Point, pointAt } from "../curve/index.ts";
import { leanDeg, restOn, soleHeightMm, turned, turnedBack, turnOf } from "../cutting/index.ts";
import { OVERCUT_MM, SAME_POINT_MM, toDeg } from "../measure/index.ts";
import type { Bench, Tool } from "./bench.ts";
import { poseOnArc } from "./curves.ts";
import { isFaceUp } from "./turning.ts";
import type { WorkedPiece } from "./worked-piece.ts";

export type Stop =
  /** The plane would have to lean this far at the least, however the stick is laid. */
  | { readonly kind: "lean"; readonly leanDeg: number }
  /** In the pose that comes nearest it would cut this deep into piece `index` of the planned ring, at that place. */
  | {
      readonly kind: "meets";
      readonly overcutMm: number;
      readonly index: number;
      readonly at: Point;
      readonly isCorner: boolean;
    };

/** Leans tried over the sole, and how near its end a touch is its corner's, as a share of its width. */
const LEANS_TRIED = 24;
const CORNER_SHARE = 0.1;

/** Whether an own-radius plane's sole is wider than the curve, with the section standing in its way at both ends. */
export function isShutIn(bench: Bench, piece: WorkedPiece, tool: Tool): boolean {
  const { from, to } = piece.piece;
  if (tool.sole.widthMm <= Math.hypot(to.x - from.x, to.y - from.y) + SAME_POINT_MM) return false;
  const curve = piece.curve;
  if (!curve || piece.piece.kind !== "arc") return false;
  const { centre, radiusMm } = circleOf(piece.piece);
  // Just past each end, on the curve's own circle: there the sole would run on.
  const past = (p: Point, towards: Point): Point => {
    const angle = Math.atan2(p.y - centre.y, p.x - centre.x);
    const inner = Math.atan2(towards.y - centre.y, towards.x - centre.x);
    const away = Math.sin(angle - inner) >= 0 ? 1 : -1;
    const on = angle + (away * PAST_MM) / radiusMm;
    return { x: centre.x + radiusMm * Math.cos(on), y: centre.y + radiusMm * Math.sin(on) };
  };
  const middle = pointAt(piece.piece, 0.5);
  return [from, to].every((end) => insideRing(bench.planned, past(end, middle)) === "in");
}

/** How far past a curve's end it is looked whether the section stands there, mm. */
const PAST_MM = 0.5;

/** What stops the plane at a place of the curve, told as the tilt of a plane square on it; null where nothing does. */
export function whatStops(bench: Bench, piece: WorkedPiece, tool: Tool, touchDeg: number): Stop | null {
  const curve = piece.curve;
  const arc = tool.sole.arc;
  if (!curve || !arc) return null;
  const halfDeg = toDeg(Math.asin(Math.min(1, tool.sole.widthMm / (2 * arc.radiusMm))));
  const offs = Array.from({ length: LEANS_TRIED + 1 }, (_, i) => -halfDeg + (2 * halfDeg * i) / LEANS_TRIED);
  const ends = [curve.lowTiltDeg + halfDeg, curve.highTiltDeg - halfDeg].map((tilt) => tilt - touchDeg);
  const tilts = [...offs, ...ends.filter((off) => Math.abs(off) <= halfDeg)].map((off) => touchDeg + off);
  // With the face up if that can be: lying on an edge the stick shows the plane nothing but its own side.
  const isUp = Math.abs(leanDeg(touchDeg, 0)) <= UP_WITHIN_DEG;
  const cants = bench.cantsDeg.filter((cant) => !isUp || isFaceUp(cant));
  let least = Number.POSITIVE_INFINITY;
  let best: Extract<Stop, { kind: "meets" }> | null = null;
  for (const tilt of tilts) {
    const lean = Math.min(...cants.map((cant) => Math.abs(leanDeg(tilt, cant))));
    least = Math.min(least, lean);
    if (lean > bench.limits.leanDeg) continue;
    const pose = poseOnArc(curve.centre, arc.radiusMm, curve.convex, tilt);
    const turn = turnOf(pose[2]);
    const at = turned(turn, { x: pose[0], y: pose[1] });
    const rest = restOn(bench.profileOfPlanned(pose[2]), tool.shape, at.x, { narrowMm: OVERCUT_MM / 2 });
    const overcutMm = rest ? rest.heightMm - at.y : 0;
    if (!rest || overcutMm <= OVERCUT_MM / 2) return null;
    if (best && overcutMm >= best.overcutMm - SAME_POINT_MM) continue;
    const alongMm = rest.touchXMm - at.x;
    const place = turnedBack(turn, {
      x: rest.touchXMm,
      y: rest.heightMm + soleHeightMm(tool.shape, alongMm),
    });
    const endMm = Math.min(alongMm - tool.sole.leftMm, tool.sole.rightMm - alongMm);
    best = {
      kind: "meets",
      overcutMm,
      index: pieceNear(bench, place),
      at: place,
      isCorner: endMm <= tool.sole.widthMm * CORNER_SHARE,
    };
  }
  return best ?? { kind: "lean", leanDeg: least };
}

/** A place that looks up by this much is worked with the face up, degrees. */
const UP_WITHIN_DEG = 90;

function pieceNear(bench: Bench, p: Point): number {
  let [index, mm] = [0, Number.POSITIVE_INFINITY];
  bench.planned.pieces.forEach((piece, i) => {
    const off = nearestOnPiece(piece, p).distanceMm;
    if (off < mm - SAME_POINT_MM) [index, mm] = [i, off];
  });
  return index;
}
