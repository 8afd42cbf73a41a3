import { bug, FLAT_SAGITTA_MM, HALF_CIRCLE_SLACK_RAD, LEAST_BULGE } from "../measure/index.ts";
import { distanceMm, finite, lerpPoint, point } from "./point.ts";
import type { Arc, Circle, Line, Piece, Point } from "./types.ts";

/** A straight piece, which may have no length. Throws a bug for numbers that are not finite. */
export function line(from: Point, to: Point, source?: number): Line {
  const piece = { kind: "line", from: checked("from", from), to: checked("to", to) } as const;
  return source === undefined ? piece : { ...piece, source };
}

/**
 * A circular piece; `bulge` = tan(sweep / 4), positive anticlockwise.
 * Throws a bug for numbers that are not finite, a bulge of 0 (or as good as) or beyond ±1, and ends that are the
 * same point.
 */
export function arc(from: Point, to: Point, bulge: number, source?: number): Arc {
  finite("bulge", bulge);
  if (!(Math.abs(bulge) >= LEAST_BULGE && Math.abs(bulge) <= 1))
    bug("an arc's bulge is beyond ±1 or 0", { bulge });
  if (from.x === to.x && from.y === to.y) bug("an arc's ends are the same point", { x: from.x, y: from.y });
  const piece = { kind: "arc", from: checked("from", from), to: checked("to", to), bulge } as const;
  return source === undefined ? piece : { ...piece, source };
}

function checked(name: string, p: Point): Point {
  if (Number.isFinite(p.x) && Number.isFinite(p.y)) return p;
  return bug(`${name} is not a finite point`, { x: String(p.x), y: String(p.y) });
}

/** The point of a circle at an angle, radians from +x; exact in x or y at the quarter turns. */
export function pointOfCircle(circle: Circle, angleRad: number): Point {
  return point(
    circle.centre.x + circle.radiusMm * Math.cos(angleRad),
    circle.centre.y + circle.radiusMm * Math.sin(angleRad),
  );
}

/**
 * The arcs along a circle from `startRad` through `sweepRad` (signed, at most a full turn), end to end; more
 * than one where the sweep passes a half circle. A full turn ends in the very point it starts from.
 * Throws a bug for a sweep of 0 or of more than a full turn, and for a radius that is not positive.
 */
export function arcsThrough(circle: Circle, startRad: number, sweep: number, source?: number): Arc[] {
  finite("startRad", startRad);
  finite("sweepRad", sweep);
  if (!(finite("radiusMm", circle.radiusMm) > 0))
    bug("radiusMm is not positive", { radiusMm: circle.radiusMm });
  const size = Math.abs(sweep);
  if (size === 0 || size > 2 * Math.PI + HALF_CIRCLE_SLACK_RAD)
    bug("an arc's sweep is 0 or over a full turn", { sweep });
  const start = pointOfCircle(circle, startRad);
  const isFullTurn = size >= 2 * Math.PI - HALF_CIRCLE_SLACK_RAD;
  return arcsBetween(
    circle,
    start,
    isFullTurn ? start : pointOfCircle(circle, startRad + sweep),
    startRad,
    sweep,
    source,
  );
}

/** As `arcsThrough`, with the two end points already known: they are handed on unchanged. */
export function arcsBetween(
  circle: Circle,
  from: Point,
  to: Point,
  startRad: number,
  sweep: number,
  source?: number,
): Arc[] {
  const count = Math.max(1, Math.ceil((Math.abs(sweep) - HALF_CIRCLE_SLACK_RAD) / Math.PI));
  const stepRad = sweep / count;
  const bulge = Math.max(-1, Math.min(1, Math.tan(stepRad / 4)));
  const arcs: Arc[] = [];
  let start = from;
  for (let i = 1; i <= count; i++) {
    const end = i === count ? to : pointOfCircle(circle, startRad + stepRad * i);
    arcs.push(arc(start, end, bulge, source));
    start = end;
  }
  return arcs;
}

/** Circle of an arc, mm. Both ends lie on it to rounding; the flatter the arc, the farther and rougher its centre. */
export function circleOf(piece: Arc): Circle {
  const { from, to, bulge } = piece;
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  // Distance of the centre from the chord's middle, in chords: cot(sweep / 2) / 2.
  const away = ((1 - bulge) * (1 + bulge)) / (4 * bulge);
  const radiusMm = (Math.sqrt(dx * dx + dy * dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge));
  return {
    centre: { x: from.x + dx / 2 - dy * away + 0, y: from.y + dy / 2 + dx * away + 0 },
    radiusMm,
  };
}

/** How far a piece rises over its chord, mm, not negative: its sagitta, 0 for a line. */
export function riseMm(piece: Piece): number {
  return piece.kind === "line" ? 0 : (Math.abs(piece.bulge) * distanceMm(piece.from, piece.to)) / 2;
}

/** The one place where arcs that are hardly any become lines: those that rise less than `FLAT_SAGITTA_MM`. */
export function straightIfFlat(piece: Piece): Piece {
  return piece.kind === "arc" && riseMm(piece) < FLAT_SAGITTA_MM
    ? line(piece.from, piece.to, piece.source)
    : piece;
}

/** Signed sweep of an arc, radians, anticlockwise positive, -π to π. */
export function sweepRad(piece: Arc): number {
  return 4 * Math.atan(piece.bulge);
}

/** Direction of the arc's start seen from its centre, radians in (-π, π]. */
export function startAngleRad(piece: Arc): number {
  const { centre } = circleOf(piece);
  return Math.atan2(piece.from.y - centre.y, piece.from.x - centre.x);
}

/** `startAngleRad` + `sweepRad`: may lie beyond ±π, so that start to end is the way travelled. */
export function endAngleRad(piece: Arc): number {
  return startAngleRad(piece) + sweepRad(piece);
}

/** Is the direction `angleRad` from the centre one of the arc's? Ends count; slack is rounding only. */
export function angleOnArc(piece: Arc, angleRad: number): boolean {
  const sweep = sweepRad(piece);
  const alongRad = sweep > 0 ? angleRad - startAngleRad(piece) : startAngleRad(piece) - angleRad;
  const turnRad = alongRad - 2 * Math.PI * Math.floor(alongRad / (2 * Math.PI));
  return turnRad <= Math.abs(sweep) + HALF_CIRCLE_SLACK_RAD || turnRad >= 2 * Math.PI - HALF_CIRCLE_SLACK_RAD;
}

/** Length along a piece, mm. */
export function lengthMm(piece: Piece): number {
  const chordMm = distanceMm(piece.from, piece.to);
  if (piece.kind === "line") return chordMm;
  const size = Math.abs(piece.bulge);
  // radius × sweep; the arctangent over the bulge stays near 1 for flat arcs, where the radius runs away.
  return chordMm * (1 + size * size) * (Math.atan(size) / size);
}

/** The same piece travelled the other way. */
export function reversePiece<P extends Piece>(piece: P): P {
  if (piece.kind === "line") return { ...piece, from: piece.to, to: piece.from };
  return { ...piece, from: piece.to, to: piece.from, bulge: -piece.bulge };
}

/** The point at `t` along a piece, 0 to 1 by length; at 0 and 1 the stored ends themselves. */
export function pointAt(piece: Piece, t: number): Point {
  if (t === 0) return piece.from;
  if (t === 1) return piece.to;
  if (piece.kind === "line") return lerpPoint(piece.from, piece.to, t);
  // By chords from the start, not by the centre: a flat arc's centre is too far away to be accurate.
  const sweep = sweepRad(piece);
  const ratio = Math.sin((t * sweep) / 2) / Math.sin(sweep / 2);
  const turnRad = (-(1 - t) * sweep) / 2;
  const dx = (piece.to.x - piece.from.x) * ratio;
  const dy = (piece.to.y - piece.from.y) * ratio;
  const cos = Math.cos(turnRad);
  const sin = Math.sin(turnRad);
  return { x: piece.from.x + dx * cos - dy * sin, y: piece.from.y + dx * sin + dy * cos };
}

/** Direction of travel at `t`, radians from +x in (-π, π]. A line of no length gives 0. */
export function tangentRad(piece: Piece, t: number): number {
  const chordRad = Math.atan2(piece.to.y - piece.from.y, piece.to.x - piece.from.x);
  if (piece.kind === "line") return chordRad;
  return wrapRad(chordRad + (t - 0.5) * sweepRad(piece));
}

/**
 * Direction of travel at an end, of length 1, without going through an angle: upright and level ones, and the ends
 * of quarter and half circles, come out exact. The piece must have a length.
 */
export function endDirection(piece: Piece, t: 0 | 1): Point {
  const chordMm = distanceMm(piece.from, piece.to);
  const x = (piece.to.x - piece.from.x) / chordMm;
  const y = (piece.to.y - piece.from.y) / chordMm;
  if (piece.kind === "line") return { x, y };
  // The direction leans from the chord by half the sweep: its cosine and sine by the bulge.
  const { bulge } = piece;
  const cos = ((1 - bulge) * (1 + bulge)) / (1 + bulge * bulge);
  const sin = ((t === 0 ? -2 : 2) * bulge) / (1 + bulge * bulge);
  return { x: x * cos - y * sin, y: x * sin + y * cos };
}

/** The same direction in (-π, π]. */
export function wrapRad(angleRad: number): number {
  const turnRad = angleRad - 2 * Math.PI * Math.ceil((angleRad - Math.PI) / (2 * Math.PI));
  return turnRad + 0;
}

/** Parts a piece at `t` (0 < t < 1, by length) into two that share the point there. */
export function splitPiece(piece: Piece, t: number): [Piece, Piece] {
  if (!(t > 0 && t < 1)) bug("a piece is split outside itself", { t });
  return splitPieceAt(piece, t, pointAt(piece, t));
}

/** As `splitPiece`, with the point already known: it is handed on unchanged. */
export function splitPieceAt(piece: Piece, t: number, at: Point): [Piece, Piece] {
  if (piece.kind === "line") {
    return [
      { ...piece, to: at },
      { ...piece, from: at },
    ];
  }
  const quarterRad = Math.atan(piece.bulge);
  return [
    { ...piece, to: at, bulge: Math.tan(quarterRad * t) },
    { ...piece, from: at, bulge: Math.tan(quarterRad * (1 - t)) },
  ];
}

export interface NearestOnPiece {
  readonly t: number;
  readonly point: Point;
  readonly distanceMm: number;
}

/**
 * The point of a piece nearest to `p`, with its place `t` along the piece. At an end it is the stored end point.
 * From the centre of an arc every point is as near; the middle is given.
 */
export function nearestOnPiece(piece: Piece, p: Point): NearestOnPiece {
  const t = piece.kind === "line" ? nearestOnLine(piece, p) : nearestOnArc(piece, p);
  const nearest = pointAt(piece, t);
  return { t, point: nearest, distanceMm: distanceMm(nearest, p) };
}

function nearestOnLine(piece: Line, p: Point): number {
  const dx = piece.to.x - piece.from.x;
  const dy = piece.to.y - piece.from.y;
  const squared = dx * dx + dy * dy;
  if (squared === 0) return 0;
  return clampRatio(((p.x - piece.from.x) * dx + (p.y - piece.from.y) * dy) / squared);
}

/** Works in the frame of the chord (origin its middle, half its length 1), where a flat arc keeps its accuracy. */
function nearestOnArc(piece: Arc, p: Point): number {
  const { from, to, bulge } = piece;
  const dx = (to.x - from.x) / 2;
  const dy = (to.y - from.y) / 2;
  const halfSquared = dx * dx + dy * dy;
  const px = p.x - (from.x + dx);
  const py = p.y - (from.y + dy);
  const along = (px * dx + py * dy) / halfSquared;
  const left = (py * dx - px * dy) / halfSquared;
  const centreLeft = ((1 - bulge) * (1 + bulge)) / (2 * bulge);
  // Angle about the centre, 0 towards the middle of the arc and positive towards its end.
  const side = bulge > 0 ? 1 : -1;
  const away = (centreLeft - left) * side;
  if (along === 0 && away === 0) return 0.5;
  const t = 0.5 + Math.atan2(along, away) / Math.abs(sweepRad(piece));
  if (t >= 0 && t <= 1) return t;
  // Beyond the arc the nearer end counts, which the shorter way round decides.
  return along < 0 ? 0 : along > 0 ? 1 : t < 0 ? 0 : 1;
}

function clampRatio(t: number): number {
  return t < 0 ? 0 : t > 1 ? 1 : t + 0;
}
