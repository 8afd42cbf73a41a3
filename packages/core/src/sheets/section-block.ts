/** The finished section with its note above it, as a block of a page that flows. */
import type { Plan } from "../cutting/index.ts";
import type { PictureOptions } from "./cut-marks.ts";
import { type Block, paragraph } from "./flow.ts";
import { sectionNote, sectionScene, sectionSceneMm } from "./section-picture.ts";

export interface SectionRoom {
  readonly widthMm: number;
  /** The picture is no higher than this. */
  readonly mostMm: number;
  /** Room kept under it, and over it where it does not begin the page. */
  readonly belowMm: number;
  readonly aboveMm?: number;
}

export function sectionBlock(plan: Plan, room: SectionRoom, options: PictureOptions): Block {
  const { widthMm, mostMm, belowMm, aboveMm } = room;
  const note = paragraph(sectionNote(plan, options), widthMm);
  const sceneMm = sectionSceneMm(plan, widthMm, mostMm);
  return {
    heightMm: note.heightMm + sceneMm + belowMm,
    ...(aboveMm === undefined ? {} : { aboveMm }),
    draw: (left, top) => {
      const sceneTop = top + note.heightMm;
      const box = { minX: left, maxX: left + widthMm, minY: sceneTop, maxY: sceneTop + sceneMm };
      return [...note.draw(left, top), ...sectionScene(plan, box, options)];
    },
  };
}
