/**
 * Places lettering so that no two boxes overlap and none leaves the picture. Lines may be crossed only where there is
 * no other way, and then the label stands on a patch of plain paper.
 */
import { toRad } from "../measure/index.ts";
import {
  closedPath,
  fill,
  flatItems,
  type Item,
  type PaperPoint,
  type Text,
  type TextAnchor,
  type TextLook,
  text,
} from "./drawing.ts";
import { type Box, boxOf, flatPoints } from "./flat-path.ts";
import { PAPER } from "./palette.ts";
import { textWidthMm } from "./text-width.ts";

/** Clear space kept round every box, mm. */
const MARGIN_MM = 0.5;
/** Letters reach this far above and below the base line, as ratios of the font's size. */
export const ASCENT_RATIO = 0.78;
const DESCENT_RATIO = 0.24;

/** The box of a line of lettering, without margin; of lettering turned by other than quarter turns the box round it. */
export function textBox(item: Text): Box {
  const widthMm = textWidthMm(item.text, item.sizeMm, item.bold ? "bold" : "regular");
  const left = -(item.anchor === "start" ? 0 : item.anchor === "middle" ? widthMm / 2 : widthMm);
  const top = -ASCENT_RATIO * item.sizeMm;
  const bottom = DESCENT_RATIO * item.sizeMm;
  const turnRad = toRad(item.turnDeg);
  const [cos, sin] = item.turnDeg === 0 ? [1, 0] : [Math.cos(turnRad), Math.sin(turnRad)];
  const corners = [left, left + widthMm].flatMap((x) =>
    [top, bottom].map((y): PaperPoint => [item.at[0] + x * cos + y * sin, item.at[1] - x * sin + y * cos]),
  );
  return boxOf(corners);
}

export function boxesOverlap(a: Box, b: Box): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}

/** How far below its middle a line of lettering has its base line, as a ratio of its size. */
export const CENTRED_RATIO = 0.27;

export interface LabelSpot {
  readonly at: PaperPoint;
  readonly anchor: TextAnchor;
}

/** A label that wants a place: spots in the order they are liked. */
export interface LabelWish {
  readonly words: string;
  readonly look: TextLook;
  readonly spots: readonly LabelSpot[];
}

export interface PlacedLabel {
  readonly items: readonly Item[];
  readonly box: Box;
}

export interface LabelPlacer {
  /** Lettering already drawn, or a place kept free: never covered. */
  keepFree(box: Box): void;
  /** Lines better not crossed: every stroke among the items, and the outlines of fills. */
  avoidLines(items: readonly Item[]): void;
  /** The best free spot, or one near by; null when the picture is full. */
  place(wish: LabelWish): PlacedLabel | null;
}

const SEARCH_STEP_MM = 1.6;
const SEARCH_RINGS = 24;
/** What one crossed line weighs against a step aside, in the same unit as mm of moving. */
const CROSSING_COST = 9;
const LATER_SPOT_COST = 1.5;
const MOVED_COST = 1.6;
const SIDES = [
  [0, 1],
  [0, -1],
  [1, 0],
  [-1, 0],
  [1, 1],
  [-1, 1],
  [1, -1],
  [-1, -1],
] as const;

type Segment = readonly [PaperPoint, PaperPoint];

export function labelPlacer(picture: Box): LabelPlacer {
  const taken: Box[] = [];
  const lines: Segment[] = [];
  const isFree = (box: Box): boolean =>
    box.minX >= picture.minX &&
    box.maxX <= picture.maxX &&
    box.minY >= picture.minY &&
    box.maxY <= picture.maxY &&
    !taken.some((other) => boxesOverlap(box, grown(other, MARGIN_MM)));
  const crossings = (box: Box): number => {
    const wide = grown(box, MARGIN_MM);
    return lines.filter((segment) => segmentMeetsBox(segment, wide)).length;
  };
  return {
    keepFree: (box) => void taken.push(box),
    avoidLines: (items) => void lines.push(...segmentsOf(items)),
    place(wish) {
      let best: { readonly item: Text; readonly box: Box; readonly cost: number } | null = null;
      for (const candidate of candidatesOf(wish.spots)) {
        // Candidates come nearest first, so none after this one can be better.
        if (best !== null && candidate.leastCost >= best.cost) break;
        const item = text(candidate.spot.at, wish.words, { ...wish.look, anchor: candidate.spot.anchor });
        const box = textBox(item);
        if (!isFree(box)) continue;
        const cost = candidate.cost + CROSSING_COST * crossings(box);
        if (best === null || cost < best.cost) best = { item, box, cost };
      }
      if (best === null) return null;
      taken.push(best.box);
      const items = crossings(best.box) > 0 ? [patch(best.box), best.item] : [best.item];
      return { items, box: best.box };
    },
  };
}

interface Candidate {
  readonly spot: LabelSpot;
  readonly cost: number;
  /** No later candidate costs less than this. */
  readonly leastCost: number;
}

/** Each spot as wanted, then all of them shifted round by growing steps. */
function* candidatesOf(spots: readonly LabelSpot[]): Generator<Candidate> {
  for (let ring = 0; ring <= SEARCH_RINGS; ring++) {
    const movedMm = ring * SEARCH_STEP_MM;
    const leastCost = movedMm * MOVED_COST;
    for (const [index, spot] of spots.entries()) {
      const cost = index * LATER_SPOT_COST + leastCost;
      if (ring === 0) {
        yield { spot, cost, leastCost };
        continue;
      }
      for (const [dx, dy] of SIDES) {
        const at: PaperPoint = [spot.at[0] + dx * movedMm, spot.at[1] + dy * movedMm];
        yield { spot: { at, anchor: spot.anchor }, cost, leastCost };
      }
    }
  }
}

function segmentsOf(items: readonly Item[]): readonly Segment[] {
  return flatItems(items).flatMap((item): readonly Segment[] => {
    if (item.kind === "text" || item.kind === "fill") return [];
    const points = flatPoints(item.path);
    const run = item.path.closed ? [...points, item.path.start] : points;
    return run.slice(1).map((to, index): Segment => [run[index] as PaperPoint, to]);
  });
}

/** Whether any of a segment lies in a box (Liang and Barsky, 1984). */
function segmentMeetsBox([from, to]: Segment, box: Box): boolean {
  const dx = to[0] - from[0];
  const dy = to[1] - from[1];
  let enter = 0;
  let leave = 1;
  for (const [step, room] of [
    [-dx, from[0] - box.minX],
    [dx, box.maxX - from[0]],
    [-dy, from[1] - box.minY],
    [dy, box.maxY - from[1]],
  ] as const) {
    if (step === 0) {
      if (room < 0) return false;
      continue;
    }
    const ratio = room / step;
    if (step < 0) enter = Math.max(enter, ratio);
    else leave = Math.min(leave, ratio);
    if (enter > leave) return false;
  }
  return true;
}

/** A patch of plain paper under lettering that has to cross lines. */
function patch(box: Box): Item {
  const wide = grown(box, MARGIN_MM / 2);
  return fill(
    [
      closedPath([
        [wide.minX, wide.minY],
        [wide.maxX, wide.minY],
        [wide.maxX, wide.maxY],
        [wide.minX, wide.maxY],
      ]),
    ],
    PAPER,
  );
}

function grown(box: Box, byMm: number): Box {
  return { minX: box.minX - byMm, minY: box.minY - byMm, maxX: box.maxX + byMm, maxY: box.maxY + byMm };
}
