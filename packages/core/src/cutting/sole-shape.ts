/** A sole as a height above its origin: what a plane being let down is stopped by. */
import { type Arc, type Chain, circleOf, extentsOf, type Piece } from "../curve/index.ts";

export interface SoleShape {
  readonly leftMm: number;
  readonly rightMm: number;
  readonly widthMm: number;
  /** Its pieces from left to right, upright ones left out. */
  readonly parts: readonly SolePart[];
  /** Places across where one piece of the sole meets the next. */
  readonly corners: readonly number[];
  readonly bellies: readonly Belly[];
}

/** One piece of a sole, a line or an arc in numbers of one kind: heights are told from them without end. */
export interface SolePart {
  readonly fromX: number;
  readonly toX: number;
  readonly fromY: number;
  readonly slope: number;
  readonly centreX: number;
  readonly centreY: number;
  readonly radiusMm: number;
  /** An arc hangs below its centre (-1, a round) or stands above it (1, a hollow); 0 for a line. */
  readonly side: -1 | 0 | 1;
}

/** An arc of a sole that hangs down, and so touches an edge of the wood between that edge's ends. */
export interface Belly {
  readonly centreX: number;
  readonly radiusMm: number;
  readonly fromX: number;
  readonly toX: number;
}

const SHAPES = new WeakMap<Chain, SoleShape>();

/**
 * The height function of a sole given as a chain running from left to right.
 * An upright piece of the chain counts with its lower end.
 */
export function soleShape(sole: Chain): SoleShape {
  const known = SHAPES.get(sole) ?? shapeOf(sole);
  SHAPES.set(sole, known);
  return known;
}

function shapeOf(sole: Chain): SoleShape {
  const { minX, maxX } = extentsOf(sole);
  const pieces = sole.pieces.filter((piece) => piece.to.x > piece.from.x);
  return {
    leftMm: minX,
    rightMm: maxX,
    widthMm: maxX - minX,
    parts: pieces.map(partOf),
    corners: pieces.slice(1).map((piece) => piece.from.x),
    bellies: pieces.flatMap((piece) => (piece.kind === "arc" && piece.bulge > 0 ? [bellyOf(piece)] : [])),
  };
}

/** Height of the sole over its origin at a place across, mm; the lower one where it stands upright. */
export function soleHeightMm({ parts }: SoleShape, x: number): number {
  if (parts.length === 1) return heightOn(parts[0], x);
  let best = Number.POSITIVE_INFINITY;
  for (let i = 0; i < parts.length; i++) {
    const part = parts[i];
    const inside = x >= part.fromX && x <= part.toX;
    const beyond = (i === 0 && x < part.fromX) || (i === parts.length - 1 && x > part.toX);
    if (!inside && !beyond) continue;
    const h = heightOn(part, x);
    if (h < best) best = h;
  }
  return best;
}

function heightOn(part: SolePart, x: number): number {
  const at = Math.max(part.fromX, Math.min(part.toX, x));
  if (part.side === 0) return part.fromY + (at - part.fromX) * part.slope;
  const off = at - part.centreX;
  return part.centreY + part.side * Math.sqrt(Math.max(0, (part.radiusMm - off) * (part.radiusMm + off)));
}

function partOf(piece: Piece): SolePart {
  const ends = { fromX: piece.from.x, toX: piece.to.x, fromY: piece.from.y };
  if (piece.kind === "line") {
    const slope = (piece.to.y - piece.from.y) / (piece.to.x - piece.from.x);
    return { ...ends, slope, centreX: 0, centreY: 0, radiusMm: 0, side: 0 };
  }
  const { centre, radiusMm } = circleOf(piece);
  // Left to right, an anticlockwise arc hangs below its centre, a clockwise one stands above it.
  const side = piece.bulge > 0 ? -1 : 1;
  return { ...ends, slope: 0, centreX: centre.x, centreY: centre.y, radiusMm, side };
}

function bellyOf(arc: Arc): Belly {
  const { centre, radiusMm } = circleOf(arc);
  return { centreX: centre.x, radiusMm, fromX: arc.from.x, toX: arc.to.x };
}

/** Where across an edge of this slope touches a hanging arc: b' = m, x = m r / sqrt(1 + m^2) from its centre. */
export function touchOf({ centreX, radiusMm }: Belly, slope: number): number {
  return centreX + (slope * radiusMm) / Math.sqrt(1 + slope * slope);
}
