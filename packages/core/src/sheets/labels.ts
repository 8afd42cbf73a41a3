/**
 * Places lettering so that no two boxes overlap and none leaves the picture. Boxes that are only better kept clear
 * (the stick, the plane) cost; other lettering is never covered.
 */
import {
  closedPath,
  fill,
  type Item,
  type PaperPoint,
  type Text,
  type TextAnchor,
  type TextLook,
  text,
} from "./drawing.ts";
import type { Box } from "./flat-path.ts";
import type { Colour } from "./palette.ts";
import { textWidthMm } from "./text-width.ts";

/** Clear space kept round every box, mm. */
const MARGIN_MM = 0.4;
/** Letters reach this far above and below the base line, as ratios of the font's size. */
const ASCENT_RATIO = 0.78;
const DESCENT_RATIO = 0.24;

/** The box of a line of lettering, without margin; turned lettering is not placed by boxes. */
export function textBox(item: Text): Box {
  const widthMm = textWidthMm(item.text, item.sizeMm, item.bold ? "bold" : "regular");
  const left = item.at[0] - (item.anchor === "start" ? 0 : item.anchor === "middle" ? widthMm / 2 : widthMm);
  return {
    minX: left,
    maxX: left + widthMm,
    minY: item.at[1] - ASCENT_RATIO * item.sizeMm,
    maxY: item.at[1] + DESCENT_RATIO * item.sizeMm,
  };
}

export function boxesOverlap(a: Box, b: Box): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}

export interface LabelSpot {
  readonly at: PaperPoint;
  readonly anchor: TextAnchor;
}

export interface LabelPlacer {
  /** Lettering already drawn, or a place kept free for some. */
  keepFree(box: Box): void;
  /** Better not covered; a label that finds nothing else stands on a patch of paper there. */
  avoid(box: Box): void;
  /** The first free spot in the order given, then ever wider round them; an empty list when the picture is full. */
  place(words: string, look: TextLook, spots: readonly LabelSpot[]): readonly Item[];
}

const SEARCH_STEP_MM = 1.6;
const SEARCH_RINGS = 26;

export function labelPlacer(picture: Box): LabelPlacer {
  const taken: Box[] = [];
  const avoided: Box[] = [];
  const isFree = (box: Box): boolean =>
    box.minX >= picture.minX &&
    box.maxX <= picture.maxX &&
    box.minY >= picture.minY &&
    box.maxY <= picture.maxY &&
    !taken.some((other) => boxesOverlap(box, grown(other, MARGIN_MM)));
  const coveredMm2 = (box: Box): number => avoided.reduce((sum, other) => sum + sharedMm2(box, other), 0);
  return {
    keepFree: (box) => void taken.push(box),
    avoid: (box) => void avoided.push(box),
    place(words, look, spots) {
      let best: { readonly item: Text; readonly box: Box; readonly cost: number } | null = null;
      for (const candidate of candidatesOf(spots)) {
        const item = text(candidate.spot.at, words, { ...look, anchor: candidate.spot.anchor });
        const box = textBox(item);
        if (!isFree(box)) continue;
        const cost = candidate.cost + coveredMm2(box);
        if (best === null || cost < best.cost) best = { item, box, cost };
      }
      if (best === null) return [];
      taken.push(best.box);
      return coveredMm2(best.box) > 0 ? [patch(best.box), best.item] : [best.item];
    },
  };
}

/** Each spot as wanted, earlier ones cheaper, then shifted round by growing steps. */
function* candidatesOf(
  spots: readonly LabelSpot[],
): Generator<{ readonly spot: LabelSpot; readonly cost: number }> {
  for (const [index, spot] of spots.entries()) yield { spot, cost: index * 0.5 };
  for (let ring = 1; ring <= SEARCH_RINGS; ring++) {
    for (const [index, spot] of spots.entries()) {
      for (const [dx, dy] of [
        [0, 1],
        [0, -1],
        [1, 0],
        [-1, 0],
        [1, 1],
        [-1, 1],
        [1, -1],
        [-1, -1],
      ] as const) {
        const stepMm = ring * SEARCH_STEP_MM;
        const at: PaperPoint = [spot.at[0] + dx * stepMm, spot.at[1] + dy * stepMm];
        yield { spot: { at, anchor: spot.anchor }, cost: index * 0.5 + stepMm * 2 };
      }
    }
  }
}

const PAPER: Colour = { name: "black", strengthRatio: 0 };

/** A patch of plain paper under lettering that has to cross lines. */
export function patch(box: Box): Item {
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

function sharedMm2(a: Box, b: Box): number {
  const width = Math.min(a.maxX, b.maxX) - Math.max(a.minX, b.minX);
  const height = Math.min(a.maxY, b.maxY) - Math.max(a.minY, b.minY);
  return width > 0 && height > 0 ? width * height : 0;
}
