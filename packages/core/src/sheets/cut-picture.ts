/**
 * One cut as a page to turn: the stick's end as it lies on the bench, what goes, the plane in its place, the marks that
 * place it. Scale and place are the same on every page of a plan, so that the eye sees only what changed.
 */
import type { Plan, PlanCut } from "../cutting/index.ts";
import { bug } from "../measure/index.ts";
import { brokenStick } from "./broken-stick.ts";
import { leanSpan, planeName, titleOf } from "./cut-facts.ts";
import type { PictureOptions } from "./cut-marks.ts";
import { cutScene, type SceneLayout } from "./cut-scene.ts";
import { circlePath, closedPath, type Drawing, group, type Item, stroke, text } from "./drawing.ts";
import type { Box } from "./flat-path.ts";
import { LABEL_MM } from "./lettering.ts";
import { printable } from "./printable-text.ts";
import { shortened, textWidthMm, wrapTextTo } from "./text-width.ts";

/** The page, mm: half an A4 sheet across, with a margin. */
const PAGE = { widthMm: 190, heightMm: 145, marginMm: 8 } as const;
const TITLE_MM = 5.6;
const HELD_MM = 4.4;
const SENTENCE_MM = 3.8;
const LINE_HEIGHT_MM = 4.9;

const PICTURE: Box = { minX: 6, minY: 44, maxX: 184, maxY: 131 };
const LAYOUT: SceneLayout = {
  picture: PICTURE,
  stickRoom: { widthMm: 106, flatMm: 55, turnedMm: 66 },
  bench: { centreX: 70, lineY: 115, fromX: 8, toX: 134 },
  enlarged: [{ centre: [161, 65], radiusMm: 20 }],
  uprights: { leftmostMm: 38, rightmostMm: 130 },
};

/**
 * Draws one cut. `cutNumber` is the cut's own number; one that the plan does not hold is a bug of the caller.
 */
export function drawCut(plan: Plan, cutNumber: number, options: PictureOptions): Drawing {
  const cut = plan.cuts.find((candidate) => candidate.number === cutNumber);
  if (cut === undefined) return bug("the plan has no such cut", { cutNumber });
  return {
    widthMm: PAGE.widthMm,
    heightMm: PAGE.heightMm,
    title: `${printable(plan.name).trim()}: cut ${cut.number}, ${titleOf(cut, options.unit)}`,
    description: printable(`${cut.says} ${cut.doneWhen}`).trim(),
    items: [
      ...headingItems(plan, cut, options),
      ...cutScene(brokenStick(plan, LAYOUT.stickRoom), cutNumber, LAYOUT, options),
      ...footItems(cut),
    ],
  };
}

function headingItems(plan: Plan, cut: PlanCut, options: PictureOptions): readonly Item[] {
  const left = PAGE.marginMm;
  const right = PAGE.widthMm - PAGE.marginMm;
  const textLeft = left + 14;
  const counter = text([right, 12.4], `${cut.number} of ${plan.cuts.length}`, {
    sizeMm: LABEL_MM,
    anchor: "end",
  });
  const titleWidth = right - textLeft - textWidthMm(counter.text, LABEL_MM) - 4;
  const held = `${planeName(cut)}, ${leanSpan(cut)}`;
  return [
    group("number", [
      stroke(circlePath([left + 5, 12], 5), { weight: "wide" }),
      text([left + 5, 14], String(cut.number), { sizeMm: TITLE_MM, anchor: "middle", bold: true }),
    ]),
    text([textLeft, 11.8], shortened(titleOf(cut, options.unit), TITLE_MM, titleWidth, "bold"), {
      sizeMm: TITLE_MM,
      bold: true,
    }),
    text([textLeft, 18], shortened(held, HELD_MM, right - textLeft), { sizeMm: HELD_MM }),
    counter,
    ...wrapTextTo(4, printable(cut.says), SENTENCE_MM, right - left).map((line, index) =>
      text([left, 26 + index * LINE_HEIGHT_MM], line, { sizeMm: SENTENCE_MM }),
    ),
  ];
}

/** The sign that it is done, behind a box to tick. */
function footItems(cut: PlanCut): readonly Item[] {
  const left = PAGE.marginMm;
  const baseY = PAGE.heightMm - 8.6;
  const textLeft = left + 6;
  const lines = wrapTextTo(2, printable(cut.doneWhen), SENTENCE_MM, PAGE.widthMm - PAGE.marginMm - textLeft);
  if (lines.length === 0) return [];
  const box = closedPath([
    [left, baseY - 3.1],
    [left + 3.4, baseY - 3.1],
    [left + 3.4, baseY + 0.3],
    [left, baseY + 0.3],
  ]);
  return [
    group("done when", [
      stroke(box),
      ...lines.map((line, index) =>
        text([textLeft, baseY + index * LINE_HEIGHT_MM], line, { sizeMm: SENTENCE_MM }),
      ),
    ]),
  ];
}
