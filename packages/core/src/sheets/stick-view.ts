/** How a stick stands on the paper: turned as on the bench, at one scale, with its bench line always at one height. */

import type { Vertex } from "../curve/index.ts";
import type { Plan } from "../cutting/index.ts";
import { normaliseDeg, toRad } from "../measure/index.ts";
import type { PaperPoint } from "./drawing.ts";
import { type Box, boxOf, flatPoints, pathOf } from "./flat-path.ts";

export interface StickView {
  readonly scaleRatio: number;
  /** The stick turned anticlockwise by so much, as seen. */
  readonly cantDeg: number;
  /** Where the stick's own origin (gauge edge, back) comes to lie on the paper. */
  readonly origin: PaperPoint;
}

/** Two points no further apart than this, across the paper, look one above the other, mm. For pictures only. */
export const LOOKS_UPRIGHT_MM = 0.1;

/** A point of the section, mm from gauge edge and back, on the paper. */
export function toPaper(view: StickView, point: PaperPoint): PaperPoint {
  const turned = directionToPaper(view, point);
  return [view.origin[0] + turned[0], view.origin[1] + turned[1]];
}

/** As `toPaper`, for a step rather than a place. */
export function directionToPaper(view: StickView, step: PaperPoint): PaperPoint {
  const cos = Math.cos(toRad(view.cantDeg)) * view.scaleRatio;
  const sin = Math.sin(toRad(view.cantDeg)) * view.scaleRatio;
  return [step[0] * cos - step[1] * sin, -(step[0] * sin + step[1] * cos)];
}

/**
 * Scales of ISO 5455 (2, 5, 10 and 1:2, 1:5, 1:10), largest first, for the whole picture, and steps between
 * them, so that a picture fills its place; enlargements take 20 and 50 too. 1:20 and 1:50 only keep a monstrous stick on
 * the page.
 */
const PICTURE_SCALES = [
  10,
  8,
  6,
  5,
  4,
  3,
  2.5,
  2,
  1.5,
  1,
  2 / 3,
  0.5,
  0.4,
  1 / 3,
  0.2,
  0.1,
  0.05,
  0.02,
] as const;
const ENLARGEMENT_SCALES = [50, 20, 10, 5, 3, 2, 1.5, 1] as const;

/** Room for the stick on a page, mm. A stick that stands turned may come nearer to the top than one lying flat. */
export interface StickRoom {
  readonly widthMm: number;
  readonly flatMm: number;
  readonly turnedMm: number;
}

/** A stick turned further than this stands on an edge, and is higher than wide. */
const STANDS_ON_EDGE_DEG = 45;

/** Whether a stick turned so lies on an edge, rather than on its back or face. */
export function standsOnEdge(cantDeg: number): boolean {
  const fromLevelDeg = Math.abs(normaliseDeg(cantDeg));
  return fromLevelDeg > STANDS_ON_EDGE_DEG && fromLevelDeg < 180 - STANDS_ON_EDGE_DEG;
}

/**
 * The largest scale at which the stick fits: one for all the plan's cuts in which it lies like this one, so that the
 * few cuts for which it stands on an edge do not make all the others small.
 */
export function scaleFor(plan: Plan, cantDeg: number, room: StickRoom): number {
  const onEdge = standsOnEdge(cantDeg);
  const cants = plan.cuts.map((cut) => cut.cant).filter((other) => standsOnEdge(other) === onEdge);
  const fits = (scale: number): boolean =>
    [...(onEdge ? [] : [0]), ...cants, cantDeg].every((turnedDeg) => {
      const box = turnedBox(plan.stick, turnedDeg);
      const heightMm = turnedDeg === 0 ? room.flatMm : room.turnedMm;
      return (box.maxX - box.minX) * scale <= room.widthMm && (box.maxY - box.minY) * scale <= heightMm;
    });
  return PICTURE_SCALES.find(fits) ?? (PICTURE_SCALES[PICTURE_SCALES.length - 1] as number);
}

/** The scales below this one that are no smaller than a share of it, largest first. */
export function nextScales(scaleRatio: number, leastShare: number): readonly number[] {
  return PICTURE_SCALES.filter((scale) => scale < scaleRatio && scale >= scaleRatio * leastShare);
}

/** The scale of the stick lying flat, for pictures of the whole. */
export function commonScale(plan: Plan, room: StickRoom): number {
  return scaleFor(plan, 0, room);
}

/** The largest scale at which a detail so wide fills no more than the room, but at least twice the picture's own. */
export function enlargedScale(pictureScale: number, detailMm: number, roomMm: number): number {
  const most = pictureScale * 5;
  const fitting = ENLARGEMENT_SCALES.find((scale) => scale <= most && detailMm * scale <= roomMm);
  return Math.max(fitting ?? 0, pictureScale * 2);
}

/** The stick's extents at scale 1 when turned; y down, as on paper. */
export function turnedBox(ring: readonly Vertex[], cantDeg: number): Box {
  const view: StickView = { scaleRatio: 1, cantDeg, origin: [0, 0] };
  return boxOf(flatPoints(pathOf(ring, (point) => toPaper(view, point), "ring")));
}

/** The view of a stick that lies on the bench line, its width centred. */
export function viewOnBench(
  stick: readonly Vertex[],
  cantDeg: number,
  scaleRatio: number,
  bench: { readonly centreX: number; readonly lineY: number },
): StickView {
  const box = turnedBox(stick, cantDeg);
  return {
    scaleRatio,
    cantDeg,
    origin: [bench.centreX - ((box.minX + box.maxX) / 2) * scaleRatio, bench.lineY - box.maxY * scaleRatio],
  };
}

/** "2 : 1", "1 : 5". */
export function scaleWords(scaleRatio: number): string {
  return scaleRatio >= 1 ? `${tidy(scaleRatio)} : 1` : `1 : ${tidy(1 / scaleRatio)}`;
}

function tidy(value: number): string {
  return String(Math.round(value * 10) / 10);
}
