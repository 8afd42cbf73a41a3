/** What is seen from the front: a strip shaded as the moulding will look, and what each part of it is. */
import { tonesOf } from "../light/index.ts";
import { closedPath, fill, type Item, openPath, type PaperPoint, stroke, text } from "./drawing.ts";
import type { FitPictureOptions } from "./fit-page.ts";
import { type Box, boxOf } from "./flat-path.ts";
import { CENTRED_RATIO } from "./labels.ts";
import { figureMm, LABEL_MM } from "./lettering.ts";
import { LEADER_MM, labelledBands, stripStart, type View, wallMm } from "./light-view.ts";
import { type Colour, colour } from "./palette.ts";
import { textWidthMm } from "./text-width.ts";

/** The eye answers to light about as a screen does; this is the exponent of both. */
const EYE_EXPONENT = 1 / 2.2;

function toneColour(brightnessRatio: number): Colour {
  return colour("black", 1 - Math.max(0, Math.min(1, brightnessRatio)) ** EYE_EXPONENT);
}

/** What is seen from the front, with the wall beside it where a shadow falls on that. */
export function stripItems(view: View): readonly Item[] {
  const { lit } = view;
  const { beyondFirstMm, beyondLastMm } = lit.onWall;
  const { ambientRatio } = lit.lamp;
  // The wall looks straight at the room.
  const wall = ambientRatio + (1 - ambientRatio) * -lit.direction.out;
  const beyond = (edgeMm: number, beyondMm: number, way: 1 | -1): readonly Item[] => {
    const shownMm = wallMm(beyondMm, view.scaleRatio) / view.scaleRatio;
    if (shownMm === 0) return [];
    return [
      bar(view, edgeMm, edgeMm + way * shownMm, wall),
      bar(view, edgeMm, edgeMm + way * Math.min(beyondMm, shownMm), ambientRatio),
      ...wallWord(view, edgeMm, edgeMm + way * shownMm),
    ];
  };
  return [
    ...beyond(0, beyondFirstMm, -1),
    ...beyond(lit.widthMm, beyondLastMm, 1),
    // Each is painted on to the last edge and the next over it, so that no seam shows between them.
    ...tonesOf(lit).map(({ startMm, brightnessRatio }) => bar(view, startMm, lit.widthMm, brightnessRatio)),
    stroke(closedPath(barCorners(view, 0, lit.widthMm))),
  ];
}

/** What the strip shows beyond the moulding, where there is room to say it. */
function wallWord(view: View, startMm: number, endMm: number): readonly Item[] {
  const corners = barCorners(view, startMm, endMm);
  const { minX, minY, maxX, maxY } = boxOf(corners);
  const isTooSmall = maxY - minY < LABEL_MM * 1.4 || maxX - minX < textWidthMm(WALL_WORD, LABEL_MM) + 1;
  if (isTooSmall) return [];
  const at: PaperPoint = [(minX + maxX) / 2, (minY + maxY) / 2 + CENTRED_RATIO * LABEL_MM];
  return [text(at, WALL_WORD, { sizeMm: LABEL_MM, anchor: "middle" })];
}

const WALL_WORD = "wall";

function bar(view: View, startMm: number, endMm: number, brightnessRatio: number): Item {
  return fill([closedPath(barCorners(view, startMm, endMm))], toneColour(brightnessRatio));
}

/** A piece of the strip between two distances from the first edge. */
function barCorners(view: View, startMm: number, endMm: number): readonly PaperPoint[] {
  const { at, layout } = view;
  const nearMm = stripStart(view);
  const start = at(layout.projectionMm, startMm);
  const end = at(layout.projectionMm, endMm);
  return layout.run === "level"
    ? [
        [nearMm, start[1]],
        [nearMm + layout.stripMm, start[1]],
        [nearMm + layout.stripMm, end[1]],
        [nearMm, end[1]],
      ]
    : [
        [start[0], nearMm],
        [start[0], nearMm + layout.stripMm],
        [end[0], nearMm + layout.stripMm],
        [end[0], nearMm],
      ];
}

/** Lines of words stand so far apart, in sizes of their lettering. */
const LABEL_STEP_RATIO = 1.25;

/** The words of each band in a row past the strip, in their order, each with a leader from the band's middle. */
export function bandLabels(view: View, box: Box, options: FitPictureOptions): readonly Item[] {
  const { lit, layout, at } = view;
  const sizeMm = figureMm(options.unit);
  const isLevel = layout.run === "level";
  const bands = labelledBands(lit, options);
  const middles = bands.map(({ startMm, endMm }) => at(0, (startMm + endMm) / 2)[isLevel ? 1 : 0]);
  const room = isLevel ? { from: box.minY, to: box.maxY } : { from: box.minX, to: box.maxX };
  const edge = stripStart(view) + layout.stripMm;
  return spread(middles, room, sizeMm * LABEL_STEP_RATIO).flatMap((place, index): readonly Item[] => {
    const words = bands[index]?.words ?? "";
    const middle = middles[index] as number;
    if (place === null) return [];
    const run: readonly PaperPoint[] = [
      [edge, middle],
      [edge + 1, middle],
      [edge + LEADER_MM - 1, place],
      [edge + LEADER_MM - 0.4, place],
    ];
    if (isLevel) {
      return [
        stroke(openPath(run), { weight: "hatch" }),
        text([edge + LEADER_MM, place + CENTRED_RATIO * sizeMm], words, { sizeMm }),
      ];
    }
    const foot = edge + LEADER_MM + textWidthMm(words, sizeMm);
    const upright = text([place + CENTRED_RATIO * sizeMm, foot], words, { sizeMm });
    return [
      stroke(openPath(run.map(([y, x]): PaperPoint => [x, y])), { weight: "hatch" }),
      { ...upright, turnDeg: 90 },
    ];
  });
}

/**
 * Places for labels near their wishes, in the same order and a label apart; null for those past what the room holds,
 * the last ones first.
 */
function spread(
  wishes: readonly number[],
  { from, to }: { readonly from: number; readonly to: number },
  stepMm: number,
): readonly (number | null)[] {
  const most = Math.floor((to - from) / stepMm);
  const places: number[] = [];
  for (const wish of wishes.slice(0, most)) {
    const before = places.at(-1);
    places.push(Math.max(wish, before === undefined ? from + stepMm / 2 : before + stepMm));
  }
  // Pushed past the end they are moved back, the last one first.
  let limit = to - stepMm / 2;
  for (let index = places.length - 1; index >= 0; index--) {
    places[index] = Math.min(places[index] as number, limit);
    limit = (places[index] as number) - stepMm;
  }
  return wishes.map((_, index) => places[index] ?? null);
}
