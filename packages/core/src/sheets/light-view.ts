/** Where everything of a picture of light stands: scale, room, the section's own places on paper, what is told of the strip. */
import { flattenPiece, type Piece, type Point } from "../curve/index.ts";
import type { LightState, SectionInLight } from "../light/index.ts";
import { FLATTEN_MM, SAME_POINT_MM, writerFor } from "../measure/index.ts";
import type { PaperPoint } from "./drawing.ts";
import type { FitPictureOptions } from "./fit-page.ts";
import type { Box } from "./flat-path.ts";
import { figureMm } from "./lettering.ts";
import { textWidthMm } from "./text-width.ts";

/** A moulding in its light, with the name it is told by. */
export interface LitVersion {
  readonly name: string;
  readonly lit: SectionInLight;
}

/** What stands where, on paper: room for the section, the gap to the strip, the strip, and its words. */
export interface Layout {
  readonly run: "level" | "upright";
  readonly scaleRatio: number;
  readonly heightMm: number;
  readonly stripMm: number;
  readonly projectionMm: number;
}

const PAGE_INNER_MM = 174;
const PANEL_GAP_MM = 5;
const HEADING_MM = 13;
const WALL_MM = 4;
const GAP_MM = 10;
export const LEADER_MM = 5;
const STRIP_MM = { alone: 44, beside: 15, upright: 30 } as const;
/** Wall shown beyond an edge that throws a shadow on it. */
export const MOST_WALL_MM = 17;
const OVER_SHADOW_MM = 2.5;
const ENDS_MM = 13;
const MOST_RATIO = 3;
const MOST_TALL_MM = 150;

export function layoutOf(versions: readonly LitVersion[], options: FitPictureOptions): Layout {
  const run = versions[0]?.lit.hanging.run ?? "level";
  const count = Math.max(1, versions.length);
  const panelMm = (PAGE_INNER_MM - PANEL_GAP_MM * (count - 1)) / count;
  const widthMm = Math.max(...versions.map(({ lit }) => lit.widthMm), SAME_POINT_MM);
  const projectionMm = Math.max(...versions.map(({ lit }) => lit.projectionMm), SAME_POINT_MM);
  const wordsMm = Math.max(
    ...versions
      .flatMap(({ lit }) => labelledBands(lit, options))
      .map(({ words }) => textWidthMm(words, figureMm(options.unit))),
    0,
  );
  if (run === "upright") {
    const scaleRatio = Math.min((panelMm - 2 * ENDS_MM) / widthMm, MOST_RATIO, 70 / projectionMm);
    const heightMm =
      HEADING_MM + WALL_MM + projectionMm * scaleRatio + GAP_MM + STRIP_MM.upright + LEADER_MM + wordsMm + 1;
    return { run, scaleRatio, heightMm, stripMm: STRIP_MM.upright, projectionMm };
  }
  const stripMm = count > 1 ? STRIP_MM.beside : STRIP_MM.alone;
  const room = panelMm - WALL_MM - GAP_MM - stripMm - LEADER_MM - wordsMm;
  const scaleRatio = Math.min(room / projectionMm, (MOST_TALL_MM - 2 * ENDS_MM) / widthMm, MOST_RATIO);
  const below = Math.max(...versions.map(({ lit }) => wallMm(lit.onWall.beyondLastMm, scaleRatio)));
  const heightMm = HEADING_MM + ENDS_MM + widthMm * scaleRatio + Math.max(ENDS_MM, below + 2);
  return { run, scaleRatio, heightMm, stripMm, projectionMm };
}

/** Millimetres of wall on paper beyond an edge: none where no shadow falls on it. */
export function wallMm(beyondMm: number, scaleRatio: number): number {
  return beyondMm <= SAME_POINT_MM ? 0 : Math.min(beyondMm * scaleRatio + OVER_SHADOW_MM, MOST_WALL_MM);
}

/** One panel's places: how far out of the wall, and how far from the first edge, both on paper. */
export interface View {
  readonly at: (outMm: number, acrossMm: number) => PaperPoint;
  readonly scaleRatio: number;
  readonly lit: SectionInLight;
  readonly layout: Layout;
}

export function viewIn(box: Box, lit: SectionInLight, layout: Layout): View {
  const { scaleRatio, run } = layout;
  const at =
    run === "level"
      ? (out: number, across: number): PaperPoint => [
          box.minX + WALL_MM + out * scaleRatio,
          box.minY + ENDS_MM + across * scaleRatio,
        ]
      : (out: number, across: number): PaperPoint => [
          (box.minX + box.maxX) / 2 + (across - lit.widthMm / 2) * scaleRatio,
          box.minY + WALL_MM + out * scaleRatio,
        ];
  return { at, scaleRatio, lit, layout };
}

export const placed = ({ at, lit }: View, { x, y }: Point): PaperPoint => at(x, lit.widthMm - y);

export function pointsOf(view: View, pieces: readonly Piece[]): readonly PaperPoint[] {
  return pieces.flatMap((piece, index) => {
    const points = flattenPiece(piece, FLATTEN_MM / view.scaleRatio);
    return (index === 0 ? points : points.slice(1)).map((place) => placed(view, place));
  });
}

export function outlinePoints(view: View): readonly PaperPoint[] {
  return pointsOf(view, view.lit.outline).slice(1);
}

export function stripStart({ at, layout }: View): number {
  const [x, y] = at(layout.projectionMm, 0);
  return (layout.run === "level" ? x : y) + GAP_MM;
}

/** Neighbours of one state, as the eye takes them together. */
interface SeenBand {
  readonly state: LightState;
  readonly startMm: number;
  readonly endMm: number;
  /** How far out of the wall it begins. */
  readonly outMm: number;
}

export function seenBands({ stretches }: SectionInLight): readonly SeenBand[] {
  const bands: SeenBand[] = [];
  for (const { state, startMm, endMm, showsMm, from } of stretches) {
    if (showsMm <= SAME_POINT_MM) continue;
    const last = bands.at(-1);
    if (last?.state === state) bands[bands.length - 1] = { ...last, endMm };
    else bands.push({ state, startMm, endMm, outMm: from.x });
  }
  return bands;
}

/** The bands wide enough for words, with them. */
export function labelledBands(lit: SectionInLight, { unit }: FitPictureOptions) {
  const write = writerFor(unit);
  return seenBands(lit)
    .filter(({ startMm, endMm }) => endMm - startMm >= LEAST_LABELLED_MM)
    .map((band) => ({
      ...band,
      words: `${band.state} ${write.length(band.endMm - band.startMm).replace(UNSAID, "")}`,
    }));
}

/** The unit stands in the note; and a rule's "light" would be taken for light. */
const UNSAID = /\s*(?:mm|light|full)$/;
const LEAST_LABELLED_MM = 0.1;
