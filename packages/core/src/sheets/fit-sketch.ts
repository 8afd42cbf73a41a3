/**
 * One small picture of a page: model millimetres (y up) set into a box of the paper, lines drawn as they come, labels
 * placed at the end so that none covers another. What is drawn here means the same in every picture of fitting.
 */
import type { Point } from "../curve/index.ts";
import { toRad } from "../measure/index.ts";
import {
  closedPath,
  fill,
  group,
  type Item,
  openPath,
  type PaperPoint,
  stroke,
  type TextLook,
} from "./drawing.ts";
import { type Box, boxOf } from "./flat-path.ts";
import { growthRings, wasteLines } from "./hatch.ts";
import { type LabelSpot, type LabelWish, labelPlacer } from "./labels.ts";
import { LABEL_MM } from "./lettering.ts";
import { FAINT_INK, INK, PAPER, WASTE_PATTERN, WASTE_TINT, WOOD_TINT } from "./palette.ts";
import { arrowHead } from "./plane-lines.ts";
import { textWidthMm } from "./text-width.ts";

export interface Sketch {
  /** Where a place of the model lies on paper. */
  readonly at: (place: Point) => PaperPoint;
  /** Millimetres on paper for one of the model. */
  readonly scaleRatio: number;
  readonly box: Box;
  readonly draw: (role: string, items: readonly Item[]) => void;
  /** A label; its spots in the order they are liked. */
  readonly label: (words: string, spots: readonly LabelSpot[], look?: LabelLook) => void;
  /** All that was drawn, labels last. */
  readonly items: () => readonly Item[];
}

export interface LabelLook extends Partial<TextLook> {
  /** Words on wood that goes stand on a patch of paper, so that its pattern does not run through them. */
  readonly on?: "waste" | undefined;
}

export interface SketchRoom {
  /** Of the model, mm, y up. */
  readonly bounds: Box;
  /** On paper. */
  readonly box: Box;
  /** Kept round the model for labels, on paper. */
  readonly marginMm: number;
  /** A scale that must be kept; else as large as the room allows. */
  readonly scaleRatio?: number | undefined;
}

export function sketch({ bounds, box, marginMm, scaleRatio }: SketchRoom): Sketch {
  const widthMm = Math.max(box.maxX - box.minX - 2 * marginMm, 1);
  const heightMm = Math.max(box.maxY - box.minY - 2 * marginMm, 1);
  const across = bounds.maxX - bounds.minX || 1;
  const up = bounds.maxY - bounds.minY || 1;
  const scale = scaleRatio ?? Math.min(widthMm / across, heightMm / up);
  const centreX = (box.minX + box.maxX) / 2;
  const centreY = (box.minY + box.maxY) / 2;
  const drawn: Item[] = [];
  const wishes: (LabelWish & { readonly on: LabelLook["on"] })[] = [];
  return {
    scaleRatio: scale,
    box,
    at: ({ x, y }) => [
      centreX + (x - (bounds.minX + bounds.maxX) / 2) * scale,
      centreY - (y - (bounds.minY + bounds.maxY) / 2) * scale,
    ],
    draw: (role, items) => void drawn.push(group(role, items)),
    label: (words, spots, { on, ...look } = {}) =>
      void wishes.push({ words, spots, on, look: { sizeMm: LABEL_MM, ...look } }),
    items: () => {
      const placer = labelPlacer(box);
      placer.avoidLines(withoutPatterns(drawn));
      const labels = wishes.flatMap((wish) => {
        const placed = placer.place(wish);
        if (placed === null) return [];
        return wish.on === "waste" ? [patchOf(placed.box), ...placed.items] : placed.items;
      });
      return [...drawn, group("labels", labels)];
    },
  };
}

/** Words may stand on growth rings, which are light, and on wood that goes; every other line is kept clear. */
function withoutPatterns(items: readonly Item[]): readonly Item[] {
  return items.flatMap((item): readonly Item[] => {
    if (item.kind !== "group") return [item];
    const isPattern = item.role === GRAIN || item.role === WASTE_LINES;
    return isPattern ? [] : [{ ...item, items: withoutPatterns(item.items) }];
  });
}

function patchOf({ minX, minY, maxX, maxY }: Box): Item {
  const corners: readonly PaperPoint[] = [
    [minX - PATCH_MM, minY - PATCH_MM],
    [maxX + PATCH_MM, minY - PATCH_MM],
    [maxX + PATCH_MM, maxY + PATCH_MM],
    [minX - PATCH_MM, maxY + PATCH_MM],
  ];
  return fill([closedPath(corners)], PAPER);
}

/** The roles of growth rings and of the pattern of wood that goes. */
const GRAIN = "grain";
const WASTE_LINES = "waste pattern";
/** A patch of paper reaches so far beyond its words. */
const PATCH_MM = 0.6;

/** The point on paper at a distance and direction (degrees anticlockwise as seen from the right). */
export function paperAside(from: PaperPoint, distanceMm: number, directionDeg: number): PaperPoint {
  const directionRad = toRad(directionDeg);
  return [from[0] + distanceMm * Math.cos(directionRad), from[1] - distanceMm * Math.sin(directionRad)];
}

/** The point of the model at a distance and direction. */
export function modelAside(from: Point, distanceMm: number, directionDeg: number): Point {
  const directionRad = toRad(directionDeg);
  return {
    x: from.x + distanceMm * Math.cos(directionRad),
    y: from.y + distanceMm * Math.sin(directionRad),
  };
}

/** A model's points with their box grown by nothing: what a sketch has to show. */
export function boundsOfPoints(points: readonly Point[]): Box {
  return boxOf(points.map(({ x, y }): PaperPoint => [x, y]));
}

export type WoodView = "along the grain" | "end grain";

/** Wood that stays. On its end it shows its growth rings, the tree's middle below it. */
export function woodItems(points: readonly PaperPoint[], view: WoodView): readonly Item[] {
  const { minX, maxX, minY, maxY } = boxOf(points);
  const pith: PaperPoint = [minX + 0.6 * (maxX - minX), maxY + 0.9 * (maxY - minY) + 0.4 * (maxX - minX)];
  return [
    fill([closedPath(points)], WOOD_TINT),
    ...(view === "end grain" ? [group(GRAIN, growthRings([points], pith))] : []),
    stroke(closedPath(points), { weight: "wide" }),
  ];
}

/** Wood that goes. */
export function wasteItems(points: readonly PaperPoint[]): readonly Item[] {
  return [
    fill([closedPath(points)], WASTE_TINT),
    group(WASTE_LINES, wasteLines([points], [])),
    stroke(closedPath(points), { colour: WASTE_PATTERN }),
  ];
}

const GROUND_STEP_MM = 2.2;
const GROUND_STROKE_MM = 2;

/**
 * A face that does not move (wall, ceiling, fence, table): a wide line with short strokes behind it, on the left of the
 * way from `from` to `to` as seen.
 */
export function groundItems(from: PaperPoint, to: PaperPoint): readonly Item[] {
  const lengthMm = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (lengthMm === 0) return [];
  const along: PaperPoint = [(to[0] - from[0]) / lengthMm, (to[1] - from[1]) / lengthMm];
  // Left of the way as seen, where paper's y runs down.
  const behind: PaperPoint = [along[1], -along[0]];
  const strokes: Item[] = [];
  for (let run = GROUND_STEP_MM / 2; run < lengthMm - GROUND_STROKE_MM / 2; run += GROUND_STEP_MM) {
    const foot: PaperPoint = [from[0] + along[0] * run, from[1] + along[1] * run];
    const tip: PaperPoint = [
      foot[0] + (along[0] + behind[0]) * (GROUND_STROKE_MM / Math.SQRT2),
      foot[1] + (along[1] + behind[1]) * (GROUND_STROKE_MM / Math.SQRT2),
    ];
    strokes.push(stroke(openPath([foot, tip]), { weight: "hatch", colour: FAINT_INK }));
  }
  return [...strokes, stroke(openPath([from, to]), { weight: "wide" })];
}

export interface AngleArc {
  readonly centre: PaperPoint;
  readonly radiusMm: number;
  /** Anticlockwise as seen, from the right. */
  readonly fromDeg: number;
  readonly sweepDeg: number;
}

/** An arc narrower than this on paper has its arrows outside, mm. */
const NARROW_ARC_MM = 7;
const OUTSIDE_ARC_MM = 6;
const LABEL_GAP_MM = 1.6;

/** The arc of an angle with an arrow at both ends, and where its figure may stand. Nothing for an angle of nothing. */
export function angleItems(arc: AngleArc): {
  readonly items: readonly Item[];
  readonly spots: readonly LabelSpot[];
} {
  const { centre, radiusMm, fromDeg, sweepDeg } = arc;
  const middleDeg = fromDeg + sweepDeg / 2;
  const spots = [
    ...spotsTowards(centre, radiusMm + LABEL_GAP_MM, middleDeg),
    ...spotsTowards(centre, radiusMm + LABEL_GAP_MM, fromDeg + sweepDeg + Math.sign(sweepDeg) * 25),
    ...spotsTowards(centre, radiusMm + LABEL_GAP_MM, fromDeg - Math.sign(sweepDeg) * 25),
  ];
  const lengthMm = Math.abs(toRad(sweepDeg)) * radiusMm;
  if (lengthMm === 0) return { items: [], spots };
  const turn = Math.sign(sweepDeg);
  const isNarrow = lengthMm < NARROW_ARC_MM;
  const ends = [fromDeg, fromDeg + sweepDeg] as const;
  const piece = (startDeg: number, turnedDeg: number): Item =>
    stroke({
      start: paperAside(centre, radiusMm, startDeg),
      steps: [
        {
          to: paperAside(centre, radiusMm, startDeg + turnedDeg),
          bulge: Math.tan(toRad(turnedDeg) / 4),
        },
      ],
      closed: false,
    });
  // The tangent of an arc that turns anticlockwise stands a quarter turn ahead of its radius.
  const heading = (atDeg: number, way: number): PaperPoint => {
    const ahead = paperAside([0, 0], 1, atDeg + 90 * way);
    return ahead;
  };
  if (isNarrow) {
    const tailDeg = (OUTSIDE_ARC_MM / radiusMm) * (180 / Math.PI) * turn;
    return {
      items: [
        piece(ends[0], -tailDeg),
        piece(ends[1], tailDeg),
        arrowHead(paperAside(centre, radiusMm, ends[0]), heading(ends[0], turn), INK),
        arrowHead(paperAside(centre, radiusMm, ends[1]), heading(ends[1], -turn), INK),
      ],
      spots: [
        ...spotsTowards(centre, radiusMm + LABEL_GAP_MM, ends[1] + tailDeg),
        ...spotsTowards(centre, radiusMm + LABEL_GAP_MM, ends[0] - tailDeg),
        ...spots,
      ],
    };
  }
  // An arrow flies along the chord of its own length, so that it lies on the arc.
  const lagDeg = ((1.3 / radiusMm) * 180) / Math.PI;
  return {
    items: [
      piece(fromDeg, sweepDeg),
      arrowHead(paperAside(centre, radiusMm, ends[0]), heading(ends[0] + turn * lagDeg, -turn), INK),
      arrowHead(paperAside(centre, radiusMm, ends[1]), heading(ends[1] - turn * lagDeg, turn), INK),
    ],
    spots,
  };
}

/** Spots for words that stand away from a centre in a direction, and to its sides. */
export function spotsTowards(
  centre: PaperPoint,
  distanceMm: number,
  directionDeg: number,
): readonly LabelSpot[] {
  const place = paperAside(centre, distanceMm, directionDeg);
  const cosine = Math.cos(toRad(directionDeg));
  const sine = Math.sin(toRad(directionDeg));
  const base = place[1] + (sine < -0.3 ? 0.78 * LABEL_MM : sine > 0.3 ? -0.24 * LABEL_MM : 0.27 * LABEL_MM);
  const anchor = cosine > 0.3 ? "start" : cosine < -0.3 ? "end" : "middle";
  return [{ at: [place[0], base], anchor }];
}

/** The four places beside a point: right, left, above, below. */
export function spotsRound(at: PaperPoint, gapMm: number): readonly LabelSpot[] {
  const level = at[1] + 0.27 * LABEL_MM;
  return [
    { at: [at[0] + gapMm, level], anchor: "start" },
    { at: [at[0] - gapMm, level], anchor: "end" },
    { at: [at[0], at[1] - gapMm], anchor: "middle" },
    { at: [at[0], at[1] + gapMm + 0.78 * LABEL_MM], anchor: "middle" },
  ];
}

/** Words in the middle of a shape. */
export function spotOn(at: PaperPoint): LabelSpot {
  return { at: [at[0], at[1] + 0.27 * LABEL_MM], anchor: "middle" };
}

/** A straight arrow. */
export function arrowItems(from: PaperPoint, to: PaperPoint): readonly Item[] {
  return [stroke(openPath([from, to])), arrowHead(to, [to[0] - from[0], to[1] - from[1]], INK)];
}

/** Do words of this length fit into so much paper? */
export function fitsIn(words: string, widthMm: number): boolean {
  return textWidthMm(words, LABEL_MM) <= widthMm;
}
