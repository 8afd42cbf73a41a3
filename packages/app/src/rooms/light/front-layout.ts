/**
 * Where everything of the view from the front stands on the screen, in its pixels: the section as it hangs, and beside it
 * (below it for an upright run) the strip that is seen. Versions that are compared share one scale.
 */
import { flattenPiece, type Piece, type Point } from "mouldwright/curve";
import type { Hanging, LightState, SectionInLight } from "mouldwright/light";
import { SAME_POINT_MM } from "mouldwright/measure";

export type Place = readonly [number, number];

export interface Room {
  readonly widthPx: number;
  readonly mostHeightPx: number;
  /** Whether bands are named beside the strip. */
  readonly hasLabels: boolean;
}

export interface FrontLayout {
  readonly run: Hanging["run"];
  readonly pxPerMm: number;
  readonly widthPx: number;
  readonly heightPx: number;
  /** From how far out of the wall and how far from the first edge, mm, to the screen. */
  readonly at: (outMm: number, acrossMm: number) => Place;
  /** The strip along the run's own direction: from and to, px. */
  readonly stripFromPx: number;
  readonly stripToPx: number;
  /** Room for wall beyond either edge, px. */
  readonly wallPx: number;
}

export const WALL_PX = 12;
const GAP_PX = 28;
const LABELS_PX = 118;
const LEAST_WALL_PX = 20;
const MOST_WALL_PX = 64;
const OVER_SHADOW_PX = 10;
const MOST_PX_PER_MM = 16;
const LEAST_STRIP_PX = 96;
/** Of the width, at most, for the section of a level run; of the height, for that of an upright one. */
const SECTION_RATIO = { level: 0.5, upright: 0.4 } as const;
const UPRIGHT_STRIP_PX = 150;

/** One layout for all of them; `lits` is not empty and all hang alike in run. */
export function frontLayout(lits: readonly SectionInLight[], room: Room): FrontLayout {
  const run = lits[0]?.hanging.run ?? "level";
  const widthMm = Math.max(...lits.map((lit) => lit.widthMm), SAME_POINT_MM);
  const projectionMm = Math.max(...lits.map((lit) => lit.projectionMm), SAME_POINT_MM);
  const beyondMm = Math.max(...lits.map(({ onWall }) => Math.max(onWall.beyondFirstMm, onWall.beyondLastMm)));
  return run === "level"
    ? levelLayout({ widthMm, projectionMm, beyondMm }, room)
    : uprightLayout({ widthMm, projectionMm, beyondMm }, room);
}

interface Sizes {
  readonly widthMm: number;
  readonly projectionMm: number;
  readonly beyondMm: number;
}

function levelLayout({ widthMm, projectionMm, beyondMm }: Sizes, room: Room): FrontLayout {
  const labelsPx = room.hasLabels ? LABELS_PX : 0;
  const sectionPx = Math.min(
    room.widthPx * SECTION_RATIO.level - WALL_PX,
    room.widthPx - WALL_PX - GAP_PX - LEAST_STRIP_PX - labelsPx,
  );
  const pxPerMm = Math.min(
    Math.max(1, sectionPx) / projectionMm,
    (room.mostHeightPx - 2 * LEAST_WALL_PX) / widthMm,
    MOST_PX_PER_MM,
  );
  const wallPx = wallRoom(beyondMm, pxPerMm);
  return {
    run: "level",
    pxPerMm,
    widthPx: room.widthPx,
    heightPx: widthMm * pxPerMm + 2 * wallPx,
    at: (outMm, acrossMm) => [WALL_PX + outMm * pxPerMm, wallPx + acrossMm * pxPerMm],
    stripFromPx: WALL_PX + projectionMm * pxPerMm + GAP_PX,
    stripToPx: room.widthPx - labelsPx - 1,
    wallPx,
  };
}

function uprightLayout({ widthMm, projectionMm, beyondMm }: Sizes, room: Room): FrontLayout {
  const pxPerMm = Math.min(
    (room.widthPx - 2 * LEAST_WALL_PX) / widthMm,
    (room.mostHeightPx * SECTION_RATIO.upright) / projectionMm,
    MOST_PX_PER_MM,
  );
  const wallPx = Math.min(wallRoom(beyondMm, pxPerMm), (room.widthPx - widthMm * pxPerMm) / 2);
  const leftPx = (room.widthPx - widthMm * pxPerMm) / 2;
  const stripFromPx = WALL_PX + projectionMm * pxPerMm + GAP_PX;
  return {
    run: "upright",
    pxPerMm,
    widthPx: room.widthPx,
    heightPx: stripFromPx + UPRIGHT_STRIP_PX,
    at: (outMm, acrossMm) => [leftPx + acrossMm * pxPerMm, WALL_PX + outMm * pxPerMm],
    stripFromPx,
    stripToPx: stripFromPx + UPRIGHT_STRIP_PX - 1,
    wallPx,
  };
}

function wallRoom(beyondMm: number, pxPerMm: number): number {
  const shadowPx = beyondMm > SAME_POINT_MM ? beyondMm * pxPerMm + OVER_SHADOW_PX : 0;
  return Math.min(MOST_WALL_PX, Math.max(LEAST_WALL_PX, shadowPx));
}

/** Curves on the screen are drawn within this of themselves, px. */
const FLAT_PX = 0.05;

/** The path of pieces of a section as it hangs, as an SVG's. */
export function pathOf(layout: FrontLayout, lit: SectionInLight, pieces: readonly Piece[]): string {
  const points = pieces.flatMap((piece, index) => {
    const flat = flattenPiece(piece, FLAT_PX / layout.pxPerMm);
    return index === 0 ? flat : flat.slice(1);
  });
  return points
    .map((place, index) => {
      const [x, y] = placed(layout, lit, place);
      return `${index === 0 ? "M" : "L"}${tenths(x)} ${tenths(y)}`;
    })
    .join("");
}

export function placed({ at }: FrontLayout, { widthMm }: SectionInLight, { x, y }: Point): Place {
  return at(x, widthMm - y);
}

function tenths(px: number): number {
  return Math.round(px * 100) / 100;
}

/** Neighbours of one state, as the eye takes them together. */
export interface SeenBand {
  readonly state: LightState;
  readonly startMm: number;
  readonly endMm: number;
}

export function seenBands({ stretches }: SectionInLight): readonly SeenBand[] {
  const bands: SeenBand[] = [];
  for (const { state, startMm, endMm, showsMm } of stretches) {
    if (showsMm <= SAME_POINT_MM) continue;
    const last = bands.at(-1);
    if (last?.state === state) bands[bands.length - 1] = { ...last, endMm };
    else bands.push({ state, startMm, endMm });
  }
  return bands;
}

/** The bands that can be named beside the strip: the widest first, each clear of those already named. */
export function namedBands(bands: readonly SeenBand[], pxPerMm: number, linePx: number): readonly SeenBand[] {
  const widest = [...bands].sort((a, b) => b.endMm - b.startMm - (a.endMm - a.startMm));
  const taken: SeenBand[] = [];
  for (const band of widest) {
    if (taken.every((other) => Math.abs(middleMm(other) - middleMm(band)) * pxPerMm >= linePx))
      taken.push(band);
  }
  return taken.sort((a, b) => a.startMm - b.startMm);
}

export function middleMm({ startMm, endMm }: SeenBand): number {
  return (startMm + endMm) / 2;
}
