/** Path data of rings: what pictures and drawings are made of. */
import {
  type Arc,
  arc,
  circleOf,
  distanceMm,
  type Piece,
  type Point,
  point,
  type Ring,
} from "../curve/index.ts";
import { FLAT_SAGITTA_MM } from "../measure/index.ts";
import { cubicsThrough } from "./free-curve.ts";
import type { FreeSpan } from "./types.ts";

/** Significant digits after which a radius is written out in full. */
const MOST_DECIMALS = 15;

/** A number with at most so many decimals, without trailing zeros or a negative zero. */
export function numberText(value: number, decimals: number): string {
  const fixed = value.toFixed(decimals);
  const short = fixed.includes(".") ? fixed.replace(/0+$/, "").replace(/\.$/, "") : fixed;
  return short === "-0" ? "0" : short;
}

/**
 * SVG path data of a ring, closed, in its own frame: y up, anticlockwise arcs with sweep flag 1. Whoever draws it
 * turns y over by a transform such as `scale(1 -1)`, which turns the arcs with it. Lines and arcs stay what they are;
 * ends are rounded to `decimals`, radii to as many more as keep the arc's crown within half of the last one.
 */
export function svgPathOfRing(ring: Ring, decimals: number): string {
  return svgPathWithCurves(ring, [], { decimals, curveTolMm: 0 });
}

export interface CurveWriting {
  readonly decimals: number;
  /** How far the Béziers of a free curve may stand from its points, in the ring's own unit. */
  readonly curveTolMm: number;
}

/** The same with its free curves as cubic Béziers, so that whoever reads it has curves again and not their chords. */
export function svgPathWithCurves(
  ring: Ring,
  freeSpans: readonly FreeSpan[],
  { decimals, curveTolMm }: CurveWriting,
): string {
  const { pieces } = ring;
  const total = pieces.length;
  if (total === 0) return "";
  const spanAt = new Map(freeSpans.map((span) => [span.first % total, span]));
  const start = startOf(total, freeSpans);
  let path = `M${pointText((pieces[start] as Piece).from, decimals)}`;
  for (let step = 0; step < total; ) {
    const index = (start + step) % total;
    const piece = pieces[index] as Piece;
    const span = spanAt.get(index);
    if (span !== undefined && span.count > 1) {
      const run = Array.from({ length: span.count }, (_, place) => pieces[(index + place) % total] as Piece);
      path += curveText([piece.from, ...run.map(({ to }) => to)], decimals, curveTolMm);
      step += span.count;
      continue;
    }
    step++;
    // The last line is what closing draws anyway.
    if (piece.kind === "line") path += step === total ? "" : `L${pointText(piece.to, decimals)}`;
    else path += arcText(piece, decimals);
  }
  return `${path}Z`;
}

/** The first piece that does not lie inside a free curve running on past the ring's own start. */
function startOf(total: number, freeSpans: readonly FreeSpan[]): number {
  const over = freeSpans.find(({ first, count }) => first + count > total);
  return over === undefined ? 0 : Math.min(over.first, (over.first + over.count) % total);
}

function curveText(points: readonly Point[], decimals: number, tolMm: number): string {
  return cubicsThrough(points, tolMm)
    .map(
      ({ handleFrom, handleTo, to }) =>
        `C${pointText(handleFrom, decimals)} ${pointText(handleTo, decimals)} ${pointText(to, decimals)}`,
    )
    .join("");
}

function pointText(p: Point, decimals: number): string {
  return `${numberText(p.x, decimals)} ${numberText(p.y, decimals)}`;
}

function arcText(piece: Arc, decimals: number): string {
  const from = rounded(piece.from, decimals);
  const to = rounded(piece.to, decimals);
  const end = pointText(piece.to, decimals);
  const chordMm = distanceMm(from, to);
  // An arc smaller than the last decimal is not seen.
  if ((chordMm / 2) * Math.abs(piece.bulge) <= FLAT_SAGITTA_MM) return `L${end}`;
  const radius = radiusText(arc(from, to, piece.bulge), chordMm, decimals);
  return `A${radius} ${radius} 0 0 ${piece.bulge > 0 ? 1 : 0} ${end}`;
}

/**
 * Near the half circle a radius a hair off moves the centre far along: the crown moves by as much as the height of
 * the centre over the chord changes. So the shortest radius is taken that keeps the crown.
 */
function radiusText(piece: Arc, chordMm: number, decimals: number): string {
  const { radiusMm } = circleOf(piece);
  const half = chordMm / 2;
  const sagitta = half * Math.abs(piece.bulge);
  const slack = 0.5 * 10 ** -decimals;
  for (let digits = decimals; digits <= MOST_DECIMALS; digits++) {
    const text = numberText(radiusMm, digits);
    const written = Number(text);
    // Shorter than half the chord: a reader enlarges it to just that.
    const back = written <= half ? half : written - Math.sqrt((written - half) * (written + half));
    if (Math.abs(back - sagitta) <= slack) return text;
  }
  return String(radiusMm);
}

function rounded(p: Point, decimals: number): Point {
  return point(Number(p.x.toFixed(decimals)), Number(p.y.toFixed(decimals)));
}

/** The ring as it is seen on a page whose y runs down: mirrored about half the height, each arc the other way. */
export function pageRing(ring: Ring, heightMm: number, scale: number): Ring {
  const place = (p: Point): Point => point(p.x * scale, (heightMm - p.y) * scale);
  const pieces = ring.pieces.map((piece): Piece => {
    const from = place(piece.from);
    const to = place(piece.to);
    return piece.kind === "line" ? { ...piece, from, to } : { ...piece, from, to, bulge: -piece.bulge };
  });
  return { pieces };
}
