/** The round enlargement of a cut too small to be seen at the picture's scale. */
import type { Plan, PlanCut } from "../cutting/index.ts";
import { lengthWords, type PictureOptions, saysDepth } from "./cut-marks.ts";
import { linearDimension } from "./dimension.ts";
import { circlePath, group, type Item, openPath, type PaperPoint, stroke, text } from "./drawing.ts";
import type { Box, Disc } from "./flat-path.ts";
import { clipItems, rim } from "./hatch.ts";
import { labelPlacer } from "./labels.ts";
import { figureMm, LEAST_LETTERING_MM } from "./lettering.ts";
import { FAINT_INK, PLANE_LINE } from "./palette.ts";
import { planeLines, sawLine, stationsOf } from "./plane-lines.ts";
import { stickEnd, type WasteExtent } from "./stick-end.ts";
import { enlargedScale, LOOKS_UPRIGHT_MM, type StickView, scaleWords } from "./stick-view.ts";

/** A detail smaller than this, either way, is enlarged, mm. */
const SMALL_DETAIL_MM = 3;
/** A cut that is thin but longer than this is shown at its deepest spot only, mm. */
const LONG_DETAIL_MM = 8;
/** How much of the circle the detail may fill. */
const FILLED_RATIO = 0.75;
const BODY_MM = 60;

export interface Enlargement {
  /** The ring round the spot in the picture, with its leader. */
  readonly spot: readonly Item[];
  readonly items: readonly Item[];
  readonly box: Box;
}

/** Null where the cut is large enough as it is. `place` is one and the same on every page. */
export function enlargementOf(
  plan: Plan,
  cut: PlanCut,
  view: StickView,
  waste: WasteExtent,
  place: Disc,
  options: PictureOptions,
): Enlargement | null {
  const close = closeUp(plan, cut, view, waste, place);
  if (close === null) return null;
  const { scaleRatio, enlarge, scene, spot } = close;
  const caption = text(
    [place.centre[0], place.centre[1] + place.radiusMm + 4.6],
    `Scale ${scaleWords(scaleRatio)}`,
    { sizeMm: LEAST_LETTERING_MM, anchor: "middle" },
  );
  const depthMm = Math.abs(waste.deepest.bottom[1] - waste.deepest.top[1]) / view.scaleRatio;
  const depth = saysDepth(cut)
    ? depthInside(enlarge(waste.atWall.bottom), enlarge(waste.atWall.top), place, scene, {
        words: lengthWords(depthMm, options),
        sizeMm: figureMm(options.unit),
      })
    : [];
  return {
    spot,
    items: [group("enlargement", [...scene, rim(place), ...depth, caption])],
    box: {
      minX: place.centre[0] - place.radiusMm,
      maxX: place.centre[0] + place.radiusMm,
      minY: place.centre[1] - place.radiusMm,
      maxY: place.centre[1] + place.radiusMm + 6,
    },
  };
}

/** A small detail drawn larger in a disc, without words. */
export interface CloseUp {
  readonly scaleRatio: number;
  readonly enlarge: (point: PaperPoint) => PaperPoint;
  /** What the disc shows; its rim not included. */
  readonly scene: readonly Item[];
  /** The ring round the spot in the picture, with its leader. */
  readonly spot: readonly Item[];
}

/**
 * Null where the cut is large enough as it is. `printedRatio` is what the picture is set down at afterwards: scales are
 * round as they are printed.
 */
export function closeUp(
  plan: Plan,
  cut: PlanCut,
  view: StickView,
  waste: WasteExtent,
  place: Disc,
  printedRatio = 1,
): CloseUp | null {
  const widthMm = (waste.box.maxX - waste.box.minX) / view.scaleRatio;
  const heightMm = (waste.box.maxY - waste.box.minY) / view.scaleRatio;
  if (Math.min(widthMm, heightMm) >= SMALL_DETAIL_MM) return null;
  const isShort = Math.max(widthMm, heightMm) < LONG_DETAIL_MM;
  const spot: PaperPoint = isShort
    ? [(waste.box.minX + waste.box.maxX) / 2, (waste.box.minY + waste.box.maxY) / 2]
    : middle(waste.atWall.bottom, waste.atWall.top);
  const detailMm = isShort ? Math.hypot(widthMm, heightMm) : Math.min(widthMm, heightMm);
  const roomMm = 2 * place.radiusMm * FILLED_RATIO * printedRatio;
  const scaleRatio = enlargedScale(view.scaleRatio * printedRatio, detailMm, roomMm) / printedRatio;
  const factor = scaleRatio / view.scaleRatio;
  const enlarge = (point: PaperPoint): PaperPoint => [
    place.centre[0] + (point[0] - spot[0]) * factor,
    place.centre[1] + (point[1] - spot[1]) * factor,
  ];
  const close: StickView = { ...view, scaleRatio, origin: enlarge(view.origin) };
  const scene = clipItems([...stickEnd(plan, cut, close), group("plane", toolLines(cut, close))], place);
  const ring: Disc = { centre: spot, radiusMm: place.radiusMm / factor };
  return {
    scaleRatio,
    enlarge,
    scene,
    spot: [
      group("enlarged spot", [stroke(circlePath(ring.centre, ring.radiusMm)), ...leaderBetween(ring, place)]),
    ],
  };
}

function toolLines(cut: PlanCut, view: StickView): readonly Item[] {
  if (cut.line !== undefined) return sawLine(view, cut, PLANE_LINE).items;
  const stations = stationsOf(cut);
  const last = stations[stations.length - 1];
  return last === undefined
    ? []
    : planeLines(view, cut, last, { colour: PLANE_LINE, bodyMm: BODY_MM, axisMm: BODY_MM }).items;
}

/** The depth, where it lies upright and well inside the circle. */
function depthInside(
  bottom: PaperPoint,
  top: PaperPoint,
  place: Disc,
  scene: readonly Item[],
  { words, sizeMm }: { readonly words: string; readonly sizeMm: number },
): readonly Item[] {
  const isUpright = Math.abs(bottom[0] - top[0]) < LOOKS_UPRIGHT_MM;
  const fromCentreMm = Math.max(distanceMm(bottom, place.centre), distanceMm(top, place.centre));
  if (!isUpright || fromCentreMm > place.radiusMm * 0.8) return [];
  const isLeft = bottom[0] <= place.centre[0];
  const inward = Math.abs(bottom[0] - place.centre[0]);
  const dimension = linearDimension({
    from: bottom,
    to: top,
    aside: [isLeft ? -1 : 1, 0],
    offMm: Math.max(3, place.radiusMm * 0.3 - inward),
    sizeMm,
  });
  const half = place.radiusMm * 0.9;
  const placer = labelPlacer({
    minX: place.centre[0] - half,
    maxX: place.centre[0] + half,
    minY: place.centre[1] - half * 0.8,
    maxY: place.centre[1] + half * 0.8,
  });
  placer.avoidLines([
    dimension.items,
    ...scene.filter((item) => item.kind === "group" && item.role !== "wood"),
  ]);
  const label = placer.place({ words, look: { sizeMm }, spots: dimension.spots });
  return [dimension.items, ...(label?.items ?? [])];
}

/** The line from the small ring's rim to the large one's. */
function leaderBetween(ring: Disc, large: Disc): readonly Item[] {
  const apartMm = distanceMm(ring.centre, large.centre);
  if (apartMm <= ring.radiusMm + large.radiusMm) return [];
  const at = (fromRingMm: number): PaperPoint => [
    ring.centre[0] + ((large.centre[0] - ring.centre[0]) / apartMm) * fromRingMm,
    ring.centre[1] + ((large.centre[1] - ring.centre[1]) / apartMm) * fromRingMm,
  ];
  return [stroke(openPath([at(ring.radiusMm), at(apartMm - large.radiusMm)]), { colour: FAINT_INK })];
}

function middle(a: PaperPoint, b: PaperPoint): PaperPoint {
  return [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
}

function distanceMm(a: PaperPoint, b: PaperPoint): number {
  return Math.hypot(a[0] - b[0], a[1] - b[1]);
}
