/** The strip as it is seen from the front, painted tone by tone; and the wall beside it where a shadow falls on that. */
import type { SectionInLight, Tone } from "mouldwright/light";
import type { FrontLayout } from "./front-layout.ts";
import { PLASTER_RGB, shownRgb, WOOD_RGB } from "./tone-colour.ts";

export interface StripPainting {
  readonly layout: FrontLayout;
  readonly lit: SectionInLight;
  readonly tones: readonly Tone[];
  /** Dots of the device for one px of the layout. */
  readonly dotsRatio: number;
}

/** Paints a canvas that is as large as the whole picture; beside the strip it stays clear. */
export function paintStrip(
  canvas: HTMLCanvasElement,
  { layout, lit, tones, dotsRatio }: StripPainting,
): void {
  canvas.width = Math.round(layout.widthPx * dotsRatio);
  canvas.height = Math.round(layout.heightPx * dotsRatio);
  const brush = canvas.getContext("2d");
  if (brush === null) return;
  brush.scale(dotsRatio, dotsRatio);
  const { stripFromPx, stripToPx, pxPerMm, wallPx } = layout;
  const bar = (fromMm: number, toMm: number, colour: string): void => {
    const [fromX, fromY] = layout.at(0, fromMm);
    const [toX, toY] = layout.at(0, toMm);
    brush.fillStyle = colour;
    if (layout.run === "level") brush.fillRect(stripFromPx, fromY, stripToPx - stripFromPx, toY - fromY);
    else brush.fillRect(fromX, stripFromPx, toX - fromX, stripToPx - stripFromPx);
  };
  const { ambientRatio } = lit.lamp;
  const { beyondFirstMm, beyondLastMm } = lit.onWall;
  const wallMm = wallPx / pxPerMm;
  // The wall looks straight at the room.
  const wall = shownRgb(PLASTER_RGB, ambientRatio + (1 - ambientRatio) * -lit.direction.out);
  const dark = shownRgb(PLASTER_RGB, ambientRatio);
  bar(-wallMm, 0, wall);
  bar(-Math.min(beyondFirstMm, wallMm), 0, dark);
  bar(lit.widthMm, lit.widthMm + wallMm, wall);
  bar(lit.widthMm, lit.widthMm + Math.min(beyondLastMm, wallMm), dark);
  // Each is painted on to the last edge and the next over it, so that no seam shows between them.
  for (const { startMm, brightnessRatio } of tones)
    bar(startMm, lit.widthMm, shownRgb(WOOD_RGB, brightnessRatio));
}
