/**
 * Dimensions by ISO 129-1: continuous narrow lines, filled arrows, lettering above the line; one style on every
 * drawing. Lettering is placed by the label placer, so it comes back as wishes rather than as items.
 */
import { group, type Item, openPath, type PaperPoint, stroke } from "./drawing.ts";
import { CENTRED_RATIO, type LabelSpot } from "./labels.ts";
import { type Colour, GAUGE_LINE, INK } from "./palette.ts";
import { arrowHead } from "./plane-lines.ts";

/** Arrows stand outside where the distance is narrower than both of them. */
const NARROW_MM = 6.5;
const OUTSIDE_TAIL_MM = 5.5;
const OVERRUN_MM = 1.4;
const TEXT_GAP_MM = 1.5;

export interface LinearDimension {
  /** The two measured points, on paper. */
  readonly from: PaperPoint;
  readonly to: PaperPoint;
  /** Unit step from the measured points towards the dimension line, and how far off it stands. */
  readonly aside: PaperPoint;
  readonly offMm: number;
  readonly sizeMm: number;
}

export interface DimensionLines {
  readonly items: Item;
  /** Where its lettering may stand, best first. */
  readonly spots: readonly LabelSpot[];
}

/** An aligned dimension between two points, measured square to `aside`. */
export function linearDimension(wanted: LinearDimension): DimensionLines {
  const { aside } = wanted;
  const along: PaperPoint = [-aside[1], aside[0]];
  const offFrom = wanted.offMm + Math.max(0, dot(subtract(wanted.to, wanted.from), aside));
  const offTo = offFrom - dot(subtract(wanted.to, wanted.from), aside);
  const start = step(wanted.from, aside, offFrom);
  const end = step(wanted.to, aside, offTo);
  const lengthMm = Math.hypot(end[0] - start[0], end[1] - start[1]);
  const direction: PaperPoint =
    lengthMm === 0 ? along : [(end[0] - start[0]) / lengthMm, (end[1] - start[1]) / lengthMm];
  const isNarrow = lengthMm < NARROW_MM;
  const back: PaperPoint = [-direction[0], -direction[1]];
  const items: Item[] = [
    stroke(openPath([step(wanted.from, aside, 0.8), step(start, aside, OVERRUN_MM)])),
    stroke(openPath([step(wanted.to, aside, 0.8), step(end, aside, OVERRUN_MM)])),
    isNarrow
      ? stroke(openPath([step(start, back, OUTSIDE_TAIL_MM), step(end, direction, OUTSIDE_TAIL_MM)]))
      : stroke(openPath([start, end])),
    arrowHead(start, isNarrow ? direction : back, INK),
    arrowHead(end, isNarrow ? back : direction, INK),
  ];
  const tail = isNarrow ? OUTSIDE_TAIL_MM + TEXT_GAP_MM : 0;
  return { items: group("dimension", items), spots: spotsAlong(start, end, tail, wanted) };
}

/** Above the line, off either end, below it; for an upright line beside it, outside first. Lettering stays upright. */
function spotsAlong(
  start: PaperPoint,
  end: PaperPoint,
  tailMm: number,
  wanted: { readonly aside: PaperPoint; readonly sizeMm: number },
): readonly LabelSpot[] {
  const { sizeMm, aside } = wanted;
  const middle: PaperPoint = [(start[0] + end[0]) / 2, (start[1] + end[1]) / 2];
  const isUpright = Math.abs(end[1] - start[1]) > Math.abs(end[0] - start[0]);
  const centred = middle[1] + CENTRED_RATIO * sizeMm;
  if (isUpright) {
    const top = Math.min(start[1], end[1]);
    const bottom = Math.max(start[1], end[1]);
    const onRight: LabelSpot = { at: [middle[0] + TEXT_GAP_MM, centred], anchor: "start" };
    const onLeft: LabelSpot = { at: [middle[0] - TEXT_GAP_MM, centred], anchor: "end" };
    return [
      ...(aside[0] > 0 ? [onRight, onLeft] : [onLeft, onRight]),
      { at: [middle[0], top - tailMm - TEXT_GAP_MM], anchor: "middle" },
      { at: [middle[0], bottom + tailMm + TEXT_GAP_MM + 0.78 * sizeMm], anchor: "middle" },
    ];
  }
  const right = Math.max(start[0], end[0]);
  const left = Math.min(start[0], end[0]);
  return [
    { at: [middle[0], middle[1] - TEXT_GAP_MM], anchor: "middle" },
    { at: [right + tailMm + TEXT_GAP_MM, centred], anchor: "start" },
    { at: [left - tailMm - TEXT_GAP_MM, centred], anchor: "end" },
    { at: [middle[0], middle[1] + TEXT_GAP_MM + 0.78 * sizeMm], anchor: "middle" },
  ];
}

export interface GaugeDimension {
  /** What the gauge's foot runs along, and the line it scribes, on paper. */
  readonly foot: PaperPoint;
  readonly line: PaperPoint;
  readonly aside: PaperPoint;
  /** How far the dimension line stands from the line's own point, square to the distance. */
  readonly offMm: number;
  readonly sizeMm: number;
}

const FOOT_HALF_MM = 1.7;
const LINE_OVER_MM = 3;

/**
 * A gauge line with its distance: the boldest of the thin lines. A small foot (a bar with its short leg) stands at the
 * point it is measured from, one arrow points at the line.
 */
export function gaugeDimension(wanted: GaugeDimension, lineColour: Colour = GAUGE_LINE): DimensionLines {
  const { aside } = wanted;
  const across = dot(subtract(wanted.line, wanted.foot), aside);
  const start = step(wanted.foot, aside, wanted.offMm + across);
  const end = step(wanted.line, aside, wanted.offMm);
  const lengthMm = Math.hypot(end[0] - start[0], end[1] - start[1]) || 1;
  const direction: PaperPoint = [(end[0] - start[0]) / lengthMm, (end[1] - start[1]) / lengthMm];
  const look = { weight: "gauge", colour: lineColour } as const;
  const isNarrow = lengthMm < NARROW_MM / 2;
  const back: PaperPoint = [-direction[0], -direction[1]];
  const items: Item[] = [
    stroke(openPath([step(wanted.line, aside, -LINE_OVER_MM), step(end, aside, OVERRUN_MM)]), look),
    stroke(openPath([wanted.foot, step(start, aside, FOOT_HALF_MM)]), { colour: lineColour }),
    stroke(openPath([step(start, aside, -FOOT_HALF_MM), step(start, aside, FOOT_HALF_MM)]), {
      weight: "wide",
      colour: lineColour,
    }),
    stroke(openPath(isNarrow ? [start, step(end, direction, OUTSIDE_TAIL_MM)] : [start, end]), look),
    isNarrow ? arrowHead(end, back, lineColour) : arrowHead(end, direction, lineColour),
  ];
  const tail = isNarrow ? OUTSIDE_TAIL_MM : 0;
  return { items: group("gauge line", items), spots: spotsAlong(start, end, tail, wanted) };
}

function step(from: PaperPoint, direction: PaperPoint, distanceMm: number): PaperPoint {
  return [from[0] + direction[0] * distanceMm, from[1] + direction[1] * distanceMm];
}

function subtract(a: PaperPoint, b: PaperPoint): PaperPoint {
  return [a[0] - b[0], a[1] - b[1]];
}

function dot(a: PaperPoint, b: PaperPoint): number {
  return a[0] * b[0] + a[1] * b[1];
}
